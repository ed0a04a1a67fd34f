"""The table of what each page of figures rests on names pages and values that there are, none twice."""

import tomllib
from pathlib import Path

import pytest

from screens.asking import field_of
from screens.register import PAGES
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
