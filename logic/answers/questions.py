"""What a page asks for its own answer only: read like a board value, kept by no board."""

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from logic.answers.reading import Item, Open, Result
from logic.board import Field, Option, Value
from logic.errors import InputError, Missing
from logic.tables import ASSETS
from logic.units import quantities
from logic.workings import Given, Recorder, fresh, given


@dataclass(frozen=True)
class Question:
    """A field that is asked, what stands until it is answered, and for how many seconds an answer is true."""

    field: Field
    usual: float | str | None
    rough: bool
    lasts: float | None


@cache
def questions() -> dict[str, Question]:
    """Return every question by its key.

    >>> questions()["ask.target"].usual
    1.0
    """
    with (ASSETS / "tables" / "questions.toml").open("rb") as file:
        page: dict[str, Any] = tomllib.load(file)
    found = {}
    for line in page["field"]:
        rest = {name: line[name] for name in line if name not in ("options", "usual", "rough", "lasts")}
        options = tuple(Option(**option) for option in line.get("options", ()))
        found[line["key"]] = Question(
            Field(**rest, options=options),
            line.get("usual"),
            bool(line.get("rough", False)),
            line.get("lasts"),
        )
    return found


class Asked:
    """The person's answers. A question without one gives its usual value, or raises Missing."""

    def __init__(self, answers: Mapping[str, Value] | None = None) -> None:
        """Take the answers by key."""
        self.answers = dict(answers or {})

    def has(self, key: str) -> bool:
        """Tell whether a question was answered."""
        return key in self.answers

    def __call__(self, key: str) -> float:
        """Return the SI value of an answer, recorded. Raises Missing, and InputError outside its limits."""
        question = questions()[key]
        field, value = question.field, self.answers.get(key)
        unit = quantities()[field.quantity].si
        if value is None and question.usual is None:
            raise Missing(key)
        if value is not None:
            field.check(value.si)
        known = "assumed" if value is None and question.rough else "chosen"
        number = float(question.usual if value is None else value.si)  # type: ignore[arg-type]
        typed = "" if value is None else value.typed_unit
        return given(Given(field.label, fresh(number), unit, field.quantity, known=known, typed_unit=typed))

    def choice(self, key: str) -> str:
        """Return the option chosen. Raises Missing when there is none and none is usual."""
        value, usual = self.answers.get(key), questions()[key].usual
        if value is None and usual is None:
            raise Missing(key)
        return str(usual if value is None else value.si)


@dataclass(frozen=True)
class Hazard:
    """What can happen: a signal word, the key of its sentence, and numbers for it as (name, SI, quantity).

    The word is "" for a note without a signal.
    """

    word: str
    key: str
    numbers: tuple[tuple[str, float, str], ...] = ()


WORDS = ("DANGER", "WARNING", "CAUTION", "NOTICE", "")
"""Signal words, the worst first."""


def by_severity(hazards: list[Hazard]) -> tuple[Hazard, ...]:
    """Return hazards with the worst first; a screen shows the first one's word only."""
    return tuple(sorted(hazards, key=lambda hazard: WORDS.index(hazard.word)))


def banded(recorder: Recorder, name: str, quantity: str, compute: Callable[[], tuple[float, float]]) -> Item:
    """Return a result that is a band; its value is the high end and its working holds both ends."""
    try:
        low, high = compute()
    except Missing as gap:
        return Open(name, missing=gap.fields)
    except InputError as problem:
        return Open(name, problem=problem)
    both = {id(entry): entry for value in (low, high) for entry in recorder.trace(value)}
    working = tuple(entry for entry in recorder.entries if id(entry) in both)
    return Result(name, high, quantity, working, (low, high))
