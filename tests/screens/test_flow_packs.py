"""Packs by touch and key: DANGER that cannot be missed or tapped away, the counter card, readings, the learnt range."""

import re
from collections.abc import Callable
from typing import Any

import pytest
from kivy.core.window import Window

from logic.board import Value
from screens.asked import answer
from screens.blocks import WRONG
from screens.phone.share import COPIED, NEITHER, SHARED, share_text
from screens.widgets.notice import Notice, SignalText
from screens.widgets.result import Result
from screens.words.packs import HAZARDS
from tests.screens.session import Session

BACK = 27
FACES = {"320 at 2.0": (320, 568, 2.0), "412 at 1.0": (412, 915, 1.0)}


def use(app: Session, name: str) -> None:
    app.state.choose(next(board.id for board in app.state.boards() if board.name == name))
    app.shell.place("ride")
    app.settle()


def numbers(app: Session, row: str) -> None:
    app.shell.place("numbers")
    app.settle()
    app.tap(row)


def enter(app: Session, label: str, text: str) -> None:
    app.tap(label)
    app.type(text)
    app.tap("Done")


def notices(app: Session) -> list[Any]:
    return [widget for widget in app.walk() if isinstance(widget, Notice) and widget.word]


def figures(app: Session) -> list[Any]:
    return [widget for widget in app.walk() if isinstance(widget, Result)]


def assert_stopped(app: Session) -> None:
    """DANGER is the one signal word and no figure is left."""
    (notice,) = notices(app)
    assert notice.word == "danger"
    assert figures(app) == []


def assert_danger(app: Session) -> None:
    """The page is stopped, and the word stands in view without scrolling."""
    if getattr(app.page, "data", False):
        assert app.page.page.crown.form == WRONG
        # The crown is always in sight.
        assert app.page.page.crown.word.startswith("DANGER")
        return
    assert_stopped(app)
    word = next(widget for widget in app.walk() if isinstance(widget, SignalText) and widget.text == "DANGER")
    page = app.page.scroll
    left, bottom = word.to_window(*word.pos)
    floor = page.to_window(*page.pos)[1]
    assert floor - 1 <= bottom
    assert bottom + word.height <= floor + page.height + 1
    assert left >= 0
    assert left + word.width <= Window.width


@pytest.fixture(params=FACES.values(), ids=FACES)
def face(app: Session, request: pytest.FixtureRequest) -> Session:
    """Give the app at a small face with large text, and at a usual one."""
    width, height, text = request.param
    app.resize(width, height)
    app.state.set_person(text=text)
    app.settle()
    return app


# Wrong charger.


def test_a_wrong_charger_shows_while_it_is_typed(face: Session) -> None:
    numbers(face, "Charging")
    face.tap("Charger volts")
    face.type("50.4")
    face.settle()
    assert_danger(face)
    face.tap("Done")
    face.settle()
    assert_danger(face)
    # The page begins at its notice then.
    notice = next(one for one in face.find_all("DANGER") if one.part in face.page.panes)
    assert notice.y + notice.height <= notice.part.top + 1
    face.key(BACK)
    assert face.row("Charging").value == "wrong charger"


def test_a_wrong_charger_of_the_saved_board_is_told_on_numbers(app: Session) -> None:
    app.state.set_value("pack.charger_voltage", Value(50.4, "label"))
    numbers(app, "Charging")
    assert_danger(app)


# A pack with stop signs.


def test_a_pack_is_taken_out_by_a_sign_and_a_bar_and_stops_every_page(face: Session) -> None:
    face.tap("Swollen or hot pack?")
    assert notices(face)[0].word == "danger"
    face.tap("Take this pack out of use")
    assert not face.page.out
    face.tap("Swollen")
    face.tap("Take this pack out of use")
    assert face.page.out
    face.settle()
    for row in ("Charging", "Joining packs"):
        numbers(face, row)
        assert_danger(face)
    face.shell.place("ride")
    face.settle()
    assert notices(face)[0].word == "danger"
    face.tap("Pack for a flight")
    face.settle()
    assert_danger(face)
    assert not face.shows("Show at the counter")


def test_it_is_not_put_back_by_accident(app: Session) -> None:
    app.tap("Swollen or hot pack?")
    app.tap("Hissing or smoking")
    bar = app.find("Take this pack out of use")
    for _ in range(6):
        app.tap(bar)
    assert app.page.out
    app.key(BACK)
    app.restart(hours=30)
    assert notices(app)[0].word == "danger"
    app.tap("Pack out of use: what to do")
    app.tap("Put into use again")
    assert app.page.out
    app.tap("Another pack is in the board")
    app.tap("Put into use again")
    assert not app.page.out
    app.key(BACK)
    assert notices(app) == []
    notes = [record.body.note for record in app.state.store.page(app.state.saved.id, "note")]
    assert notes == [
        "Pack in use again: another pack is in the board.",
        "Pack taken out of use: hissing or smoking.",
    ]


def test_another_board_is_not_stopped_by_it(app: Session) -> None:
    app.tap("Swollen or hot pack?")
    app.tap("Swollen")
    app.tap("Take this pack out of use")
    use(app, "Weir")
    assert notices(app) == []


# Words.


@pytest.mark.parametrize("key", HAZARDS)
def test_a_hazard_is_told_in_25_words(key: str) -> None:
    words = re.sub(r"\{\w+\}", "12.5 V", HAZARDS[key]).split()
    assert len(words) <= 25
    assert "safe" not in HAZARDS[key].lower()


# Flights.


def packed(app: Session, loose: float = 0.0) -> None:
    """Open the page about a flight for the two packs of Ferry, apart."""
    use(app, "Ferry")
    answer(app.state, "ask.carried", Value("apart"))
    answer(app.state, "ask.loose", Value(loose))
    app.tap("Pack for a flight")


@pytest.mark.parametrize(
    ("loose", "kept", "not_said"),
    [
        (0.0, "In the board. The board is off and cannot start by accident.", "pouch"),
        (1.0, "1 loose, in the cabin. Every connector covered, each pack in its own pouch.", ""),
        (2.0, "Loose, in the cabin. Every connector covered, each pack in its own pouch.", "In the board"),
    ],
)
def test_the_card_says_what_was_entered_and_no_more(
    app: Session, loose: float, kept: str, not_said: str
) -> None:
    packed(app, loose)
    app.tap("Show at the counter")
    app.settle()
    assert kept in app.page.detail
    assert not not_said or not_said not in app.page.detail
    assert "in force 2026-03-27 to 2026-12-31." in app.page.detail


def test_a_counter_reads_one_figure(app: Session) -> None:
    """Ours: 10S of 2.75 Ah is 99 Wh; the label says 101.8 and the card shows no sum beside it."""
    packed(app)
    app.state.set_value("pack.cell_capacity", Value(2.75 * 3600.0, "label"))
    app.state.set_value("pack.marked_energy", Value(101.8 * 3600.0, "label", typed_unit="Wh"))
    app.settle()
    app.tap("Show at the counter")
    app.settle()
    assert app.page.number == "101.8"
    assert "99" not in app.page.detail


def test_the_card_is_nine_millimetres_high_at_every_size(face: Session) -> None:
    packed(face)
    face.tap("Show at the counter")
    face.settle()
    large = next(widget for widget in face.walk() if getattr(widget, "text", "").startswith("90"))
    # A digit of this font is 0.711 of its size high: 9 mm at 160 dots an inch are 56.7 dp.
    assert large.font_size * 0.711 >= 56.7
    assert large.texture_size[0] <= large.width + 1
    assert face.shows("36\u00a0V × 2.5\u00a0Ah = 90\u00a0Wh")
    assert face.shows("2 packs, each")


def test_the_text_is_copied_when_there_is_no_sheet(app: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    copied: list[str] = []
    monkeypatch.setattr("screens.phone.share._copy", copied.append)
    packed(app, 1.0)
    app.tap("Show at the counter")
    app.tap("Send as a text")
    assert app.shows("Copied. Paste it into a message.")
    assert "2 packs, each: 90\u00a0Wh" in copied[0]
    assert "in force 2026-03-27" in copied[0]
    assert "Every connector covered" in copied[0]


def failing(*_: str) -> None:
    raise RuntimeError


@pytest.mark.parametrize(
    ("sheet", "copy", "told"),
    [(lambda *_: None, failing, SHARED), (failing, lambda _: None, COPIED), (failing, failing, NEITHER)],
)
def test_sharing_never_raises(sheet: Callable[..., None], copy: Callable[..., None], told: str) -> None:
    assert share_text("text", "title", sheet=sheet, copy=copy) == told


# The card of the controller.
