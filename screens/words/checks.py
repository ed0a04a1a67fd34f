"""Words of checklists, of their verdicts and of what is due."""

from math import ceil

from logic.checks.lists import glued
from logic.checks.open_faults import OpenFault
from logic.checks.verdict import Fitness, Verdict
from logic.log import Check
from logic.log.checks import ALL_RIGHT, CARE, NOT, STOPPED, UNFINISHED, WITH_NOTES
from logic.units import GAP
from logic.upkeep import Due
from screens.tongue import _, texts
from screens.words import Style, within
from screens.words.tension import ITEMS as BELT_ITEMS

TEXTS = texts("checks")

FIGURES = BELT_ITEMS | TEXTS["figures"]
"""Label of each figure that an item can show."""

REFUSALS = TEXTS["refusals"]

FITNESS = TEXTS["fitness"]
"""What a check before a ride ends in."""
COUNTED = {"ride": _("ride"), "rides": _("rides"), "day": _("day"), "days": _("days")}
BELTS = {"left": _("left belt"), "right": _("right belt"), "both": _("both belts")}


def seconds_text(seconds: float) -> str:
    r"""Return a stated or measured time in the words one would use.

    >>> seconds_text(81.0), seconds_text(900.0)
    ('81\xa0s', '15\xa0min')
    """
    return f"{seconds:.0f}{GAP}s" if seconds < 120 else f"{seconds / 60:.0f}{GAP}min"  # noqa: PLR2004


def items_text(items: int) -> str:
    """Return how many items a list has.

    >>> items_text(6), items_text(1)
    ('6 items', '1 item')
    """
    return (_("{items} item") if items == 1 else _("{items} items")).format(items=items)


def size_text(items: int, seconds: float) -> str:
    """Return how long a list is, as it is said before it begins."""
    minutes = ceil(seconds / 60)
    return _("{items}, about {minutes}\u00a0min").format(items=items_text(items), minutes=minutes)


def headline(found: Verdict) -> str:
    """Return the first line of a closing card: a count, never a promise."""
    if found.word == UNFINISHED:
        return _("{count}, not finished.").format(count=_right(found.right, found.total))
    if found.word == STOPPED:
        return _("Stopped.")
    return f"{_right(found.right, found.total)}{_noted(len(found.notes))}{_skipped(found.aside)}."


def _right(right: int, total: int) -> str:
    return _("{right} of {total} right").format(right=right, total=total)


def _noted(count: int) -> str:
    return _(", {count} noted").format(count=count) if count else ""


def _skipped(count: int) -> str:
    return _(", {count} skipped").format(count=count) if count else ""


def fit_text(fit: Fitness, mark: str = ": ") -> str:
    """Return what a check before a ride ends in: one of three verdicts, with what speaks against it after a mark.

    >>> fit_text(Fitness("fit to ride")), fit_text(Fitness(CARE, ("Mounts: Line broken", "Nearly empty.")))
    ('Fit to ride', 'With care: mounts (line broken); nearly empty')
    """
    why = "; ".join(map(seen_text, fit.why))
    return f"{FITNESS[fit.word]}{mark}{why}" if why else FITNESS[fit.word]


def seen_text(said: str) -> str:
    """Return what was seen at an item as part of a sentence that may have a colon already.

    >>> seen_text("Wheels: Wobbles"), seen_text("Nearly empty.")
    ('wheels (wobbles)', 'nearly empty')
    """
    item, named, seen = said.removesuffix(".").partition(": ")
    return within(f"{item} ({within(seen)})" if named else item)


def fault_text(fault: OpenFault) -> str:
    """Return the title of what is open on a board: whether it forbids riding, and what was seen."""
    return fit_text(Fitness(NOT if fault.stops else CARE, (fault.text,)))


def held_text(held: str) -> str:
    """Return what is said of a run while something forbids riding, whatever its items say.

    >>> held_text("pack swollen")
    'Do not ride: pack swollen'
    """
    return _("Do not ride: {held}").format(held=held)


def not_yet_text(names: list[str]) -> str:
    """Return what is said of a check before a ride while another check that stops a ride is due.

    >>> not_yet_text(["Check after water"]), not_yet_text(["Check after water", "Check after the crash"])
    ('Not yet: check after water is due', 'Not yet: check after water is due, and 1 more')
    """
    first, more = within(names[0]), len(names) - 1
    return (
        _("Not yet: {first} is due, and {more} more").format(first=first, more=more)
        if more
        else _("Not yet: {first} is due").format(first=first)
    )


def check_text(check: Check, mark: str = ": ") -> str:
    """Return what a logged check found, first what forbade riding, with what speaks against it after a mark.

    >>> why = ("Wheels: Wobbles",)
    >>> check = Check(list="before_ride", base="before_ride", verdict="stopped", fit=NOT, fit_why=why)
    >>> check_text(check), check_text(check, ", ")
    ('Do not ride: wheels (wobbles)', 'Do not ride, wheels (wobbles)')
    """
    fit = Fitness(check.fit, check.fit_why) if check.fit else None
    if fit is not None:
        found = fit_text(fit, mark)
        found += "" if fit.word == NOT and not check.held else f". {_count_text(check)}"
    else:
        found = _found_text(check, mark)
    for name, reason in check.put_off:
        found += _(". Put off: {what}").format(what=seen_text(f"{name}: {reason}"))
    return f"{held_text(check.held)}. {found}" if check.held and fit is None else found


def _found_text(check: Check, mark: str) -> str:
    if check.verdict == STOPPED:
        return f"{check.halted or _('Stopped')}{mark}{seen_text(f'{check.stopped_by}: {check.reason}')}"
    text = _count_text(check)
    notes = "; ".join(seen_text(f"{action}: {note}") for action, note in check.notes)
    if check.verdict == UNFINISHED:
        return _("{count}, not finished").format(count=text)
    return f"{text}{mark}{notes}" if notes else text


def _count_text(check: Check) -> str:
    noted = len(check.notes) if check.verdict == WITH_NOTES else 0
    return _right(check.right, check.total) + _skipped(check.aside) + _noted(noted)


def check_tone(check: Check) -> str:
    """Return the icon of a logged check."""
    if check.held or check.fit == NOT:
        return "cross"
    if check.fit == CARE:
        return "edit"
    return {ALL_RIGHT: "tick", WITH_NOTES: "edit", STOPPED: "cross", UNFINISHED: "clock"}.get(
        check.verdict, ""
    )


def broke_off(place: int, total: int, minutes: int) -> str:
    """Return where a run was left and how long ago."""
    when = _("just now") if minutes < 1 else _("{minutes}\u00a0min ago").format(minutes=minutes)
    if minutes >= 48 * 60:
        when = _("{days} days ago").format(days=minutes // (24 * 60))
    elif minutes >= 120:  # noqa: PLR2004
        when = _("{hours}\u00a0h ago").format(hours=minutes // 60)
    if minutes < -1:
        when = _("and the clock has been set back since")
    if place >= total:
        return _("You stopped before signing off, {when}.").format(when=when)
    return _("You stopped at {item} of {total}, {when}.").format(item=place + 1, total=total, when=when)


def due_name(due: Due, sides: tuple[str, ...]) -> str:
    """Return the name of what is due, with its belt where there are two."""
    belt = f" ({BELTS[due.subject]})" if due.subject and len(sides) > 1 else ""
    return str(glued(due.name)) + belt


def due_when(due: Due, style: Style) -> str:
    """Return how late it is, or how much is still to go."""
    if due.snoozed:
        return _("put off until the next ride")
    if not due.unit:
        return _("due now")
    late = due.share >= 1.0
    left = abs(due.left)
    if due.unit == "distance":
        text = style.number(left, "distance", 2) if left else "0"
    else:
        count = int(left) if late else max(1, round(left))
        text = f"{count} {COUNTED[due.unit if count != 1 else due.unit.removesuffix('s')]}"
    if late and (left == 0 or text.startswith("0 ")):
        return _("due now")
    return (_("{time} late") if late else _("in {time}")).format(time=text)
