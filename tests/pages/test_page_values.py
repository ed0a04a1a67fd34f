"""The table of what each page of figures rests on names pages, values and figures that there are, none twice."""

import tomllib
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any

import pytest

from logic.answers.energy import pack_figures
from logic.answers.hold import holding
from logic.answers.run import WhenRead
from logic.answers.stopping import stopping
from logic.answers.wheel import wheel
from screens.asking import field_of
from screens.blocks import Block
from screens.figure_page import Figures
from screens.register import PAGES
from screens.tongue import texts
from tests.pages.examples import EXAMPLES
from tests.pages.reader import Reader

LISTED = tomllib.loads(
    (Path(__file__).parents[2] / "assets" / "page_values.toml").read_text(encoding="utf-8")
)


@pytest.mark.parametrize("page", LISTED)
def test_a_page_lists_values_that_can_be_asked_for_each_once(page: str) -> None:
    values = LISTED[page]["values"]
    assert page in PAGES
    assert [field_of(value).key for value in values] == values
    assert len(set(values)) == len(values)


@pytest.mark.parametrize("page", ["numbers.packs", "numbers.descents", "numbers.wiring"])
def test_its_values_stand_on_the_page_in_that_order(pages: Reader, page: str) -> None:
    pages.open(page)
    keys = [block.key for block in pages.blocks()]
    assert keys[-len(LISTED[page]["values"]) :] == LISTED[page]["values"]


@pytest.mark.parametrize("page", [page for page in LISTED if "first" in LISTED[page]])
def test_every_figure_that_stands_open_is_one_of_the_page(
    pages: Reader, monkeypatch: pytest.MonkeyPatch, page: str
) -> None:
    """One that no answer has would be missing without a word."""
    labels: set[str] = set()
    rows = Figures.rows

    def seen(figures: Figures, first: Sequence[str], title: str = "") -> Iterator[Block]:
        labels.update(figures.labels)
        return rows(figures, first, title)

    monkeypatch.setattr(Figures, "rows", seen)
    assert pages.open(page, **EXAMPLES.get(page, ({},))[0]).page.title
    first = LISTED[page]["first"]
    assert len(set(first)) == len(first)
    assert set(first) <= labels


@pytest.mark.parametrize(
    ("page", "work_out"),
    [
        ("numbers.stopping", stopping),
        ("numbers.packs", pack_figures),
        ("numbers.hold", holding),
        ("numbers.wheel", wheel),
    ],
)
def test_what_is_folded_is_not_worked_out_at_each_digit(
    pages: Reader, page: str, work_out: Callable[..., Any]
) -> None:
    assert pages.open(page).page.crown
    world = pages.world
    answer = world.kept(work_out, world.board, world.person.rider, world.answers)
    items: Any = answer if isinstance(answer, WhenRead) else answer.items
    assert len(items.read) < len(items)
    assert set(LISTED[page]["first"]) & set(items) <= items.read
    pages.tap("All figures")
    assert pages.page.crown
    assert items.read == set(items)


@pytest.mark.parametrize("page", LISTED)
def test_what_is_stepped_can_be_asked_for_and_is_no_value_twice(page: str) -> None:
    controls = LISTED[page].get("controls", [])
    assert [field_of(control).key for control in controls] == controls
    assert set(controls) & set(LISTED[page]["values"]) == set()


@pytest.mark.parametrize("page", [page for page in LISTED if "fixes" in LISTED[page]])
def test_what_ends_a_danger_is_a_value_of_its_page_by_a_hazard_that_there_is(page: str) -> None:
    for hazard, value in LISTED[page]["fixes"].items():
        assert hazard in texts("packs")["hazards"]
        assert value in (*LISTED[page]["values"], *LISTED[page]["controls"])


@pytest.mark.parametrize("page", [page for page in LISTED if "head" in LISTED[page]])
def test_what_a_page_leads_with_has_a_label(page: str) -> None:
    groups = [name.split(".") for name in LISTED[page]["labels"]]
    assert LISTED[page]["head"] in {name for file, group in groups for name in texts(file)[group]}


def test_what_is_said_of_a_page_is_what_pages_of_figures_read() -> None:
    read = {"title", "head", "stop", "labels", "details", "outcomes", "controls", "fixes"}
    read |= {"first", "first_title", "values_title", "values"}
    assert set().union(*LISTED.values()) == read
    assert all(text for row in LISTED.values() for text in row.values())
