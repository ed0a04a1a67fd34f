"""The answers about packs: worked by hand for the example boards, hazards by their edges, no loose ends."""

from itertools import chain, pairwise
from math import pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logic.answers.asked import Asked, Asking
from logic.answers.carrying import flight
from logic.answers.charging import charging, wrong_charger
from logic.answers.controller_card import controller_card
from logic.answers.descents import descent
from logic.answers.energy import pack_figures
from logic.answers.joining import joining
from logic.answers.range import range_answer
from logic.answers.reading import Item, Open, Result
from logic.answers.wiring import first_power, wiring
from logic.board import Board, Value
from logic.errors import InputError
from logic.exchange import demo_boards
from logic.log.rides import LoggedRide
from tests.loose import loose_ends
from tests.printed import agrees
from tests.random_boards import CHANGED

DEMOS = {board.name: board for board in demo_boards()}
TOWPATH, FERRY, LOCK = DEMOS["Towpath 36"], DEMOS["Ferry"], DEMOS["Lock-keeper"]
RIDER = Value(80.0, "measured", typed_unit="kg")
READ = {"ask.first_volts": Value(41.2), "ask.second_volts": Value(41.0)}
RIDES = tuple(
    LoggedRide(km * 1000.0, wh * 3600.0) for km, wh in ((8.2, 98.0), (5.1, 64.0), (11.4, 140.0), (9.6, 121.0))
)


def items_of(
    board: Board, rider: Value | None, asking: Asking, rides: tuple[LoggedRide, ...] = ()
) -> list[Item]:
    """Return every result that the pages about packs show of a board."""
    travel = flight(board, asking)
    return list(
        chain(
            pack_figures(board, rider, asking).items.values(),
            controller_card(board, rider, asking).items.values(),
            range_answer(board, rider, asking, rides).items.values(),
            charging(board, asking).items.values(),
            joining(board, asking).items.values(),
            wiring(board, asking).items.values(),
            first_power(board, asking).items.values(),
            descent(board, rider, asking).items.values(),
            (travel.energy, travel.all_joined),
        )
    )


def number(item: Item, unit: float = 1.0) -> float:
    """Return the value of a result in a unit."""
    assert isinstance(item, Result), item
    return item.value / unit


# Worked by hand. Towpath 36: 10S2P, 4 Ah, 22 mohm; 30 A out, 8 A in.


@pytest.mark.parametrize(
    ("name", "unit", "printed"),
    [
        pytest.param("energy", 3600.0, "288", id="ours: 36 V x 8 Ah"),
        pytest.param("resistance", 1.0, "0.110", id="ours: 22 mohm x 10 / 2"),
        pytest.param("sag", 1.0, "3.30", id="ours: 30 A x 0.11 ohm"),
        pytest.param("loaded_voltage", 1.0, "32.7", id="ours: 36 V - 3.3 V"),
        pytest.param("pack_heat", 1.0, "99.0", id="ours: 30^2 x 0.11 W"),
        pytest.param("cell_current", 1.0, "15.0", id="ours: 30 A / 2"),
        pytest.param("full_braking", 1.0, "42.88", id="ours: 42 V + 8 A x 0.11 ohm"),
        pytest.param("limit_drive", 1.0, "30.0", id="ours: controller 30 under cells 50, fuse 40, BMS 60"),
        pytest.param("limit_brake", 1.0, "8.0", id="ours: cells 2 x 4 A"),
        pytest.param("cells_mass", 1.0, "1.40", id="ours: 20 x 70 g"),
        pytest.param(
            "slows_as_set",
            1.0,
            "0.776",
            # 30 V x 8 A + 8^2 x 0.11 ohm; each motor 8.11 A x (15.60 V - 0.36 V), 22.8 N; two, and 24.7 N of road.
            id="ours: empty pack takes 247 W, so (45.6 + 24.7) N over 90.5 kg",
        ),
    ],
)
def test_figures_of_a_pack(name: str, unit: float, printed: str) -> None:
    assert agrees(number(pack_figures(TOWPATH, RIDER, {}).items[name], unit), printed)


def test_the_weakest_part_is_named() -> None:
    assert pack_figures(TOWPATH, RIDER, {}).weakest == {
        "drive": "controller",
        "brake": "cell",
        "burst": "cell",
    }
    thin = TOWPATH.with_value("pack.fuse", Value(25.0))
    found = pack_figures(thin, RIDER, {})
    assert found.weakest["drive"] == "fuse"
    assert (found.hazards[0].word, found.hazards[0].key) == ("WARNING", "fuse opens first")


def test_a_brake_over_the_cells_is_a_warning() -> None:
    # Ours: two cells of 2 A take 4 A, the controller gives 5 A.
    hazard = pack_figures(LOCK, RIDER, {}).hazards[0]
    assert (hazard.word, hazard.key) == ("WARNING", "braking over cell limit")
    assert {name: value for name, value, _ in hazard.numbers} == {"asked": 5.0, "allowed": 4.0}


def test_more_braking_current_never_stops_later() -> None:
    ways = [
        number(
            pack_figures(TOWPATH.with_value("controller.regen_current", Value(amps)), RIDER, {}).items[
                "stop_as_set"
            ]
        )
        for amps in (2.0, 4.0, 8.0, 16.0, 200.0)
    ]
    assert ways == sorted(ways, reverse=True)


# The card.


def test_the_card_halves_battery_amps_and_keeps_motor_amps() -> None:
    items = controller_card(TOWPATH, RIDER, {}).items
    assert number(items["limit_drive"]) == 30.0
    assert number(items["limit_drive_each"]) == 15.0
    assert number(items["motor_drive"]) == 45.0
    # Ours: 10 cells at 3.3 V and at 3.0 V.
    assert agrees(number(items["low_start"]), "33.0")
    assert agrees(number(items["low_end"]), "30.0")


def test_the_card_brakes_for_long_and_tells_the_burst_apart() -> None:
    # Ours: set to 5 A; two cells take 1.5 A each for long, 2 A each for ten seconds.
    card = controller_card(LOCK, RIDER, {})
    assert number(card.items["limit_brake"]) == 3.0
    assert number(card.items["limit_burst"]) == 4.0
    assert card.held_by["limit_brake"] == card.held_by["limit_burst"] == "cell"
    unknown = controller_card(LOCK.with_value("pack.cell_brake_current", None), RIDER, {})
    assert number(unknown.items["limit_brake"]) == 3.0
    assert "limit_burst" not in unknown.items
    assert all(row.text("name") != "each controller" for row in card.words)


# Range.


def test_modelled_range_by_hand() -> None:
    # Ours: 90.5 kg x 9.80665 x 0.015 = 13.31 N, air 0.6125 x 0.6 x 5.556^2 = 11.34 N, 24.66 N together.
    # Motor current of each = 24.66 x 0.1 / (2 x 2 x 2.5 x 0.95) / Kt + 1.5 A, Kt = 60 / (2 pi 170).
    constant = 60 / (2 * pi * 170)
    current = (13.3129 + 11.3426) * 0.1 / (2 * 2 * 2.5 * 0.95) / constant + 1.5
    emf = 5.55556 / 0.05 * 2.5 * constant
    power = 2 * current * (emf + current * 0.045)
    battery = (36.0 - (36.0**2 - 4 * 0.11 * power) ** 0.5) / (2 * 0.11)
    per_distance = 36.0 * battery / 5.55556
    found = range_answer(TOWPATH, RIDER, {}).items
    assert number(found["per_distance"]) == pytest.approx(per_distance, rel=1e-4)
    # Ours: nine tenths of 288 Wh.
    assert agrees(number(found["usable"], 3600.0), "259.2")
    assert number(found["range"]) == pytest.approx(259.2 * 3600.0 / per_distance, rel=1e-4)


def test_a_range_learnt_with_an_outlier_stays_in_its_band() -> None:
    plain = range_answer(TOWPATH, RIDER, {}, RIDES).items["range"]
    odd = range_answer(TOWPATH, RIDER, {}, (*RIDES, LoggedRide(3000.0, 190.0 * 3600.0))).items["range"]
    assert isinstance(plain, Result)
    assert isinstance(odd, Result)
    assert plain.band is not None
    assert plain.band[0] <= odd.value <= plain.band[1]
    # Ours: a mean would have gone to 22 Wh/km, 259.2 / 22.2 = 11.7 km, far outside.
    assert not plain.band[0] <= 11_700.0 <= plain.band[1]


def test_rides_count_by_energy_or_by_volts_and_lfp_not_by_volts() -> None:
    by_volts = LoggedRide(6000.0, None, 41.0, 38.5)
    rides = (*RIDES[:2], by_volts, LoggedRide(None, 1000.0), LoggedRide(4000.0))
    found = range_answer(TOWPATH, RIDER, {}, rides)
    assert (found.counted, found.left_out, found.learnt) == (3, 2, True)
    flat = TOWPATH.with_value("pack.chemistry", Value("LFP"))
    assert range_answer(flat, RIDER, {}, rides).counted == 2


def at(kmh: float, grade: float = 0.0, usual: float = 20.0) -> Asking:
    return {
        "ask.range_speed": Value(kmh / 3.6, "chosen"),
        "ask.range_grade": Value(grade, "chosen"),
        "ask.usual_speed": Value(usual / 3.6, "chosen"),
    }


def learnt_at(asking: Asking, rides: tuple[LoggedRide, ...] = RIDES, board: Board = TOWPATH) -> float:
    return number(range_answer(board, RIDER, asking, rides).items["range"], 1000.0)


def test_rides_are_carried_to_the_speed_and_climb_that_are_asked() -> None:
    # Ours: four rides, median 12.4 Wh/km, 259.2 Wh: 20.9 km where they were ridden.
    here = learnt_at(at(20.0))
    assert here == pytest.approx(259.2 / 12.4146, rel=1e-4)
    for asking in (at(12.0), at(28.0), at(20.0, 0.03), at(15.0, 0.05, usual=20.0)):
        asked = range_answer(TOWPATH, RIDER, asking, RIDES).items
        there = number(asked["range_modelled"]) / number(
            range_answer(TOWPATH, RIDER, at(20.0)).items["range"]
        )
        assert learnt_at(asking) == pytest.approx(here * there, rel=1e-9)
    assert learnt_at(at(28.0)) < here < learnt_at(at(12.0))
    assert learnt_at(at(20.0, 0.05)) < 0.6 * here
    # Faster rides tell a longer range at the same speed.
    assert learnt_at(at(20.0, usual=28.0)) > here


def test_rides_that_tell_their_speed_say_what_they_were_ridden_at() -> None:
    fast = tuple(LoggedRide(ride.distance, ride.energy, speed=28.0 / 3.6) for ride in RIDES)
    assert learnt_at(at(20.0), fast) == pytest.approx(learnt_at(at(20.0, usual=28.0)), rel=1e-12)
    assert learnt_at(at(28.0), fast) == pytest.approx(learnt_at(at(20.0)), rel=1e-12)


def test_rides_tell_a_range_where_nothing_is_known_of_the_motor() -> None:
    bare = TOWPATH.with_value("motor.kv", None)
    assert learnt_at(at(20.0), board=bare) == pytest.approx(learnt_at(at(20.0)))
    elsewhere = range_answer(bare, RIDER, at(28.0), RIDES).items["range"]
    assert isinstance(elsewhere, Open)
    assert elsewhere.missing == ("motor.kv",)


def test_no_range_is_learnt_at_a_speed_the_board_does_not_reach() -> None:
    found = range_answer(TOWPATH, RIDER, at(85.0), RIDES).items["range"]
    assert isinstance(found, Open)


def test_the_cold_takes_from_what_the_log_tells() -> None:
    found = range_answer(TOWPATH, RIDER, at(28.0), RIDES).items
    assert number(found["range_cold"]) == pytest.approx(0.8 * number(found["range"]))


def test_two_rides_teach_nothing() -> None:
    found = range_answer(TOWPATH, RIDER, {}, RIDES[:2])
    assert not found.learnt
    assert found.items["per_distance_learnt"] == Open("per_distance_learnt", outcome="too few rides")


def test_cold_speed_and_hills_only_take() -> None:
    found = range_answer(TOWPATH, RIDER, {})
    # Ours: eight tenths at 0 degrees C.
    assert number(found.items["range_cold"]) == pytest.approx(0.8 * number(found.items["range"]))
    curves = [dict(points) for _, points in found.curves]
    for curve in curves:
        assert list(curve.values()) == sorted(curve.values(), reverse=True)
    for flatter, steeper in pairwise(curves):
        assert all(steeper[speed] < flatter[speed] for speed in steeper)


# Charging.


def test_charging_by_hand() -> None:
    items = charging(TOWPATH, {}).items
    assert number(items["cell_amps"]) == 1.5
    # Ours: 1.5 A on 4 Ah; 80 % of 8 Ah.
    assert agrees(number(items["rate"]) * 3600.0, "0.375")
    assert agrees(number(items["missing"], 3600.0), "6.40")
    # Ours, tail 0.49 h: constant up to 1 - 0.49 x 0.325 = 0.84075, so 0.64075 / 0.375 = 1.7087 h, then
    # 0.49 h x log(0.375 / 0.05) = 0.9873 h. With 0.13 h and 0.92 h: 2.283 and 3.190 h.
    time = items["time"]
    assert isinstance(time, Result)
    assert time.band is not None
    assert agrees(time.value / 3600.0, "2.696")
    assert agrees(time.band[0] / 3600.0, "2.283")
    assert agrees(time.band[1] / 3600.0, "3.190")
    # Ours: two cells of 4 A; the BMS is not in the way.
    assert number(items["most"]) == 8.0


def test_most_amps_follow_the_weakest_or_what_is_usual() -> None:
    assert number(charging(FERRY, {"ask.charged": Value("joined")}).items["most"]) == 5.0
    assert (
        number(charging(TOWPATH.with_value("pack.bms_charge_current", Value(6.0)), {}).items["most"]) == 6.0
    )
    # Ours: no limit known, 0.5 C of 8 Ah.
    unknown = TOWPATH.with_value("pack.cell_charge_current", None).with_value("pack.bms_charge_current", None)
    assert number(charging(unknown, {}).items["most"]) == pytest.approx(4.0)


def test_one_pack_at_a_time_takes_all_the_amps() -> None:
    assert number(charging(FERRY, {}).items["cell_amps"]) == 2.0
    together = {"ask.charged": Value("joined")}
    assert number(charging(FERRY, together).items["cell_amps"]) == 1.0


@pytest.mark.parametrize(
    ("volts", "wrong"),
    [
        (42.0, False),
        (42.5, False),
        (41.5, False),
        (41.0, False),
        (42.6, True),
        (50.4, True),
        (29.4, True),
        (36.5, True),
    ],
)
def test_a_wrong_charger_is_danger_and_first(volts: float, wrong: bool) -> None:  # noqa: FBT001
    board = TOWPATH.with_value("pack.charger_voltage", Value(volts))
    cold = {"ask.cells_at": Value(268.15)}
    assert wrong_charger(board) is wrong
    assert (charging(board, cold).hazards[0].word == "DANGER") is wrong


def test_a_charger_of_fewer_volts_is_told_without_a_signal_word() -> None:
    """Ours: 41.0 V on 10S is 4.10 V a cell: the cells stay part full, nothing can burn."""
    hazards = charging(TOWPATH.with_value("pack.charger_voltage", Value(41.0)), {}).hazards
    assert [(hazard.word, hazard.key) for hazard in hazards] == [("", "charger leaves part full")]


@pytest.mark.parametrize(
    ("celsius", "word"), [(-0.1, "WARNING"), (0.0, "CAUTION"), (4.9, "CAUTION"), (5.0, ""), (46.0, "WARNING")]
)
def test_temperature_of_charging(celsius: float, word: str) -> None:
    hazards = charging(TOWPATH, {"ask.cells_at": Value(celsius + 273.15)}).hazards
    assert (hazards[0].word if hazards else "") == word


@pytest.mark.parametrize(("celsius", "told"), [(-0.1, False), (0.0, True), (44.9, True), (45.1, False)])
def test_no_amps_and_no_time_where_cells_are_not_charged(celsius: float, told: bool) -> None:  # noqa: FBT001
    """BU-410: no charging below 0 °C, nor above 45 °C."""
    items = charging(TOWPATH, {"ask.cells_at": Value(celsius + 273.15)}).items
    assert all(isinstance(items[name], Result) is told for name in ("cell_amps", "rate", "time", "heat"))


def test_a_cell_over_its_charge_limit_is_a_warning() -> None:
    fast = TOWPATH.with_value("pack.charger_current", Value(9.0))
    hazard = charging(fast, {}).hazards[0]
    assert (hazard.word, hazard.key) == ("WARNING", "charging over cell limit")


@pytest.mark.parametrize(
    ("amps", "word", "key"),
    [
        pytest.param(2.5, "", "look at the cell sheet", id="ours: 1 C of 2.5 Ah"),
        pytest.param(3.75, "WARNING", "charging over any limit", id="ours: 1.5 C"),
    ],
)
def test_amps_without_a_known_limit(amps: float, word: str, key: str) -> None:
    one_row = FERRY.with_value("pack.cell_charge_current", None).with_value(
        "pack.charger_current", Value(amps)
    )
    hazards = charging(one_row, {}).hazards
    assert [(hazard.word, hazard.key) for hazard in hazards] == [(word, key)]


# Carrying.


def carried(watt_hours: float, **more: str) -> Board:
    """Return a board with one marked and tested pack."""
    board = FERRY.with_value("pack.packs", Value(1.0)).with_value(
        "pack.marked_energy", Value(watt_hours * 3600.0)
    )
    for key, value in more.items():
        board = board.with_value(f"pack.{key}", Value(value))
    return board


@pytest.mark.parametrize(
    ("watt_hours", "outcome"),
    [
        pytest.param(100.0, "allowed, ask the airline", id="IATA, 100.0"),
        pytest.param(100.1, "operator approval", id="IATA, 100.1"),
        pytest.param(158.4, "operator approval", id="FAA, the printed 158.4 Wh"),
        pytest.param(160.0, "operator approval", id="IATA, 160.0"),
        pytest.param(160.1, "not as baggage", id="IATA, 160.1"),
    ],
)
def test_class_by_the_marked_figure(watt_hours: float, outcome: str) -> None:
    found = flight(carried(watt_hours), {})
    assert found.verdict is not None
    assert found.verdict.outcome == outcome
    assert bool(found.cards) is (outcome != "not as baggage")


@pytest.mark.parametrize("key", ["marked", "tested"])
@pytest.mark.parametrize("answer", ["no", "not known"])
def test_no_card_without_mark_and_test(key: str, answer: str) -> None:
    found = flight(carried(90.0, **{key: answer}), {})
    assert found.verdict is not None
    assert (found.verdict.outcome, found.cards) == ("do not pack", ())


LOOSE = {"ask.loose": Value(0.0)}


def test_two_packs_joined_count_as_one() -> None:
    """The demo board Ferry: 90 Wh each fly, 180 Wh joined do not; two of 75 Wh joined need approval."""
    apart, joined = (flight(FERRY, {**LOOSE, "ask.carried": Value(way)}) for way in ("apart", "joined"))
    assert apart.verdict is not None
    assert joined.verdict is not None
    assert apart.verdict.outcome == "allowed, ask the airline"
    assert joined.verdict.outcome == "not as baggage"
    small = carried(75.0).with_value("pack.packs", Value(2.0))
    both = flight(small, {**LOOSE, "ask.carried": Value("joined")})
    assert both.verdict is not None
    assert both.verdict.outcome == "operator approval"
    assert number(both.all_joined, 3600.0) == pytest.approx(150.0)
    assert flight(small, {}, damaged=True).cards == ()


@pytest.mark.parametrize(
    ("asking", "asks"),
    [
        ({}, ("ask.carried", "ask.loose")),
        ({"ask.carried": Value("apart")}, ("ask.loose",)),
        ({"ask.loose": Value(1.0)}, ("ask.carried",)),
    ],
)
def test_two_packs_are_granted_nothing_before_joined_and_loose_are_answered(
    asking: Asking, asks: tuple[str, ...]
) -> None:
    found = flight(FERRY, asking)
    assert (found.verdict, found.cards, found.asks) == (None, (), asks)


@pytest.mark.parametrize(("loose", "outcome"), [(2.0, "operator approval"), (3.0, "not as baggage")])
def test_two_loose_packs_over_100_wh_are_the_most(loose: float, outcome: str) -> None:
    """IATA passenger leaflet 2018: over 100 to 160 Wh at most two spares; FAA prints the 158.4 Wh."""
    three = carried(158.4).with_value("pack.packs", Value(3.0))
    found = flight(three, {"ask.carried": Value("apart"), "ask.loose": Value(loose)})
    assert found.verdict is not None
    assert found.verdict.outcome == outcome


def test_what_no_answer_mends_is_said_before_it_is_answered() -> None:
    found = flight(FERRY.with_value("pack.tested", Value("no")), {})
    assert found.verdict is not None
    assert found.verdict.outcome == "do not pack"


def test_marked_means_the_figure_on_the_label() -> None:
    """Ours: 10S of 2.75 Ah is 99 Wh at 3.6 V a cell, and its label may say 101.8, another class."""
    board = carried(101.8).with_value("pack.cell_capacity", Value(2.75 * 3600.0))
    labelled = flight(board, {})
    assert labelled.verdict is not None
    assert labelled.verdict.outcome == "operator approval"
    claimed = flight(board.with_value("pack.marked_energy", None).with_value("pack.marked", Value("yes")), {})
    assert claimed.energy == Open("each", missing=("pack.marked_energy",))
    assert (claimed.verdict, claimed.cards) == (None, ())
    computed = flight(board.with_value("pack.marked_energy", None).with_value("pack.marked", Value("no")), {})
    assert agrees(number(computed.energy, 3600.0), "99.0")
    assert computed.cards == ()


# Joining.


def test_joining_by_hand() -> None:
    # Ours: 10S1P of 25 mohm by the label: 0.25 ohm each, low end 0.2; 0.2 V over 0.4 ohm is 0.5 A.
    items = joining(FERRY, READ).items
    assert agrees(number(items["loop"]), "0.400")
    assert agrees(number(items["joining_current"]), "0.500")
    # Ours: 10 x 50 mV = 0.5 V against 2.5 A x 0.4 ohm = 1.0 V.
    assert agrees(number(items["allowed"]), "0.500")


@pytest.mark.parametrize(
    ("more", "key"),
    [
        ({"ask.second_series": Value(12.0)}, "series differ"),
        ({"ask.second_chemistry": Value("LFP")}, "chemistry differs"),
        ({"ask.second_volts": Value(40.6)}, "difference too large"),
        ({"ask.way": Value("series"), "ask.second_chemistry": Value("LFP")}, "chemistry differs"),
        ({"ask.way": Value("series"), "ask.second_capacity": Value(3.0 * 3600.0)}, "amp-hours differ"),
        ({"ask.way": Value("series"), "ask.second_volts": Value(40.0)}, "charge differs"),
    ],
)
def test_packs_that_differ_are_danger(more: dict[str, Value], key: str) -> None:
    hazard = joining(FERRY, {**READ, **more}).hazards[0]
    assert (hazard.word, hazard.key) == ("DANGER", key)


def test_unlike_packs_are_told_before_any_reading() -> None:
    assert joining(FERRY, {"ask.second_series": Value(7.0)}).hazards[0].word == "DANGER"


def test_packs_alike_and_level_raise_nothing() -> None:
    assert joining(FERRY, READ).hazards == ()


def test_a_series_lead_is_always_a_warning() -> None:
    hazards = joining(LOCK, {"ask.way": Value("series")}).hazards
    assert [hazard.key for hazard in hazards] == ["series lead"]
    assert hazards[0].word == "WARNING"


def test_a_value_that_is_missing_hides_no_danger_of_packs_in_series() -> None:
    """Unlike chemistry is told though the cells in series, and with them the volts, are not known."""
    board = LOCK.with_value("pack.series", None)
    hazards = joining(board, {"ask.way": Value("series"), "ask.second_chemistry": Value("LFP")}).hazards
    assert [(hazard.word, hazard.key) for hazard in hazards] == [
        ("DANGER", "chemistry differs"),
        ("WARNING", "series lead"),
    ]


# Wiring and hills.


def test_wiring_by_hand() -> None:
    found = wiring(TOWPATH, {})
    # Ours: root of (30^2 + 3 x 8^2) / 4 = 16.52 A. AWG 12 carries half of 25 A in a closed deck: no fuse fits 30 A.
    assert agrees(number(found.items["riding"]), "16.52")
    assert found.fuse is not None
    assert (found.fuse.low, found.fuse.high, found.fuse.voltage, found.fuse.fits) == (30.0, 12.5, 42.0, False)
    assert [(hazard.word, hazard.key) for hazard in found.hazards] == [("WARNING", "no fuse fits")]
    easy = wiring(TOWPATH.with_value("controller.battery_current", Value(10.0)), {"ask.cruise": Value(4.0)})
    assert easy.fuse is not None
    assert (easy.fuse.low, easy.fuse.high, easy.fuse.fits) == (10.0, 12.5, True)
    # Ours: 2 x 30 A x 0.3 m of 0.017241 / 3.31 ohm/m, x (1 + 0.00393 x 60) at 80 degrees C, x 1.16.
    assert number(found.items["drop"]) == pytest.approx(0.13440, abs=5e-6)
    band = easy.items["fuse"]
    assert isinstance(band, Result)
    assert band.standing != "published"
    # What it must break, at the low end of a resistance that is only printed: 42 V over 0.8 x 110 mohm.
    assert agrees(found.fuse.interrupt, "477")
    assert found.wire == "warm in a closed deck"
    # Ours: 2 mF x 42 V^2 / 2; 5 x 10 ohm x 2 mF.
    assert agrees(number(found.items["spark_energy"]), "1.764")
    assert agrees(number(found.items["precharge_time"]), "0.100")


@pytest.mark.parametrize(
    ("key", "value", "hazard"),
    [
        ("pack.fuse", 10.0, "fuse opens first"),
        ("pack.fuse", 15.0, "fuse above the wire"),
        ("pack.lead_area", 1.31e-6, "no fuse fits"),
    ],
)
def test_wire_and_fuse_warn(key: str, value: float, hazard: str) -> None:
    easy = TOWPATH.with_value("controller.battery_current", Value(10.0))
    hazards = wiring(easy.with_value(key, Value(value)), {"ask.cruise": Value(4.0)}).hazards
    assert hazard in [each.key for each in hazards]
    assert all(each.word == "WARNING" for each in hazards)


@pytest.mark.parametrize(
    ("charge", "drop", "outcome"),
    [
        pytest.param(1.0, 50.0, "may cut out at once", id="ours: 42 V + 8 x 0.11 V is above 42 V"),
        pytest.param(0.92, 50.0, "start lower", id="ours: 41.04 V + 0.88 V is below 42 V; above 90 %"),
        pytest.param(0.85, 50.0, "room", id="ours: 43 Wh free, 8.6 Wh come back"),
        pytest.param(0.85, 400.0, "full before the bottom", id="ours: 69 Wh come back"),
    ],
)
def test_a_hill_on_this_charge(charge: float, drop: float, outcome: str) -> None:
    found = descent(TOWPATH, RIDER, {"ask.start_charge": Value(charge), "ask.drop": Value(drop)})
    assert found.outcome == outcome
    assert bool(found.hazards and found.hazards[0].word == "WARNING") is (
        outcome in ("may cut out at once", "full before the bottom")
    )


# Questions, and no loose ends.


def test_an_answer_outside_its_limits_is_refused() -> None:
    with pytest.raises(InputError):
        Asked({"ask.target": Value(1.5)})("ask.target")


@pytest.mark.parametrize("board", DEMOS.values(), ids=DEMOS)
@pytest.mark.parametrize("way", ["parallel", "series"])
def test_every_argument_of_every_working_is_accounted_for(board: Board, way: str) -> None:
    asking = {**READ, "ask.way": Value(way), "ask.current": Value(12.0)}
    items = items_of(board, RIDER, asking, RIDES)
    assert sum(isinstance(item, Result) for item in items) > 40
    assert [end for item in items for end in loose_ends(item)] == []


def test_a_board_with_everything_leaves_nothing_open() -> None:
    items = items_of(TOWPATH, RIDER, READ, RIDES)
    assert [item for item in items if isinstance(item, Open)] == []


@settings(max_examples=60)
@given(CHANGED, st.sampled_from([RIDER, None]), st.sampled_from(["parallel", "series"]))
def test_and_on_changed_boards(board: Board, rider: Value | None, way: str) -> None:
    items = items_of(board, rider, {**READ, "ask.way": Value(way)}, RIDES)
    assert [end for item in items for end in loose_ends(item)] == []


def test_the_best_verdict_takes_for_granted_what_nobody_said_and_names_it() -> None:
    """IATA, up to 100 Wh: a pack of 90 Wh may fly; what was answered badly is never hoped away."""
    bare = Board("bare", "Bare").with_value("pack.marked_energy", Value(90.0 * 3600.0, "label"))
    found = flight(bare, {})
    assert found.best is not None
    assert (found.best.outcome, found.hopes) == ("allowed, ask the airline", ("pack.packs", "pack.tested"))
    assert (found.verdict, found.cards) == (None, ())
    two = flight(bare.with_value("pack.packs", Value(2.0)), {"ask.carried": Value("joined")})
    assert two.best is not None
    assert (two.best.outcome, two.hopes) == ("not as baggage", ("pack.tested", "ask.loose"))
    said = flight(bare.with_value("pack.tested", Value("not known")), {})
    assert said.best is not None
    assert said.best.outcome == "do not pack"
    assert flight(Board("none", "None"), {}).best is None
