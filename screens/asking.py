"""What pages share: values that can be asked for, the entry for one, and figures with their standing and their change."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from logic.answers.asked import questions
from logic.answers.reading import RIDER, Item, Open, Result, stand_in
from logic.board import Value, board_fields
from logic.entries import Entered, entered
from logic.errors import InputError
from logic.fields import Field
from logic.frozen import frozen
from logic.units import Shown, quantities
from screens.acts import Act, Go, Turn
from screens.acts.entering import Ask, Put, Type
from screens.blocks import Block, Choice, Entry, Figure, FigureRow, Fold, Line, Option, Stepper
from screens.tongue import _
from screens.words import Style, offer, refusal, sureness
from screens.words.figures import OUTCOMES
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
        return field.option(str(value.si)).label, value.known
    if value.typed_unit:
        return style.typed(float(value.si), field.quantity, value.typed_unit), value.known
    return style.number(float(value.si), field.quantity), value.known


def unused(world: World, key: str) -> str:
    """Return what is said of text that was typed for a value and could not be used; "" for none."""
    text = world.typed.get(key, "")
    if not text or field_of(key).kind == "choice" or (world.asking is not None and world.asking.key == key):
        return ""
    refused = read_entry(world, text, field_of(key), unit_of(world, key)).problem is not None
    return not_used(text) if refused else ""


def unit_of(world: World, key: str) -> str:
    """Return the unit that digits typed for a value are read in."""
    field, value = field_of(key), value_of(world, key)
    if field.kind == "choice":
        return ""
    units = [unit.shown for unit in quantities()[field.quantity].units]
    if world.units.get(key):
        return world.units[key]
    if value is not None and value.typed_unit in units:
        return value.typed_unit
    return quantities()[field.quantity].home(world.style.system).shown


# Blocks to change a value with


def value_line(world: World, key: str, label: str = "") -> Line:
    """Return a row that shows a value and asks for it."""
    text, known = value_text(world, key)
    refused = unused(world, key)
    return Line(
        key=key,
        title=label or field_of(key).label,
        value=text,
        detail=refused or known,
        bad=bool(refused),
        trial=on_trial(world, key),
        chosen=world.asking is not None and world.asking.key == key,
        act=Ask(key),
    )


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
        value=f"{shown.number} {shown.unit}".strip(),
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


# Figures


def working(item: Item, label: str) -> Act | None:
    """Return the act that opens the working of a result; of an open one, to the first value it lacks."""
    if isinstance(item, Result):
        return Go("working", {"item": item, "label": label})
    return Ask(item.missing[0]) if item.missing else None


def why(item: Open, style: Style) -> str:
    """Return what stands in the way of a number."""
    if item.outcome:
        return OUTCOMES[item.outcome]
    if item.problem is not None:
        return refusal(item.problem, style)
    return offer(item.missing) if item.missing else ""


LONG = 120.0
"""Seconds from which a time is told in minutes."""


def told_in(item: Item) -> str:
    """Return the unit of a result where it is not the one its quantity is read in."""
    return "min" if isinstance(item, Result) and item.quantity == "time" and item.value >= LONG else ""


def spanned(item: Result, style: Style, unit: str = "") -> Shown:
    """Return what is shown of a result: both ends of its band, where it has one."""
    shown = style.shown(item.value, item.quantity, unit=unit)
    if not item.band:
        return shown
    low, high = (style.shown(end, item.quantity, unit=unit).number for end in item.band)
    number = low if low == high else _("{low} to {high}").format(low=low, high=high)
    return replace(shown, number=number)


def lead(item: Item | None, style: Style) -> str:
    """Return what a page leads with as one text for a row that opens it; empty for what cannot be given."""
    return str(spanned(item, style, told_in(item))) if isinstance(item, Result) else ""


def figure(  # noqa: PLR0913  (what can be said of one number)
    world: World,
    item: Item,
    label: str,
    *,
    before: Item | None = None,
    detail: str = "",
    unit: str = "",
    grey: bool = False,
    row: bool = True,
    reserve: bool = False,
) -> Figure | FigureRow:
    """Return a result as a row, or large for the crown.

    `before` is the same result of the saved board while there is a trial: the change against it is told.
    """
    kind = FigureRow if row else Figure
    parts = {"key": item.name, "label": label, "act": working(item, label), "grey": grey, "reserve": reserve}
    if isinstance(item, Open):
        return kind(number="–", detail=why(item, world.style) or detail, **parts)  # type: ignore[arg-type]
    shown = spanned(item, world.style, unit)
    change = ""
    if isinstance(before, Result) and before.value != item.value:
        change = world.style.change(item.value, before.value, item.quantity, shown.unit)
    return kind(
        number=shown.number,
        unit=shown.unit,
        change=change,
        detail=detail,
        **parts,  # type: ignore[arg-type]
    )


def shared_sureness(items: Mapping[str, Item]) -> str:
    """Return what the most results of a group have in common, said once at its top; "" for nothing."""
    said = [sureness(item) for item in items.values() if isinstance(item, Result)]
    most = max(set(said), key=said.count, default="")
    return most if said.count(most) * 2 > len(said) else ""


def once_each(items: Mapping[str, Item]) -> tuple[str, ...]:
    """Return the names of results to show: of those that lack the same values only the first, which says so for all."""
    lacking: set[tuple[str, ...]] = set()
    names = []
    for name, item in items.items():
        lacks = item.missing if isinstance(item, Open) else ()
        if not lacks or lacks not in lacking:
            names.append(name)
        if lacks:
            lacking.add(lacks)
    return tuple(names)


def fold(
    world: World,
    key: str,
    title: str,
    inside: Callable[[], Iterator[Block] | tuple[Block, ...]],
    note: str = "",
) -> tuple[Block, ...]:
    """Return a heading that opens and shuts; what is inside is made only while it is open."""
    name = f"open_{key}"
    opened = bool(world.args.get(name))
    head = Fold(key=key, title=title, note=note, open=opened, act=Turn({name: None if opened else True}))
    return (head, *inside()) if opened else (head,)


def once(block: Block, key: str) -> Block:
    """Return a block under another key, for a page that shows the same thing twice."""
    return replace(block, key=key)
