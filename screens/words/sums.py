"""Arithmetic in words: steps that have no name of their own, as one sum in the names of what goes in."""

from logic.frozen import frozen
from logic.workings import BARE, Call, Entry, Traced
from screens.tongue import _

ATOM = 4
"""How strongly a name binds."""


@frozen
class Shape:
    """How one kind of step is called and written, how strongly it binds, and what its parts must bind to go bare."""

    title: str
    written: str
    binds: int
    first: int
    second: int = 0


SHAPES = {
    "a + b": Shape("Sum", "{} + {}", 1, 1, 1),
    "a - b": Shape("Difference", "{} − {}", 1, 1, 2),
    "a * b": Shape("Product", "{} × {}", 2, 2, 2),
    "a / b": Shape("Quotient", "{} / {}", 2, 2, 3),
    "a**b": Shape("Power", "{} ^ {}", 3, 4, 4),
    "-a": Shape(_("Sign turned"), "−{}", 1, 2),
    "abs(a)": Shape(_("Size without sign"), "|{}|", 4, 0),
    "round(a, b)": Shape("Rounded", "round({})", 4, 0),
}
"""By the text of the step."""


def name_of(entry: Entry) -> str:
    """Return what a number of a working is called; a number from nowhere by itself."""
    if isinstance(entry, Call):
        return entry.formula.name.replace("_", " ")
    return f"{entry.value:g}" if entry.known == BARE else entry.name.replace("_", " ")


def is_step(entry: Entry) -> bool:
    """Tell whether something is a step of arithmetic."""
    return isinstance(entry, Call) and entry.formula.mark == "step"


def sum_of(step: Call) -> tuple[str, dict[str, Entry]]:
    """Return arithmetic down to what goes in, and what goes in by the name it has there.

    Two things of one name are told apart by a number.
    """
    leaves: dict[str, Entry] = {}
    return _written(step, leaves)[0], leaves


def _written(entry: Entry, leaves: dict[str, Entry]) -> tuple[str, int]:
    if not isinstance(entry, Call) or not is_step(entry):
        return _told(entry, leaves), ATOM
    shape = SHAPES[entry.formula.text]
    parts = []
    for number, needed in zip(entry.arguments.values(), (shape.first, shape.second), strict=False):
        text, binds = _written(number.origin, leaves) if isinstance(number, Traced) else (f"{number:g}", ATOM)
        parts.append(text if binds >= needed else f"({text})")
    return shape.written.format(*parts), shape.binds


def _told(entry: Entry, leaves: dict[str, Entry]) -> str:
    """Return the name of what goes in, entered among the others."""
    name = name_of(entry)
    name = name[0].lower() + name[1:] if name[1:2].islower() or name[1:2] == " " else name
    told, count = name, 1
    while told in leaves and leaves[told].value != entry.value:
        count += 1
        told = f"{name} {count}"
    leaves.setdefault(told, entry)
    return told
