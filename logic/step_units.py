"""The SI unit of what arithmetic makes: worked out with Pint beforehand, for the steps that the app's own answers take.

Pint itself, a tenth of what the app holds in memory, is loaded for a step that no answer took before.
"""

import tomllib
from functools import cache
from typing import Any

from logic import si
from logic.units import ASSETS, registry
from logic.workings import Call, Entry

MEANT = {"N*m": "J/rad", "N*m/A": "J/(rad*A)"}
"""A torque is work for an angle: so a power over a speed of turning is a torque, and a charge times a voltage is not."""


@cache
def si_units() -> tuple[str, ...]:
    """Return every SI unit that a formula of the app can have; the first is meant where two are the same.

    Where arithmetic does not say that something turns or swings, a joule is meant and a rate for each second.
    """
    found = [note.__metadata__[0] for note in vars(si).values() if hasattr(note, "__metadata__")]
    return tuple(sorted(found, key=lambda unit: unit in ("N*m", "Hz")))


def unit_of(entry: Entry) -> str:
    """Return the SI unit of a number in a working; empty where its numbers have no unit in common."""
    if not isinstance(entry, Call):
        return entry.unit or "1"
    if entry.formula.mark != "step":
        return entry.formula.unit
    units = [unit_of(part) for part in entry.made_of]
    return step_unit(entry.formula.text, units[0], units[-1], power=entry.arguments.get("b", 1.0))


def step_unit(text: str, first: str, second: str = "1", power: float = 1.0) -> str:
    """Return the SI unit of a step of arithmetic by its text; empty for the sum of unlike numbers.

    A product that has no name of its own among the units of the app is given in base units.

    >>> step_unit("a * b", "V", "A"), step_unit("a / b", "N*m", "m"), step_unit("a * b", "kg", "m/s")
    ('W', 'N', 'kg*m/s')
    """
    key = step_key(text, first, second, power)
    if not key:
        return first
    known = _made_before().get(key)
    return known if known is not None else made_by_pint(text, first, second, power)


def step_key(text: str, first: str, second: str, power: float) -> str:
    """Return what names a step and its units in the table; empty for one that keeps the unit of its first number."""
    if text in ("a * b", "a / b"):
        return f"{text}: {first}, {second}"
    if text == "a**b":
        return f"{text}: {first}, {power:g}"
    return f"{text}: {first}, {second}" if text in ("a + b", "a - b") and first != second else ""


@cache
def _made_before() -> dict[str, str]:
    with (ASSETS / "step_units.toml").open("rb") as file:
        return dict(tomllib.load(file)["steps"])


def made_by_pint(text: str, first: str, second: str, power: float) -> str:
    """Return the unit of a step as Pint works it out; empty for the sum of unlike numbers."""
    if text == "a * b":
        return _named(_unit(first) * _unit(second))
    if text == "a / b":
        return _named(_unit(first) / _unit(second))
    if text == "a**b":
        return _named(_unit(first) ** power)
    return first if _unit(first).dimensionality == _unit(second).dimensionality else ""


@cache
def _unit(text: str) -> Any:  # noqa: ANN401  (a unit of Pint)
    return registry().Quantity(1.0, text).units


def _named(made: Any) -> str:  # noqa: ANN401  (a unit of Pint)
    """Return the unit of the app that is written like this one, else has its base units, else its dimension."""
    forms = (_written(made), _in_base(made), str(made.dimensionality))
    found = [names[form] for names, form in zip(_names(), forms, strict=True) if form in names]
    return found[0] if found else forms[1]


@cache
def _names() -> tuple[dict[str, str], ...]:
    """Return the units of the app as they are written, by their base units with radians, and by their dimension."""
    written: dict[str, str] = {}
    in_base: dict[str, str] = {}
    dimension: dict[str, str] = {}
    for name in si_units():
        written[_written(_unit(name))] = name
        in_base.setdefault(_in_base(_unit(MEANT.get(name, name))), name)
        dimension.setdefault(str(_unit(name).dimensionality), name)
    return written, in_base, dimension


def _written(unit: Any) -> str:  # noqa: ANN401  (a unit of Pint)
    return f"{unit:~C}" or "1"


def _in_base(unit: Any) -> str:  # noqa: ANN401  (a unit of Pint)
    return _written(registry().get_base_units(unit)[1])
