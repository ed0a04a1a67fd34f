"""Where a hardware keyboard is on the page: Tab goes to what can be entered, else to what can be touched."""

from collections.abc import Callable

from screens.acts import Act
from screens.acts.entering import asks
from screens.blocks import Block
from screens.page import Page
from screens.paper.parts import Parts
from screens.paper.sheet import Touch


class Focus:
    """The area that Enter would touch."""

    def __init__(self, parts: Parts, act: Callable[[Act], None]) -> None:
        """Begin nowhere."""
        self.parts, self._act = parts, act
        self._place = -1

    @property
    def area(self) -> tuple[Block, Touch] | None:
        """Return the block and the area; None while it is nowhere."""
        areas = self.parts.areas()
        return areas[self._place] if 0 <= self._place < len(areas) else None

    def leave(self) -> None:
        """Be nowhere: another page comes."""
        self._place = -1

    def tab(self, page: Page, step: int) -> bool:
        """Go to the next value that can be entered; on a page without any, to the next thing that can be touched."""
        askable = _askable(page)
        if askable:
            keys = list(askable)
            now = page.foot.entry.key if page.foot.entry is not None else ""
            place = keys.index(now) + step if now in keys else 0
            self._act(askable[keys[place % len(keys)]])
            return True
        count = len(self.parts.areas())
        if not count:
            return False
        if self._place < 0:
            self._place = 0 if step > 0 else count - 1
        else:
            self._place = (self._place + step) % count
        self.show()
        return True

    def show(self) -> None:
        """Show it on what is painted now, scrolled into sight."""
        if self._place < 0:
            return
        area = self.area
        if area is None:
            self.leave()
            return
        block, touch = area
        for spot in self.parts.spots():
            if spot.touch is touch:
                spot.bring()
        for view, shown in self.parts.views():
            view.press(touch if shown is block else None)


def _askable(page: Page) -> dict[str, Act]:
    """Return what can be asked for on a page, from top to bottom, with the first act that asks for it."""
    found: dict[str, Act] = {}
    for block in page.blocks:
        for act in block.acts().values():
            if act is not None and asks(act):
                found.setdefault(asks(act), act)
    return found
