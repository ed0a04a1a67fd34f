"""One belt's tension over the way it has run: the trend since fitting, its stretch, how long it lasts."""

from dataclasses import dataclass

from logic.answers.reading import Item, Open, Reading, attempt
from logic.answers.tension import BeltParts
from logic.belt.history import FEWEST, Line, Point, fall_of_tension, line, tension_on_the_line, way_left
from logic.belt.tension import Window
from logic.belt.travel import stretch_since
from logic.board import Board
from logic.errors import InputError, Missing
from logic.workings import Given, fresh, given, recording, unrecorded

__all__ = ["BeltHistory", "Point", "belt_history"]


@dataclass(frozen=True)
class BeltHistory:
    """Points since the belt was fitted, the line through them, and what it means.

    `falls` is False while the trend is not larger than its error: then nothing is foretold.
    """

    points: tuple[Point, ...]
    trend: Line | None
    falls: bool
    items: dict[str, Item]
    window: Window | None


def belt_history(board: Board, points: tuple[Point, ...]) -> BeltHistory:
    """Return the history of one belt from its readings since it was fitted, oldest first."""
    with recording() as recorder:
        parts = BeltParts(Reading(board))
        numbers: dict[str, float] = {}
        for number, point in enumerate(points, start=1):
            for name, value, unit, quantity in (
                ("way", point.way, "m", "distance"),
                ("tension", point.tension, "N", "force"),
                ("error", point.error, "N", "force"),
            ):
                words = f"{name.capitalize()}, reading {number}"
                numbers[f"{name}_{number}"] = given(
                    Given(words, fresh(value), unit, quantity, known="measured")
                )
        trend = _trend(points)
        falls = trend is not None and trend.sure
        items: dict[str, Item] = {"stretch": Open("stretch"), "left": Open("left")}
        if len(points) > 1:
            items["stretch"] = attempt(
                recorder,
                "stretch",
                "length",
                lambda: stretch_since(
                    before=numbers["tension_1"],
                    now=numbers[f"tension_{len(points)}"],
                    length=parts.belt_length,
                    stiffness=parts.belt.stiffness,
                ),
            )
        if falls:
            items["left"] = attempt(
                recorder,
                "left",
                "distance",
                lambda: way_left(
                    now=tension_on_the_line(**numbers),
                    floor=parts.window.floor,
                    fall=fall_of_tension(**numbers),
                ),
            )
        with unrecorded():
            return BeltHistory(points, trend, falls, items, _window(parts))


def _trend(points: tuple[Point, ...]) -> Line | None:
    if len(points) < FEWEST:
        return None
    try:
        return line(points)
    except InputError:
        return None


def _window(parts: BeltParts) -> Window | None:
    try:
        return parts.window
    except (Missing, InputError):
        return None
