"""What pages share of asking: values by their key, blocks to change one with, and the entry for one."""

from collections.abc import Iterable

from logic.answers.asked import questions
from logic.answers.reading import RIDER, stand_in
from logic.board import Value, board_fields
from logic.entries import Entered, entered
from logic.errors import InputError
from logic.fields import Field
from logic.frozen import frozen
from logic.units import quantities
from screens.acts import Turn
from screens.acts.entering import Ask, Put, Type
from screens.blocks import Choice, Entry, Line, Option, Stepper
from screens.tongue import _
from screens.words import KNOWN, refusal
from screens.words.typed import not_used, offered, read_back
from screens.world import World

NEAR = 1e-9
"""How far past a limit a step may come out by rounding."""


@frozen
class Typed:
    """What typed text makes: what was read, or what is wrong with it, or nothing."""

    found: Entered | None = None
    problem: InputError | None = None

    @property
    def value(self) -> Value | None:
        """Return the value of the field itself."""
        return None if self.found is None else self.found.value


def read_entry(world: World, text: str, field: Field, unit: str = "") -> Typed:
    """Return what a text typed for a field makes, digits alone read in the unit."""
    if not text.strip():
        return Typed()
    try:
        return Typed(entered(field, text, unit or None, world.board))
    except InputError as wrong:
        return Typed(problem=wrong)


def typed_value(world: World, key: str, field: Field, unit: str) -> Value | None:
    """Return the value of a field that keeps its text ("typed"), None while it is none. `unit` is the one it begins with."""
    return read_entry(world, world.typed.get(key, ""), field, world.units.get(key, unit)).value


# Values by key


def field_of(key: str) -> Field:
    """Return a field of the board, of the rider or of a question."""
    if key in questions():
        return questions()[key].field
    return RIDER if key == RIDER.key else board_fields()[key]


def keeps(key: str) -> str:
    """Return where a value of a key is kept when it is changed on a page that tries values."""
    return "question" if key in questions() else "rider" if key == RIDER.key else "trial"


def standing(world: World, key: str) -> Value | None:
    """Return the value a person has given: tried, answered or set; None for the one that is saved or assumed."""
    if key in questions():
        return world.answers.get(key)
    return world.person.rider if key == RIDER.key else world.trial.get(key)


def value_of(world: World, key: str) -> Value | None:
    """Return the present value; of a question what it begins at until it is answered."""
    if key in questions():
        return world.answers.get(key) or questions()[key].begins
    return world.person.rider if key == RIDER.key else world.board.value(key)


def asked(world: World, key: str) -> float:
    """Return the number of a question that begins with one, in SI."""
    return float(value_of(world, key).si)  # type: ignore[union-attr]


def on_trial(world: World, key: str) -> bool:
    """Tell whether a value is tried over the saved one."""
    return key in world.trial and not world.is_scratch


def value_text(world: World, key: str) -> tuple[str, str]:
    """Return a value and how it is known, in words."""
    style, field, value = world.style, field_of(key), value_of(world, key)
    if value is None and field.stand_in:
        return style.typed(float(stand_in(field).cells[field.stand_in]), field.quantity), _("assumed")
    if value is None:
        return _("not set"), ""
    if field.kind == "choice":
        return field.option(str(value.si)).label, KNOWN[value.known]
    if written_in(world, key):
        return style.typed(float(value.si), field.quantity, value.typed_unit), KNOWN[value.known]
    return style.number(float(value.si), field.quantity), KNOWN[value.known]


def written_in(world: World, key: str) -> str:
    """Return the unit a value is written in; "" for the one its reader likes: nobody typed what a question begins at."""
    value = value_of(world, key)
    if value is None or not value.typed_unit:
        return ""
    begun = key in questions() and world.answers.get(key) is None
    ours = begun and value.typed_unit == quantities()[field_of(key).quantity].home("metric").shown
    return "" if ours and world.style.system != "metric" else value.typed_unit


def unused(world: World, key: str) -> str:
    """Return what is said of text that was typed for a value and could not be used; "" for none."""
    text = world.typed.get(key, "")
    if not text or field_of(key).kind == "choice" or (world.asking is not None and world.asking.key == key):
        return ""
    refused = read_entry(world, text, field_of(key), unit_of(world, key)).problem is not None
    return not_used(text) if refused else ""


def unit_of(world: World, key: str) -> str:
    """Return the unit that digits typed for a value are read in."""
    field = field_of(key)
    if field.kind == "choice":
        return ""
    units = [unit.shown for unit in quantities()[field.quantity].units]
    if world.units.get(key):
        return world.units[key]
    written = written_in(world, key)
    if written in units:
        return written
    return quantities()[field.quantity].home(world.style.system).shown


# Blocks to change a value with


def value_line(world: World, key: str, label: str = "") -> Line:
    """Return a row that shows a value and asks for it; at a key all rows but one are those of before."""
    trial, chosen = on_trial(world, key), world.asking is not None and world.asking.key == key
    typed = world.typed.get(key, ""), world.units.get(key, "")

    def made() -> Line:
        text, known = value_text(world, key)
        refused = unused(world, key)
        return Line(
            key=key,
            title=label or field_of(key).label,
            value=text,
            detail=refused or known,
            bad=bool(refused),
            trial=trial,
            chosen=chosen,
            act=Ask(key),
        )

    rests_on = (value_of(world, key), world.style, typed, label, trial, chosen)
    return world.kept.unless(f"line {key}", rests_on, made)


def stepper(world: World, key: str, label: str = "") -> Stepper:
    """Return a stepper for a number; without a value it asks for one."""
    value = value_of(world, key)
    label = label or field_of(key).label
    if value is None:
        return Stepper(key=key, label=label, value="–", less=Ask(key), more=Ask(key), act=Ask(key))
    shown = world.style.shown(float(value.si), field_of(key).quantity)
    less, more = (_step(world, key, sign) for sign in (-1, 1))
    return Stepper(
        note=unused(world, key),
        key=key,
        label=label,
        value=str(shown),
        trial=on_trial(world, key),
        less=less,
        more=more,
        act=Ask(key),
    )


def _step(world: World, key: str, sign: int) -> Put | None:
    """Return the act to the next value on a grid that is even in the reader's unit; None past the limits."""
    field, value = field_of(key), value_of(world, key)
    quantity = quantities()[field.quantity]
    unit = quantity.home(world.style.system)
    size = questions()[key].step if key in questions() else 1.0
    place = round(unit.of_si(float(value.si), quantity.si) / size, 6)  # type: ignore[union-attr]
    whole = int(place // 1)
    si = unit.to_si(round(size * (whole + sign if place == whole or sign > 0 else whole), 9), quantity.si)
    low = si if field.low is None else field.low
    high = si if field.high is None else field.high
    if not low - NEAR <= si <= high + NEAR:
        return None
    return Put(key, Value(min(max(si, low), high), typed_unit=unit.shown), keeps(key))


def choice(world: World, key: str, label: str = "") -> Choice:
    """Return a choice that stands on the page itself."""
    field, value = field_of(key), value_of(world, key)
    chosen = "" if value is None else str(value.si)
    return Choice(
        key=key,
        label=label or field.label,
        options=tuple(
            Option(option.label, Put(key, Value(option.key), keeps(key)), option.key == chosen)
            for option in field.options
        ),
    )


def page_choice(name: str, label: str, options: Iterable[tuple[str, str]], chosen: str) -> Choice:
    """Return a choice of a parameter of the page, its options by key and text; it is the page's own and kept nowhere."""
    made = (Option(text, Turn({name: key}), key == chosen) for key, text in options)
    return Choice(key=name, label=label, options=tuple(made))


def entry_of(world: World) -> Entry | None:
    """Return the entry for what is asked, None while nothing is."""
    if world.asking is None:
        return None
    key = world.asking.key
    field, value = field_of(key), value_of(world, key)
    if field.kind == "choice":
        return Entry(
            key=key,
            field=field,
            label=field.label,
            chosen="" if value is None else str(value.si),
            keeps=keeps(key),
        )
    return number_entry(world, key, field, unit_of(world, key), keeps(key))


def number_entry(world: World, key: str, field: Field, unit: str, kept: str = "typed") -> Entry:
    """Return the entry for a number. `unit` is the one that digits are read in until another is chosen."""
    unit = world.units.get(key, unit)
    quantity, text = quantities()[field.quantity], world.typed.get(key, "")
    read = read_entry(world, text, field, unit)
    offer = "" if read.found is None else offered(field, read.found, text, world.style)
    return Entry(
        key=key,
        field=field,
        label=field.label,
        text=text,
        unit=unit,
        units=tuple(one.shown for one in quantity.units if one.shown),
        mark=world.style.mark,
        signed=field.low is not None and quantity.unit(unit).of_si(field.low, quantity.si) < 0.0,
        sentence=refusal(read.problem, world.style) if read.problem is not None else "",
        read_back="" if read.found is None else read_back(field, read.found, world.style),
        offer=offer,
        take=Type(key, field, f"{read.found.offer.si:g}", unit, kept) if offer else None,  # type: ignore[union-attr]
        keeps=kept,
    )


def refused_now(world: World) -> bool:
    """Tell whether what is being entered cannot be used: results are grey then."""
    if world.asking is None:
        return False
    key = world.asking.key
    text = world.typed.get(key, "")
    if not text or field_of(key).kind == "choice":
        return False
    return read_entry(world, text, field_of(key), unit_of(world, key)).problem is not None
