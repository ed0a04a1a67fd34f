"""Writes assets/factors.toml and assets/step_units.toml from Pint: units in SI, and the units of the steps of all answers.

uv run python -m tests.factors
"""

from collections.abc import Iterator

from logic.step_units import made_by_pint, step_key, unit_of
from logic.tables import SI_OF_PRINTED
from logic.units import ASSETS, quantities, registry
from tests.logic.test_answer_register import BOARDS, results

FILE = ASSETS / "factors.toml"
STEPS = ASSETS / "step_units.toml"

HEAD = """\
# What one of each unit is in SI, so that the first screen does not wait for Pint. Made from units.txt by Pint:
# `uv run python -m tests.factors` writes it, and a test holds it to Pint.
[factors]
"""

STEPS_HEAD = """\
# The unit of each step of arithmetic that the answers of the example boards take, so that a working does not wait for
# Pint. Made by Pint: `uv run python -m tests.factors` writes it, and tests hold it to Pint.
[steps]
"""


def pairs() -> set[tuple[str, str]]:
    """Return every unit that the app reads or shows, and every one that tables are printed in, with its SI unit."""
    shown = {(unit.pint, kind.si) for kind in quantities().values() for unit in kind.units}
    return shown | {pair for pair in SI_OF_PRINTED.items() if pair[0] != "degC"}


def text() -> str:
    """Return the file as Pint has it."""
    of = registry().Quantity
    return HEAD + "".join(
        f'"{unit} in {si}" = {of(1.0, unit).to(si).magnitude!r}\n' for unit, si in sorted(pairs())
    )


def taken() -> Iterator[tuple[str, str, str, float]]:
    """Yield each step that the answers take on the example boards: its text, its units, its power."""
    for board in BOARDS.values():
        for item in results(board).values():
            for call in item.calls:
                if call.formula.mark == "step":
                    units = [unit_of(part) for part in call.made_of]
                    yield call.formula.text, units[0], units[-1], call.arguments.get("b", 1.0)


def steps() -> str:
    """Return the file of steps as Pint has it."""
    made = {step_key(*step): made_by_pint(*step) for step in taken() if step_key(*step)}
    return STEPS_HEAD + "".join(f'"{key}" = "{unit}"\n' for key, unit in sorted(made.items()))


if __name__ == "__main__":
    FILE.write_text(text(), encoding="utf-8")
    STEPS.write_text(steps(), encoding="utf-8")
