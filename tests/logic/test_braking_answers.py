"""A stop is told for the charge at which it is longest, and told alike on every page."""

from math import pi, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from logic.answers.controller_card import controller_card
from logic.answers.descents import descent
from logic.answers.energy import pack_figures
from logic.answers.pair import pair_details
from logic.answers.pairs import pair_table
from logic.answers.reading import Item, Result
from logic.answers.stopping import stop_alone, stopping
from logic.board import Value
from logic.exchange import demo_boards
from tests.random_boards import CHANGED

RIDER = Value(80.0, "measured")
BOARDS = demo_boards()
TOWPATH = BOARDS[0]


def number(item: Item) -> float:
    assert isinstance(item, Result), item
    return item.value


def way_by_hand(volts: float, speed: float) -> float:
    """Return Towpath's braking way on the level: ours, forces from the powers, integrated by another program.

    35 A a motor, 8 A into 0.11 ohm, 45 mohm windings, Kv 170, 2.5 to 1, 100 mm wheels, 90.5 kg; the axle behind
    carries half and is lightened: friction 0.6, wheelbase 750 mm, mass 1 m above the ground.
    """
    weight = 90.5 * 9.80665
    grip = 0.6 * weight * 0.375 / (0.75 + 0.6 * 1.0)
    constant = 60 / (2 * pi * 170)
    share = 8.0 * (volts + 8.0 * 0.11) / 2

    def force(v: float) -> float:
        emf = v / 0.05 * 2.5 * constant
        amps = 35.0
        if amps * emf - amps**2 * 0.045 > share:
            amps = 2 * share / (emf + sqrt(emf**2 - 4 * 0.045 * share))
        return min(grip, 2 * amps * constant * 2.5 / 0.05) + weight * 0.015 + 0.5 * 1.225 * 0.6 * v**2

    return quad(lambda v: 90.5 * v / force(v), 0.0, speed, limit=200)[0]


@pytest.mark.parametrize(("volts", "printed"), [(30.0, 44.14), (42.0, 38.71)])
def test_a_stop_by_hand_at_each_charge(volts: float, printed: float) -> None:
    whole = 25 / 3.6 * 2.5 + way_by_hand(volts, 25 / 3.6)
    assert whole == pytest.approx(printed, abs=0.005)
    asked = stopping(TOWPATH, RIDER, {"ask.rest_voltage": Value(volts, "chosen")})
    assert number(asked.items["stop_dry_design"]) == pytest.approx(whole, rel=1e-4)


def test_the_longest_stop_of_any_charge_is_shown() -> None:
    for board in BOARDS:
        volts = pack_figures(board, RIDER, {}).items
        empty, full = number(volts["empty"]), number(volts["full"])
        at_each = [
            number(
                stop_alone(
                    board, RIDER, {"ask.rest_voltage": Value(empty + step / 10 * (full - empty), "chosen")}
                )
            )
            for step in range(11)
        ]
        shown = number(stopping(board, RIDER, {}).items["stop_dry_design"])
        assert shown == pytest.approx(max(at_each), rel=1e-9)
        assert shown > min(at_each) * 1.05
        assert number(stop_alone(board, RIDER, {})) == shown


def test_the_cut_out_of_a_full_pack_is_told_apart() -> None:
    for board in BOARDS:
        answer = stopping(board, RIDER, {})
        assert answer.cuts_out
        full = number(pack_figures(board, RIDER, {}).items["full"])
        assert number(answer.items["plug_voltage"]) > full


@settings(max_examples=60)
@given(CHANGED, st.floats(1.0, 50.0))
def test_a_stop_as_set_is_the_same_on_every_page(board: object, height: float) -> None:
    asking = {"ask.mass_height": Value(min(1.6, 0.2 + height / 40.0), "chosen")}
    pages = (pack_figures, descent, stopping)
    for name in ("slows_as_set", "stop_as_set"):
        first, *others = (page(board, RIDER, asking).items[name] for page in pages)  # type: ignore[operator]
        for other in others:
            assert isinstance(other, Result) == isinstance(first, Result)
            if isinstance(first, Result):
                assert other.value == first.value


def test_the_card_stops_as_set_where_it_sets_what_is_set() -> None:
    for board in BOARDS:
        card = controller_card(board, RIDER, {}).items
        packs = pack_figures(board, RIDER, {}).items
        assert number(card["stop_for_long"]) == number(packs["stop_for_long"])
        same = number(card["limit_brake"]) == float(board.controller.regen_current.si)  # type: ignore[union-attr]
        assert (number(card["stop_for_long"]) == number(packs["stop_as_set"])) is same


def test_a_pair_stops_as_the_table_says() -> None:
    for board in BOARDS:
        of_table = next(pair for pair in pair_table(board, RIDER, {}).pairs if pair.present).option.stop
        of_pair = pair_details(board, RIDER, {})
        assert number(of_pair["stop"]) == pytest.approx(of_table, rel=1e-6)
        asking = {"ask.stop_speed": Value(number(of_pair["top_loaded"]), "chosen")}
        whole = number(stop_alone(board, RIDER, asking))
        assert whole - 2.5 * number(of_pair["top_loaded"]) == pytest.approx(number(of_pair["stop"]), rel=1e-6)


@pytest.mark.parametrize("axle", ["behind", "in front"])
def test_a_mass_behind_the_rear_axle_is_refused_by_its_own_name(axle: str) -> None:
    """Whichever axle brakes: once it was "distance: not positive" for a board driven in front."""
    asked = {"ask.axle": Value(axle, "chosen"), "ask.mass_behind_front": Value(0.9, "chosen")}
    problem = stop_alone(TOWPATH, RIDER, asked).problem  # type: ignore[union-attr]
    assert problem is not None
    assert (problem.field, problem.reason) == ("ask.mass_behind_front", "range")
    assert (problem.low, problem.high) == (0.0, 0.75)
