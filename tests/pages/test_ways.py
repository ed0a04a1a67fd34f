"""The table of rows that lead on names pages and pictures that there are, and every row of it stands somewhere."""

import re
import tomllib
from pathlib import Path

import pytest

from screens.acts import Go
from screens.numbers.home import HEADINGS
from screens.register import PAGES
from screens.update.copies import WRITES
from screens.ways import ways_from

ROOT = Path(__file__).parents[2]
PLACES = tomllib.loads((ROOT / "assets" / "ways.toml").read_text(encoding="utf-8"))
COPIES = ("print", "send sheet page", *WRITES)
"""What is written, and not opened."""
DRAWN = set(re.findall(r'"([a-z_ ]+)": 0x', (ROOT / "screens/paper/icons.py").read_text(encoding="utf-8")))
CODE = "\n".join(path.read_text(encoding="utf-8") for path in (ROOT / "screens").rglob("*.py"))


@pytest.mark.parametrize("place", PLACES)
def test_each_row_opens_a_page_that_there_is(place: str) -> None:
    for row, line in zip(PLACES[place].values(), ways_from(place), strict=True):
        assert set(row) <= {"page", "icon", "title", "detail", "given"}
        assert isinstance(line.act, Go)
        assert line.act.page in (COPIES if place == "log.export: copies" else PAGES)
        assert line.title
        assert not line.icon or line.icon in DRAWN


def test_each_row_is_asked_for_by_name_or_with_its_place() -> None:
    """What a page seldom shows would fail when it does; a row that none shows is dead."""
    whole = set(re.findall(r'ways_from\("([^"]+)"\)', CODE)) | set(HEADINGS)
    single = set(re.findall(r'way_from\("([^"]+)", "([^"]+)"', CODE))
    assert whole <= set(PLACES)
    assert all(key in PLACES[place] for place, key in single)
    assert {(place, key) for place in set(PLACES) - whole for key in PLACES[place]} == single
