"""What is written of the tests is what they found, and every number that is shown says where it is from."""

from dataclasses import replace

import pytest

from logic.answers.reading import Result
from logic.exchange import demo_boards
from logic.tables import sources
from logic.workings import BARE, Call, Given, Traced
from tests import validation
from tests.printed import Said
from tests.results import results
from tests.validation_page import summary


def unsourced(item: Result) -> list[str]:
    """Return what in a result's working has no source: a formula, a row, or a number that nobody put in."""
    found = []
    for entry in item.working:
        if isinstance(entry, Call) and entry.formula.mark != "step":
            if entry.formula.source not in sources() or not entry.formula.where:
                found.append(entry.formula.name)
        elif isinstance(entry, Given) and (entry.standing or entry.known == BARE):
            if entry.source not in sources() or not entry.where:
                found.append(entry.name)
        elif isinstance(entry, Given) and not (entry.known or entry.because):
            found.append(entry.name)
    return found


@pytest.mark.parametrize("board", demo_boards(), ids=lambda board: board.name)
def test_every_number_shown_has_a_source(board: object) -> None:
    assert [(place, name) for place, item in results(board).items() for name in unsourced(item)] == []


def test_a_number_without_a_source_is_found() -> None:
    item = next(
        one for one in results(demo_boards()[0]).values() if any(c.formula.mark == "cited" for c in one.calls)
    )
    call = next(one for one in item.calls if one.formula.mark == "cited")
    lost = Call(replace(call.formula, source="nowhere"), call.arguments, call.value)
    assert unsourced(Result("lost", Traced(1.0, lost), "ratio")) == [call.formula.name, *unsourced(item)]
    assert unsourced(Result("bare", Traced(1.0, Given("one", 1.0, "1", known=BARE)), "ratio")) == ["one"]


def test_what_is_written_of_results_formulas_and_rows_is_not_stale() -> None:
    written = validation.data()
    checked = {name for name, one in written["formulas"].items() if one["held"]}
    now = validation.described(checked)
    for part, found in now.items():
        assert written[part] == found, f"{part}: run `uv run python -m tests.write_validation`"


def test_a_case_that_found_something_else_is_stale() -> None:
    said = Said(printed="1", ours="2", unit="N", off="+100.00", formulas=())
    case = validation.Case("test_x.py::test_y", "openstax-physics", "p. 1", "read", "made up", (said,))
    assert validation.stale(case)
    assert not validation.stale(replace(case, said=()))


def test_every_source_of_the_tests_is_listed() -> None:
    assert {row["key"] for row in validation.data()["tests"]} <= sources().keys()


def test_the_rest_of_the_page_is_what_the_data_say() -> None:
    missing = [
        line for line in summary(validation.data()) if line.strip() and line not in validation.page_lines()
    ]
    assert missing == [], "run `uv run python -m tests.write_validation`"
