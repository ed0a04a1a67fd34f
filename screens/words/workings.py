"""The working of a result in words: from the recorded calls to lines that can be followed on paper."""

import re

from logic.answers.reading import Result
from logic.tables import sources
from logic.units import GAP, show_in
from logic.workings import Call, Given, Traced
from screens.widgets.working import Step
from screens.words import KNOWN, STANDING, Style

QUANTITY_OF = {
    "m": "length",
    "N": "force",
    "N*m": "torque",
    "N*m/A": "torque_constant",
    "m/s": "speed",
    "rad/s": "rotation",
    "rad/(s*V)": "motor_constant",
    "kg": "mass",
    "kg/m": "mass_per_length",
    "kg/m**3": "density",
    "m/s**2": "acceleration",
    "m**2": "area",
    "A": "current",
    "V": "voltage",
    "ohm": "resistance",
    "C": "charge",
    "J": "energy",
    "W": "power",
    "Hz": "frequency",
    "rad": "angle",
    "s": "time",
    "K": "temperature",
    "Pa": "stress",
    "1/m": "threads_per_length",
    "F": "capacitance",
    "ohm/m": "resistance_per_length",
    "W/m": "heat_per_length",
    "J/m": "energy_per_distance",
    "1/s": "charge_rate",
}
"""The quantity in which a number of a working is shown, by its SI unit; a number without one is shown plain."""

LONG, THIN, HOUR, COLDEST = 100.0, 1e-3, 3600.0, 150.0


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
    return QUANTITY_OF.get(unit, "")


SI_SHOWN = {
    "rad/(s*V)": "rad/s/V",
    "kg/m**3": "kg/m³",
    "m/s**2": "m/s²",
    "m**2": "m²",
    "N*m": "N·m",
    "N*m/A": "N·m/A",
    "ohm": "Ω",
    "ohm/m": "Ω/m",
}

SHORT_WORDS = re.compile(r"\b(dc|emf|awg|lfp)\b")
"""Abbreviations that are written in capitals."""

SIGNS = (("**2", "²"), ("**3", "³"), (" * ", " × "), ("sqrt", "√"), (" - ", " − "), ("pi", "π"))


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
        return f"{style.plain(value, 6)}{' teeth' if kind == 'teeth' else ''}"
    shown = (
        str(show_in(value, kind, typed_unit, mark=style.mark, digits=9))
        if typed_unit
        else style.number(value, kind, 4)
    )
    si = f"{style.plain(value, 4)} {SI_SHOWN.get(unit, unit)}".removesuffix(" 1")
    return shown if shown.replace(GAP, " ") == si else f"{shown} ({si})"


OURS = {"derived": "", "practice": "Common practice, no source: ", "memory": "From memory, not confirmed: "}
"""What stands in place of a title where nothing printed is cited."""


def source_text(key: str, where: str) -> str:
    """Return a source as title and place, or what stands in its place."""
    if key in OURS and where:
        text = OURS[key] + where
        return text[0].upper() + text[1:]
    return ", ".join(part for part in (sources()[key].title, where) if part)


def _given_line(entry: Given, style: Style, shown_as: str) -> str:
    value = number(float(entry.value), entry.unit, style, entry.quantity, entry.typed_unit)
    name = entry.name.replace("_", " ")
    label = name if name.casefold() == shown_as.casefold() else f"{shown_as} ({name.lower()})"
    return ", ".join((f"{label} = {value}", *_founded(entry)))


def _founded(entry: Given) -> tuple[str, ...]:
    """Return how a number put in is known, where it is printed, and the choices by which its row was found."""
    known = KNOWN.get(entry.known, entry.known)
    if not known and entry.source:
        known = source_text(entry.source, entry.where)
    chosen = [
        f"for {by.name[0].lower()}{by.name[1:]} “{by.value}”"
        + (f" ({KNOWN[by.known]})" if by.known in KNOWN else "")
        for by in entry.because
        if isinstance(by, Given) and isinstance(by.value, str)
    ]
    return (*((known,) if known else ()), *chosen)


def steps(result: Result, style: Style) -> tuple[Step, ...]:
    """Return the working of a result, one step for each formula, in the order they were used, none twice."""
    if not result.calls:
        return tuple(
            _number_put_in(entry, style) for entry in result.inputs if not isinstance(entry.value, str)
        )
    return tuple(dict.fromkeys(_step(call, style) for call in result.calls))


def _number_put_in(entry: Given, style: Style) -> Step:
    """Return the one step of a result that is no more than a number put in: a row of a table, or a value of the board."""
    name = entry.name.replace("_", " ")
    return Step(
        name[0].upper() + name[1:],
        "as printed in the table" if entry.source else "as entered",
        (_given_line(entry, style, name),),
        f"= {number(float(entry.value), entry.unit, style, entry.quantity, entry.typed_unit)}",
        source_text(entry.source, entry.where) if entry.source else "Not worked out: a value of the board",
        STANDING[entry.standing] if entry.standing else KNOWN.get(entry.known, entry.known),
    )


def _step(call: Call, style: Style) -> Step:
    formula = call.formula
    lines = []
    for name, value in call.arguments.items():
        entry = value.origin if isinstance(value, Traced) else None
        shown_as = name.replace("_", " ")
        if isinstance(entry, Given):
            lines.append(_given_line(entry, style, shown_as))
        else:
            lines.append(f"{shown_as} = {number(value, formula.units.get(name, '1'), style)}")
    title = SHORT_WORDS.sub(lambda word: word[0].upper(), formula.name.replace("_", " "))
    title = title[0].upper() + title[1:]
    text = formula_text(formula.text)
    if formula.mark == "solved":
        low, high = call.bracket or (0.0, 0.0)
        text = f"{text} = 0"
        lines.append(
            f"solved between {number(low, formula.unit, style)} and {number(high, formula.unit, style)}"
        )
    elif formula.mark == "cited":
        text = f"= {text}"
    return Step(
        title,
        text,
        tuple(lines),
        f"= {number(call.value, formula.unit, style)}",
        source_text(formula.source, formula.where),
        STANDING[formula.standing],
    )
