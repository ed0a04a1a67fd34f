"""Stopping, speed and push, long descents: typed speeds, warnings, steps along the curve, limiting cases."""

import pytest

from logic.answers.push import pushing
from logic.answers.reading import Result
from logic.answers.stopping import stop_alone
from logic.board import Value
from logic.units import GAP, MINUS
from screens.acts import Go
from screens.acts.entering import Put
from screens.blocks import Figure, FigureRow, Notice
from screens.pictures.strokes import Path
from screens.showing import lead
from tests.pages.reader import Reader


def ask(pages: Reader, label: str, text: str) -> None:
    """Type a value and close the keypad."""
    pages.tap(label)
    pages.type(text)
    pages.tap("Done")


def words(pages: Reader) -> list[str]:
    """Return the signal words on the page."""
    return [block.word for block in pages.blocks() if isinstance(block, Notice)]


# Stopping


@pytest.fixture
def stop(pages: Reader) -> Reader:
    """Give the page of stopping."""
    return pages.open("numbers.stopping")


def test_the_stop_follows_the_typed_speed(stop: Reader) -> None:
    # The way is that of an empty pack, the cut-out that of a full one; a measured pack is told as it is.
    assert stop.page.crown.detail == "Pack nearly empty: the longest way of any charge."
    assert stop.shows("lifts a full pack above full charge")
    before = float(stop.page.crown.number)
    stop.tap("Stop from")
    stop.type("30")
    assert float(stop.page.crown.number) > before
    assert stop.page.crown.label == f"Stopping distance from 30{GAP}km/h: dry, 2.5{GAP}s to react"
    stop.tap("Done")
    assert words(stop) == ["warning"]
    ask(stop, "Pack at rest", "38")
    assert words(stop) == []
    assert not stop.page.crown.detail
    assert stop.shows("Motors alone, no foot brake.")


def test_a_hill_too_steep_is_a_sentence_and_a_warning(stop: Reader) -> None:
    ask(stop, "Slope under it", "-20")
    assert stop.page.crown.number == "never"
    assert stop.page.crown.detail == "Does not stop: the slope is stronger than the brake."
    assert stop.shows("stronger than the brake: the board does not stop on it")
    assert "rules" not in stop
    assert stop["chart"].text == "Nothing to draw: it does not stop on this slope."


def test_what_was_asked_outlives_a_restart_and_stays_with_its_board(stop: Reader) -> None:
    ask(stop, "Stop from", "32")
    stop.restart(hours=2)
    assert stop["ask.stop_speed"].value == "32\u00a0km/h"
    stop.store.put("board", next(board.id for board in stop.world.boards() if board.name == "Weir"))
    stop.restart()
    assert stop["ask.stop_speed"].value == "25\u00a0km/h"


def test_volts_of_a_stop_are_refused_like_the_boards(stop: Reader) -> None:
    ask(stop, "Pack at rest", "1400")
    assert "ask.rest_voltage" not in stop.world.answers
    assert stop["ask.rest_voltage"].detail == "1400 not used"


def test_what_holds_the_brake_is_said_from_fast_to_slow(stop: Reader) -> None:
    said = stop["rules"].text
    assert said.startswith(
        f"What holds the brake down on a dry road: what the pack may take back from 25{GAP}km/h"
    )
    assert said.endswith("km/h down.")


def test_the_list_of_numbers_shows_the_way_it_leads_with(stop: Reader) -> None:
    world = stop.world
    item = stop_alone(world.board, world.person.rider, world.answers)
    assert isinstance(item, Result)
    crown = stop.page.crown
    assert lead(item, world.style) == f"{crown.number}{GAP}{crown.unit}"


# Speed and push


@pytest.fixture
def push(pages: Reader) -> Reader:
    """Give gearing and speed with other roads open."""
    return pages.open("numbers.gearing", open_road=True)


def test_steps_along_the_curve(push: Reader) -> None:
    crown, top = push.page.crown.number, push["road top_loaded"].number
    assert crown == top
    push.tap("Along the curve, one more")
    assert push["ask.speed"].value == "21\u00a0km/h"
    strokes = push["road chart"].strokes.strokes
    upright = [one for one in strokes if isinstance(one, Path) and {x for x, _ in one.points} == {21.0}]
    assert len(upright) == 1
    assert push["road at"].text.startswith(f"At 21{GAP}km/h: push ")
    assert push["push_at"].label == f"Push at 21{GAP}km/h"
    assert push["road top_loaded"].number == top
    push.tap("Grade, one more")
    push.tap("Grade, one more")
    assert push["ask.grade"].value == "2\u00a0%"
    assert float(push["road top_loaded"].number) < float(top)
    # The headline stays that of a level road, and says so; the fold says which road is asked about.
    assert push.page.crown.number == crown
    assert "level road" in push.page.crown.detail
    push.tap("Headwind, one less")
    assert push["ask.wind"].value == f"{MINUS}5\u00a0km/h"
    assert push["road"].note == f"grade 2{GAP}%, headwind {MINUS}5{GAP}km/h"


def test_each_limiting_case_is_a_sentence(push: Reader) -> None:
    ask(push, "Grade", "40")
    assert push["road top_loaded"].detail == "Cannot start: the road asks for more than the motors push."
    push.tap("Grade")
    push.rub(2)
    push.type("-20")
    push.tap("Done")
    assert push["road top_loaded"].detail.startswith("Runs past:")


@pytest.mark.parametrize("amps", ["150", "400"])
def test_battery_amps_beyond_the_pack_are_typed_and_come_back_to(push: Reader, amps: str) -> None:
    ask(push, "Battery current, drive, whole board", amps)
    said = f"full throttle: motor amps up to 30{GAP}km/h. Then duty up to"
    assert said in push["road rules"].text
    push.restart(minutes=1)
    assert push.name == "numbers.gearing"
    assert said in push["road rules"].text


def test_a_folded_road_is_not_worked_out(push: Reader) -> None:
    world = push.world
    items = world.kept(pushing, world.board, world.person.rider, world.answers).items
    assert push.page.crown
    # A second start and the ways of both wait in their fold.
    assert not {"time_30", "way_20", "way_30"} & items.read
    push.tap("All figures on this road")
    assert push["road way_30"].number == "29"


def test_a_speed_asked_before_under_its_old_key_is_kept(push: Reader) -> None:
    push.store.put(f"answers/{push.world.saved.id}", {"ask.gearing_speed": {"si": 5.0, "known": "chosen"}})
    push.restart()
    assert push["ask.speed"].value == "18\u00a0km/h"
    push.tap("Along the curve, one more")
    push.restart()
    assert push["ask.speed"].value == "19\u00a0km/h"


# Long descents


def test_less_charge_at_the_top_takes_the_warning_away(pages: Reader) -> None:
    pages.open("numbers.descents")
    assert words(pages) == ["warning"]
    assert pages.page.crown.number == "0"
    for _ in range(4):
        pages.tap("Charge at the top, one less")
    assert "warning" not in words(pages)
    assert float(pages.page.crown.number) > 0
    assert pages.page.crown.detail.startswith("By energy alone")


# What all of them have


PAGES = [
    ("numbers.stopping", "controller.brake_current", 20.0),
    ("numbers.descents", "load.board_mass", 20.0),
]


@pytest.mark.parametrize(("name", "key", "si"), PAGES)
def test_a_trial_is_told_against_the_saved_board_until_it_is_dropped(
    pages: Reader, name: str, key: str, si: float
) -> None:
    pages.open(name)

    def changes() -> list[str]:
        found = [one.change for one in pages.blocks() if isinstance(one, Figure | FigureRow)]
        return [change for change in found if change]

    if "all" in pages:
        pages.tap("All figures")
    assert changes() == []
    pages.act(Put(key, Value(si)))
    assert changes()
    assert pages.page.foot.note.startswith("Trying: ")
    pages.tap("Drop the trial")
    assert changes() == []


@pytest.mark.parametrize(("name", "key", "si"), PAGES)
def test_each_figure_opens_its_working(pages: Reader, name: str, key: str, si: float) -> None:
    pages.open(name)
    pages.tap("All figures")
    known = [one for one in pages.blocks() if isinstance(one, Figure | FigureRow) and one.number != "–"]
    assert len(known) >= 7
    for one in known:
        assert isinstance(one.act, Go), one.label
        assert (one.act.page, one.act.args["label"]) == ("working", one.label)


@pytest.mark.parametrize("name", ["numbers.stopping", "numbers.gearing"])
def test_teeth_that_do_not_fit_are_named_and_grey_the_page(pages: Reader, name: str) -> None:
    pages.open(name)
    pages.act(Put("drive.motor_teeth", Value(44.0)))
    assert pages.shows("The motor pulley has more teeth than the wheel pulley")
    assert pages.page.crown.grey
    assert pages.page.foot.main is None
