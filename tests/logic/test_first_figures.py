"""First figures of stopping, holding and descents: a number before the board is known whole, and the full one in its band."""

import pytest

from logic.answers.descents import descent
from logic.answers.first_descent import first_descent
from logic.answers.first_figure import SEEN
from logic.answers.first_hold import NEEDED, first_hold
from logic.answers.first_range import PACK
from logic.answers.first_stop import first_stop, stop_so_far
from logic.answers.hold import holding
from logic.answers.reading import Open, Result
from logic.answers.stopping import stop_alone
from logic.board import Board, Value
from logic.exchange import demo_boards
from tests.logic.test_first_speed import only
from tests.loose import loose_ends

RIDER = Value(80.0, "guess")
DEMOS = demo_boards()
EMPTY = Board("empty", "Empty")


def test_an_empty_board_stops_by_what_motors_usually_do() -> None:
    found = first_stop(EMPTY, None, {})
    assert found.level == "by usual"
    # Ours: 25 km/h is 6.944 m/s; 2.5 s x 6.944 + 6.944^2 / (2 x 1.2) = 17.36 + 20.09 = 37.45 m, ends by 2.5 and 0.6 m/s2.
    assert float(found.item.value) == pytest.approx(37.45, abs=0.01)
    assert [float(end) for end in found.item.band] == pytest.approx([27.01, 57.55], abs=0.01)
    assert found.item.standing == "estimate"
    assert loose_ends(found.item) == []


def test_a_slope_that_is_stronger_than_the_usual_brake_is_not_stopped_on() -> None:
    # Ours: 20 % downhill pushes with 9.81 x sin(atan 0.2) = 1.92 m/s2, more than 1.2.
    item = first_stop(EMPTY, None, {"ask.stop_grade": Value(-0.2)}).item
    assert isinstance(item, Open)
    assert item.outcome == "does not stop"


@pytest.mark.parametrize("board", DEMOS, ids=lambda board: board.name)
def test_the_full_stop_lies_in_the_modelled_band(board: Board) -> None:
    full = stop_alone(board, RIDER, {})
    found = first_stop(only(board, *SEEN), RIDER, {})
    assert found.level == "modelled"
    assert found.item.band[0] < float(full.value) < found.item.band[1]
    assert found.item.standing == "estimate"
    assert loose_ends(found.item) == []


def test_who_knows_nothing_of_the_board_is_told_what_a_time_needs() -> None:
    found = first_hold(EMPTY, None, {})
    assert (found.level, found.item.missing) == ("nothing", NEEDED)


@pytest.mark.parametrize("board", DEMOS, ids=lambda board: board.name)
def test_the_full_time_lies_between_the_ends_of_the_first(board: Board) -> None:
    full = holding(board, RIDER, {}).items["hold_time"]
    found = first_hold(only(board, *NEEDED), RIDER, {})
    early, late = found.times
    assert early < float(found.item.value)
    assert late is None or float(found.item.value) < late
    if isinstance(full, Result):
        assert early < float(full.value)
        assert late is None or float(full.value) < late
    assert loose_ends(found.item) == []


@pytest.mark.parametrize("board", DEMOS, ids=lambda board: board.name)
def test_the_full_drop_lies_in_the_band_of_the_usual_load(board: Board) -> None:
    asking = {"ask.start_charge": Value(0.8, "chosen")}
    full = descent(board, RIDER, asking).items["drop_back"]
    found = first_descent(only(board, *PACK, "pack.packs"), None, asking)
    assert found.item.band[0] < float(full.value) < found.item.band[1]
    assert loose_ends(found.item) == []


def test_a_drop_needs_what_the_pack_holds() -> None:
    assert first_descent(EMPTY, None, {}).item.missing == PACK


def test_the_list_of_numbers_shows_the_best_stop_so_far() -> None:
    assert stop_so_far(EMPTY, None, {}) == first_stop(EMPTY, None, {}).item
    assert stop_so_far(DEMOS[0], RIDER, {}) == stop_alone(DEMOS[0], RIDER, {})
