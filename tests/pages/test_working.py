"""The working of a figure: every step with its numbers and its source, at every size."""

import pytest

from logic.answers.tension import belt_plan
from logic.units import GAP
from screens.acts import Go
from screens.blocks import Figure, FigureRow, Section
from screens.page import Page
from screens.register import PAGES
from screens.words.workings import steps
from tests.pages.reader import Reader
from tests.pages.states import states
from tests.pages.test_layout import SCALES, SIZES, faults, laids

NO_RESULT = {
    "bench.belt": "way ",
    "bench.view": "big",
    "numbers.pairs": "pair ",
    "numbers.units": ("unit ", "head"),
    "settings.sources": "count",
}
"""Numbers that are no result of their page: rows that lead to one, one said large, exact factors, a count."""


def numbers_of(page: Page) -> list[Figure | FigureRow]:
    """Return the numbers that are results: not how many values are still to be given."""
    blocks = [*page.blocks, *([page.crown] if page.crown else ())]
    numbers = [block for block in blocks if isinstance(block, Figure | FigureRow)]
    return [one for one in numbers if any(map(str.isdigit, one.number)) and one.unit != "values to give"]


@pytest.mark.parametrize("name", [name for name in PAGES if name != "working"])
def test_every_number_of_a_page_leads_to_a_working_without_a_gap(name: str, pages: Reader) -> None:
    """In each state, with the folds open: each step has formula, numbers, result, source and standing."""
    found, seen = [], set()
    for what, page in states(name):
        for one in numbers_of(page):
            if name in NO_RESULT and one.key.startswith(NO_RESULT[name]):
                continue
            if not isinstance(one.act, Go) or one.act.page != "working":
                found.append(f"{what}: {one.key} leads to no working")
                continue
            item = one.act.args["item"]
            if id(item) in seen:
                continue
            seen.add(id(item))
            worked = steps(item, pages.world.style)
            found += [f"{what}: {one.key} has no step"] if not worked else []
            for step in worked:
                said = (step.title, step.formula, step.source, step.standing, step.result.removeprefix("= "))
                found += [] if all(said) else [f"{what}: {one.key}: {said}"]
    assert found == []


def test_a_number_leads_to_its_working_and_back(pages: Reader) -> None:
    pages.open("ride.tension")
    target = belt_plan(pages.world.saved, pages.world.person).items["target"]
    pages.tap("Working of the target")
    page = pages.page
    assert page.title == "Working"
    assert page.crown.label == "Belt tension to set"
    assert f"{page.crown.number}{GAP}{page.crown.unit}" == pages.world.style.number(target.value, "force")
    assert page.crown.act is None
    heads = [block for block in page.blocks if isinstance(block, Section)]
    assert len(heads) > 2
    assert all(head.title and head.note.strip(", ") for head in heads)
    assert all(" = " in block.text for block in page.blocks if block.key.startswith("sum "))
    pages.back()
    assert pages.name == "ride.tension"


def test_the_working_of_a_reading_heads_what_the_page_says(pages: Reader) -> None:
    pages.open("ride.tension")
    pages.type("0.92")
    said = pages["tension"].text
    pages.tap("Working of this reading")
    crown = pages.page.crown
    # "102 N ± 20 N" there, "102 ± 20" and its unit here.
    assert said.replace(f"{GAP}{crown.unit}", "") == f"Belt tension {crown.number}"
    assert "±" in crown.number


def test_a_working_that_is_gone_says_so(pages: Reader) -> None:
    pages.open("ride.tension")
    pages.tap("Working of the target")
    pages.world = pages.world.turned(item=None)
    assert pages.shows("Touch a number to see how it was worked out.")


def test_the_working_of_every_figure_of_a_page_can_be_read_at_every_size(pages: Reader) -> None:
    pages.open("numbers.gearing")
    rows = [block for block in pages.blocks() if isinstance(block, FigureRow) and block.act is not None]
    found = []
    for row in rows:
        pages.act(row.act)
        page = pages.page
        for width, height in SIZES:
            for scale in SCALES:
                found += [
                    f"{row.label} {width}x{height} {scale} {part}: {fault}"
                    for part, laid in laids(page, width, height, scale)
                    for fault in faults(laid)
                ]
        pages.back()
    assert rows
    assert found == []


def test_pages_of_figures_are_looked_at() -> None:
    for name in ("numbers.gearing", "numbers.stopping", "numbers.range", "bench.joint"):
        assert any(numbers_of(page) for _, page in states(name)), name
