"""Every shown sentence that is not data: refusals, offers, verdicts and workings, in the person's units."""

import re
from collections.abc import Sequence

from logic.answers.asked import questions
from logic.answers.reading import Result
from logic.board import board_fields, field_of
from logic.errors import InputError
from logic.fields import ARM, Field, Value, joint_fields
from logic.frozen import frozen
from logic.tables import Row, sources
from logic.units import MINUS, Shown, number_text, places, quantities, show, show_in, significant
from screens.tongue import _, texts

HOW_KNOWN = (("measured", _("Measured")), ("label", _("On a label")), ("guess", _("A guess")))
"""How a person can say that a value is known."""
KNOWN = {
    "measured": _("measured"),
    "label": _("label"),
    "guess": _("guess"),
    "assumed": _("assumed"),
    "chosen": _("chosen"),
    "usual": _("usual"),
}
"""How a value is known, as a row says it."""
STANDING = {
    "published": _("published"),
    "derived": _("worked out here"),
    "practice": _("common practice, no source"),
    "estimate": _("estimate"),
}
NO_CHANGE = _("no change")
ENTERED = {"measured": _("As entered, measured"), "label": _("As entered, from a label")}
"""What is said of a result that is no more than a value of the board."""


def known_text(value: Value) -> str:
    """Return how a value is known, and where it was read."""
    return f"{KNOWN[value.known]}, {value.on}" if value.on else KNOWN[value.known]


@frozen
class Style:
    """How numbers are written for this person: metric or inch, and the decimal mark."""

    system: str = "metric"
    mark: str = "."

    def shown(self, si: float, quantity: str, digits: int = 3, unit: str = "") -> Shown:
        """Return a value as number and unit apart, in a unit given or the one this person reads first."""
        if unit:
            return show_in(si, quantity, unit, mark=self.mark, digits=digits)
        return show(si, quantity, self.system, mark=self.mark, digits=digits)

    def unit(self, quantity: str, typed: str = "") -> str:
        """Return the unit that was typed; the one this person reads first for none, and for one that we do not know."""
        kind = quantities()[quantity]
        return typed if any(typed == one.shown for one in kind.units) else kind.home(self.system).shown

    def change(self, now: float, before: float, quantity: str, unit: str = "") -> str:
        """Return how far a value moved, with its sign: the difference of the two numbers as they are shown.

        It is no finer than the coarser of them.
        """
        last, first = (self.scale(each, quantity, unit) for each in (now, before))
        moved = significant(last) - significant(first)
        # A half goes to the side on which the true difference lies.
        moved += (last - first - moved) * 1e-6
        moved = round(moved, min(places(last), places(first)))
        if not moved:
            return NO_CHANGE
        text = number_text(abs(moved), mark=self.mark, digits=9)
        return str(Shown(("+" if moved > 0 else MINUS) + text, self.shown(now, quantity, unit=unit).unit))

    def number(self, si: float, quantity: str, digits: int = 3) -> str:
        """Return a value with its unit, in the unit this person reads first."""
        return str(show(si, quantity, self.system, mark=self.mark, digits=digits))

    def typed(self, si: float, quantity: str, unit: str = "") -> str:
        """Return an entered value in the unit it was typed in, with all its digits."""
        return str(show_in(si, quantity, self.unit(quantity, unit), mark=self.mark, digits=9))

    def scale(self, si: float, quantity: str, unit: str = "") -> float:
        """Return a value as a bare number in a unit given or the one this person reads first, for an axis."""
        kind = quantities()[quantity]
        return (kind.unit(unit) if unit else kind.home(self.system)).of_si(si, kind.si)

    def plain(self, number: float, digits: int = 3) -> str:
        """Return a number without a unit."""
        return number_text(number, mark=self.mark, digits=digits)


def begun(text: str) -> str:
    """Return a text with a capital at its beginning, as a sentence begins."""
    return text[:1].upper() + text[1:]


def within(text: str) -> str:
    """Return a text as it stands within a sentence, its first letter small."""
    return text[:1].lower() + text[1:]


def label_of(key: str) -> str:
    """Return the words of a board field or a setting."""
    if key == "rider.mass":
        return _("Rider")
    field = _field(key)
    if field is not None:
        return field.label
    # A name of the code is put into words: no reader is to meet one.
    name = key.rpartition(".")[2]
    return texts("refusals")["names"].get(name) or name.replace("_", " ").capitalize()


def _field(key: str) -> Field | None:
    """Return the field of a key wherever it is described; None for what is no field."""
    if key.startswith("joints."):
        return field_of(key)
    if key in questions():
        return questions()[key].field
    from logic.answers.reach import reach_fields  # noqa: PLC0415  (few sentences are about a screw)

    described = ({ARM.key: ARM}, board_fields(), joint_fields(), reach_fields())
    return next((fields[key] for fields in described if key in fields), None)


def limits(problem: InputError, style: Style) -> str:
    """Return what a refused value may be, nothing when it has no limits."""
    if problem.low is None and problem.high is None:
        return ""
    field = _field(problem.field)
    quantity = problem.quantity or (field.quantity if field is not None else "")
    ends = [
        "" if end is None else style.number(end, quantity) if quantity else style.plain(end)
        for end in (problem.low, problem.high)
    ]
    if ends[0] and ends[1]:
        return span(*ends)
    return (
        _("at least {limit}").format(limit=ends[0]) if ends[0] else _("at most {limit}").format(limit=ends[1])
    )


def span(low: str, high: str) -> str:
    """Return from what to what something is, as its ends are written."""
    return _("{low} to {high}").format(low=low, high=high)


def refusal(problem: InputError, style: Style) -> str:
    """Return the sentence for a refused value: what is wrong and what is allowed."""
    if problem.reason == "unknown unit":
        known = quantities()[problem.quantity].units if problem.quantity else ()
        shown = ", ".join(unit.shown for unit in known if unit.shown)
        return (
            _("That unit is not known here. Known: {shown}.").format(shown=shown)
            if shown
            else _("This number has no unit.")
        )
    bounded = problem.low is not None or problem.high is not None
    sentence = texts("refusals")["sentences"].get(problem.reason) or (
        _("{name} cannot be used here: {limits}.")
        if bounded
        else _("{name} cannot be used here. Check what is entered.")
    )
    return sentence.format(name=label_of(problem.field), limits=limits(problem, style), reason=problem.reason)


def offer(fields: Sequence[str]) -> str:
    """Return the sentence for missing values."""
    names = [label_of(key) for key in fields]
    listed = listing(names)
    if len(names) == 1 and not _many(names[0]):
        return _("{names} is missing. Add it.").format(names=listed)
    return _("{names} are missing. Add them.").format(names=listed)


def listing(names: Sequence[str]) -> str:
    """Return names as they stand in a sentence: with commas, "and" before the last."""
    *first, last = names
    return _("{names} and {last}").format(names=", ".join(first), last=last) if first else last


def founded_on(row: Row) -> str:
    """Return the standing of a row of a table and where it is printed."""
    printed = "" if row.source == "practice" else f"{sources()[row.source].title}, "
    return f"{STANDING[row.standing].capitalize()}: {printed}{row.where}"


def _many(label: str) -> bool:
    """Tell whether a label names more than one thing: its noun stands before the first comma or preposition.

    >>> [_many(label) for label in ("Motors", "Cells in series", "Wheel diameter", "Drag of the insert nut")]
    [True, True, False, False]
    """
    noun = re.split(r",| (?:in|of|at|on|joined|under|after|between|through|per|the) ", label)[0].split()[-1]
    return noun in ("teeth", "amps") or (noun.endswith("s") and not noun.endswith("ss"))


def sureness(result: Result) -> str:
    """Return the line that says how sure a result is: its standing, or what makes it rough."""
    inputs = result.inputs
    for known, one, more in (
        ("guess", _("Rough: {name} is a guess"), _("are guesses")),
        ("assumed", _("Rough: {name} is assumed"), _("are assumed")),
    ):
        names = [entry.name.lower() for entry in inputs if entry.known == known]
        if len(names) == 1:
            return one.format(name=names[0])
        if names:
            return _("Rough: {name} and {count} more {more}").format(
                name=names[0], count=len(names) - 1, more=more
            )
    if result.standing == "estimate":
        return _("Rough: an estimate is in it")
    if result.calls:
        return {"practice": _("Worked out, common practice in it")}.get(result.standing, _("Worked out"))
    if inputs and not inputs[0].source:
        return ENTERED.get(inputs[0].known, _("As entered"))
    return {"published": _("Published"), "derived": _("Worked out"), "practice": _("Common practice")}[
        result.standing
    ]
