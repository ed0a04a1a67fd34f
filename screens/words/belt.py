"""Words of choosing, setting and following a belt, and of what a pull at it tells."""

from typing import TYPE_CHECKING

from logic.answers.reading import Item, Result
from logic.answers.tension import BeltPlan, BeltReading
from logic.board import Value
from logic.frozen import frozen
from screens.tongue import _, texts
from screens.words import Style, begun, offer, refusal
from screens.words.tension import MOVES, REASONS, scale_text, tile, with_error

if TYPE_CHECKING:
    from logic.answers.belt_choice import Stock

NOT_LOOSE = _("Not loose.")
MOTOR_TELLS = _("Whether it is too tight, the motor tells: add its Kv and amps.")
"""Said of a belt over the least of its width, while nothing is known of the motor."""
LEAST_NUDGE = 1e-4
"""Way in m that a hand still moves a motor by on purpose: common practice, no source."""


def stock_title(belt: "Stock", style: Style) -> str:
    """Return the size of a belt in stock."""
    return f"{style.number(belt.teeth, 'teeth')}, {style.number(belt.length, 'length')}"


def makers(belt: "Stock") -> str:
    """Return how many makers list a belt."""
    if not belt.sure:
        return _("From memory, ask the seller.")
    count = len(belt.lists)
    return _("In one maker's list.") if count == 1 else _("In {count} makers' lists.").format(count=count)


def percent(item: Item, style: Style) -> str:
    """Return an error as a share, "" where it is not known."""
    return f"± {style.number(item.value, 'share', 2)}" if isinstance(item, Result) else ""


def held_text(plan: BeltPlan, style: Style) -> str:
    """Return what a right belt would seem to have if both pulleys were held, for this very belt."""
    misread = plan.items["misread"]
    if not isinstance(misread, Result):
        return _("One pulley must be free to turn.")
    return texts("tension")["told"]["held"].format(seems=style.number(misread.value, "force"))


def nudge_text(nudge: Item, style: Style) -> str:
    """Return how far to move the motor, as a first try."""
    if not isinstance(nudge, Result):
        return _("Move the motor a little, turn, measure again.")
    amount = style.number(max(abs(nudge.value), LEAST_NUDGE), "length", 1)
    if abs(nudge.value) < LEAST_NUDGE:
        amount = _("less than {amount}").format(amount=amount)
    said = (
        _("Nudge the motor {amount} away from the wheel, more in a soft frame. Turn, measure again.")
        if nudge.value > 0
        else _("Nudge the motor {amount} towards the wheel, more in a soft frame. Turn, measure again.")
    )
    return said.format(amount=amount)


@frozen
class Told:
    """The sentences of a reading; each is "" where there is nothing to say.

    `reads` is what the scale reads and should, in its own unit: it leads.
    """

    verdict: str = ""
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
    change = (
        ""
        if last is None
        else begun(_("{change} since last time.").format(change=style.change(tension.value, last, "force")))
    )
    if reading.verdict is None:
        least = plan.items["least"]
        over = isinstance(least, Result) and float(tension.value) - float(error or 0.0) > float(least.value)
        return Told(
            reads=NOT_LOOSE if over else reads,
            tension=f"{text}. {MOTOR_TELLS}" if over else text,
            change=change,
        )
    word = reading.verdict.word
    return Told(tile(word), reads, text, REASONS.get(word, ""), change, MOVES.get(word, ""))
