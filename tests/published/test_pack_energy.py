"""Energy, volts, sag and limits of packs against printed figures.

"Worked example" marks a case worked out by hand from the inputs, with no printed answer.
"""

import pytest

from logic.drive.limits import battery_current
from logic.errors import InputError
from logic.pack.cells import (
    cell_current,
    cells_mass,
    chemistries,
    chemistry,
    heat,
    pack_capacity,
    pack_energy,
    pack_resistance,
    pack_voltage,
    sag,
    short_circuit_current,
    terminal_voltage,
)
from logic.pack.descent import descent_outcome, drop_taken_back, energy_of_descent, headroom
from logic.pack.joining import joining_current, joining_heat
from logic.pack.limits import (
    braking_voltage,
    cells_limit,
    current_to_full,
    faults,
    low_voltage,
    may_cut_out,
    weakest,
)
from tests.printed import agrees, ours, source

HOUR = 3600.0
GRAVITY = 9.80665


@source("faa-boards 36 V 4.4 Ah")
@pytest.mark.parametrize(
    ("voltage", "capacity", "series", "printed"),
    [
        pytest.param(3.6, 4.4, 10, "158.4", id="36 V 4.4 Ah"),
        pytest.param(
            3.65, 2.0, 3, "22", marks=source("un-38-3 test summary of 2017"), id="3 cells of 3.65 V 2 Ah"
        ),
        pytest.param(3.65, 2.0, 3, "21.9", marks=ours, id="the same to one more digit"),
        pytest.param(3.7, 4.4, 3, "48.8", marks=source("wh-sheets", "second-hand"), id="11.1 V 4.4 Ah"),
        pytest.param(3.6, 2.5, 3, "27", marks=source("wh-sheets", "second-hand"), id="10.8 V 2.5 Ah"),
        pytest.param(3.6, 2.5, 10, "90", marks=ours, id="10S1P, 2.5 Ah"),
        pytest.param(3.6, 5.0, 10, "180", marks=ours, id="two of them joined, 5.0 Ah in all"),
    ],
)
def test_energy(voltage: float, capacity: float, series: int, printed: str) -> None:
    energy = pack_energy(
        cell_voltage=voltage, cell_capacity=capacity * HOUR, series=series, parallel=1, packs=1
    )
    assert agrees(energy / HOUR, printed, "Wh")


@ours
def test_two_packs_joined_have_the_energy_of_one_twice_as_wide() -> None:
    one = {"cell_voltage": 3.6, "cell_capacity": 2.5 * HOUR, "series": 10.0}
    assert pack_energy(**one, parallel=1, packs=2) == pack_energy(**one, parallel=2, packs=1)


@source("bu-serial 4S2P")
@pytest.mark.parametrize(
    ("volts", "amp_hours"),
    [pytest.param("14.4", "4.8", id="4S2P of 3.6 V 2,400 mAh")],
)
def test_series_and_parallel(volts: str, amp_hours: str) -> None:
    assert agrees(pack_voltage(cell_voltage=3.6, series=4), volts, "V")
    assert agrees(pack_capacity(cell_capacity=2.4 * HOUR, parallel=2, packs=1) / HOUR, amp_hours, "Ah")


@ours
@pytest.mark.parametrize(
    ("series", "full", "nominal", "empty"),
    [
        pytest.param(6, "25.2", "21.6", "18", id="6S"),
        pytest.param(7, "29.4", "25.2", "21", id="7S"),
        pytest.param(8, "33.6", "28.8", "24", id="8S"),
        pytest.param(10, "42.0", "36.0", "30", id="10S"),
        pytest.param(12, "50.4", "43.2", "36", id="12S"),
        pytest.param(13, "54.6", "46.8", "39", id="13S"),
        pytest.param(14, "58.8", "50.4", "42", id="14S"),
    ],
)
def test_voltages_of_packs(series: int, full: str, nominal: str, empty: str) -> None:
    cells = chemistry("NMC")
    for volts, printed in ((cells.full, full), (cells.nominal, nominal), (cells.empty, empty)):
        assert agrees(pack_voltage(cell_voltage=volts, series=series), printed, "V")


@source("bu-205 tables", "second-hand")
@pytest.mark.parametrize(
    ("name", "nominal", "full", "empty"),
    [
        pytest.param("NMC", "3.60", "4.20", "3.00", id="NMC"),
        pytest.param("NCA", "3.60", "4.20", "3.00", id="NCA"),
        pytest.param("LFP", "3.20", "3.65", "2.50", id="LFP"),
    ],
)
def test_chemistry(name: str, nominal: str, full: str, empty: str) -> None:
    cells = chemistry(name)
    assert agrees(cells.nominal, nominal, "V")
    assert agrees(cells.full, full, "V")
    assert agrees(cells.empty, empty, "V")
    assert cells.floor < cells.empty
    start, end = low_voltage(name)
    assert end == cells.empty < start < cells.nominal


@ours
@pytest.mark.parametrize("name", ["LiHV", "lihv", "4.35 V"])
def test_cells_above_4_20_are_refused_by_name(name: str) -> None:
    with pytest.raises(InputError, match=r"charged above 4\.20 V") as caught:
        chemistry(name)
    assert caught.value.given == name


@ours
@pytest.mark.parametrize("name", ["lead", "", "LTO", "nmc"])
def test_unknown_chemistry_is_refused_by_name(name: str) -> None:
    assert name not in chemistries()
    with pytest.raises(InputError, match="unknown chemistry"):
        chemistry(name)


@source("openstax-physics m42357")
@pytest.mark.parametrize(
    ("load", "inside", "current", "volts"),
    [
        pytest.param(10.0, 0.100, "1.188", "11.9", id="10.0 ohm"),
        pytest.param(0.500, 0.100, "20.0", "10.0", id="0.500 ohm"),
        pytest.param(0.500, 0.500, "12.0", "6.00", id="worn battery"),
    ],
)
def test_terminal_voltage(load: float, inside: float, current: str, volts: str) -> None:
    amperes = short_circuit_current(voltage=12.0, resistance=load + inside)
    assert agrees(amperes, current, "A")
    assert agrees(terminal_voltage(open_circuit_voltage=12.0, current=amperes, resistance=inside), volts, "V")
    assert agrees(12.0 - sag(current=amperes, resistance=inside), volts, "V")


@source("openstax-university vol. 2 (m58453), solved")
def test_battery_that_is_charged() -> None:
    """OpenStax University Physics 2 (m58453), solved: 12.0 V EMF, 16.0 V while 10.0 A flows in; 0.400 ohm, 40.0 W."""
    assert agrees(braking_voltage(rest_voltage=12.0, current=10.0, resistance=0.400), "16.0", "V")
    assert agrees(heat(current=10.0, resistance=0.400), "40.0", "W")
    assert agrees(current_to_full(rest_voltage=12.0, full_voltage=16.0, resistance=0.400), "10.0", "A")
    # The same two joined: 4.0 V apart over 0.400 ohm.
    assert agrees(joining_current(voltage_difference=4.0, resistance=0.400), "10.0", "A")
    assert agrees(joining_heat(voltage_difference=4.0, resistance=0.400), "40.0", "W")


@source("openstax-physics m42357, solved")
def test_starter_on_a_battery() -> None:
    """OpenStax College Physics (m42357), solved: 0.0500 ohm on 12.0 V with 0.0100 ohm inside; 200 A, 10.0 V, 2.00 kW."""
    amperes = short_circuit_current(voltage=12.0, resistance=0.0600)
    assert agrees(amperes, "200", "A")
    volts = terminal_voltage(open_circuit_voltage=12.0, current=amperes, resistance=0.0100)
    assert agrees(volts, "10.0", "V")
    assert agrees(volts * amperes / 1000.0, "2.00", "kW")
    drawn = battery_current(battery_power=2000.0, open_circuit_voltage=12.0, pack_resistance=0.0100)
    assert agrees(drawn, "200", "A")


@source("openstax-physics m42224")
def test_truck_on_a_hill() -> None:
    """OpenStax College Physics (m42224): 10 000 kg down 75.0 m, g 9.80, is 7.35e6 J."""
    assert agrees(energy_of_descent(mass=10_000.0, gravity=9.80, drop=75.0, recovery=1.0), "7.35e6", "J")


@ours
def test_worked_pack_of_ten_by_two() -> None:
    # Worked example: 10S2P of 25 milliohm cells at 30 A, and a dead short at 42 V.
    resistance = pack_resistance(cell_resistance=0.025, series=10, parallel=2, packs=1)
    assert agrees(resistance, "0.125", "ohm")
    assert agrees(sag(current=30.0, resistance=resistance), "3.75", "V")
    assert agrees(heat(current=30.0, resistance=resistance), "112.5", "W")
    assert agrees(short_circuit_current(voltage=42.0, resistance=resistance), "336", "A")
    assert agrees(cell_current(current=30.0, parallel=2, packs=1), "15", "A")
    assert agrees(heat(current=4.0, resistance=resistance), "2", "W")
    assert agrees(cells_mass(cell_mass=0.070, series=10, parallel=2, packs=1), "1.4", "kg")


@ours
def test_worked_braking_into_a_small_pack() -> None:
    # Worked example: 2 A a cell, 10S2P at 42 V is 168 W, about 0.3 m/s2 for 95 kg at 25 km/h.
    current = cells_limit(cell_limit=2.0, parallel=2, packs=1)
    assert agrees(current * 42.0, "168", "W")


@ours
def test_the_weakest_limit_is_named() -> None:
    limits = {"cell": 50.0, "bms": 40.0, "fuse": 40.0, "connector": 60.0, "controller": 30.0}
    assert weakest(limits).part == "controller"
    del limits["controller"]
    assert weakest(limits).part == "bms"
    with pytest.raises(InputError, match="unknown part"):
        weakest({"wire": 30.0})
    with pytest.raises(InputError, match="empty"):
        weakest({})
    with pytest.raises(InputError, match="not a number"):
        weakest({"cell": float("nan")})


@ours
@pytest.mark.parametrize(
    ("limits", "braking", "keys"),
    [
        pytest.param({"fuse": 30.1, "bms": 40.0, "cell": 30.0, "connector": 30.0}, False, [], id="in order"),
        pytest.param({"fuse": 30.0}, False, ["fuse opens first"], id="fuse at the controller limit"),
        pytest.param({"bms": 29.0}, True, ["braking bms opens first"], id="BMS below it in braking"),
        pytest.param({"cell": 29.9}, False, ["over cell limit"], id="cell over its limit"),
        pytest.param({"cell": 8.0}, True, ["braking over cell limit"], id="braking over the cell's limit"),
        pytest.param({"connector": 20.0}, False, ["over connector limit"], id="plug over its limit"),
    ],
)
def test_controller_must_limit_first(limits: dict[str, float], braking: bool, keys: list[str]) -> None:  # noqa: FBT001
    found = faults(controller=30.0, limits=limits, braking=braking)
    assert [fault.key for fault in found] == keys
    assert all(fault.signal == "WARNING" for fault in found)


@ours
def test_full_pack_may_cut_the_brake_out_at_once() -> None:
    pack = {"resistance": 0.125, "full_voltage": 42.0}
    assert may_cut_out(rest_voltage=42.0, current=0.1, **pack)
    assert not may_cut_out(rest_voltage=41.0, current=8.0, **pack)
    assert may_cut_out(rest_voltage=41.0, current=8.1, **pack)
    assert current_to_full(rest_voltage=41.0, **pack) == 8.0
    assert current_to_full(rest_voltage=42.3, **pack) == 0.0


@ours
@pytest.mark.parametrize(
    ("drop", "printed"),
    [
        pytest.param(1.0, "0.259", id="a metre at 95 kg"),
        pytest.param(10.0, "2.6", id="10 m"),
        pytest.param(100.0, "25.9", id="100 m"),
    ],
)
def test_energy_of_a_drop(drop: float, printed: str) -> None:
    energy = energy_of_descent(mass=95.0, gravity=GRAVITY, drop=drop, recovery=1.0)
    assert agrees(energy / HOUR, printed)
    back = drop_taken_back(free_energy=energy, mass=95.0, gravity=GRAVITY, recovery=1.0)
    assert back == pytest.approx(drop, rel=1e-12)


@ours
@pytest.mark.parametrize(
    ("charge", "rest_voltage", "drop", "outcome"),
    [
        pytest.param(1.0, 42.0, 10.0, "may cut out at once", id="voltage comes first"),
        pytest.param(0.95, 40.9, 10.0, "start lower", id="above 90 % by habit"),
        pytest.param(0.90, 40.5, 300.0, "full before the bottom", id="energy next"),
        pytest.param(0.90, 40.5, 100.0, "room", id="room"),
    ],
)
def test_descent(charge: float, rest_voltage: float, drop: float, outcome: str) -> None:
    free = headroom(energy=288.0 * HOUR, charge=charge)
    descent = energy_of_descent(mass=95.0, gravity=GRAVITY, drop=drop, recovery=0.7)
    assert (
        descent_outcome(
            rest_voltage=rest_voltage,
            current=8.0,
            resistance=0.125,
            full_voltage=42.0,
            charge=charge,
            free_energy=free,
            descent_energy=descent,
        )
        == outcome
    )


@ours
@pytest.mark.parametrize("bad", [0.0, -1.0, float("nan"), float("inf")])
def test_bad_numbers_are_refused(bad: float) -> None:
    with pytest.raises(InputError):
        pack_voltage(cell_voltage=bad, series=10)
    with pytest.raises(InputError):
        pack_energy(cell_voltage=3.6, cell_capacity=bad, series=10, parallel=1, packs=1)
    with pytest.raises(InputError):
        pack_resistance(cell_resistance=0.02, series=10, parallel=bad, packs=1)


@source("questions 27 cells grouped for the most current", "second-hand")
def test_resistance_of_cells_in_rows() -> None:
    """27 cells of 0.4 ohm give the most current into 1.2 ohm as three rows of nine: they have 1.2 ohm themselves then."""
    assert agrees(pack_resistance(cell_resistance=0.4, series=9.0, parallel=3.0, packs=1.0), "1.2", "ohm")
