"""Joining two packs against printed set-ups. "Worked example" marks a case with no printed answer."""

import pytest

from logic.errors import InputError
from logic.pack.care import KINDS, care
from logic.pack.joining import (
    WAYS,
    allowed_difference,
    charge_moved,
    heat_in_all,
    joining_current,
    joining_figures,
    joining_heat,
    joining_outcome,
    joining_rules,
    loop_resistance,
    settling_time,
    storage,
    time_constant,
)
from tests.printed import agrees, memory, ours, source

HOUR = 3600.0


@memory
@pytest.mark.parametrize(
    ("first", "second", "current", "heat"),
    [
        pytest.param(
            12.0,
            11.0,
            "20",
            "20",
            id="set-up of a text problem, 12 V and 11 V; answers worked out here",
        )
    ],
)
def test_instant_of_joining(first: float, second: float, current: str, heat: str) -> None:
    loop = loop_resistance(resistance_first=0.01, resistance_second=0.01, resistance_leads=0.03)
    assert agrees(joining_current(voltage_difference=first - second, resistance=loop), current, "A")
    assert agrees(joining_heat(voltage_difference=first - second, resistance=loop), heat, "W")


@ours
@pytest.mark.parametrize(
    ("difference", "resistance", "current", "moved", "heat"),
    [
        pytest.param(1.0, 0.21, "4.8", "0.28", "500", id="two 5 Ah 10S packs, 1 V"),
        pytest.param(6.0, 0.21, "28.6", "1.67", "18000", id="one full, one low, 6 V"),
        pytest.param(2.0, 0.11, "18", "0.56", "2000", id="stiff packs, 2 V"),
    ],
)
def test_worked_joining(difference: float, resistance: float, current: str, moved: str, heat: str) -> None:
    assert agrees(joining_current(voltage_difference=difference, resistance=resistance), current, "A")
    pack = storage(capacity=5.0 * HOUR, swing=joining_figures("NMC").number("swing"), series=10)
    charge = charge_moved(voltage_difference=difference, storage_first=pack, storage_second=pack)
    assert agrees(charge / HOUR, moved, "Ah")
    assert agrees(heat_in_all(charge=charge, voltage_difference=difference), heat, "J")


@ours
def test_worked_time_constant_and_power() -> None:
    # Worked example: 3.5 min at 0.21 ohm, 171 W at 6 V.
    pack = storage(capacity=5.0 * HOUR, swing=0.9, series=10)
    assert agrees(
        time_constant(resistance=0.21, storage_first=pack, storage_second=pack) / 60.0, "3.5", "min"
    )
    assert agrees(joining_heat(voltage_difference=6.0, resistance=0.21), "171", "W")


@source("openstax-physics m42363, solved")
def test_time_until_it_has_died_away() -> None:
    """OpenStax College Physics (m42363), solved: time constant 10.0 ms, from 12.0 kV to 600 V in 30.0 ms."""
    assert agrees(settling_time(time_constant=10.0, current=12.0, final_current=0.600), "30.0", "ms")


@source("practice 50 mV a cell", "memory")
@pytest.mark.parametrize(
    ("limit", "resistance", "printed"),
    [
        pytest.param(2.5, 0.21, "0.50", id="50 mV x 10 is the smaller"),
        pytest.param(2.5, 0.11, "0.275", id="the charge limit is the smaller"),
        pytest.param(2.5, 0.20, "0.50", id="both the same"),
    ],
)
def test_allowed_difference(limit: float, resistance: float, printed: str) -> None:
    per_cell = joining_figures("NMC").number("difference")
    allowed = allowed_difference(
        cell_difference=per_cell, series=10, charge_limit=limit, resistance=resistance
    )
    assert agrees(allowed, printed, "V")


@ours
@pytest.mark.parametrize(
    ("series", "chemistry", "difference", "key"),
    [
        pytest.param(10, "NMC", 0.5, "may be joined", id="at the limit"),
        pytest.param(10, "NMC", 0.51, "difference too large", id="over the limit"),
        pytest.param(12, "NMC", 0.0, "series differ", id="10S with 12S, even at the same voltage"),
        pytest.param(10, "LFP", 0.0, "chemistry differs", id="NMC with LFP"),
        pytest.param(10, "NCA", 0.0, "chemistry differs", id="NMC with NCA"),
    ],
)
def test_packs_that_differ_are_danger(series: int, chemistry: str, difference: float, key: str) -> None:
    outcome = joining_outcome(
        series_first=10,
        series_second=series,
        chemistry_first="NMC",
        chemistry_second=chemistry,
        voltage_difference=difference,
        allowed=0.5,
    )
    assert outcome.key == key
    assert outcome.danger is (key != "may be joined")


@ours
def test_rules_of_each_way() -> None:
    for how in WAYS:
        assert joining_rules(how)
    parallel = {row.text("key"): row.text("signal") for row in joining_rules("parallel")}
    assert parallel["same"] == parallel["difference"] == "DANGER"
    series = {row.text("key"): row for row in joining_rules("series")}
    assert series["short"].text("signal") == "WARNING"
    assert "dead short" in series["short"].text("text")
    with pytest.raises(InputError, match="unknown way"):
        joining_rules("both")


@ours
def test_stop_signs_are_danger() -> None:
    assert all(care(kind) for kind in KINDS)
    assert {row.text("signal") for kind in ("stop", "fire") for row in care(kind)} == {"DANGER"}
    swollen = care("stop")[0].text("text").lower()
    assert all(word in swollen for word in ("swollen", "hissing", "smoking", "hot"))
    with pytest.raises(InputError, match="unknown kind"):
        care("none")


@ours
def test_bad_numbers_are_refused() -> None:
    with pytest.raises(InputError):
        joining_current(voltage_difference=-1.0, resistance=0.2)
    with pytest.raises(InputError):
        joining_current(voltage_difference=1.0, resistance=0.0)
    with pytest.raises(InputError):
        loop_resistance(resistance_first=0.1, resistance_second=0.1, resistance_leads=-0.01)
