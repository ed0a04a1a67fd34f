"""The parts of the paper: what stands in each, where it is in the window, and whether it hears."""

from collections.abc import Callable, Iterator
from typing import Any

from kivy.clock import Clock
from kivy.uix.widget import Widget

from screens.blocks import Block
from screens.paper.measure import measure
from screens.paper.pane import Pane, Strip
from screens.paper.scale import Look
from screens.paper.sheet import Laid, Touch
from screens.paper.spots import Spot

DEAF = 0.35
"""Seconds for which a bar that has just appeared hears nothing."""
COMES = 0.25
"""Seconds for which a page that comes hears nothing: the second touch of a trembling glove was meant for the one before."""


class Parts:
    """Header, crown, three columns that scroll (two of the page, one for the list of the place), foot, places and the way back.

    A block that would look the same keeps the form it was laid out in.
    """

    def __init__(self, add: Callable[[Widget], object]) -> None:
        """Make them; each is given to `add`."""
        self._add = add
        self.header, self.crown = Strip(), Strip("panel")
        self.panes = (Pane(), Pane(), Pane())
        self.foot: list[Strip] = []
        self.places, self.bar = Strip(), Strip()
        for part in (*self.panes, self.crown, self.header, self.places, self.bar):
            add(part)
        self._laid: dict[tuple[str, str], tuple[Block, float, Look, Laid]] = {}
        self._deaf: dict[str, float] = {}

    @property
    def strips(self) -> tuple[Strip, ...]:
        """Return the parts that do not scroll, from top to bottom."""
        return (self.header, self.crown, *self.foot, self.places, self.bar)

    # What stands in them

    def lay(self, block: Block, width: float, look: Look, part: str = "frame") -> Laid:
        """Return a block laid out; the one that is kept where it would look the same."""
        key = (part, block.key)
        kept = self._laid.get(key)
        if (
            kept is not None
            and kept[1] == width
            and kept[2] == look
            and (kept[0] is block or (type(kept[0]) is type(block) and kept[0].looks_like(block)))
        ):
            return kept[3]
        laid = measure(block, width, look)
        self._laid[key] = (block, width, look, laid)
        return laid

    def put(self, strip: Strip, block: Block, width: float, x: float, top: float, look: Look) -> float:  # noqa: PLR0913  (a block and its place)
        """Show a block in a strip; return its height."""
        laid = self.lay(block, width, look)
        strip.block, strip.opacity = block, 1
        strip.show(laid)
        strip.pos = (x, top - laid.height)
        return laid.height

    @staticmethod
    def hide(strip: Strip) -> None:
        """Show nothing in a strip."""
        if strip.opacity:
            strip.block, strip.opacity, strip.size = None, 0, (0, 0)
            strip.laid = None

    def feet(self, count: int) -> list[Strip]:
        """Return so many strips for the foot; those that are over show nothing."""
        while len(self.foot) < count:
            self.foot.append(Strip())
            self._add(self.foot[-1])
        for strip in self.foot[count:]:
            self.hide(strip)
        return self.foot[:count]

    def keep(self, blocks: tuple[Block, ...]) -> None:
        """Forget the forms of what no longer stands on the page."""
        on_page = {block.key for block in blocks}
        self._laid = {
            (part, key): laid for (part, key), laid in self._laid.items() if part == "frame" or key in on_page
        }

    def forget(self) -> None:
        """Forget every form, and paint what is in sight anew: colours or sizes changed."""
        self._laid.clear()
        for part in self.strips:
            part.laid = None
        for pane in self.panes:
            pane.repaint()

    # Where things are

    def at(self, x: float, y: float) -> tuple[Any, Touch, Block] | None:
        """Return the view, the area and the block at a place of the window."""
        for strip in (self.bar, *self.foot, self.places, self.header, self.crown):
            if strip.opacity and strip.block is not None and strip.collide_point(x, y):
                touch = strip.hit(x - strip.x, y - strip.y)
                return None if touch is None else (strip, touch, strip.block)
        for pane in self.panes:
            found = pane.at(x, y)
            if found is not None and found[0].index < len(pane.blocks):
                return (*found, pane.blocks[found[0].index])
        return None

    def areas(self) -> list[tuple[Block, Touch]]:
        """Return every area to touch with its block, in the order of reading."""
        found = [area for strip in (self.header, self.crown) for area in _areas(strip)]
        for pane in self.panes:
            for block, laid in zip(pane.blocks, pane.laids, strict=True):
                found += [(block, touch) for touch in laid.touches]
        return found + [area for strip in (*self.foot, self.bar, self.places) for area in _areas(strip)]

    def views(self) -> Iterator[tuple[Any, Block | None]]:
        """Yield each view in sight with the block it shows."""
        for strip in self.strips:
            yield strip, strip.block
        for pane in self.panes:
            for view in pane.views.values():
                shows = view.laid is not None and 0 <= view.index < len(pane.blocks)
                yield view, pane.blocks[view.index] if shows else None

    def spots(self) -> Iterator[Spot]:
        """Yield every text and every area to touch, also those that are scrolled out of sight."""
        for strip in self.strips:
            if strip.opacity and strip.block is not None and strip.laid is not None:
                yield from Spot.all_of(self, strip, strip.laid, 0.0)
        for pane in self.panes:
            top = 0.0
            for laid in pane.laids:
                yield from Spot.all_of(self, pane, laid, top)
                top += laid.height

    # Whether they hear

    def deafen(self, part: str) -> None:
        """Let the foot, the bar over it, or all of a "page" that comes but its header hear nothing for a moment."""
        self._deaf[part] = Clock.get_time() + (COMES if part == "page" else DEAF)

    def deaf_for(self, view: Any) -> float:  # noqa: ANN401  (a view)
        """Return for how many seconds a part will hear nothing."""
        part = "foot" if view in self.foot else "bar" if view is self.bar else ""
        # Two taps on Back are two levels; any other second tap was meant for the page before.
        parts = (part, "" if view is self.header else "page")
        return max(0.0, *(self._deaf.get(one, 0.0) - Clock.get_time() for one in parts))


def _areas(strip: Strip) -> list[tuple[Block, Touch]]:
    if strip.block is None or strip.laid is None:
        return []
    return [(strip.block, touch) for touch in strip.laid.touches]
