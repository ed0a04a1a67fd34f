"""How long a climb can be held, as far as the values go: modelled with what is usual of motor and cells."""

from collections.abc import Callable
from dataclasses import dataclass
from math import exp, hypot, log

from logic.answers.asked import Asked, Asking
from logic.answers.first_figure import SEEN, FirstFigure, lacking
from logic.answers.first_speed import End, RoughParts, RoughReading, taken_as_usual
from logic.answers.hold import RESULTS, HoldParts
from logic.answers.reading import Open, Result
from logic.answers.run import Run, answer
from logic.board import Board, Value
from logic.tables import pick

HEAD = "hold_time"
NEEDED = (*SEEN, "drive.motors")
"""Values without which nothing is said: one motor carries twice what two do."""
COOLS = "cools"
"""Names the two thermal estimates among what leaves the time open."""


class RoughHold(RoughParts, HoldParts):
    """A climb with what is usual where nothing is entered."""

    def __init__(self, reading: RoughReading, asked: Asked, factor: float) -> None:
        """Take the board from a reading, the question, and how far the two thermal estimates are stretched."""
        HoldParts.__init__(self, reading, asked, factor)


@dataclass(frozen=True)
class FirstHold(FirstFigure):
    """The best time so far; `times` are both ends of what is usual, the later None where the limit may never come."""

    times: tuple[float | None, float | None] = (None, None)


@answer()
def first_hold(board: Board, rider: Value | None, asking: Asking) -> FirstHold:
    """Return the best time until the limit that the values so far allow, in s."""
    lacks = lacking(board, rider, NEEDED)
    if lacks:
        return FirstHold("nothing", Open(HEAD, missing=lacks))
    spread = pick("heating", name="spread").cells

    def make(key: str = "", end: End = "usual") -> RoughHold:
        factor = float(spread[end]) if key == COOLS else 1.0
        return RoughHold(RoughReading(board, rider, key, end), Asked(asking), factor)

    quantity, compute = RESULTS[HEAD]
    taken = taken_as_usual(board)
    item = Run(make).figure(HEAD, quantity, compute)
    times = _ends(float(item.value), (COOLS, *taken), make) if isinstance(item, Result) else (None, None)
    return FirstHold("modelled", item, taken, times)


def _ends(
    usual: float, keys: tuple[str, ...], make: Callable[[str, End], RoughHold]
) -> tuple[float | None, float | None]:
    """Return the time at both ends of what is usual.

    A time stretches rather than shifts, so the shares that each value leaves open are added in squares of their logarithms.
    """
    ends: tuple[End, ...] = ("low", "high")
    found = [[_time(make, key, end) for end in ends] for key in keys]
    logs = [[log(time / usual) for time in pair if time] for pair in found]
    early = usual * exp(-hypot(*(min(0.0, *pair) for pair in logs if pair)))
    late = usual * exp(hypot(*(max(0.0, *pair) for pair in logs if pair)))
    return early, None if any(None in pair for pair in found) else late


def _time(make: Callable[[str, End], RoughHold], key: str, end: End) -> float | None:
    """Return the time with one value at an end, None where the limit never comes."""
    found = Run(lambda: make(key, end)).view(RESULTS[HEAD][1], None)
    return float(found) if isinstance(found, float) else None
