"""Two set-ups side by side: the same figures of both, the difference, and both curves on one chart."""

from collections.abc import Mapping
from dataclasses import field

from logic.answers.asked import Asked, Asking
from logic.answers.belt_parts import BeltParts
from logic.answers.pair import RESULTS as OF_A_PAIR
from logic.answers.pair import PairParts
from logic.answers.push import POINTS, PushParts
from logic.answers.push import RESULTS as OF_PUSH
from logic.answers.reading import Item, Reading, Result
from logic.answers.run import Figures, Points, Run, answer
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
    """One figure of both set-ups, each worked out when it is read. `change` is the second less the first.

    It is None unless both are numbers.
    """

    name: str
    both: tuple[Mapping[str, Item], Mapping[str, Item]] = field(repr=False)

    @property
    def first(self) -> Item:
        """The figure of the first one."""
        return self.both[0][self.name]

    @property
    def second(self) -> Item:
        """The figure of the second one."""
        return self.both[1][self.name]

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


class ComparedParts(PushParts, PairParts):
    """The parts of one set-up: a pair of pulleys, and what it does on the road asked about."""

    def __init__(self, reading: Reading, asked: Asked) -> None:
        """Take the board from a reading and the question beside it."""
        BeltParts.__init__(self, reading)
        self.asked = asked


OF_BOTH: Figures[ComparedParts] = {
    **{name: OF_A_PAIR[name] for name in FROM_PAIR},
    **{name: OF_PUSH[name] for name in FROM_PUSH},
}


@answer()
def comparison(first: Board, second: Board, rider: Value | None, asking: Asking) -> Comparison:
    """Return two set-ups side by side, under the same rider and the same question."""
    left, right = (_run(board, rider, asking) for board in (first, second))
    both = left.when_read(OF_BOTH), right.when_read(OF_BOTH)
    (left_push, left_load), (right_push, right_load) = (run.view(_curves, ((), ())) for run in (left, right))
    lines = tuple(ComparedLine(name, both) for name in OF_BOTH)
    return Comparison(lines, (left_push, right_push), (left_load, right_load))


def _run(board: Board, rider: Value | None, asking: Asking) -> Run[ComparedParts]:
    return Run(lambda: ComparedParts(Reading(board, rider), Asked(asking)))


def _curves(parts: PushParts) -> tuple[Points, Points]:
    drive = parts.nominal
    push, load, top = quick_push(drive), quick_load(parts.asked_road), quick_top(drive)
    speeds = [top * step / (POINTS - 1) for step in range(POINTS)]
    return tuple((speed, push(speed)) for speed in speeds), tuple((speed, load(speed)) for speed in speeds)
