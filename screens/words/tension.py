"""A recorded tension in words, for every page that shows one."""

from datetime import datetime
from typing import TYPE_CHECKING

from logic.answers.reading import Result
from logic.answers.tension_entry import word_of
from logic.store import Record
from logic.units import GAP, Shown, places
from screens.tongue import _, texts
from screens.words import Style, offer, refusal

if TYPE_CHECKING:
    from logic.answers.tension import BeltPlan

TEXTS = texts("tension")

ITEMS = TEXTS["items"]
"""Label of each result."""

REASONS = TEXTS["reasons"]
"""Why a word is not a plain one, for those that are not."""

SAID = TEXTS["said"]
"""A word of the log as a rider says it."""

FORMS = {"": "plain", "in window": "right", "slack": "wrong", "tight": "wrong"}
"""Form of a word; one that leaves it open is unsure."""

SIGNS = {"in window": "tick", "slack": "too little", "tight": "too much"}
"""Picture of a word; one that leaves it open has none."""

MOVES = TEXTS["moves"]
"""What to do about a belt that must be set anew."""


SIDES = {"left": _("left"), "right": _("right")}
"""The belts as they stand in a sentence."""


def belt_name(side: str) -> str:
    """Return what one of two belts is called."""
    return _("Left belt") if side == "left" else _("Right belt")


def undo_text(name: str) -> str:
    """Return what is said beside the way back from a tension that was saved."""
    return _("Saved: {label}").format(label=name)


def form_of(word: str) -> str:
    """Return how a word is drawn; that of no verdict is quiet."""
    return FORMS.get(word, "unsure")


def tile(word: str) -> str:
    """Return a word as it stands at the head of a page: what leads it in capitals.

    >>> tile("in window"), tile("on the edge: may be slack")
    ('JUST RIGHT', 'ON THE EDGE: may be loose')
    """
    lead, colon, rest = SAID[word].partition(":")
    return lead.upper() + colon + rest


def ago(then: datetime, now: datetime) -> str:
    """Return how long ago something was, in the words one would use; its date where the clock was ahead when it was written."""
    days = (now.date() - then.astimezone(now.tzinfo).date()).days
    if days < 0:
        return _("dated {day}, ahead of the clock").format(day=f"{then:%Y-%m-%d}")
    if days == 0:
        minutes = int((now - then).total_seconds() // 60)
        if minutes < 1:
            return _("just now")
        if minutes < 60:  # noqa: PLR2004
            return _("{minutes}\u00a0min ago").format(minutes=minutes)
        return _("today, {time}").format(time=f"{then:%H:%M}")
    return _("yesterday") if days == 1 else _("{days} days ago").format(days=days)


def tension_text(record: Record, style: Style) -> str:
    """Return a recorded tension with its error and its verdict."""
    said = record.body
    if said.tension is None:
        if said.pull is None:
            return _("no figures")
        return _("pull {force}").format(force=style.number(said.pull, "force"))
    word = word_of(said)
    return with_error(said.tension, said.error, style) + (f", {SAID[word]}" if word else "")


def scale_text(pull: float, plan: "BeltPlan", style: Style, scale_unit: str) -> str:
    """Return what the scale reads beside what it should, all in its own unit."""

    def reads(force: float) -> Shown:
        return style.shown(force, "force", unit=scale_unit)

    aim, low, high = (plan.items[f"pull_{name}"] for name in ("target", "floor", "ceiling"))
    if isinstance(aim, Result) and isinstance(low, Result) and isinstance(high, Result):
        return _("Reads {pull}, aim {aim}, right {low} to {high}.").format(
            pull=reads(pull),
            aim=reads(aim.value).number,
            low=reads(low.value).number,
            high=reads(high.value).number,
        )
    return _("Reads {pull}.").format(pull=reads(pull))


def method_text(depth: str) -> str:
    """Return what to do with the hands, to a depth."""
    return texts("tension")["told"]["method"].format(depth=depth)


def aim_text(plan: "BeltPlan", style: Style, scale_unit: str) -> str:
    """Return the tension to set and what the scale reads then."""
    target, pull = plan.items["target"], plan.items["pull_target"]
    if not isinstance(target, Result) or not isinstance(pull, Result):
        depth = plan.items["depth"]
        if isinstance(depth, Result):
            least = plan.items["least"]
            if isinstance(least, Result):
                return _aim_at_least(plan, least, style, scale_unit)
            return _("No window for this belt yet: a tension is saved for comparing.")
        stopped = refusal(depth.problem, style) if depth.problem else offer(depth.missing)
        return _("Without the belt a pull says nothing, and is not saved. {stopped}").format(stopped=stopped)
    reads = style.shown(pull.value, "force", unit=scale_unit)
    return _("Right when the scale reads {reads}: {number} in the belt.").format(
        reads=reads, number=style.number(target.value, target.quantity)
    )


def _aim_at_least(plan: "BeltPlan", least: Result, style: Style, scale_unit: str) -> str:
    """Return what the scale must read over while only the belt is known."""
    pull = plan.items["pull_least"]
    reads = style.shown(pull.value, "force", unit=scale_unit) if isinstance(pull, Result) else ""
    return _("The scale reads over {reads}: {force}, the least for its width.").format(
        reads=reads, force=style.number(least.value, least.quantity)
    )


def locked_text(plan: "BeltPlan", style: Style, scale_unit: str) -> str:
    """Return why one pulley must be free, with what the scale would read otherwise."""
    locked, misread = plan.items["pull_locked"], plan.items["misread"]
    if not isinstance(locked, Result) or not isinstance(misread, Result):
        return _("One pulley must be free to turn.")
    reads = style.shown(locked.value, "force", unit=scale_unit)
    return texts("tension")["told"]["locked"].format(reads=reads, number=style.number(misread.value, "force"))


def plan_notes(plan: "BeltPlan", style: Style) -> str:
    """Return what deserves a sentence about a belt's target."""
    notes = []
    if plan.held_down:
        notes.append(_("The target is held down to the belt's working tension."))
    if plan.held_by_bearing:
        notes.append(_("The target is held down to what the motor's bearing may carry."))
    if plan.over_working:
        notes.append(_("Even so the tight span passes the belt's working tension at full current."))
    if plan.few_teeth:
        notes.append(_("Fewer than 6 teeth in mesh: the belt's rating falls."))
    if plan.fault is not None:
        notes.append(refusal(plan.fault, style))
    return " ".join(notes)


def with_error(value: float, error: float | None, style: Style, quantity: str = "force") -> str:
    """Return a measured value with its error: the error to two figures, the value no finer.

    >>> with_error(102.4, 21.9, Style()).replace("\u00a0", " ")
    '102 N ± 22 N'
    """
    if not error:
        return style.number(value, quantity)
    scaled, off = abs(style.scale(value, quantity)), style.scale(error, quantity)
    digits = max(1, places(off, 2) - places(scaled, 1) + 1)
    return f"{style.number(value, quantity, digits)}{GAP}±{GAP}{style.number(error, quantity, 2)}"
