"""Charging against printed figures. "Worked example" marks a case with no printed answer."""

import pytest

from logic.errors import InputError
from logic.pack.cells import cell_current, chemistry
from logic.pack.charging import (
    charge_rate,
    charge_time_band,
    charger_check,
    current_outcome,
    taper,
    temperature_row,
    wall_energy_band,
)
from tests.printed import agrees

HOUR = 3600.0
ICE = 273.15


@pytest.mark.parametrize(
    ("voltage", "series", "name"),
    [
        pytest.param(12.6, 3, "NMC", id="UN 38.3 test summary 2017, 12.6 V for 3 cells"),
        pytest.param(25.2, 6, "NMC", id="worked example: 6S"),
        pytest.param(29.4, 7, "NMC", id="worked example: 7S"),
        pytest.param(33.6, 8, "NMC", id="worked example: 8S"),
        pytest.param(42.0, 10, "NCA", id="worked example: 10S"),
        pytest.param(50.4, 12, "NMC", id="worked example: 12S"),
        pytest.param(54.6, 13, "NMC", id="worked example: 13S"),
        pytest.param(58.8, 14, "NMC", id="worked example: 14S"),
        pytest.param(36.5, 10, "LFP", id="worked example: 10 x 3.65 V"),
        pytest.param(42.5, 10, "NMC", id="BU-409, 0.05 V a cell high is still right"),
        pytest.param(41.5, 10, "NMC", id="BU-409, 0.05 V a cell low is still right"),
    ],
)
def test_right_charger(voltage: float, series: int, name: str) -> None:
    check = charger_check(charger_voltage=voltage, series=series, cells=chemistry(name))
    assert (check.outcome, check.danger) == ("matches", False)


@pytest.mark.parametrize(
    ("voltage", "series", "name", "outcome"),
    [
        pytest.param(50.4, 10, "NMC", "other series", id="12S charger on 10S"),
        pytest.param(42.0, 12, "NMC", "other series", id="10S charger on 12S"),
        pytest.param(54.6, 14, "NMC", "other series", id="13S charger on 14S"),
        pytest.param(42.0, 10, "LFP", "other chemistry", id="NMC charger on LFP"),
        pytest.param(36.5, 10, "NMC", "other chemistry", id="LFP charger on NMC"),
        pytest.param(42.6, 10, "NMC", "too high", id="just over the tolerance"),
        pytest.param(41.4, 10, "NMC", "too low", id="just under the tolerance"),
        pytest.param(400.0, 10, "NMC", "too high", id="no pack at all"),
        pytest.param(5.0, 10, "NMC", "too low", id="a telephone's charger"),
    ],
)
def test_wrong_charger_is_danger(voltage: float, series: int, name: str, outcome: str) -> None:
    check = charger_check(charger_voltage=voltage, series=series, cells=chemistry(name))
    assert (check.outcome, check.danger) == (outcome, True)


def test_a_charger_one_cell_off_is_never_right() -> None:
    # The tolerance must stay below one cell for every pack of this trade, or a wrong charger would pass.
    for name in ("NMC", "NCA", "LFP"):
        cells = chemistry(name)
        for series in range(6, 21):
            for other in (series - 1, series + 1):
                check = charger_check(charger_voltage=other * cells.full, series=series, cells=cells)
                assert check.danger
                assert (other, name) in check.others


def test_three_amps_on_one_row_deserve_a_look() -> None:
    # Common practice, no source: a 3 A charger on one row of 18650 cells, here of 1.7 and of 3.4 Ah.
    amperes = cell_current(current=3.0, parallel=1, packs=1)
    for capacity in (1.7 * HOUR, 3.4 * HOUR):
        look = current_outcome(cell_current=amperes, cell_limit=None, cell_capacity=capacity)
        assert look == "look at the cell sheet"
    known = {"cell_current": amperes, "cell_capacity": 3.4 * HOUR}
    assert current_outcome(**known, cell_limit=1.7) == "over cell limit"
    assert current_outcome(**known, cell_limit=3.0) == "within limit"
    slow = current_outcome(cell_current=1.5, cell_limit=None, cell_capacity=3.4 * HOUR)
    assert slow == "within limit"


@pytest.mark.parametrize(
    ("rate", "model_low", "model_high"),
    [
        pytest.param(0.7, 1.16, 1.38, id="worked example: 0.7 C"),
        pytest.param(1.0, 1.27, 1.66, id="worked example: 1 C"),
    ],
)
def test_band_holds_the_model(rate: float, model_low: float, model_high: float) -> None:
    band = taper(rate=rate / HOUR, target=1.0)
    assert band.low <= model_low < model_high <= band.high


@pytest.mark.parametrize(
    ("rate", "printed"),
    [
        pytest.param(0.7, "3.0", id="BU-205, about 3 h at 0.7 C"),
        pytest.param(1.0, "3.0", id="BU-205, about 3 h at 1 C"),
    ],
)
def test_longest_time_at_the_usual_rate(rate: float, printed: str) -> None:
    capacity = 3.0 * HOUR
    band = charge_time_band(capacity=capacity, charge=0.0, target=1.0, current=rate * 3.0)
    assert agrees(band.high / HOUR, printed)
    assert band.low < band.high


def test_charge_to_eighty_per_cent_is_plain_division() -> None:
    # Worked example: 8 Ah from 20 to 80 % at 2 A takes 2.4 h.
    band = charge_time_band(capacity=8.0 * HOUR, charge=0.2, target=0.8, current=2.0)
    assert agrees(band.low / HOUR, "2.4")
    assert band.low == band.high


def test_above_one_c_no_time_is_given() -> None:
    with pytest.raises(InputError, match="above 1 C"):
        charge_time_band(capacity=1.7 * HOUR, charge=0.0, target=1.0, current=3.0)
    assert agrees(charge_rate(current=3.0, capacity=1.7 * HOUR) * HOUR, "1.76")


@pytest.mark.parametrize(
    ("celsius", "key", "signal"),
    [
        pytest.param(-0.1, "below freezing", "WARNING", id="BU-410, no charging below 0"),
        pytest.param(0.0, "cold", "CAUTION", id="BU-410, slow from 0 to 5"),
        pytest.param(4.9, "cold", "CAUTION", id="BU-410, slow up to 5"),
        pytest.param(5.0, "normal", "", id="BU-410, from 5"),
        pytest.param(40.5, "normal", "", id="fire service, 105 degrees F"),
        pytest.param(40.6, "warm", "CAUTION", id="fire service, above 105 degrees F"),
        pytest.param(45.0, "hot", "WARNING", id="BU-410, above 45"),
    ],
)
def test_temperature(celsius: float, key: str, signal: str) -> None:
    row = temperature_row(temperature=celsius + ICE)
    assert (row.text("key"), row.text("signal")) == (key, signal)


@pytest.mark.parametrize(
    ("low", "high"), [pytest.param("1.12", "1.25", id="worked example: 85 to 92 %, 95 to 98 %, 99 %")]
)
def test_wall_energy(low: str, high: str) -> None:
    band = wall_energy_band(energy=1.0)
    assert agrees(band.low, low)
    assert agrees(band.high, high)


@pytest.mark.parametrize(("charge", "target"), [(-0.1, 1.0), (1.1, 1.0), (0.5, 0.4), (0.5, 1.1)])
def test_shares_out_of_range_are_refused(charge: float, target: float) -> None:
    with pytest.raises(InputError):
        charge_time_band(capacity=HOUR, charge=charge, target=target, current=0.5)
