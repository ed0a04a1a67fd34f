"""What a person asks: values of a question, read like the board's and recorded like them, kept by no board."""

from collections.abc import Mapping
from functools import cache
from typing import Any

from logic.board import Field, Value
from logic.errors import Missing
from logic.fields import fields_of
from logic.frozen import frozen
from logic.tables import raw
from logic.units import quantities, read
from logic.workings import Given, choice, given

Asking = Mapping[str, Value]
"""The values a person has chosen, by the key of their field."""

OF_FIELD = ("key", "label", "kind", "help", "quantity", "low", "high", "options")


@frozen
class Question:
    """A field that is asked, what stands until it is answered, and for how many seconds an answer is true.

    `step` is what a step button adds, in the unit the reader reads.

    What stands is "assumed" when it is a figure of the trade or an estimate, else only the "usual" beginning.
    """

    field: Field
    begins: Value | None
    step: float
    lasts: float | None
    source: str
    where: str
    standing: str


@cache
def questions() -> dict[str, Question]:
    """Return every question by its key, in the order of the file.

    >>> questions()["ask.wheelbase"].begins.known
    'assumed'
    """
    lines = raw("asked")["field"]
    fields = fields_of(
        [{"need": 0} | {name: line[name] for name in OF_FIELD if name in line} for line in lines]
    )
    return {
        key: Question(
            field,
            _beginning(field, line),
            line.get("step", 1.0),
            line.get("lasts"),
            line.get("source", ""),
            line.get("where", ""),
            line.get("standing", ""),
        )
        for (key, field), line in zip(fields.items(), lines, strict=True)
    }


def _beginning(field: Field, line: dict[str, Any]) -> Value | None:
    written = line.get("value")
    if written is None:
        return None
    known = "assumed" if "source" in line or line.get("rough") else "usual"
    if field.kind == "choice" or not isinstance(written, str):
        return Value(written, known)
    typed = read(written, field.quantity)
    return Value(typed.si, known, typed_unit=typed.unit)


class Asked:
    """Reads the values of a question; each is recorded once, so every answer opens its own."""

    def __init__(self, chosen: Asking | None = None) -> None:
        """Read from what a person has chosen, else from where the question begins."""
        self.chosen = chosen or {}
        self._read: dict[str, float] = {}

    def has(self, key: str) -> bool:
        """Tell whether a value was chosen."""
        return key in self.chosen

    def value(self, key: str) -> Value | None:
        """Return a value with how it is known, None when there is none."""
        return self.chosen.get(key) or questions()[key].begins

    def __call__(self, key: str) -> float:
        """Return the SI value of a field. Raises Missing when it has none, InputError outside its limits."""
        if key not in self._read:
            question, value = questions()[key], self.value(key)
            if value is None:
                raise Missing(key)
            field, assumed = question.field, value.known == "assumed"
            field.check(value.si)
            self._read[key] = given(
                Given(
                    field.label,
                    float(value.si),
                    quantities()[field.quantity].si,
                    field.quantity,
                    known="assumed" if assumed else "chosen",
                    standing=question.standing if assumed else "",
                    source=question.source if assumed else "",
                    where=question.where if assumed else "",
                    typed_unit=value.typed_unit,
                )
            )
        return self._read[key]

    def choice(self, key: str) -> str:
        """Return the option of a choice. Raises Missing when none stands."""
        value = self.value(key)
        if value is None:
            raise Missing(key)
        return choice(Given(questions()[key].field.label, str(value.si), "", known="chosen"))
