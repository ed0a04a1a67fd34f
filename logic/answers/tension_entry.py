"""The log entry of a measured belt tension: made here for every way of measuring, and its word read here."""

from typing import TYPE_CHECKING, Any, Literal

from logic.answers.reading import Result
from logic.belt.verdict import CANNOT_TELL, MAY_BE_SLACK, MAY_BE_TIGHT, Word
from logic.belt.verdict import word_of as judged
from logic.log import Tension
from logic.person import Person

if TYPE_CHECKING:
    from logic.answers.tension import BeltPlan, BeltReading

__all__ = ["CANNOT_TELL", "MAY_BE_SLACK", "MAY_BE_TIGHT", "tension_entry", "word_of"]


def tension_entry(
    side: str,
    method: str,
    plan: "BeltPlan",
    reading: "BeltReading | None",
    person: Person,
    **own: Any,  # noqa: ANN401  (fields of Tension)
) -> Tension:
    """Return the entry: what was read, the window it was held against, the tools, and the fields of its own way."""
    tension, error = (None, None) if reading is None else (reading.tension, reading.error)
    verdict, window = None if reading is None else reading.verdict, plan.window
    return Tension(
        belt=side,
        method=method,
        tension=tension.value if isinstance(tension, Result) else None,
        error=error.value if isinstance(error, Result) else None,
        floor=window.floor if window else None,
        ceiling=window.ceiling if window else None,
        target=window.new_low if window else None,
        word=verdict.word if verdict else "",
        scale=person.scale,
        depth_tool=person.depth_tool,
        **own,
    )


def word_of(entry: Tension) -> Word | Literal[""]:
    """Return the word of a tension in the log, judged by its own figures where they are there."""
    return judged(entry.word, entry.tension, entry.error, entry.floor, entry.ceiling)
