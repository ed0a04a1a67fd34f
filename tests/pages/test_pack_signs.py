"""A pack with a stop sign: what to do at once, taken out of use on purpose only, and every page says so."""

import pytest

from screens.acts.outside import Share
from screens.blocks import Choice
from screens.paper.crowns import HELD
from screens.paper.measure import measure
from screens.paper.room import look_of
from screens.paper.sheet import Ink
from tests.pages.reader import Reader
from tests.pages.test_flight import packed, use


def test_a_pack_is_taken_out_by_a_sign_and_a_bar_and_stops_every_page(pages: Reader) -> None:
    pages.open("ride.pack_signs")
    assert pages.page.crown.word == "danger"
    assert pages.page.foot.main.act is None
    assert pages.page.foot.main.why == "First tap what you see."
    pages.tap("Swollen")
    pages.tap("Take this pack out of use")
    assert pages.shows("Out of use: swollen, just now.")
    for name in ("numbers.charging", "numbers.joining", "ride.flight"):
        pages.open(name)
        assert pages.page.crown.word.startswith("DANGER")


def test_it_is_not_put_back_by_accident(pages: Reader) -> None:
    pages.open("ride.pack_signs")
    pages.tap("Hissing or smoking")
    for _ in range(6):
        # Whatever stands in the bar's place.
        foot = pages.page.foot
        bar = foot.main or foot.beside[0]
        pages.tap(bar.text)
    assert pages.shows("Out of use: hissing or smoking")
    pages.restart(hours=30)
    pages.tap("Put into use again")
    assert pages.shows("Out of use: hissing or smoking, yesterday.")
    pages.tap("Another pack is in the board")
    pages.tap("Put into use again")
    assert not pages.shows("Out of use")
    assert [record.body.note for record in pages.records("note")] == [
        "Pack in use again: another pack is in the board.",
        "Pack taken out of use: hissing or smoking.",
    ]


def test_another_board_is_not_stopped_by_it(pages: Reader) -> None:
    pages.open("ride.pack_signs")
    pages.tap("Swollen")
    pages.tap("Take this pack out of use")
    use(pages, "Weir")
    pages.open("ride.pack_signs")
    assert isinstance(pages["sign"], Choice)
    assert pages["sign"].label == "What do you see?"


@pytest.mark.parametrize(
    ("loose", "kept", "not_said"),
    [
        (0.0, "In the board. The board is off and cannot start by accident.", "pouch"),
        (1.0, "1 loose, in the cabin. Every connector covered, each pack in its own pouch.", "never"),
        (2.0, "Loose, in the cabin. Every connector covered, each pack in its own pouch.", "In the board"),
    ],
)
def test_the_card_says_what_was_entered_and_no_more(
    pages: Reader, loose: float, kept: str, not_said: str
) -> None:
    packed(pages, loose)
    pages.tap("Show at the counter")
    assert pages.shows(kept)
    assert not pages.shows(not_said)
    assert pages.shows("in force 2026-03-27 to 2026-12-31.")


def test_the_card_shows_one_figure_and_sends_the_same(pages: Reader) -> None:
    packed(pages, 1.0, marked=101.8)
    pages.tap("Show at the counter")
    crown = pages.page.crown
    assert (crown.label, crown.number, crown.unit) == ("2 packs, each", "101.8", "Wh")
    assert not pages.shows("36\u00a0V")
    pages.tap("Send as a text")
    (sent,) = pages.out
    assert isinstance(sent, Share)
    assert "2 packs, each: 101.8\u00a0Wh" in sent.text
    assert "in force 2026-03-27" in sent.text
    assert "Every connector covered" in sent.text


def test_without_a_card_the_page_says_so(bare: Reader) -> None:
    bare.open("ride.flight_card")
    assert bare.shows("There is no card to show for these packs.")


@pytest.mark.parametrize("marked", [90.0, 101.8, 158.4])
def test_the_figure_is_nine_millimetres_high_at_every_size(pages: Reader, marked: float) -> None:
    packed(pages, marked=marked)
    pages.tap("Show at the counter")
    for width, height in ((320, 568), (412, 915), (915, 412)):
        for scale in (1.0, 1.3, 2.0):
            laid = measure(pages.page.crown, width, look_of(height, scale))
            large = next(mark for mark in laid.marks if isinstance(mark, Ink) and f"{marked:g}" in mark.text)
            # A digit of this font is 0.711 of its size high: 9 mm at 160 dots an inch are 56.7 dp.
            assert large.size * 0.711 >= 56.7
            assert large.size >= HELD[0]
            assert large.width <= width
