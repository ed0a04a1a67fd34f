"""Packs by touch and key: DANGER that cannot be missed or tapped away, the counter card, readings, the learnt range."""

import re
from collections.abc import Callable
from datetime import timedelta
from typing import Any

import pytest
from kivy.core.window import Window

from logic.board import Value
from logic.log import Ride
from logic.units import GAP
from screens.asked import answer
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


def test_a_wrong_charger_shows_while_it_is_typed_and_withholds_every_figure(face: Session) -> None:
    numbers(face, "Charging")
    assert figures(face)
    face.tap("Charger volts")
    face.type("50.")
    face.type("4")
    face.settle()
    assert_danger(face)
    face.tap("Done")
    face.settle()
    assert_danger(face)


def test_nothing_on_the_page_takes_a_wrong_charger_away(app: Session) -> None:
    numbers(app, "Charging")
    enter(app, "Charger volts", "50.4")
    for _ in range(3):
        app.tap(notices(app)[0])
        app.tap("Charge now, one more")
    assert_stopped(app)
    assert not app.shows("Keep on board")
    app.key(BACK)
    assert app.row("Charging").value == "wrong charger"
    app.restart(minutes=5)
    numbers(app, "Charging")
    assert_danger(app)


def test_correcting_the_volts_brings_the_figures_back(app: Session) -> None:
    numbers(app, "Charging")
    enter(app, "Charger volts", "50.4")
    app.tap("Change: charger volts")
    app.type("42")
    app.settle()
    assert notices(app) == []
    assert app.page.head.value == "2.28 to 3.19"


@pytest.mark.parametrize(
    ("typed", "danger"), [("42.5", False), ("42.6", True), ("29.4", True), ("36.5", True), ("41", False)]
)
def test_the_edges_of_a_right_charger(app: Session, typed: str, danger: bool) -> None:  # noqa: FBT001
    numbers(app, "Charging")
    enter(app, "Charger volts", typed)
    assert bool(notices(app)) is danger


def test_the_most_amps_and_the_time_stand_in_one_sentence(app: Session) -> None:
    numbers(app, "Charging")
    # Ours: 8 A is two cells of 4 A; 2.70 h at 3 A.
    assert app.page.head.detail == f"Up to 8{GAP}A; with 3{GAP}A about 2 1/2 h. The last fifth is slow."


def test_a_wrong_charger_of_the_saved_board_is_told_on_numbers(app: Session) -> None:
    app.state.set_value("pack.charger_voltage", Value(50.4, "label"))
    numbers(app, "Charging")
    assert_danger(app)


def test_cold_charging_is_a_warning_and_leaves_the_figures(app: Session) -> None:
    numbers(app, "Charging")
    for _ in range(5):
        app.tap("Temperature of the cells, one less")
    assert app.shows("\N{MINUS SIGN}5 °C")
    (notice,) = notices(app)
    assert notice.word == "warning"
    assert figures(app)
    app.tap("Temperature of the cells, one more")
    assert notices(app)[0].word == "caution"


# Packs that differ.


@pytest.mark.parametrize(
    ("label", "typed"),
    [("Second pack, cells in series", "12"), ("Volts of the second pack", "38")],
)
def test_packs_that_differ_stop_the_page(face: Session, label: str, typed: str) -> None:
    use(face, "Ferry")
    numbers(face, "Joining packs")
    enter(face, "Volts of the first pack", "41.2")
    enter(face, label, typed)
    face.settle()
    assert_danger(face)
    for _ in range(3):
        face.tap(notices(face)[0])
    assert_stopped(face)


def test_another_chemistry_stops_the_page(app: Session) -> None:
    use(app, "Ferry")
    numbers(app, "Joining packs")
    app.tap("Second pack, chemistry")
    app.tap("LFP, 3.65 V full")
    app.tap("Done")
    assert_danger(app)
    assert app.shows("Change: second pack, chemistry")


def test_readings_near_each_other_give_the_figures_and_grow_old(app: Session) -> None:
    use(app, "Ferry")
    numbers(app, "Joining packs")
    enter(app, "Volts of the first pack", "41.2")
    enter(app, "Volts of the second pack", "41.0")
    # Ours: 0.2 V over twice 0.25 ohm at its low end of 0.8.
    assert app.row("Amps at the instant of joining, at most").value == "0.5"
    assert "apart as measured: they may be joined." in app.page.head.detail
    app.time += timedelta(minutes=31)
    app.page.refresh()
    assert app.shows("Volts of the first pack is missing")


@pytest.mark.parametrize(("limit", "said"), [("60", "too much"), ("84", "not above it")])
def test_the_volts_in_series_are_held_against_the_controller(app: Session, limit: str, said: str) -> None:
    numbers(app, "Joining packs")
    app.tap("In series")
    enter(app, "Most volts the controller stands", limit)
    assert app.row("Both in series, full").value == "84"
    assert (
        app.row("Both in series, full").detail == f"The controller stands {limit}\N{NO-BREAK SPACE}V: {said}."
    )


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


def test_not_marked_gives_do_not_pack_and_no_card(app: Session) -> None:
    app.tap("Pack for a flight")
    assert app.shows("Do not pack it")
    assert not app.shows("Show at the counter")
    app.tap("Yes")
    assert app.state.saved.pack.tested.si == "yes"
    assert app.shows("Do not pack it")


def packed(app: Session, loose: float = 0.0) -> None:
    """Open the page about a flight for the two packs of Ferry, apart."""
    use(app, "Ferry")
    answer(app.state, "ask.carried", Value("apart"))
    answer(app.state, "ask.loose", Value(loose))
    app.tap("Pack for a flight")


def test_two_packs_wait_for_joined_or_apart_and_for_loose(app: Session) -> None:
    use(app, "Ferry")
    app.tap("Pack for a flight")
    assert app.shows("Say whether the packs travel apart or joined by a lead.")
    assert not app.shows("Show at the counter")
    app.tap("Apart")
    assert not app.shows("Say whether the packs travel apart or joined by a lead.")
    assert not app.shows("Show at the counter")
    app.tap("Packs out of the board, one more")
    app.type("0")
    app.tap("Done")
    assert app.shows("Show at the counter")


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
    assert app.page.head.value == "101.8"
    assert app.page.head.detail == f"By its cells: 36{GAP}V × 2.75{GAP}Ah = 99{GAP}Wh. The label counts."
    app.tap("Show at the counter")
    app.settle()
    assert app.page.number == "101.8"
    assert "99" not in app.page.detail


def test_rules_that_are_over_say_so(app: Session) -> None:
    packed(app)
    assert "They are over" not in app.page.rules.text
    app.restart(hours=24 * 60)
    app.tap("Pack for a flight")
    assert "They are over: ask the airline for those of today." in app.page.rules.text


@pytest.mark.parametrize(
    ("marked", "verdict"),
    [("100", "May fly"), ("100.1", "Only with"), ("160", "Only with"), ("160.1", "Not as baggage")],
)
def test_the_classes_at_their_edges(app: Session, marked: str, verdict: str) -> None:
    packed(app)
    app.state.set_value("pack.marked_energy", Value(float(marked) * 3600.0, "label", typed_unit="Wh"))
    app.settle()
    assert app.page.head.value == marked
    assert app.page.verdict.text.startswith(verdict)
    assert app.shows("Show at the counter") is (verdict != "Not as baggage")


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


# Trying, learning, the card of the controller.


def test_another_row_of_cells_is_a_trial(app: Session) -> None:
    numbers(app, "Pack energy and limits")
    assert app.page.head.value == "288"
    app.tap("Cells in parallel, per pack, one more")
    assert app.page.head.value == "432"
    assert app.page.head.difference == "+144\u00a0Wh against the saved board"
    assert app.shows("Trying: Cells in parallel, per pack")
    app.tap("Drop the trial")
    assert app.page.head.value == "288"


def test_three_rides_of_the_log_teach_the_range(app: Session) -> None:
    for watt_hours in (11.5, 12.0, 12.5):
        app.state.record(Ride(distance=1000.0, energy=watt_hours * 3600.0, note=""))
    numbers(app, "Range")
    assert app.page.head.label == "Range, learnt from the log"
    # Ours: 259.2 Wh over 12 Wh/km is 21.6 km in the middle.
    assert app.shows("21.6\u00a0km in the middle")


def test_the_workings_of_a_page_open(app: Session) -> None:
    numbers(app, "Charging")
    app.tap("Time on the charger")
    assert app.page.title == "Working"
    assert app.shows("Charge time")
    app.key(BACK)
    assert app.page.title == "Charging"


def test_the_controller_card_reads_the_saved_board(app: Session) -> None:
    app.shell.place("bench")
    app.settle()
    app.tap("Set the controller")
    # What is typed into a controller stands first: two of them share the 30 A of the board.
    assert app.page.head.label == "Battery amps, drive, each controller"
    assert app.page.head.value == "15"
    assert app.row("Battery amps, drive, whole board").value == "30"
    assert app.row("The motors alone slow by").value == "0.776"
    app.tap("Battery current, brake, whole board")
    app.type("4")
    app.tap("Save")
    assert app.page.title == "Set the controller"
    assert app.row("Battery amps, brake, whole board").value == "4"
