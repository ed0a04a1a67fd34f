"""Comparison with a printed number: half a unit of its last digit, no more, unless the source itself is looser.

Beneath `tests/published` every comparison is also noted with what the test's `source` says, for tests/VALIDATION.md and
the app's own page of sources.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field
from decimal import Decimal

import pytest

from logic.workings import Call, trace

SEEN = ("read", "second-hand", "memory", "ours")
"""How a printed number is known: read where it is printed, in a copy or a report, remembered, or worked out by us."""


@dataclass(frozen=True)
class Said:
    """One comparison: the printed number, ours, and the formulas that ours came out of."""

    printed: str
    ours: str
    unit: str
    off: str
    formulas: tuple[str, ...]


@dataclass
class Notes:
    """What one test compared."""

    said: list[Said] = field(default_factory=list)


_noting: ContextVar[Notes | None] = ContextVar("noting", default=None)


def source(place: str, seen: str = "read") -> pytest.MarkDecorator:
    """Mark a test with a key of sources.toml and the place in it, and how its numbers are known.

    What is checked is the name of the test, in words. Of several the last stands, so that a case can have its own.
    """
    key, _, where = place.partition(" ")
    if seen not in SEEN:
        raise ValueError(seen)
    return pytest.mark.source(key=key, where=where, seen=seen)


ours = source("derived", "ours")
"""Worked out by us another way: no outside check."""

memory = source("memory", "memory")
"""Remembered, with no printed page at hand: no outside check."""


@contextmanager
def noting() -> Iterator[Notes]:
    """Note the comparisons of one test."""
    notes = Notes()
    token = _noting.set(notes)
    try:
        yield notes
    finally:
        _noting.reset(token)


def rounds_to(value: float, printed: str) -> bool:
    """Tell whether a value rounds to a printed number, with no note of it; "2.50e2" has three figures.

    >>> rounds_to(1.1881, "1.188"), rounds_to(1.189, "1.188")
    (True, False)
    """
    number = Decimal(printed)
    exponent = number.as_tuple().exponent
    assert isinstance(exponent, int)
    # The slack of one part in 1e9 is for values on the very edge, which binary fractions miss by a hair.
    return abs(value - float(number)) <= 0.5 * 10.0**exponent * (1.0 + 1e-9) + 1e-12 * abs(value)


def agrees(value: float, printed: str, unit: str = "") -> bool:
    """Tell whether a value of ours rounds to a printed number.

    >>> agrees(250.4, "2.50e2", "J")
    True
    """
    _note(value, printed, unit)
    return rounds_to(value, printed)


def near(value: float, printed: float | str, unit: str = "", **slack: float) -> bool:
    """Tell whether a value lies within `abs` or `rel` of a printed number; the test says why it is not the digits.

    >>> near(1.19, "1.188", abs=0.005), near(1.19, 1.188, rel=0.001)
    (True, False)
    """
    _note(value, _text(printed), unit)
    return bool(value == pytest.approx(float(printed), **slack))


def at_most(value: float, printed: float | str, unit: str = "") -> bool:
    """Tell whether a careful limit of ours does not go over a printed one.

    >>> at_most(12.5, "13", "A"), at_most(13.5, "13", "A")
    (True, False)
    """
    _note(value, _text(printed), unit)
    return value <= float(printed)


def same(found: object, printed: object, unit: str = "") -> bool:
    """Tell whether what is found is what is printed: a row as it stands, a word, or a list.

    >>> same(0.9, 0.9), same("cold", "warm")
    (True, False)
    """
    _note(found, _text(printed), unit)
    return found == printed


def _note(value: object, printed: str, unit: str) -> None:
    notes = _noting.get()
    if notes is not None:
        notes.said.append(Said(printed, _short(value), unit, _off(value, printed), _formulas(value)))


def _text(printed: object) -> str:
    """Return a printed number as a page would have it."""
    return f"{printed:.6g}" if isinstance(printed, float) else str(printed)


def _short(value: object) -> str:
    """Return a value to the digits that matter; a Traced number writes like any other."""
    return f"{float(value):.5g}" if isinstance(value, int | float) else str(value)


def _off(value: object, printed: str) -> str:
    """Return by how much of it a value lies beside a printed number, in per cent; nothing for words."""
    try:
        number = float(printed)
    except ValueError:
        return ""
    if not isinstance(value, int | float) or not number:
        return ""
    share = round(100.0 * (float(value) / number - 1.0), 2)
    return f"{share:+.2f}" if share else "0"


def _formulas(value: object) -> tuple[str, ...]:
    """Return the named formulas that a number came out of."""
    names = {
        f"{entry.formula.function.__module__}.{entry.formula.name}"
        for part in (value if isinstance(value, tuple | list) else (value,))
        for entry in trace(part)
        if isinstance(entry, Call) and entry.formula.mark != "step"
    }
    return tuple(sorted(names))
