"""Words of choosing, fitting, setting and following a belt."""

from typing import TYPE_CHECKING

from logic.answers.reading import Item, Result
from logic.answers.tension import BeltPlan
from screens.tongue import _
from screens.words import Style

if TYPE_CHECKING:
    from logic.answers.belt_choice import Stock


def stock_title(belt: "Stock", style: Style) -> str:
    """Return the size of a belt in stock."""
    return f"{belt.teeth} teeth, {style.number(belt.length, 'length')}"


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
    seems = style.number(misread.value, "force")
    return _(
        "One pulley must be free to turn: with both held a right belt would seem to have {seems}."
    ).format(seems=seems)


def nudge_text(nudge: Item, style: Style) -> str:
    """Return how far to move the motor, as a first try."""
    if not isinstance(nudge, Result):
        return _("Move the motor a little, turn, measure again.")
    amount = style.number(abs(nudge.value), "length", 1)
    said = (
        _("Nudge the motor {amount} away from the wheel, more in a soft frame. Turn, measure again.")
        if nudge.value > 0
        else _("Nudge the motor {amount} towards the wheel, more in a soft frame. Turn, measure again.")
    )
    return said.format(amount=amount)
