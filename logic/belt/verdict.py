"""A measured tension against the window: the word from the best estimate, the certainty from the band."""

from dataclasses import dataclass
from math import isfinite
from typing import Literal

from logic.errors import InputError, positive
from logic.si import Newton

Word = Literal["slack", "in window", "tight"]
Certainty = Literal["surely", "inside", "may be slack", "may be tight", "cannot tell"]


@dataclass(frozen=True)
class Reading:
    """A measured tension and the limit (about 95 %) within which it is known."""

    tension: Newton
    error: Newton


@dataclass(frozen=True)
class Verdict:
    """`word` is the best estimate's place. `certainty` is the place of its whole band.

    "surely": wholly outside the window. "inside": wholly within. "may be slack" and "may be tight": across
    that one edge, on whichever side of it the best estimate lies. "cannot tell": past both edges.
    """

    word: Word
    certainty: Certainty


def judge(*, reading: Reading, floor: Newton, ceiling: Newton) -> Verdict:
    """Return where a reading lies; an edge itself belongs to the window.

    A tension below zero (a belt that hung loose) is slack like any other. Raises InputError unless the edges
    are positive and in order, the tension is finite and the error is not below zero.

    >>> judge(reading=Reading(60.0, 5.0), floor=70.0, ceiling=110.0)
    Verdict(word='slack', certainty='surely')
    >>> judge(reading=Reading(75.0, 10.0), floor=70.0, ceiling=110.0)
    Verdict(word='in window', certainty='may be slack')
    """
    positive(floor=floor, ceiling=ceiling)
    if floor > ceiling:
        raise InputError("floor", floor, "above the ceiling", high=ceiling)
    if not isfinite(reading.tension):
        raise InputError("tension", reading.tension, "not a number")
    if not 0.0 <= reading.error < float("inf"):
        raise InputError("error", reading.error, "below zero", low=0.0)
    word: Word = "slack" if reading.tension < floor else "tight" if reading.tension > ceiling else "in window"
    return Verdict(
        word, _certainty(reading.tension - reading.error, reading.tension + reading.error, floor, ceiling)
    )


def _certainty(low: float, high: float, floor: float, ceiling: float) -> Certainty:
    if high < floor or low > ceiling:
        return "surely"
    if low < floor and high > ceiling:
        return "cannot tell"
    if low < floor:
        return "may be slack"
    if high > ceiling:
        return "may be tight"
    return "inside"
