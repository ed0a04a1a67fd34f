"""What a person asks: values of a question, read like the board's and recorded like them."""

from collections.abc import Mapping
from functools import cache

from logic.board import Field, Option, Value
from logic.errors import Missing
from logic.tables import raw
from logic.units import quantities, read
from logic.workings import Given, fresh, given

Asking = Mapping[str, Value]
"""The values a person has chosen, by the key of their field."""


@cache
def asked_fields() -> dict[str, Field]:
    """Return every field of a question by its key, in the order of the file."""
    found = {}
    for line in raw("asked")["field"]:
        found[line["key"]] = Field(
            line["key"],
            line["label"],
            line["kind"],
            0,
            line["help"],
            quantity=line.get("quantity", ""),
            low=line.get("low"),
            high=line.get("high"),
            options=tuple(Option(**option) for option in line.get("options", ())),
        )
    return found


@cache
def _lines() -> dict[str, dict[str, str]]:
    return {line["key"]: line for line in raw("asked")["field"]}


@cache
def begins_at(key: str) -> Value | None:
    """Return what stands until a person chooses another value: assumed with a source, else only a beginning.

    >>> begins_at("ask.wheelbase").known
    'assumed'
    """
    line, field = _lines()[key], asked_fields()[key]
    text = line.get("value", "")
    if not text:
        return None
    known = "assumed" if "source" in line else "chosen"
    if field.kind == "choice":
        return Value(text, known)
    typed = read(text, field.quantity)
    return Value(typed.si, known, typed_unit=typed.unit)


class Asked:
    """Reads the values of a question; each is recorded once. Raises Missing for what has not been asked yet."""

    def __init__(self, chosen: Asking) -> None:
        """Read from what a person has chosen, else from where the question begins."""
        self.chosen = chosen
        self._read: dict[str, float] = {}

    def value(self, key: str) -> Value | None:
        """Return a value with how it is known, None when there is none."""
        return self.chosen.get(key) or begins_at(key)

    def __call__(self, key: str) -> float:
        """Return the SI value of a field. Raises Missing when it has none."""
        if key not in self._read:
            value = self.value(key)
            if value is None:
                raise Missing(key)
            field, line = asked_fields()[key], _lines()[key]
            assumed = value.known == "assumed"
            self._read[key] = given(
                Given(
                    field.label,
                    fresh(float(value.si)),
                    quantities()[field.quantity].si,
                    field.quantity,
                    known=value.known,
                    standing=line.get("standing", "") if assumed else "",
                    source=line.get("source", "") if assumed else "",
                    where=line.get("where", "") if assumed else "",
                    typed_unit=value.typed_unit,
                )
            )
        return self._read[key]

    def choice(self, key: str) -> str:
        """Return the option of a choice. Raises Missing when none stands."""
        value = self.value(key)
        if value is None:
            raise Missing(key)
        return str(value.si)
