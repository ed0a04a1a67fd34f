"""What a pull tells, in words: the verdict, the tension with its error, the change, and what to do."""

from dataclasses import dataclass

from logic.answers.reading import Result
from logic.answers.tension import BeltPlan, BeltReading
from logic.board import Value
from screens.tongue import _
from screens.words import Style, begun, offer, refusal
from screens.words.tension import MOVES, REASONS, TONES, scale_text, tile, with_error

NOT_LOOSE = _("Not loose.")
MOTOR_TELLS = _("Whether it is too tight, the motor tells: add its Kv and amps.")
"""Said of a belt over the least of its width, while nothing is known of the motor."""


@dataclass(frozen=True)
class Told:
    """The sentences of a reading; each is "" where there is nothing to say. `tone` is that of the verdict.

    `reads` is what the scale reads and should, in its own unit: it leads.
    """

    verdict: str = ""
    tone: str = "text"
    reads: str = ""
    tension: str = ""
    certainty: str = ""
    change: str = ""
    move: str = ""


def told(  # noqa: PLR0913  (a reading, what it was made of, and how it is written)
    reading: BeltReading | None,
    pull: Value | None,
    plan: BeltPlan,
    last: float | None,
    style: Style,
    unit: str,
) -> Told:
    """Return what a pull tells. `last` is the tension read before in N, `unit` that of the scale."""
    if reading is None or pull is None:
        return Told()
    reads = scale_text(float(pull.si), plan, style, unit)
    tension = reading.tension
    if not isinstance(tension, Result):
        lacks = refusal(tension.problem, style) if tension.problem else offer(tension.missing)
        return Told(reads=reads, certainty=lacks)
    error = reading.error.value if isinstance(reading.error, Result) else None
    text = _("Belt tension {with_error}").format(with_error=with_error(tension.value, error, style))
    change = "" if last is None else begun(f"{style.change(tension.value, last, 'force')} since last time.")
    if reading.verdict is None:
        least = plan.items["least"]
        over = isinstance(least, Result) and float(tension.value) - float(error or 0.0) > float(least.value)
        return Told(
            reads=NOT_LOOSE if over else reads,
            tension=f"{text}. {MOTOR_TELLS}" if over else text,
            change=change,
        )
    word = reading.verdict.word
    return Told(
        tile(word), TONES.get(word, "text"), reads, text, REASONS.get(word, ""), change, MOVES.get(word, "")
    )
