"""Rows of assets/tables with their sources: printed units in the file, SI in the rows."""

import tomllib
from collections.abc import Iterator
from dataclasses import replace
from functools import cache, lru_cache
from pathlib import Path
from sys import intern
from typing import Any

from logic.errors import InputError
from logic.frozen import frozen
from logic.tongue import said
from logic.units import factor
from logic.workings import Entry, Given, given, origins

ASSETS = Path(__file__).resolve().parent.parent / "assets"

SI_OF_PRINTED = {
    "mm": "m",
    "inch": "m",
    "km": "m",
    "lbf": "N",
    "kgf": "N",
    "rpm": "rad/s",
    "g/m": "kg/m",
    "N*m": "N*m",
    "N": "N",
    "m/s": "m/s",
    "m**2": "m**2",
    "kg/m**3": "kg/m**3",
    "m/s**2": "m/s**2",
    "lbf/(kft/min)**2": "kg/m",
    "V": "V",
    "A": "A",
    "A*h": "C",
    "mohm": "ohm",
    "mohm/m": "ohm/m",
    "ohm*mm**2/m": "ohm*m",
    "W*h": "J",
    "W*h/kg": "J/kg",
    "W*h/km": "J/m",
    "1/h": "1/s",
    "1/K": "1/K",
    "mm**2": "m**2",
    "degC": "K",
    "MPa": "Pa",
    "ksi": "Pa",
    "inch**2": "m**2",
    "1/inch": "1/m",
    "lbf*inch": "N*m",
    "h": "s",
    "s": "s",
    "kg": "kg",
    "J/(kg*K)": "J/(kg*K)",
    "W/(N*m)**2": "W/(N*m)**2",
    "1": "1",
}
"""The SI unit that a printed unit is converted to; a unit not listed here is refused by the loader."""

ICE_POINT = 273.15
"""Kelvin at 0 degrees Celsius (exact): temperatures are the only printed numbers with an offset."""


@frozen
class Source:
    """One printed source: `title`, who published it, its year, and how far it was read."""

    key: str
    title: str
    publisher: str
    year: int
    note: str = ""


@frozen
class Row:
    """One printed row. Numbers are SI. `because` is what it was found by."""

    table: str
    cells: dict[str, Any]
    units: dict[str, str]
    source: str
    where: str
    standing: str
    because: tuple[Entry, ...] = ()

    def number(self, column: str) -> float:
        """Return the number of a column in SI and record where it is printed."""
        return given(
            Given(
                column,
                float(self.cells[column]),
                self.units.get(column, "1"),
                standing=self.standing,
                source=self.source,
                where=self.where,
                because=self.because,
            )
        )

    def found_by(self, *values: object) -> "Row":
        """Return the row with the numbers and choices by which it was found among its like."""
        because = origins(values)
        return replace(self, because=(*self.because, *because)) if because else self

    def text(self, column: str) -> str:
        """Return the text of a column."""
        return str(self.cells[column])

    def __contains__(self, column: str) -> bool:
        """Tell whether the row prints anything in a column."""
        return column in self.cells


def _written(table: str) -> dict[str, Any]:
    with (ASSETS / "tables" / f"{table}.toml").open("rb") as file:
        page: dict[str, Any] = said(table, tomllib.load(file))
    return page


@cache
def raw(table: str) -> dict[str, Any]:
    """Return a table file as written, for the modules whose tables have a form of their own."""
    return _written(table)


def to_si(number: float, printed: str) -> float:
    """Return a printed number in the SI unit of its printed unit.

    >>> to_si(20.0, "degC")
    293.15
    """
    if printed == "degC":
        return number + ICE_POINT
    return number * factor(printed, SI_OF_PRINTED[printed])


@cache
def rows(table: str) -> tuple[Row, ...]:
    """Return all rows of a table, converted to SI once."""
    page = _written(table)
    printed: dict[str, str] = page.get("units", {})
    for unit in printed.values():
        if unit not in SI_OF_PRINTED:
            raise ValueError(f"{table}: unit {unit!r} is not in SI_OF_PRINTED")
    units = {column: SI_OF_PRINTED[unit] for column, unit in printed.items()}
    return tuple(
        Row(
            table,
            {
                # The reader makes a text anew for each name of a column.
                intern(column): to_si(cell, printed[column]) if column in printed else cell
                for column, cell in line.items()
                if column not in ("where", "source", "standing")
            },
            units,
            line.get("source", page.get("source", "")),
            line.get("where", ""),
            line.get("standing", page.get("standing", "")),
        )
        for line in page["row"]
    )


def matching(table: str, **wanted: str | float) -> Iterator[Row]:
    """Yield the rows whose cells equal `wanted`; numbers are compared to one part in a million."""
    for row in _matching(table, tuple(wanted.items())):
        yield row.found_by(*wanted.values())


@lru_cache(512)
def _matching(table: str, wanted: tuple[tuple[str, str | float], ...]) -> tuple[Row, ...]:
    return tuple(
        row for row in rows(table) if all(_same(row.cells.get(column), value) for column, value in wanted)
    )


def pick(table: str, **wanted: str | float) -> Row:
    """Return the first row that matches. Raises InputError when none does."""
    for row in matching(table, **wanted):
        return row
    raise InputError(table, wanted, "not in the table")


def _same(cell: object, value: str | float) -> bool:
    if isinstance(cell, int | float) and isinstance(value, int | float):
        return abs(cell - value) <= 1e-6 * max(abs(cell), abs(value))
    return cell == value


@cache
def sources() -> dict[str, Source]:
    """Return every source by its key, from assets/sources.toml."""
    with (ASSETS / "sources.toml").open("rb") as file:
        return {key: Source(key, **entry) for key, entry in said("sources", tomllib.load(file)).items()}
