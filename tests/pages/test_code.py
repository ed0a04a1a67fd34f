"""A board as a code: shown, pasted on another phone, and why there is none."""

import json
from pathlib import Path
from random import Random

import pytest

from logic.exchange.code import code_line
from screens.acts.boards import OpenText, TakeIn
from screens.acts.entering import Write
from screens.blocks import Picture
from screens.settings.files import PASTED
from tests.pages.reader import Reader


@pytest.fixture
def other(tmp_path: Path):
    found = Reader(tmp_path / "two", demo=False)
    yield found
    found.close()


def test_what_a_camera_read_is_pasted_and_is_the_same_board(pages: Reader, other: Reader) -> None:
    pages.open("settings.files")
    pages.tap("Show it as a code")
    assert isinstance(pages["code"], Picture)
    other.open("settings.files")
    other.tap("Paste the text of a board or of its code")
    other.act(Write(PASTED, code_line(pages.world.saved)))
    other.tap("Look into this text")
    assert other.page.crown.word == "Adds Towpath 36"
    other.tap("Take it in")
    assert other.world.saved == pages.world.saved


def test_a_text_that_was_cut_short_changes_nothing(pages: Reader) -> None:
    before = pages.store.boards()
    pages.open("settings.files")
    pages.act(OpenText(code_line(pages.world.saved)[:-9]))
    assert pages.shows("This file is cut short or damaged.")
    assert pages.store.boards() == before


def test_a_board_that_no_code_holds_says_how_much_it_is_and_what_to_do(pages: Reader) -> None:
    digits = "".join(Random(3).choices("0123456789abcdef", k=6000))
    page = {
        "format": "deckhand board",
        "version": 1,
        "board": {"version": 1, "id": "far", "name": "Far", "drive": {"of tomorrow": digits}},
    }
    pages.open("settings.files")
    pages.act(OpenText(json.dumps(page)))
    pages.act(TakeIn())
    pages.open("settings.code")
    count = len(code_line(pages.world.saved))
    assert count > 4296
    assert pages.shows(f"Far holds {count} signs, and one code 4296. Send it as a file.")
    assert pages.page.foot.main is None


def test_without_a_board_there_is_none(other: Reader) -> None:
    other.open("settings.code")
    assert other.shows("Save a board first.")
