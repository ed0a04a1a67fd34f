"""What the app's numbers were held against: written by the tests into assets/checked.json, read when somebody looks."""

import json
import tomllib
from collections import Counter
from functools import cache
from typing import Any

from logic.frozen import frozen
from logic.tables import ASSETS, rows
from logic.tongue import said

OUTSIDE = ("read", "second-hand")
"""How a printed number must be known to be an outside check."""

NO_PAGE = ("derived", "practice", "memory")
"""Keys of sources.toml behind which there is no printed page."""


@frozen
class Check:
    """What one test held against one source: how many numbers, the first of them, and how far the worst lies off."""

    test: str
    key: str
    where: str
    seen: str
    cases: int
    numbers: int
    what: str = ""
    printed: str = ""
    ours: str = ""
    unit: str = ""
    worst: str = ""

    @property
    def outside(self) -> bool:
        """Tell whether others printed the numbers."""
        return self.numbers > 0 and self.seen in OUTSIDE and self.key not in NO_PAGE


@frozen
class Cited:
    """One formula: its name, its source and place, how well it is founded, and whether it has an outside check."""

    title: str
    key: str
    where: str
    standing: str
    held: bool


@frozen
class Totals:
    """Counts over everything: numbers and sources of outside checks, formulas held and in all, results by how far."""

    numbers: int
    sources: int
    formulas_held: int
    formulas: int
    results: dict[str, int]


@cache
def written() -> dict[str, Any]:
    """Return the file as it was written."""
    return dict(json.loads((ASSETS / "checked.json").read_text(encoding="utf-8")))


@cache
def checks() -> tuple[Check, ...]:
    """Return every check that compared at least one number."""
    return tuple(Check(**row) for row in written()["tests"] if row["numbers"])


@cache
def formulas() -> tuple[Cited, ...]:
    """Return every formula of the app."""
    return tuple(Cited(**one) for one in written()["formulas"].values())


@cache
def held() -> frozenset[str]:
    """Return the formulas that have an outside check, by module and name."""
    return frozenset(name for name, one in written()["formulas"].items() if one["held"])


def row_places(key: str) -> dict[str, tuple[str, ...]]:
    """Return by table the places in a source that its rows name."""
    tables = dict.fromkeys(one["table"] for one in written()["rows"] if one["key"] == key)
    return {
        table: tuple(dict.fromkeys(row.where for row in rows(table) if row.source == key and row.where))
        for table in tables
    }


def used() -> tuple[str, ...]:
    """Return the keys of sources that a check, a formula or a row names, those with the most outside numbers first."""
    count = Counter({one["key"]: 0 for one in (*written()["rows"], *written()["formulas"].values())})
    for check in checks():
        count[check.key] += check.numbers if check.outside else 0
    return tuple(key for key, _ in sorted(count.items(), key=lambda one: (-one[1], one[0])))


def totals() -> Totals:
    """Return the counts over everything."""
    outside = [check for check in checks() if check.outside]
    return Totals(
        numbers=sum(check.numbers for check in outside),
        sources=len({check.key for check in outside}),
        formulas_held=sum(one.held for one in formulas()),
        formulas=len(formulas()),
        results=dict(Counter(one["held"] for one in written()["results"].values())),
    )


@cache
def not_found() -> tuple[dict[str, str], ...]:
    """Return what was looked for outside and not found, as `what` and `text`."""
    with (ASSETS / "not_found.toml").open("rb") as file:
        return tuple(said("not_found", tomllib.load(file))["row"])
