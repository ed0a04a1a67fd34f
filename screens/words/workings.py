"""The working of a result in words: from the recorded calls to lines that can be followed on paper."""

import re
from dataclasses import dataclass
from functools import cache

from logic.answers.reading import Result
from logic.fields import WAYS
from logic.step_units import unit_of
from logic.tables import sources
from logic.units import GAP, quantities
from logic.workings import BARE, Call, Entry, Given, Traced, origins
from screens.tongue import _
from screens.words import KNOWN, STANDING, Style, begun, within
from screens.words.sums import SHAPES, is_step, name_of, sum_of

OURS = {
    "derived": "",
    "practice": _("Common practice, no source: "),
    "memory": _("From memory, not confirmed: "),
}
"""What stands in place of a title where nothing printed is cited."""
LONG, THIN, HOUR, COLDEST = 100.0, 1e-3, 3600.0, 150.0
SI_SIGNS = (("**2", "²"), ("**3", "³"), ("**4", "⁴"), ("*", "·"), ("ohm", "Ω"))
"""How an SI unit is written where it has no quantity of its own: signs for the code of Pint."""
SHORT_WORDS = re.compile(r"\b(dc|emf|awg|lfp)\b")
"""Abbreviations that are written in capitals."""
SIGNS = (("**2", "²"), ("**3", "³"), (" * ", " × "), ("sqrt", "√"), (" - ", " − "), ("pi", "π"))
NOWHERE = _("from nowhere: nobody put it in and no formula made it")
"""How a bare number is known."""


def source_text(key: str, where: str) -> str:
    """Return a source as title and place, or what stands in its place."""
    if key in OURS and where:
        return begun(OURS[key] + where)
    return ", ".join(part for part in (sources()[key].title, where) if part)


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a working, in words ready to be shown."""

    title: str
    formula: str
    lines: tuple[str, ...]
    result: str
    source: str
    standing: str


def quantity_of(value: float, unit: str) -> str:
    """Return the quantity a number is shown in: ways, wires and hours have units of their own size.

    >>> quantity_of(0.065, "m"), quantity_of(24_000.0, "m")
    ('length', 'distance')
    """
    size = abs(value)
    if unit == "m" and size >= 1.0:
        return "distance" if size >= LONG else "way"
    if unit == "m**2" and size < THIN:
        return "section"
    if unit == "K" and size < COLDEST:
        return "temperature_step"
    if unit == "s" and size >= HOUR:
        return "long_time"
    return _quantities().get(unit, "")


@cache
def _quantities() -> dict[str, str]:
    """Return the first quantity of each SI unit in the table of units; a bare number is shown plain."""
    return {kind.si: name for name, kind in reversed(quantities().items()) if kind.si != "1"}


def si_shown(unit: str) -> str:
    """Return an SI unit as it is read.

    >>> si_shown("kg/m**3"), si_shown("N*m/A"), si_shown("ohm/m")
    ('kg/m³', 'N·m/A', 'Ω/m')
    """
    for code, sign in SI_SIGNS:
        unit = unit.replace(code, sign)
    return unit


def formula_text(text: str) -> str:
    """Return a formula as it is read: signs of the trade, names with gaps.

    >>> formula_text("4 * depth / sqrt(span**2 + pi)")
    '4 × depth / √(span² + π)'
    """
    shown = re.sub(r"\bpi\b", "π", text)
    for code, sign in SIGNS[:-1]:
        shown = shown.replace(code, sign)
    return shown.replace("_", " ")


def number(value: float, unit: str, style: Style, quantity: str = "", typed_unit: str = "") -> str:
    """Return a number of a working: as it is read, then in SI when that differs."""
    kind = quantity or quantity_of(value, unit)
    if not kind or (unit == "1" and kind in ("ratio", "count", "teeth")):
        word = "teeth" if kind == "teeth" else si_shown(unit)
        return f"{style.plain(value, 6)} {word}".removesuffix(" 1")
    shown = style.typed(value, kind, typed_unit) if typed_unit else style.number(value, kind, 4)
    si = f"{style.plain(value, 4)} {si_shown(unit)}".removesuffix(" 1")
    return shown if shown.replace(GAP, " ") == si else f"{shown} ({si})"


def _line(entry: Entry, style: Style, shown_as: str, unit: str = "") -> str:
    """Return a number that goes into a step: its name there, its value, and how it is known if nothing made it."""
    if isinstance(entry, Call):
        return f"{shown_as} = {number(entry.value, unit or unit_of(entry), style)}"
    value = number(float(entry.value), entry.unit, style, entry.quantity, entry.typed_unit)
    name = name_of(entry)
    label = shown_as if shown_as.casefold().startswith(name.casefold()) else f"{shown_as} ({name.lower()})"
    return ", ".join((f"{label} = {value}", *_founded(entry)))


def _founded(entry: Given) -> tuple[str, ...]:
    """Return how a number put in is known, where it is printed, and the choices by which its row was found."""
    known = NOWHERE if entry.known == BARE else KNOWN.get(entry.known, entry.known)
    if not known and entry.source:
        known = source_text(entry.source, entry.where)
    chosen = [
        _("for {name} “{choice}”").format(name=within(by.name), choice=by.value)
        + (f" ({KNOWN[by.known]})" if by.known in WAYS else "")
        for by in entry.because
        if isinstance(by, Given) and isinstance(by.value, str)
    ]
    return (*((known,) if known else ()), *chosen)


def steps(result: Result, style: Style) -> tuple[Step, ...]:
    """Return the working of a result, one step for each formula, in the order they were used, none twice.

    Arithmetic is one step as far as no formula takes what it makes.
    """
    if not result.calls:
        return tuple(
            _number_put_in(entry, style) for entry in result.inputs if not isinstance(entry.value, str)
        )
    ends = origins((*(result.band or ()), result.value))
    taken = {id(part) for entry in result.working if not is_step(entry) for part in entry.made_of}
    return tuple(
        dict.fromkeys(
            _step(call, style, result.quantity if call in ends else "")
            for call in result.calls
            if not is_step(call) or call in ends or id(call) in taken
        )
    )


def _number_put_in(entry: Given, style: Style) -> Step:
    """Return the one step of a result that is no more than a number put in: a row of a table, or a value of the board."""
    name = name_of(entry)
    return Step(
        begun(name),
        _("as printed in the table") if entry.source else _("as entered"),
        (_line(entry, style, name),),
        f"= {number(float(entry.value), entry.unit, style, entry.quantity, entry.typed_unit)}",
        source_text(entry.source, entry.where) if entry.source else _("Not worked out: a value of the board"),
        STANDING[entry.standing] if entry.standing else KNOWN.get(entry.known, entry.known),
    )


def _step(call: Call, style: Style, quantity: str) -> Step:
    """Return one step; `quantity` is the one in which arithmetic that ends in a result is shown, as the result is."""
    formula, unit = call.formula, unit_of(call)
    text = formula_text(formula.text)
    if is_step(call):
        title = SHAPES[formula.text].title
        text, leaves = sum_of(call)
        lines = [_line(entry, style, name) for name, entry in leaves.items()]
        if not quantity or quantities()[quantity].si != unit:
            quantity = ""
    else:
        title, quantity = SHORT_WORDS.sub(lambda word: word[0].upper(), name_of(call)), ""
        title = begun(title)
        lines = [
            _line(value.origin, style, name.replace("_", " "), formula.units.get(name, "1"))
            for name, value in call.arguments.items()
            if isinstance(value, Traced)
        ]
    if formula.mark == "solved":
        low, high = call.bracket or (0.0, 0.0)
        text = f"{text} = 0"
        lines.append(f"solved between {number(low, unit, style)} and {number(high, unit, style)}")
    elif formula.mark in ("cited", "step"):
        text = f"= {text}"
    return Step(
        title,
        text,
        tuple(lines),
        f"= {number(call.value, unit, style, quantity)}",
        source_text(formula.source, formula.where),
        STANDING[formula.standing],
    )
