"""A measured tension against the window: the word, as sure as the error lets it be."""

from math import isfinite
from typing import Literal, get_args

from logic.errors import InputError, not_negative, positive
from logic.frozen import frozen
from logic.si import Newton

Word = Literal[
    "in window",
    "on the edge: may be slack",
    "on the edge: may be tight",
    "slack",
    "tight",
    "cannot tell: take a finer tool or a second way",
]
"""What is said of a belt, in the same words wherever it is shown, said or kept."""

MAY_BE_SLACK: Word = "on the edge: may be slack"
MAY_BE_TIGHT: Word = "on the edge: may be tight"
CANNOT_TELL: Word = "cannot tell: take a finer tool or a second way"

SURE = 1 / 3
"""Share of its error by which an estimate must lie on one side of an edge to be said to lie there."""


@frozen
class Measured:
    """A measured tension and the limit (about 95 %) within which it is known."""

    tension: Newton
    error: Newton


@frozen
class BeltVerdict:
    """The one word of a reading.

    "in window": inside both edges by at least a third of the error. "slack" and "tight": outside by at least
    as much. "on the edge": nearer to one than that, on whichever side. "cannot tell": the band reaches past
    both edges.
    """

    word: Word

    @property
    def right(self) -> bool:
        """Tell whether nothing need be done."""
        return self.word == "in window"

    @property
    def wrong(self) -> bool:
        """Tell whether the belt must be set anew."""
        return self.word in ("slack", "tight")


def judge(*, reading: Measured, floor: Newton, ceiling: Newton) -> BeltVerdict:
    """Return where a reading lies; an edge itself belongs to the window of a reading without an error.

    A tension below zero (a belt that hung loose) is slack like any other. Raises InputError unless the edges
    are positive and in order, the tension is finite and the error is not below zero.

    >>> judge(reading=Measured(54.0, 19.0), floor=53.5, ceiling=84.0)
    BeltVerdict(word='on the edge: may be slack')
    >>> judge(reading=Measured(60.0, 5.0), floor=70.0, ceiling=110.0)
    BeltVerdict(word='slack')
    """
    positive(floor=floor, ceiling=ceiling)
    if floor > ceiling:
        raise InputError("floor", floor, "above the ceiling", high=ceiling)
    if not isfinite(reading.tension):
        raise InputError("tension", reading.tension, "not a number")
    not_negative(error=reading.error)
    return BeltVerdict(_word(reading.tension, reading.error, floor, ceiling))


def slack_at_least(*, reading: Measured, least: Newton) -> BeltVerdict | None:
    """Return that a belt is slack for its width alone, while its window is not known; None for one that may be right.

    >>> slack_at_least(reading=Measured(20.0, 6.0), least=53.4)
    BeltVerdict(word='slack')
    >>> slack_at_least(reading=Measured(52.0, 6.0), least=53.4)
    """
    return (
        BeltVerdict("slack")
        if least - reading.tension >= SURE * reading.error and reading.tension < least
        else None
    )


def _word(tension: float, error: float, floor: float, ceiling: float) -> Word:
    if tension - error < floor and tension + error > ceiling:
        return CANNOT_TELL
    needed = SURE * error
    if tension < floor and floor - tension >= needed:
        return "slack"
    if tension > ceiling and tension - ceiling >= needed:
        return "tight"
    if tension - floor < needed:
        return MAY_BE_SLACK
    if ceiling - tension < needed:
        return MAY_BE_TIGHT
    return "in window"


def word_of(
    written: str, tension: float | None, error: float | None, floor: float | None, ceiling: float | None
) -> Word | Literal[""]:
    """Return the word of a tension in the log: judged by its own figures where they are there, else as written.

    Entries of an earlier rule thereby keep one form with the new ones. "" for a reading without a window.
    """
    if not written or tension is None or error is None or floor is None or ceiling is None:
        return next((word for word in get_args(Word) if word == written), "")
    return judge(reading=Measured(tension, error), floor=floor, ceiling=ceiling).word
