"""What is said of typed text: how it was read, what else it could mean, and that it was not used."""

from logic.entries import Entered
from logic.fields import Field, Value, field_of
from screens.tongue import _
from screens.words import Style

COUNTED = {
    "pack.series": _("{value} cells in series"),
    "pack.parallel": _("{value} in parallel"),
    "pack.cell_capacity": _("{value} a cell"),
}
"""What a number of a print counts, where its unit does not tell."""

NO_PARALLEL = _("The Ah wait for the P number: type 10S2P 4\u00a0Ah.")


def value_words(field: Field, value: Value, style: Style) -> str:
    """Return a value as it is shown: a choice by its label, a number in the unit it was typed in."""
    if field.kind == "choice":
        return field.option(str(value.si)).label
    return style.typed(float(value.si), field.quantity, value.typed_unit)


def read_back(field: Field, found: Entered, style: Style) -> str:
    """Return how a text was read, nothing where it stands as it was typed."""
    if not found.told:
        return ""
    read = {field.key: found.value} | found.values
    parts = []
    for key, value in read.items():
        words = value_words(field if key == field.key else field_of(key), value, style)
        parts.append(COUNTED.get(key, "{value}").format(value=words))
    said = _("Read as {list}.").format(list=", ".join(parts))
    return f"{said} {NO_PARALLEL}" if found.told == "no parallel" else said


def offered(field: Field, found: Entered, text: str, style: Style) -> str:
    """Return the question whether something else was meant, nothing where there is none.

    "265 mm = 53 teeth?"
    """
    if found.offer is None:
        return ""
    return f"{text.strip()}\u00a0mm = {value_words(field, found.offer, style)}?"


def not_used(text: str) -> str:
    """Return that a text was typed and is not used."""
    return _("{typed} not used").format(typed=text.strip()) if text.strip() else ""
