"""Refusals and offers. Screens turn both into sentences in the person's units; scripts read the SI text."""

from math import inf, isfinite

# ruff: noqa: N818  (a refusal reads better without Error at the end of each name)

UNREADABLE = (ValueError, TypeError, LookupError, AttributeError, ArithmeticError, RecursionError)
"""What reading of saved data raises where it is not what was written."""


class InputError(ValueError):
    """A value that cannot be used: what was given, why not, and what is allowed.

    `reason` is a short key of the sentence ("range", "ambiguous", ...). `low` and `high` are SI, None where open.
    """

    def __init__(  # noqa: PLR0913  (the parts of one sentence)
        self,
        field: str,
        given: object,
        reason: str,
        low: float | None = None,
        high: float | None = None,
        quantity: str | None = None,
    ) -> None:
        """Keep the parts of the sentence; the text is for scripts, in SI."""
        self.field, self.given, self.reason = field, given, reason
        self.low, self.high, self.quantity = low, high, quantity
        super().__init__(self._text())

    def _text(self) -> str:
        allowed = ""
        if self.low is not None and self.high is not None:
            allowed = f"; allowed from {self.low:g} to {self.high:g} (SI)"
        elif self.low is not None:
            allowed = f"; allowed from {self.low:g} (SI)"
        elif self.high is not None:
            allowed = f"; allowed up to {self.high:g} (SI)"
        return f"{self.field}: {self.given!r} refused ({self.reason}){allowed}"


class NoFigure(InputError):
    """An answer in place of a number: the drive cannot start here, the joint is set by feel."""


class UnknownUnit(InputError):
    """A unit that the quantity does not have."""


class NewerVersion(InputError):
    """A board that a later version wrote."""


class DoesNotReach(InputError):
    """A screw that ends before its hole."""


class NotCharged(InputError):
    """Cells at a temperature at which nothing is charged into them."""


class Missing(Exception):
    """Values that a result needs and the board does not have yet: an offer to fill a gap, not an error."""

    def __init__(self, *fields: str) -> None:
        """Keep the keys of the missing fields, in the order they were asked for."""
        self.fields = fields
        super().__init__("missing: " + ", ".join(fields))


def positive(**numbers: float) -> None:
    """Raise InputError for the first number that is not finite or not above zero, and say which of the two.

    >>> positive(span=0.06)
    >>> positive(span=0.0)
    Traceback (most recent call last):
    ...
    logic.errors.InputError: span: 0.0 refused (not positive); allowed from 0 (SI)
    """
    for name, value in numbers.items():
        if not 0.0 < value < inf:
            raise _refused(name, value, "not positive")


def not_negative(**numbers: float) -> None:
    """Raise InputError for the first number that is not finite or is below zero, and say which of the two.

    >>> not_negative(friction=0.0)
    >>> not_negative(friction=-0.1)
    Traceback (most recent call last):
    ...
    logic.errors.InputError: friction: -0.1 refused (below zero); allowed from 0 (SI)
    """
    for name, value in numbers.items():
        if not 0.0 <= value < inf:
            raise _refused(name, value, "below zero")


def _refused(name: str, value: float, reason: str) -> InputError:
    return (
        InputError(name, value, reason, low=0.0)
        if isfinite(value)
        else InputError(name, value, "not a number")
    )
