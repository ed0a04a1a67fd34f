"""Every formula that a working can show: its text agrees with its code, its dimension with its unit, its source exists."""

import importlib
import math
import pkgutil
import random
from collections.abc import Callable
from typing import Any

import pytest

import logic
from logic.errors import InputError
from logic.tables import sources
from logic.units import registry
from logic.workings import REGISTER, Formula, recording, trace
from tests.formula_text import NUMBERS, QUANTITIES, evaluate

for module in pkgutil.walk_packages(logic.__path__, "logic."):
    importlib.import_module(module.name)

FORMULAS = sorted((name, one) for name, one in REGISTER.items() if name.startswith("logic."))
WANTED = 25
DRAWS = 4000

RANGES = {
    "1": (0.01, 60.0), "rad": (0.02, 3.1), "m": (0.001, 0.5), "m**2": (1e-6, 1.0), "m/s": (0.2, 20.0), "m/s**2": (0.5, 10.0),
    "rad/s": (1.0, 1500.0), "rad/(s*V)": (5.0, 60.0), "s": (0.1, 5000.0), "Hz": (50.0, 600.0), "kg": (1.0, 120.0),
    "kg/m": (0.01, 0.2), "kg/m**3": (0.9, 1.4), "N": (5.0, 900.0), "N*m": (0.05, 20.0), "N*m/A": (0.01, 0.2),
    "Pa": (1e6, 1e9), "J": (1.0, 1e6), "W": (1.0, 3000.0), "A": (0.2, 90.0), "V": (2.0, 60.0), "ohm": (0.002, 0.3),
    "C": (3600.0, 80000.0), "F": (1e-4, 1e-2), "K": (250.0, 350.0),
}  # fmt: skip


def draw(unit: str, dice: random.Random) -> float:
    low, high = RANGES.get(unit, (0.1, 10.0))
    return math.exp(dice.uniform(math.log(low), math.log(high)))


def curve(unit: str, dice: random.Random) -> Callable[[float], float]:
    start, slope = draw(unit, dice), dice.uniform(-3.0, 3.0)
    return lambda x: start + slope * x


def is_curve(formula: Formula, name: str) -> bool:
    return "Callable" in str(formula.function.__annotations__[name])


def arguments(formula: Formula, dice: random.Random) -> dict[str, Any]:
    return {
        name: curve(unit, dice) if is_curve(formula, name) else draw(unit, dice)
        for name, unit in formula.units.items()
    }


def disagreement(
    formula: Formula, function: Callable[..., float], text: str, dice: random.Random
) -> tuple[int, float]:
    """Return how many random draws were valid and the largest relative difference between text and code."""
    valid, worst = 0, 0.0
    for _ in range(DRAWS):
        numbers = arguments(formula, dice)
        try:
            with recording():
                value = function(**numbers)
        except InputError:
            continue
        (*_, call) = trace(value)
        assert call.value == value
        known = {**call.arguments, formula.name: value}
        read = evaluate(text, known, NUMBERS)
        if formula.mark == "solved":
            size = max(abs(term) for term in _terms(text, known))
            worst = max(worst, abs(read) / size)
        else:
            worst = max(worst, abs(read - value) / max(abs(value), 1e-9))
        valid += 1
        if valid == WANTED:
            break
    return valid, worst


def _terms(text: str, known: dict[str, float]) -> list[float]:
    """Return the sizes a residual is measured against: every argument and one."""
    return [abs(value) for name, value in known.items() if name in text] or [1.0]


@pytest.mark.parametrize(
    ("key", "formula"),
    [item for item in FORMULAS if item[1].mark != "method"],
    ids=lambda x: x if isinstance(x, str) else "",
)
def test_text_is_the_code(key: str, formula: Formula) -> None:
    module, _, name = key.rpartition(".")
    function = getattr(importlib.import_module(module), name)
    valid, worst = disagreement(formula, function, formula.text, random.Random(key))
    assert valid == WANTED, f"only {valid} valid draws in {DRAWS}"
    assert worst < 1e-9


def test_no_name_stands_for_two_formulas() -> None:
    names = [key.rpartition(".")[2] for key, _ in FORMULAS]
    assert len(names) == len(set(names))


def test_an_altered_constant_is_seen() -> None:
    from logic.belt.geometry import pitch_diameter  # noqa: PLC0415  (any closed formula would do)

    formula = REGISTER["logic.belt.geometry.pitch_diameter"]
    _, worst = disagreement(formula, pitch_diameter, formula.text + " * 1.000001", random.Random(1))
    assert worst > 1e-9


@pytest.mark.parametrize(
    ("key", "formula"),
    [item for item in FORMULAS if item[1].mark != "method"],
    ids=lambda x: x if isinstance(x, str) else "",
)
def test_dimension(key: str, formula: Formula) -> None:
    unit = registry()
    dice = random.Random(key)
    module, _, name = key.rpartition(".")
    function = getattr(importlib.import_module(module), name)
    for _ in range(DRAWS):
        numbers = arguments(formula, dice)
        try:
            with recording():
                value = function(**numbers)
        except InputError:
            continue
        (*_, call) = trace(value)
        shown = {**formula.units, formula.name: formula.unit}
        known = {**call.arguments, formula.name: value}
        quantities = {
            name: unit.Quantity(number, shown[name]) for name, number in known.items() if name in shown
        }
        result = evaluate(formula.text, quantities, QUANTITIES)
        result = result if hasattr(result, "dimensionality") else unit.Quantity(result, "")
        if formula.mark == "cited":
            assert result.dimensionality == unit.Quantity(1.0, formula.unit).dimensionality
        return
    pytest.fail("no valid draw")


@pytest.mark.parametrize(("key", "formula"), FORMULAS, ids=lambda x: x if isinstance(x, str) else "")
def test_source_is_listed(key: str, formula: Formula) -> None:
    assert formula.source in sources(), key
    assert formula.text
