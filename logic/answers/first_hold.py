"""How long a climb can be held, as far as the values go: modelled with what is usual of motor and cells."""

from math import exp, hypot, log

from logic.answers.asked import Asked, Asking
from logic.answers.first_figure import SEEN, FirstFigure, lacking
from logic.answers.hold import RESULTS, HoldParts
from logic.answers.reading import Open, Result
from logic.answers.rough import RoughParts, RoughReading, RoughRun, taken_as_usual
from logic.answers.run import Run, answer
from logic.board import Board, Value
from logic.frozen import frozen
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


@frozen
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

    def make(reading: RoughReading) -> RoughHold:
        return RoughHold(
            reading, Asked(asking), float(spread[reading.end(COOLS)]) if reading.open_key == COOLS else 1.0
        )

    taken = taken_as_usual(board)
    run = RoughRun(board, rider, make, (COOLS, *taken))
    item = run.figure(HEAD, *RESULTS[HEAD])
    times = _ends(float(item.value), run) if isinstance(item, Result) else (None, None)
    return FirstHold("modelled", item, taken, times)


def _ends(usual: float, run: RoughRun[RoughHold]) -> tuple[float | None, float | None]:
    """Return the time at both ends of what is usual.

    A time stretches rather than shifts, so the shares that each value leaves open are added in squares of their logarithms.
    """
    found = [[_time(end) for end in both] for both in run.ends]
    logs = [[log(time / usual) for time in pair if time] for pair in found]
    early = usual * exp(-hypot(*(min(0.0, *pair) for pair in logs if pair)))
    late = usual * exp(hypot(*(max(0.0, *pair) for pair in logs if pair)))
    return early, None if any(None in pair for pair in found) else late


def _time(end: Run[RoughHold]) -> float | None:
    """Return the time with one value at an end, None where the limit never comes."""
    found = end.view(RESULTS[HEAD][1], None)
    return float(found) if isinstance(found, float) else None
