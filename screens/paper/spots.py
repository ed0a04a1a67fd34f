"""Texts and areas of the paper as one would point at them: what the driver finds, taps and reads."""

from collections.abc import Iterator
from typing import Any

from screens.paper.sheet import Ink, Laid, Touch


class Spot:
    """A text or an area to touch: its place in its block, and the part of the paper that it is on."""

    opacity = 1

    def __init__(  # noqa: PLR0913  (a place)
        self,
        parts: Any,  # noqa: ANN401  (the parts of the paper)
        part: Any,  # noqa: ANN401  (a strip or a pane)
        text: str,
        place: tuple[float, float, float, float],
        touch: Touch | None,
        over: "Spot | None",
    ) -> None:
        """Keep it; `place` is x, y from the top of the part, width and height."""
        self.parts, self.part, self.text, self.touch, self.parent = parts, part, text, touch, over
        self.left, self.down, self.width, self.height = place
        if touch is not None:
            self.on_release = True

    @staticmethod
    def all_of(parts: Any, part: Any, laid: Laid, top: float) -> Iterator["Spot"]:  # noqa: ANN401
        """Yield the spots of a block whose upper edge is so far down."""
        areas = [
            Spot(parts, part, touch.name, (touch.x, top + touch.y, touch.width, touch.height), touch, None)
            for touch in laid.touches
        ]
        yield from areas
        whole = (0.0, top, laid.width, laid.height)
        one = areas[0] if len(areas) == 1 else None
        if laid.said:
            yield Spot(parts, part, laid.said, whole, None, one)
        for mark in laid.marks:
            if isinstance(mark, Ink) and mark.text:
                middle = (mark.x + mark.width / 2, top + mark.y + mark.height / 2)
                over = next((area for area in areas if area.holds(*middle)), None)
                yield Spot(
                    parts, part, mark.text, (mark.x, top + mark.y, mark.width, mark.height), None, over
                )

    def holds(self, x: float, down: float) -> bool:
        """Tell whether a place lies in it."""
        return self.left <= x <= self.left + self.width and self.down <= down <= self.down + self.height

    @property
    def wait(self) -> float:
        """Return for how many seconds it will hear nothing."""
        return float(self.parts.deaf_for(self.part))

    def bring(self) -> None:
        """Scroll it into sight."""
        if self.part in self.parts.panes:
            room, offset = self.part.height, self.part.offset
            if self.down < offset or self.down + self.height > offset + room:
                self.part.to(self.down - max(0.0, room - self.height) / 2)

    @property
    def middle(self) -> tuple[float, float]:
        """Return the middle of the part of it that is in sight."""
        low, high = self.y, self.y + self.height
        if self.part in self.parts.panes:
            low, high = max(low, self.part.y), min(high, self.part.top)
        return self.x + self.width / 2, (low + high) / 2

    @property
    def x(self) -> float:
        """Return its left edge in the window."""
        return float(self.part.x + self.left)

    @property
    def y(self) -> float:
        """Return its foot in the window."""
        offset = self.part.offset if self.part in self.parts.panes else 0.0
        return float(self.part.top - self.down - self.height + offset)

    def to_window(self, x: float, y: float) -> tuple[float, float]:
        """Return a place as it is: a spot reckons in the window."""
        return x, y
