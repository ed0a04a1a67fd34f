"""What a pull tells, in words: the verdict, the tension with its error, the change, and what to do."""

from dataclasses import dataclass

from logic.answers.reading import Result
from logic.answers.tension import BeltReading
from logic.board import Value
from screens.words import Style, offer, refusal
from screens.words.tension import CERTAINTY, MOVES, WORDS, with_error


@dataclass(frozen=True)
class Told:
    """The sentences of a reading; each is "" where there is nothing to say. `tone` is that of the verdict."""

    verdict: str = ""
    tone: str = "text"
    tension: str = ""
    certainty: str = ""
    change: str = ""
    move: str = ""


def told(
    reading: BeltReading | None, pull: Value | None, last: float | None, style: Style, unit: str
) -> Told:
    """Return what a pull tells. `last` is the tension read before in N, `unit` that of the scale."""
    if reading is None or pull is None:
        return Told()
    tension = reading.tension
    if not isinstance(tension, Result):
        lacks = refusal(tension.problem, style) if tension.problem else offer(tension.missing)
        return Told(tension=f"Pull {style.shown(float(pull.si), 'force', unit=unit)}.", certainty=lacks)
    error = reading.error.value if isinstance(reading.error, Result) else None
    text = f"Belt tension {with_error(tension.value, error, style)}"
    change = "" if last is None else f"{style.change(tension.value, last, 'force')} since last time."
    change = change[:1].upper() + change[1:]
    if reading.verdict is None:
        return Told(tension=text, change=change)
    word = reading.verdict.word
    tone = "good" if word == "in window" else "bad"
    return Told(WORDS[word], tone, text, CERTAINTY[reading.verdict.certainty], change, MOVES[word])
