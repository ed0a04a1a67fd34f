"""Two set-ups side by side: the same figures of both, the difference, and both curves on one chart."""

from logic.answers.asked import Asked, Asking
from logic.answers.pair import RESULTS as OF_A_PAIR
from logic.answers.pair import PairParts
from logic.answers.push import POINTS, PushParts
from logic.answers.push import RESULTS as OF_PUSH
from logic.answers.reading import Item, Reading, Result
from logic.answers.run import Points, Run, answer
from logic.board import Board, Value
from logic.drive.quick import quick_load, quick_push, quick_top
from logic.frozen import frozen

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


@frozen
class ComparedLine:
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


@frozen
class Comparison:
    """Every figure of both, and push and load of both over speed; a curve that cannot be drawn is empty."""

    lines: tuple[ComparedLine, ...]
    push: tuple[Points, Points]
    load: tuple[Points, Points]


@answer()
def comparison(first: Board, second: Board, rider: Value | None, asking: Asking) -> Comparison:
    """Return two set-ups side by side, under the same rider and the same question."""
    (left, left_push, left_load), (right, right_push, right_load) = (
        _of(board, rider, asking) for board in (first, second)
    )
    lines = tuple(ComparedLine(name, left[name], right[name]) for name in left)
    return Comparison(lines, (left_push, right_push), (left_load, right_load))


def _of(board: Board, rider: Value | None, asking: Asking) -> tuple[dict[str, Item], Points, Points]:
    pair = Run(lambda: PairParts(Reading(board, rider), Asked(asking)))
    push = Run(lambda: PushParts(Reading(board, rider), Asked(asking)))
    items = pair.figures({name: OF_A_PAIR[name] for name in FROM_PAIR})
    items |= push.figures({name: OF_PUSH[name] for name in FROM_PUSH})
    return items, *push.view(_curves, ((), ()))


def _curves(parts: PushParts) -> tuple[Points, Points]:
    drive = parts.nominal
    push, load, top = quick_push(drive), quick_load(parts.asked_road), quick_top(drive)
    speeds = [top * step / (POINTS - 1) for step in range(POINTS)]
    return tuple((speed, push(speed)) for speed in speeds), tuple((speed, load(speed)) for speed in speeds)
