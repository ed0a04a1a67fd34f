"""Packs: DANGER that cannot be missed or tapped away, readings, trials, the learnt range."""

from datetime import timedelta

import pytest

from logic.answers.charging import charging
from logic.answers.energy import pack_energy
from logic.answers.joining import joining
from logic.answers.range import range_alone
from logic.answers.reading import Result
from logic.board import Value
from logic.log import Ride
from logic.units import GAP
from screens.acts import Go
from screens.acts.entering import Put
from screens.acts.keeping import Record, Settle
from screens.blocks import PLAIN, RIGHT, UNSURE, WRONG, Figure, FigureRow, Notice, Verdict
from screens.showing import lead
from tests.pages.reader import Reader


def use(pages: Reader, name: str) -> Reader:
    """Put an example board in use."""
    pages.store.put("board", next(board.id for board in pages.world.boards() if board.name == name))
    pages.restart()
    return pages


def enter(pages: Reader, label: str, text: str) -> None:
    """Type a value and close the keypad."""
    pages.tap(label)
    pages.type(text)
    pages.tap("Done")


def notices(pages: Reader) -> list[Notice]:
    """Return what stands with a signal word."""
    return [block for block in pages.blocks() if isinstance(block, Notice)]


def figures(pages: Reader) -> list[Figure | FigureRow]:
    """Return the figures on the page."""
    return [block for block in pages.blocks() if isinstance(block, Figure | FigureRow)]


def assert_danger(pages: Reader, word: str) -> None:
    """The verdict is no, DANGER is the first thing under it and the one signal word, and no figure is left."""
    crown = pages.page.crown
    assert isinstance(crown, Verdict)
    assert (crown.word, crown.form, crown.text) == (f"DANGER: {word}", WRONG, "")
    assert pages.page.blocks[0] == notices(pages)[0]
    assert [notice.word for notice in notices(pages)] == ["danger"]
    assert figures(pages) == []


# Charging


@pytest.fixture
def charger(pages: Reader) -> Reader:
    """Give the charging page of Towpath 36."""
    return pages.open("numbers.charging")


def test_the_most_amps_and_the_time_stand_in_one_verdict(charger: Reader) -> None:
    # Ours: 8 A is two cells of 4 A; 2.70 h at 3 A.
    crown = charger.page.crown
    assert (crown.word, crown.form) == (f"Up to 8{GAP}A; 2{GAP}1/2{GAP}h with 3{GAP}A", RIGHT)
    assert crown.act == Go("working", {"item": crown.act.args["item"], "label": "Time on the charger"})
    assert (charger["time"].number, charger["time"].unit) == ("2.28 to 3.19", "h")


def test_a_wrong_charger_shows_while_it_is_typed_and_withholds_every_figure(charger: Reader) -> None:
    assert figures(charger)
    charger.tap("Charger volts")
    charger.type("50.4")
    assert_danger(charger, "do not charge")
    charger.tap("Done")
    assert_danger(charger, "do not charge")


def test_nothing_on_the_page_takes_a_wrong_charger_away(charger: Reader) -> None:
    enter(charger, "Charger volts", "50.4")
    charger.tap("Charge now, one more")
    assert_danger(charger, "do not charge")
    assert all(act is None for block in notices(charger) for act in block.acts().values())
    bars = [charger.page.foot.main.text, *(bar.text for bar in charger.page.foot.beside)]
    assert bars == ["Change: charger volts", "Drop the trial"]
    charger.restart(minutes=5)
    assert_danger(charger, "do not charge")
    charger.tap("Change: charger volts")
    charger.rub(4)
    charger.type("42")
    charger.tap("Charge now, one less")
    assert notices(charger) == []
    assert charger["time"].number == "2.28 to 3.19"


@pytest.mark.parametrize(
    ("typed", "danger"), [("42.5", False), ("42.6", True), ("29.4", True), ("36.5", True), ("41", False)]
)
def test_the_edges_of_a_right_charger(charger: Reader, typed: str, danger: bool) -> None:  # noqa: FBT001
    enter(charger, "Charger volts", typed)
    assert bool(notices(charger)) is danger


def test_cold_charging_is_a_warning_and_leaves_the_figures(charger: Reader) -> None:
    for _ in range(5):
        charger.tap("Temperature of the cells, one less")
    assert charger["ask.cells_at"].value == "\N{MINUS SIGN}5\u00a0°C"
    assert [notice.word for notice in notices(charger)] == ["warning"]
    assert (charger.page.crown.word, charger.page.crown.form) == ("Do not charge now", WRONG)
    # The line under it says what is right, not the same again.
    assert charger.page.crown.text == f"To charge these cells, 0{GAP}°C to 45{GAP}°C is right."
    assert figures(charger)
    charger.tap("Temperature of the cells, one more")
    assert [notice.word for notice in notices(charger)] == ["caution"]
    assert charger.page.crown.form == UNSURE


def test_amps_over_the_limit_of_the_cells_are_no_right_charger(charger: Reader) -> None:
    enter(charger, "Charger amps", "9")
    # Ours: 9 A into two cells beside each other is 4.5 A each, and each takes 4 A.
    assert charger["cell_amps"].number == "4.5"
    assert (charger.page.crown.word, charger.page.crown.form) == (f"Too many amps: up to 8{GAP}A", WRONG)
    assert [notice.word for notice in notices(charger)] == ["warning"]


def test_a_stepper_ends_at_its_limit(charger: Reader) -> None:
    target = charger["ask.target"]
    assert (target.value, target.more) == ("100\u00a0%", None)
    assert target.less is not None


def test_a_charger_that_lacks_a_value_asks_for_it(bare: Reader) -> None:
    bare.open("numbers.charging")
    assert (bare.page.crown.word, bare.page.crown.form) == ("Tap to fill in", PLAIN)
    bare.act(bare.page.crown.act)
    assert bare.world.asking.key == "pack.charger_current"


def test_a_row_says_how_sure_it_is_only_where_it_differs(pages: Reader) -> None:
    pages.open("numbers.packs")
    assert pages["figures"].note == "Worked out"
    assert pages["limit_drive"].detail == "Whole board. Held by the controller. As entered, from a label."
    assert "Worked out" not in pages["limit_brake"].detail


# Joining


@pytest.fixture
def ferry(pages: Reader) -> Reader:
    """Give the page of joining, for the two packs of Ferry."""
    return use(pages, "Ferry").open("numbers.joining")


@pytest.mark.parametrize(
    ("label", "typed"), [("Second pack, cells in series", "12"), ("Volts of the second pack", "38")]
)
def test_packs_that_differ_stop_the_page(ferry: Reader, label: str, typed: str) -> None:
    enter(ferry, "Volts of the first pack", "41.2")
    enter(ferry, label, typed)
    assert_danger(ferry, "do not join")
    assert ferry.page.foot.main.text == f"Change: {label.lower()}"


def test_another_chemistry_stops_the_page(ferry: Reader) -> None:
    assert ferry["ask.second_chemistry"].detail == "like the first"
    ferry.tap("Second pack, chemistry")
    ferry.tap("LFP, 3.65 V full")
    ferry.tap("Done")
    assert_danger(ferry, "do not join")
    assert ferry.shows("Change: second pack, chemistry")


def test_readings_near_each_other_give_a_yes_and_grow_old(ferry: Reader) -> None:
    assert ferry.page.crown.form == PLAIN
    enter(ferry, "Volts of the first pack", "41.2")
    enter(ferry, "Volts of the second pack", "41.0")
    # Ours: 0.2 V over twice 0.25 ohm at its low end of 0.8; 50 mV for each of 10 cells.
    assert ferry["joining_current"].number == "0.5"
    assert (ferry.page.crown.word, ferry.page.crown.form) == (f"Join: yes, 0.2 of 0.5{GAP}V", RIGHT)
    ferry.time += timedelta(minutes=31)
    ferry.restart()
    assert ferry.shows("Volts of the first pack are missing")
    assert ferry.page.crown.word == f"Join below 0.5{GAP}V apart"


@pytest.mark.parametrize(
    ("limit", "said", "word", "form"),
    [
        ("60", "too much", f"Join: no, 84{GAP}V full", WRONG),
        ("84", "not above it", f"Join: yes, 84{GAP}V full", RIGHT),
    ],
)
def test_the_volts_in_series_are_held_against_the_controller(
    pages: Reader, limit: str, said: str, word: str, form: str
) -> None:
    pages.open("numbers.joining")
    pages.tap("In series")
    # Ours: twice ten cells of 4.2 V.
    assert pages["full_in_series"].number == "84"
    enter(pages, "Volts of the first pack", "41.2")
    enter(pages, "Volts of the second pack", "41.1")
    enter(pages, "Most volts the controller stands", limit)
    assert pages["full_in_series"].detail == f"The controller stands {limit}{GAP}V: {said}."
    assert (pages.page.crown.word, pages.page.crown.form) == (word, form)
    assert notices(pages)[0].word == "warning"


@pytest.mark.parametrize(
    ("name", "word"), [("numbers.charging", "do not charge"), ("numbers.joining", "do not join")]
)
def test_a_pack_out_of_use_stops_the_page(pages: Reader, name: str, word: str) -> None:
    sign = {"sign": "swollen", "at": pages.time.isoformat()}
    pages.store.put(f"pack_out/{pages.world.saved.id}", sign)
    pages.open(name)
    assert_danger(pages, word)
    assert "swollen" in notices(pages)[0].text
    assert next(act for text, act in pages.parts() if text == "What to do with this pack") == Go(
        "ride.pack_signs"
    )
    use(pages, "Weir")
    assert notices(pages) == []


# Energy and limits


def test_another_row_of_cells_is_a_trial(pages: Reader) -> None:
    pages.open("numbers.packs")
    # Ours: 36 V x 8 Ah; a third row of cells is half as much again.
    assert (pages.page.crown.number, pages.page.crown.unit) == ("288", "Wh")
    pages.tap("Cells in parallel, per pack, one more")
    assert (pages.page.crown.number, pages.page.crown.change) == ("432", f"+144{GAP}Wh")
    assert pages.page.foot.note == "Trying: Cells in parallel, per pack"
    pages.tap("Drop the trial")
    assert (pages.page.crown.number, pages.page.crown.change) == ("288", "")


def test_amps_name_the_part_that_limits_and_the_label_follows_the_current(pages: Reader) -> None:
    pages.open("numbers.packs")
    assert pages["limit_brake"].detail == "Whole board. Held by the cells."
    enter(pages, pages["ask.current"].title, "10")
    # Ours: 10 A through 110 mohm.
    assert (pages["sag"].label, pages["sag"].number) == (f"Sag at 10{GAP}A", "1.1")


# Range


def test_three_rides_of_the_log_teach_the_range(pages: Reader) -> None:
    pages.open("numbers.range")
    assert pages.page.crown.label == f"Range, modelled at 20{GAP}km/h"
    assert pages["per_distance_learnt"].detail.startswith("Not yet: three rides")
    for watt_hours in (11.5, 12.0, 12.5):
        pages.act(Record(Ride(distance=1000.0, energy=watt_hours * 3600.0)))
    assert pages.page.crown.label == "Range, learnt from the log"
    # Ours: 259.2 Wh over 12 Wh/km is 21.6 km in the middle.
    assert pages.page.crown.detail.startswith(f"21.6{GAP}km in the middle")
    assert pages["rides"].text == "3 rides of the log tell it."


def test_steps_are_even_in_the_unit_that_is_read(pages: Reader) -> None:
    pages.open("numbers.range")
    pages.act(Settle({"system": "inch"}))
    pages.tap("At a speed of, one more")
    # Ours: 20 km/h are 12.4 mph; the next fifth is 15.
    assert pages["ask.range_speed"].value == "15\u00a0mph"
    pages.tap("At a speed of, one less")
    assert pages["ask.range_speed"].value == "10\u00a0mph"


def test_the_chart_stands_only_where_it_can(pages: Reader) -> None:
    assert pages.open("numbers.range")["chart"].text == "Range over speed, by climb."
    pages.store.put("board", "none")
    pages.restart()
    assert pages["chart"].text == "The chart needs the values that are missing above."


# What all of them have


@pytest.mark.parametrize("name", ["charging", "joining", "packs", "range"])
def test_each_figure_opens_its_working(pages: Reader, name: str) -> None:
    pages.open(f"numbers.{name}")
    pages.tap("All figures") if "all" in pages else None
    known = [one for one in figures(pages) if one.number != "–"]
    assert len(known) >= 4
    for one in known:
        assert isinstance(one.act, Go), one.label
        assert (one.act.page, one.act.args["label"]) == ("working", one.label)


def test_a_refused_number_greys_the_page_and_says_so(pages: Reader) -> None:
    pages.open("numbers.packs")
    pages.tap("Capacity of one cell")
    pages.type("4000")
    assert pages.page.crown.grey
    assert all(one.grey for one in figures(pages))
    pages.back()
    assert not pages.page.crown.grey
    assert pages["pack.cell_capacity"].detail == "4000 not used"


def test_the_list_of_numbers_shows_what_its_pages_lead_with(pages: Reader) -> None:
    world = pages.world
    joined = joining(world.board, world.answers)
    answers = {
        "packs": pack_energy(world.board),
        "range": range_alone(world.board, world.person.rider, world.answers, world.rides),
        "charging": charging(world.board, world.answers).items["time"],
        "joining": joined.items[joined.head],
    }
    for name, item in answers.items():
        assert isinstance(item, Result)
        pages.open(f"numbers.{name}")
        first = figures(pages)[0]
        assert lead(item, world.style) == f"{first.number}{GAP}{first.unit}", name


def test_a_value_of_the_board_is_put_on_trial(pages: Reader) -> None:
    pages.open("numbers.range").act(Put("load.board_mass", Value(20.0)))
    assert pages["load.board_mass"].trial
    assert pages.page.crown.change.startswith("\N{MINUS SIGN}")
