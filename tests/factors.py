"""Writes assets/factors.toml from Pint: what one of each unit of the app is in SI.

uv run python -m tests.factors
"""

from logic.tables import SI_OF_PRINTED
from logic.units import ASSETS, quantities, registry

FILE = ASSETS / "factors.toml"

HEAD = """\
# What one of each unit is in SI, so that the first screen does not wait for Pint. Made from units.txt by Pint:
# `uv run python -m tests.factors` writes it, and a test holds it to Pint.
[factors]
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


if __name__ == "__main__":
    FILE.write_text(text(), encoding="utf-8")
