"""The list of a place beside its page: rows that lead on and nothing else, whole at its width and every text scale."""

import pytest

from screens.acts import Both, Go, Home, Place
from screens.beside import LISTS, beside
from screens.blocks import Line, Section
from screens.paper.measure import measure
from screens.paper.room import list_width
from screens.paper.scale import Look
from tests.pages.reader import Reader
from tests.pages.test_layout import SCALES, faults

SIZES = ((800, 1280), (1024, 768), (1280, 800))


@pytest.mark.parametrize("place", LISTS)
def test_every_row_leads_on_from_the_place_and_none_is_cut(pages: Reader, place: str) -> None:
    pages.act(Place(place))
    home = [one.act for one in pages.blocks() if isinstance(one, Line) and isinstance(one.act, Go)]
    pages.act(home[-1])
    rows = beside(pages.world)
    acts = [row.act for row in rows if isinstance(row, Line)]
    assert acts == [Both((Home(), act)) for act in home]
    assert not isinstance(rows[-1], Section)
    chosen = [row for row in rows if isinstance(row, Line) and row.chosen]
    assert [row.act for row in chosen] == [acts[-1]]
    found = []
    for width, height in SIZES:
        for scale in SCALES:
            wide = list_width(width, height, scale)
            forms = [measure(row, wide, Look(scale)) for row in rows] if wide else []
            found += [f"{width} {scale}: {fault}" for laid in forms for fault in faults(laid)]
    assert found == []


def test_a_low_or_narrow_window_has_no_room_for_a_list() -> None:
    assert [list_width(*size, 1.0) for size in ((412, 915), (740, 1000), (915, 412))] == [0.0, 0.0, 0.0]
    assert [list_width(800, 1280, scale) for scale in SCALES] == [280.0, 280.0, 0.0, 0.0]


def test_a_place_itself_and_a_ride_have_none(pages: Reader) -> None:
    pages.act(Place("numbers"))
    assert beside(pages.world) == ()
    pages.act(Place("ride"))
    pages.open("ride.tension")
    assert beside(pages.world) == ()
