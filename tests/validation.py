"""What the tests hold the app's numbers against, as tests/VALIDATION.md and as the data of the app's page of sources.

`uv run python -m tests.write_validation` runs tests/published, asks every registered answer of the example boards, and
writes both. A test fails when what is written is not what the tests found.
"""

import json
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from logic.answers.reading import Result
from logic.checked import NO_PAGE, OUTSIDE
from logic.exchange import demo_boards
from logic.tables import ASSETS, raw, rows
from logic.workings import REGISTER, STANDINGS, Call
from tests.printed import Said
from tests.results import results

ROOT = Path(__file__).resolve().parent.parent
PAGE = ROOT / "tests" / "VALIDATION.md"
DATA = ASSETS / "checked.json"
FOUND: list["Case"] = []
"""What the tests of this process compared."""

_writing: list[bool] = []


@dataclass(frozen=True)
class Case:
    """One case of a test: its source, what it checks, and what it compared."""

    test: str
    key: str
    where: str
    seen: str
    what: str
    said: tuple[Said, ...]

    @property
    def outside(self) -> bool:
        """Tell whether it holds a number of ours against one that others printed."""
        return bool(self.said) and self.seen in OUTSIDE and self.key not in NO_PAGE

    def lines(self) -> list[str]:
        """Return the lines that VALIDATION.md has of it."""
        return [
            "| "
            + " | ".join(
                cell.replace("|", "/")
                for cell in (self.what, self.where, one.printed, one.ours, one.unit, one.off, self.seen)
            )
            + " |"
            for one in self.said
        ]


def case_of(node: pytest.Item, mark: pytest.Mark, said: Iterable[Said]) -> Case:
    """Return what a test compared, with its name as the words for what is checked."""
    name = getattr(node, "originalname", node.name)
    what = name.removeprefix("test_").replace("_", " ")
    called = node.name[len(name) :].strip("[]").removeprefix("derived: ")
    called = called.removeprefix(f"{mark.kwargs['key']} {mark.kwargs['where']}").lstrip(": ,")
    return Case(
        test=node.nodeid.removeprefix("tests/published/"),
        key=mark.kwargs["key"],
        where=mark.kwargs["where"],
        seen=mark.kwargs["seen"],
        what=f"{what}: {called}" if called else what,
        said=tuple(said),
    )


def begin() -> None:
    """Say that everything is about to be written again, so that no test holds itself against what was written."""
    _writing.append(True)


def again() -> bool:
    """Tell whether everything is being written again."""
    return bool(_writing)


@cache
def data() -> dict[str, Any]:
    """Return what is written for the app."""
    return dict(json.loads(DATA.read_text(encoding="utf-8")))


@cache
def page_lines() -> frozenset[str]:
    """Return the lines of VALIDATION.md."""
    return frozenset(PAGE.read_text(encoding="utf-8").splitlines())


def stale(case: Case) -> bool:
    """Tell whether what a case found is not what is written."""
    held = {name for name, one in data()["formulas"].items() if one["held"]}
    return not (page_lines().issuperset(case.lines()) and held.issuperset(checked_formulas([case])))


# What the app shows, and what of it was held against something.


def checked_formulas(cases: Iterable[Case]) -> set[str]:
    """Return the formulas that at least one outside check went through."""
    return {name for case in cases if case.outside for said in case.said for name in said.formulas}


def formula_of(call: Call) -> str:
    """Return a formula's name in the register."""
    return f"{call.formula.function.__module__}.{call.formula.name}"


def held(result: Result, checked: set[str]) -> str:
    """Tell how much of a result's working was held against something outside: all, part, none, or no formula in it."""
    names = {formula_of(call) for call in result.calls if call.formula.mark != "step"}
    if not names:
        return "no formula"
    return "all" if names <= checked else "part" if names & checked else "none"


def shown() -> dict[str, list[Result]]:
    """Return every result of every answer by the place where it stands, one from each example board that has it."""
    found: dict[str, list[Result]] = {}
    for board in demo_boards():
        for place, item in results(board).items():
            plain = re.sub(r"\[\d+\]", "[]", place).removeprefix("logic.answers.")
            found.setdefault(plain, []).append(item)
    return found


WORST = ("none", "part", "no formula", "all")


def of_results(checked: set[str]) -> dict[str, dict[str, str]]:
    """Return for each result how far it was held against something outside, and its standing: the worse of the boards'."""
    return {
        place: {
            "held": min((held(item, checked) for item in items), key=WORST.index),
            "standing": max((item.standing for item in items), key=STANDINGS.index),
        }
        for place, items in sorted(shown().items())
    }


def table_rows() -> Iterator[tuple[str, str, str]]:
    """Yield table, source and standing of every row that has a standing."""
    for path in sorted((ASSETS / "tables").glob("*.toml")):
        if "row" in raw(path.stem) and any(
            "standing" in line for line in (raw(path.stem), *raw(path.stem)["row"])
        ):
            for row in rows(path.stem):
                yield path.stem, row.source, row.standing


def gather(cases: list[Case]) -> dict[str, Any]:
    """Return all that is written for the app."""
    return {"tests": grouped(cases), **described(checked_formulas(cases))}


def described(checked: set[str]) -> dict[str, Any]:
    """Return what is written of formulas, rows of tables and results, with the formulas that were checked outside."""
    return {
        "formulas": {
            name: {
                "title": one.name.replace("_", " "),
                "key": one.source,
                "where": one.where,
                "standing": one.standing,
                "held": name in checked,
            }
            for name, one in sorted(REGISTER.items())
            # Formulas that a test makes up are none of the app's.
            if name.startswith("logic.")
        },
        "rows": [
            {"table": table, "key": key, "standing": standing, "count": count}
            for (table, key, standing), count in sorted(Counter(table_rows()).items())
        ],
        "results": of_results(checked),
    }


def grouped(cases: Iterable[Case]) -> list[dict[str, Any]]:
    """Return one row for each test and source: how many numbers, the first of them, and how far the worst lies off."""
    groups: dict[tuple[str, ...], list[Case]] = {}
    for case in cases:
        groups.setdefault((case.test.partition("[")[0], case.key, case.where, case.seen), []).append(case)
    return [_group(*name, of) for name, of in groups.items()]


def _group(test: str, key: str, where: str, seen: str, of: list[Case]) -> dict[str, Any]:
    said = [one for case in of for one in case.said]
    row: dict[str, Any] = {
        "test": test,
        "key": key,
        "where": where,
        "seen": seen,
        "cases": len(of),
        "numbers": len(said),
    }
    if said:
        row |= {
            "what": of[0].what.partition(":")[0],
            "printed": said[0].printed,
            "ours": said[0].ours,
            "unit": said[0].unit,
            "worst": max((one.off for one in said), key=lambda off: abs(float(off or 0.0))),
        }
    return row


def as_json(of: Mapping[str, Any]) -> str:
    """Return the data with one thing a line, so that a change is read as one."""
    parts = []
    for name, group in of.items():
        if isinstance(group, Mapping):
            lines = [f"{json.dumps(key)}: {json.dumps(one)}" for key, one in group.items()]
            parts.append(f'"{name}": {{\n' + ",\n".join(lines) + "\n}")
        else:
            parts.append(f'"{name}": [\n' + ",\n".join(json.dumps(one) for one in group) + "\n]")
    return "{\n" + ",\n".join(parts) + "\n}\n"


def totals(of: Mapping[str, Any]) -> dict[str, Any]:
    """Return the counts that stand at the head of the page."""
    seen: Counter[str] = Counter()
    numbers, keys = 0, set[str]()
    for row in of["tests"]:
        seen[row["seen"]] += row["numbers"]
        if row["numbers"] and row["seen"] in OUTSIDE and row["key"] not in NO_PAGE:
            numbers += row["numbers"]
            keys.add(row["key"])
    return {
        "numbers": numbers,
        "sources": len(keys),
        "seen": dict(seen),
        "formulas": sum(one["held"] for one in of["formulas"].values()),
        "all formulas": len(of["formulas"]),
        "results": Counter(one["held"] for one in of["results"].values()),
        "standings": Counter(one["standing"] for one in of["results"].values()),
    }
