"""One belt's tension over the way it has run: the trend since fitting, its stretch, how long it lasts."""

from functools import cached_property

from logic.answers.belt_parts import BeltParts
from logic.answers.reading import Item, Open, Reading
from logic.answers.run import Run, answer
from logic.belt.history import FEWEST, Line, Point, fall_of_tension, line, tension_on_the_line, way_left
from logic.belt.tension import Window
from logic.belt.travel import stretch_since
from logic.board import Board
from logic.errors import InputError
from logic.frozen import frozen
from logic.workings import Given, given

__all__ = ["BeltHistory", "Point", "belt_history"]


@frozen
class BeltHistory:
    """Points since the belt was fitted, the line through them, and what it means.

    `falls` is False while the trend is not larger than its error: then nothing is foretold.
    """

    points: tuple[Point, ...]
    trend: Line | None
    falls: bool
    items: dict[str, Item]
    window: Window | None


class HistoryParts(BeltParts):
    """A belt and its readings since it was fitted, oldest first."""

    def __init__(self, reading: Reading, points: tuple[Point, ...]) -> None:
        """Take the board from a reading, and the readings of its belt."""
        super().__init__(reading)
        self.points = points

    @cached_property
    def numbers(self) -> dict[str, float]:
        """Way, tension and error of each reading."""
        return {
            f"{name}_{number}": given(
                Given(f"{name.capitalize()}, reading {number}", value, unit, quantity, known="measured")
            )
            for number, point in enumerate(self.points, start=1)
            for name, value, unit, quantity in (
                ("way", point.way, "m", "distance"),
                ("tension", point.tension, "N", "force"),
                ("error", point.error, "N", "force"),
            )
        }

    def stretch(self) -> float:
        """Return how much longer the belt has become."""
        return stretch_since(
            before=self.numbers["tension_1"],
            now=self.numbers[f"tension_{len(self.points)}"],
            length=self.belt_length,
            stiffness=self.belt.stiffness,
        )

    def left(self) -> float:
        """Return the way until the belt is slack, on the line through its readings."""
        return way_left(
            now=tension_on_the_line(**self.numbers),
            floor=self.window.floor,
            fall=fall_of_tension(**self.numbers),
        )


@answer(points=tuple(Point(1e4 * step, 110.0 - 5.0 * step, 3.0) for step in range(5)))
def belt_history(board: Board, points: tuple[Point, ...]) -> BeltHistory:
    """Return the history of one belt from its readings since it was fitted, oldest first."""
    run = Run(lambda: HistoryParts(Reading(board), points))
    trend = _trend(points)
    falls = trend is not None and trend.sure
    items: dict[str, Item] = {"stretch": Open("stretch"), "left": Open("left")}
    if len(points) > 1:
        items["stretch"] = run.figure("stretch", "length", HistoryParts.stretch)
    if falls:
        items["left"] = run.figure("left", "distance", HistoryParts.left)
    return BeltHistory(points, trend, falls, items, run.view(lambda parts: parts.window, None))


def _trend(points: tuple[Point, ...]) -> Line | None:
    if len(points) < FEWEST:
        return None
    try:
        return line(points)
    except InputError:
        return None
