"""Pairs of pulleys: the wish, the order, every pair and figure in reach, and trying one."""

from dataclasses import replace

import pytest

from logic.answers.first_push import first_push
from logic.answers.first_speed import first_speed
from logic.board import Value
from logic.units import GAP
from screens.acts.entering import Put
from screens.acts.keeping import Set, Settle
from screens.blocks import PLAIN, RIGHT, UNSURE, WRONG, FigureRow
from screens.numbers.best_pairs import table_of
from tests.pages.reader import Reader


@pytest.fixture
def pairs(pages: Reader) -> Reader:
    """Give the page on Towpath 36."""
    return pages.open("numbers.pairs")


def ask(page: Reader, label: str, text: str) -> None:
    """Type a value and close the keypad."""
    page.tap(label)
    page.type(text)
    page.tap("Done")


def wish(page: Reader, speed: str, hill: str) -> None:
    """Wish for a speed and a hill."""
    ask(page, "Top speed you want", speed)
    ask(page, "Hill you want", hill)


def test_a_wish_orders_the_pairs_and_leaves_the_table_as_it_is(pairs: Reader) -> None:
    before = table_of(pairs.world)
    wish(pairs, "35", "20")
    assert table_of(pairs.world) is before
    ask(pairs, "Wheel diameter", "107")
    assert table_of(pairs.world) is not before


def rows(page: Reader) -> list[FigureRow]:
    """Return the pairs that stand on the page."""
    return [one for one in page.blocks() if isinstance(one, FigureRow)]


def test_the_wish_is_answered_first(pairs: Reader) -> None:
    assert (pairs.page.crown.form, pairs.page.crown.word) == (PLAIN, "16:40")
    wish(pairs, "35", "12")
    # Held against the table in tests/logic: 16:44 does 36.9 km/h with the coolest motor.
    crown = pairs.page.crown
    assert (crown.form, crown.word) == (RIGHT, "16:44")
    assert crown.text == f"also 18:48, 16:40. For 35{GAP}km/h and a 12{GAP}% hill."
    assert rows(pairs)[0].label == "16:44"
    assert (rows(pairs)[0].number, rows(pairs)[0].unit) == ("36.9", "km/h")


def test_a_wish_ranks_and_says_what_gives(pairs: Reader) -> None:
    wish(pairs, "38", "15")
    assert pairs.shows(f"47 of 91 do 38{GAP}km/h and a 15{GAP}% hill.")
    assert "in hand" in rows(pairs)[0].detail
    assert pairs.shows(f"Taller gears gain nothing above 43.9{GAP}km/h: battery amps limit.")
    ask(pairs, "Hill you want", "45")
    assert pairs.page.crown.form == WRONG
    assert pairs.page.crown.word == "None does it"
    assert "short" in pairs.page.crown.text
    assert "short" in rows(pairs)[0].detail
    assert pairs.shows("None of 91 do")


def test_a_speed_that_only_the_printed_constant_promises_is_not_sure(pairs: Reader) -> None:
    ask(pairs, "Top speed you want", "35")
    assert pairs.page.crown.form == RIGHT
    kv = pairs.world.saved.motor.kv
    printed = pairs.world.saved.with_value("motor.kv", replace(kv, known="label"))
    pairs.world = replace(pairs.world, saved=printed)
    assert pairs.page.crown.form == UNSURE
    assert "Kv is only printed" in pairs.page.crown.text


def test_pairs_are_sorted_by_a_figure_and_turned_by_a_second_tap(pairs: Reader) -> None:
    assert rows(pairs)[0].label == "16:40"
    assert "on the board now" in rows(pairs)[0].detail
    pairs.tap("Sort by another figure")
    pairs.tap("Push")
    strong = [float(row.number) for row in rows(pairs)]
    assert strong == sorted(strong, reverse=True)
    pairs.tap("Push")
    weak = [float(row.number) for row in rows(pairs)]
    assert weak == sorted(weak)
    assert weak[0] < strong[-1]
    wish(pairs, "38", "15")
    pairs.tap("By the wish")
    assert "in hand" in rows(pairs)[0].detail


def test_every_pair_and_every_figure_can_be_reached(pairs: Reader) -> None:
    limited = pairs.world.saved.with_value("controller.erpm_limit", Value(9000.0, "label"))
    pairs.world = replace(pairs.world, saved=limited)
    while "more" in pairs:
        pairs.act(pairs["more"].act)
    assert len({row.label for row in rows(pairs)}) == 91
    pairs.tap("Sort by another figure")
    for option in pairs["sorting"].options:
        pairs.act(option.act)
        assert any(row.number != "–" for row in rows(pairs)), option.text


def test_a_pair_is_tried_with_its_belt(pairs: Reader) -> None:
    wish(pairs, "38", "15")
    pairs.tap("18:44")
    assert pairs.page.title == "Pair 18:44"
    pairs.tap("Try this pair on the board")
    board = pairs.world.board
    assert (board.drive.motor_teeth.si, board.drive.wheel_teeth.si) == (18.0, 44.0)
    assert board.drive.motor_teeth.known == "chosen"
    assert board.drive.belt_teeth.si == 59.0
    assert pairs.world.saved.drive.motor_teeth.si == 16.0
    assert pairs.page.foot.main.text == "Keep on board"


def test_a_pair_without_a_belt_is_tried_with_the_belt_that_is_on(pages: Reader) -> None:
    pages.open("numbers.pair", motor=12, wheel=60, belt=None)
    assert pages.shows("No belt in stock fits the mount.")
    pages.tap("Try this pair on the board")
    assert set(pages.world.trial) == {"drive.motor_teeth", "drive.wheel_teeth"}


def test_what_a_board_lacks_is_named_and_asked_for(bare: Reader) -> None:
    bare.open("numbers.pairs")
    assert bare.page.crown.text == "8 values give the pulleys."
    assert rows(bare) == []
    bare.act(bare.page.crown.act)
    assert bare.page.foot.entry.key == "drive.profile"


FIRST = {
    "drive.profile": "HTD 5M",
    "drive.wheel_diameter": "90",
    "motor.kv": "190",
    "pack.series": "10",
    "load.board_mass": "11",
    "rider.mass": "80",
    "controller.motor_current": "40",
    "drive.motors": "2",
}


def test_what_nobody_knows_without_a_bench_is_taken_as_usual(bare: Reader) -> None:
    bare.open("numbers.pairs")
    wish(bare, "35", "12")
    bare.tap("Give them one by one")
    for key, text in FIRST.items():
        entry = bare.page.foot.entry
        assert entry.key == key
        if entry.field.kind == "choice":
            bare.act(Put(key, Value(text), entry.keeps))
        else:
            bare.type(text)
        bare.enter()
    crown = bare.page.crown
    assert (crown.form, crown.act.page) == (UNSURE, "numbers.pair")
    assert "Belts are not checked." in crown.text
    assert "7 usual values stand in." in crown.text
    # What is printed is no guess, and a limit is never taken as usual: it was asked for.
    assert bare.world.trial["motor.kv"].known == "label"
    bare.tap("7 usual values stand in")
    assert "usual motor.resistance" in bare
    assert "usual controller.motor_current" not in bare
    # The same pulleys on the page of speed, which comes to its figures by itself.
    board, rider = bare.world.board, bare.world.person.rider
    motor, wheel = crown.act.args["motor"], crown.act.args["wheel"]
    for key, teeth in (("drive.motor_teeth", motor), ("drive.wheel_teeth", wheel)):
        board = board.with_value(key, Value(float(teeth), "chosen"))
    pair = next(
        one
        for one in table_of(bare.world).pairs
        if (one.option.motor_teeth, one.option.wheel_teeth) == (motor, wheel)
    )
    assert pair.option.loaded == pytest.approx(float(first_speed(board, rider).item.value))
    assert pair.option.climb == pytest.approx(float(first_push(board, rider, 6.0)["climb_start"].value))


def test_without_a_mount_belts_are_said_to_be_left_out(pairs: Reader) -> None:
    bare = pairs.world.saved
    for key in ("mount.centre_least", "drive.belt_teeth", "drive.centre", "drive.span"):
        bare = bare.with_value(key, None)
    pairs.world = replace(pairs.world, saved=bare)
    wish(pairs, "35", "12")
    assert pairs.page.crown.form == UNSURE
    assert "Belts are not checked." in pairs.page.crown.text
    assert pairs.shows("Belts are left out")


def test_the_page_of_a_pair_gives_the_speed_that_the_list_gives_while_values_are_lacking(
    pages: Reader,
) -> None:
    """The list said 35.8 km/h with what is usual, and the page of the pair that a chemistry is missing."""
    pages.act(Set({"pack.chemistry": None, "motor.resistance": None}))
    pages.act(Put("ask.wish_speed", Value(9.0), "question"))
    pages.open("numbers.pairs").rest()
    row = next(block for block in pages.blocks() if block.key.startswith("pair "))
    pages.tap(row.said().split(",")[0])
    low, high = (float(one) for one in pages.page.crown.number.split(" to "))
    assert low < float(row.number) < high
    assert pages.page.crown.detail == "Rough: usual values stand in."


@pytest.mark.parametrize(("system", "speed"), [("metric", "35\u00a0km/h"), ("inch", "22\u00a0mph")])
def test_the_speed_of_a_wobble_is_in_the_persons_unit(pages: Reader, system: str, speed: str) -> None:
    pages.act(Settle({"system": system}))
    pages.open("numbers.pairs")
    assert f"Above about {speed} a board may begin to wobble." in pages["caution"].text
