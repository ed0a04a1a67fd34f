"""Two set-ups side by side: the same figures of both, the difference, and both curves on one chart."""

from dataclasses import dataclass
from functools import partial

from logic.answers.asked import Asked, Asking
from logic.answers.outcomes import told
from logic.answers.pair import RESULTS as OF_A_PAIR
from logic.answers.pair import PairParts
from logic.answers.push import POINTS, PushParts
from logic.answers.push import RESULTS as OF_PUSH
from logic.answers.reading import Item, Reading, Result
from logic.answers.run import answer
from logic.board import Board, Value
from logic.drive.quick import quick_load, quick_push, quick_top
from logic.errors import InputError, Missing
from logic.workings import recording, unrecorded

FROM_PAIR = (
    "top_loaded",
    "top_full",
    "ratio",
    "push_start",
    "climb_start",
    "climb_heat",
    "stop",
    "electrical",
    "belt_load",
)
FROM_PUSH = ("time_20", "time_30", "per_distance")


@dataclass(frozen=True)
class Line:
    """One figure of both set-ups. `change` is the second less the first, None unless both are numbers."""

    name: str
    first: Item
    second: Item

    @property
    def change(self) -> float | None:
        """Return the second value less the first."""
        if isinstance(self.first, Result) and isinstance(self.second, Result):
            return self.second.value - self.first.value
        return None


@dataclass(frozen=True)
class Comparison:
    """Every figure of both, and push and load of both over speed; a curve that cannot be drawn is empty."""

    lines: tuple[Line, ...]
    push: tuple[tuple[tuple[float, float], ...], tuple[tuple[float, float], ...]]
    load: tuple[tuple[tuple[float, float], ...], tuple[tuple[float, float], ...]]


@answer()
def comparison(first: Board, second: Board, rider: Value | None, asking: Asking) -> Comparison:
    """Return two set-ups side by side, under the same rider and the same question."""
    left, right = (_figures(board, rider, asking) for board in (first, second))
    curves = [_curves(board, rider, asking) for board in (first, second)]
    return Comparison(
        tuple(Line(name, left[name], right[name]) for name in left),
        (curves[0][0], curves[1][0]),
        (curves[0][1], curves[1][1]),
    )


def _figures(board: Board, rider: Value | None, asking: Asking) -> dict[str, Item]:
    with recording() as recorder:
        pair = PairParts(Reading(board, rider), Asked(asking))
        push = PushParts(Reading(board, rider), Asked(asking))
        found = {}
        for name in FROM_PAIR:
            quantity, of_pair = OF_A_PAIR[name]
            found[name] = told(recorder, name, quantity, partial(of_pair, pair))
        for name in FROM_PUSH:
            quantity, of_push = OF_PUSH[name]
            found[name] = told(recorder, name, quantity, partial(of_push, push))
        return found


Points = tuple[tuple[float, float], ...]


def _curves(board: Board, rider: Value | None, asking: Asking) -> tuple[Points, Points]:
    parts = PushParts(Reading(board, rider), Asked(asking))
    with unrecorded():
        try:
            drive, road = parts.drive("nominal"), parts.asked_road
        except (Missing, InputError):
            return (), ()
    push, load, top = quick_push(drive), quick_load(road), quick_top(drive)
    speeds = [top * step / (POINTS - 1) for step in range(POINTS)]
    return tuple((speed, push(speed)) for speed in speeds), tuple((speed, load(speed)) for speed in speeds)
