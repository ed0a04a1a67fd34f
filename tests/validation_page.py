"""tests/VALIDATION.md out of what the published tests found."""

from collections.abc import Iterator, Mapping
from typing import Any

from logic.checked import NO_PAGE, not_found
from logic.tables import sources
from tests.validation import WORST, Case, totals

HEAD = """# What the numbers were held against

Written by `uv run python -m tests.write_validation` out of the tests in `tests/published`; do not edit it. A test fails when
it is stale.

One line is one comparison of a test. "Off" is how far ours lies beside the printed number, in per cent. How a printed number
is known: *read* where it is printed, *second-hand* in a copy or a report, from *memory*, or *ours*: worked out by us another
way. Only the first two, from a source outside this project, count as an outside check.
"""

SAID = {
    "all": "every formula of the working has an outside check",
    "part": "some formulas of the working have one",
    "none": "no formula of the working has one",
    "no formula": "read from a table or the board, or plain arithmetic",
}


def page(of: Mapping[str, Any], cases: list[Case]) -> str:
    """Return the whole page."""
    said = [case for case in cases if case.said]
    parts = [HEAD, *_totals(of), *_sources(said), *_unchecked(of)]
    return "\n".join(parts).rstrip() + "\n"


def summary(of: Mapping[str, Any]) -> list[str]:
    """Return the lines of all parts that follow from the written data alone."""
    return [line for part in (*_totals(of), *_unchecked(of)) for line in part.splitlines()]


def _totals(of: Mapping[str, Any]) -> Iterator[str]:
    count = totals(of)
    yield "## Totals\n"
    yield "| What | Count |\n|---|---|"
    yield f"| numbers of outside sources that ours were held against | {count['numbers']} |"
    yield f"| outside sources they are from | {count['sources']} |"
    for seen, number in sorted(count["seen"].items()):
        yield f"| comparisons, {seen} | {number} |"
    yield f"| formulas with an outside check | {count['formulas']} of {count['all formulas']} |"
    for how in reversed(WORST):
        yield f"| results shown: {SAID[how]} | {count['results'][how]} |"
    for standing, number in sorted(count["standings"].items()):
        yield f"| results shown, standing: {standing} | {number} |"
    yield ""


def _sources(cases: list[Case]) -> Iterator[str]:
    by_key: dict[str, list[Case]] = {}
    for case in cases:
        by_key.setdefault(case.key, []).append(case)
    inside = [key for key in NO_PAGE if key in by_key]
    yield "## By source\n"
    for key in [*(key for key in sources() if key in by_key and key not in NO_PAGE), *inside]:
        one = sources()[key]
        note = f" {one.note}" if one.note else ""
        yield f"### {one.title}\n\n{one.publisher}, {one.year}.{note}\n"
        yield "| What | Place | Printed | Ours | Unit | Off, % | Known |\n|---|---|---|---|---|---|---|"
        for case in by_key[key]:
            yield from case.lines()
        yield ""


def _unchecked(of: Mapping[str, Any]) -> Iterator[str]:
    yield "## Looked for and not found\n"
    for line in not_found():
        yield f"- {line['what']}: {line['text']}"
    yield "\n## Common practice, no source\n"
    yield from _cited(of, lambda one: one["key"] == "practice" or one["standing"] == "practice")
    yield "\n## From memory\n"
    yield from _cited(of, lambda one: one["key"] == "memory")
    yield "\n## Formulas with no outside check\n"
    for name, one in of["formulas"].items():
        if not one["held"]:
            yield f"- {one['title']} (`{name}`), {one['standing']}"
    for how in WORST:
        yield f"\n## Results: {SAID[how]}\n"
        for place, one in of["results"].items():
            if one["held"] == how:
                yield f"- `{place}`, {one['standing']}"


def _cited(of: Mapping[str, Any], wanted: Any) -> Iterator[str]:
    for one in of["formulas"].values():
        if wanted(one):
            yield f"- formula: {one['title']}, {one['where']}"
    for one in of["rows"]:
        if wanted(one):
            yield f"- table {one['table']}: {one['count']} rows"
