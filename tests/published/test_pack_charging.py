"""Charging against printed figures. "Worked example" marks a case with no printed answer."""

import pytest

from logic.errors import InputError
from logic.pack.cells import cell_current, chemistry
from logic.pack.charging import (
    TAILS,
    charge_rate,
    charge_time,
    charger_check,
    constant_until,
    current_outcome,
    rate_at,
    temperature_row,
    time_to_charge,
    wall_energy_band,
)
from logic.tables import pick
from tests.printed import agrees, near, ours, same, source

HOUR = 3600.0
ICE = 273.15


@source("bu-charging tolerance", "second-hand")
@pytest.mark.parametrize(
    ("voltage", "series", "name"),
    [
        pytest.param(12.6, 3, "NMC", marks=source("un-38-3 test summary of 2017"), id="12.6 V for 3 cells"),
        pytest.param(25.2, 6, "NMC", marks=ours, id="6S"),
        pytest.param(29.4, 7, "NMC", marks=ours, id="7S"),
        pytest.param(33.6, 8, "NMC", marks=ours, id="8S"),
        pytest.param(42.0, 10, "NCA", marks=ours, id="10S"),
        pytest.param(50.4, 12, "NMC", marks=ours, id="12S"),
        pytest.param(54.6, 13, "NMC", marks=ours, id="13S"),
        pytest.param(58.8, 14, "NMC", marks=ours, id="14S"),
        pytest.param(36.5, 10, "LFP", marks=ours, id="10 x 3.65 V"),
        pytest.param(42.5, 10, "NMC", id="0.05 V a cell high is still right"),
        pytest.param(41.5, 10, "NMC", id="0.05 V a cell low is still right"),
    ],
)
def test_right_charger(voltage: float, series: int, name: str) -> None:
    check = charger_check(charger_voltage=voltage, series=series, cells=chemistry(name))
    assert same(check.outcome, "matches")
    assert not check.danger


@ours
@pytest.mark.parametrize(
    ("voltage", "series", "name", "outcome"),
    [
        pytest.param(50.4, 10, "NMC", "other series", id="12S charger on 10S"),
        pytest.param(42.0, 12, "NMC", "other series", id="10S charger on 12S"),
        pytest.param(54.6, 14, "NMC", "other series", id="13S charger on 14S"),
        pytest.param(42.0, 10, "LFP", "other chemistry", id="NMC charger on LFP"),
        pytest.param(36.5, 10, "NMC", "other chemistry", id="LFP charger on NMC"),
        pytest.param(42.6, 10, "NMC", "too high", id="just over the tolerance"),
        pytest.param(400.0, 10, "NMC", "too high", id="no pack at all"),
        pytest.param(5.0, 10, "NMC", "too low", id="a telephone's charger"),
    ],
)
def test_wrong_charger_is_danger(voltage: float, series: int, name: str, outcome: str) -> None:
    check = charger_check(charger_voltage=voltage, series=series, cells=chemistry(name))
    assert (check.outcome, check.danger) == (outcome, True)


@ours
@pytest.mark.parametrize("voltage", [41.4, 41.0, 38.4, 30.2])
def test_a_charger_of_fewer_volts_only_leaves_cells_part_full(voltage: float) -> None:
    """Worked example: 41.0 V on 10S is 4.10 V a cell, below BU-409's 4.15 and above an empty cell's 3.00 V."""
    check = charger_check(charger_voltage=voltage, series=10, cells=chemistry("NMC"))
    assert (check.outcome, check.danger) == ("leaves part full", False)


@ours
def test_below_an_empty_pack_current_would_flow_back() -> None:
    check = charger_check(charger_voltage=29.9, series=10, cells=chemistry("NMC"))
    assert (check.outcome, check.danger) == ("too low", True)


@ours
def test_a_charger_one_cell_off_is_never_right() -> None:
    # The tolerance must stay below one cell for every pack of this trade, or a wrong charger would pass.
    for name in ("NMC", "NCA", "LFP"):
        cells = chemistry(name)
        for series in range(6, 21):
            for other in (series - 1, series + 1):
                check = charger_check(charger_voltage=other * cells.full, series=series, cells=cells)
                assert check.danger
                assert (other, name) in check.others


@ours
@pytest.mark.parametrize(
    ("amperes", "limit", "outcome"),
    [
        pytest.param(1.0, None, "within limit", id="0.5 C is the standard charge"),
        pytest.param(1.1, None, "look at the cell sheet", id="over 0.5 C"),
        pytest.param(2.0, None, "look at the cell sheet", id="1 C is the usual limit"),
        pytest.param(3.0, None, "over any limit", id="1.5 C with no limit known"),
        pytest.param(3.0, 3.0, "within limit", id="the sheet allows it"),
        pytest.param(3.1, 3.0, "over cell limit", id="over the sheet"),
    ],
)
def test_amps_into_a_cell_of_2_ah(amperes: float, limit: float | None, outcome: str) -> None:
    each = cell_current(current=2 * amperes, parallel=2, packs=1)
    assert current_outcome(cell_current=each, cell_limit=limit, cell_capacity=2.0 * HOUR) == outcome


@ours
@pytest.mark.parametrize(
    ("rate", "low", "high"),
    [
        pytest.param(1 / 3, "1.04", "1.10", id="0.33 C"),
        pytest.param(0.5, "1.09", "1.21", id="0.5 C"),
        pytest.param(0.7, "1.16", "1.38", id="0.7 C"),
        pytest.param(1.0, "1.27", "1.66", id="1 C"),
    ],
)
def test_closed_form_meets_the_numerical_model(rate: float, low: str, high: str) -> None:
    """Two tails, 0.13 h and 0.32 h, stand for the stiffest and the softest cell of that model.

    Looser than its printed digits, 1.5 %: its cells' voltage does not rise in a straight line, the closed form's does.
    """
    cells = {"rate": rate / HOUR, "end": 0.05 / HOUR}
    for tail, printed in ((0.13 * HOUR, low), (0.32 * HOUR, high)):
        time = charge_time(
            charge=0.0,
            target=1.0,
            constant=constant_until(tail=tail, **cells),
            rate=cells["rate"],
            tail=tail,
            rate_before=rate_at(share=0.0, tail=tail, **cells),
            rate_after=rate_at(share=1.0, tail=tail, **cells),
        )
        assert near(time * rate / HOUR, printed, rel=0.015)


def times(rate: float, charge: float = 0.0, target: float = 1.0) -> tuple[float, float]:
    """Return the shortest and the longest likely time in hours; the rate is a share of the capacity in an hour."""
    low, high = (
        time_to_charge(rate=rate / HOUR, charge=charge, target=target, tail=tail) / HOUR
        for tail in ("short", "long")
    )
    return low, high


@source("bu-205 charge times", "second-hand")
@pytest.mark.parametrize(
    ("rate", "printed"),
    [
        pytest.param(0.7, "3", id="about 3 h at 0.7 C"),
        pytest.param(1.0, "3", id="about 3 h at 1 C"),
    ],
)
def test_longest_time_at_the_usual_rate(rate: float, printed: str) -> None:
    low, high = times(rate)
    assert agrees(high, printed, "h")
    assert low < high


@source("cell-sheets standard charge")
def test_standard_charge_of_the_cell_sheets() -> None:
    """Cell makers' sheets, 6 Ah and 1.8 Ah: 0.2 C, then 4.2 V a cell down to 0.01 C, about 6 h."""
    row = pick("charge_tail", name="usual")
    cells = {"rate": 0.2 / HOUR, "tail": row.number("tail"), "end": 0.01 / HOUR}
    time = charge_time(
        charge=0.0,
        target=1.0,
        constant=constant_until(**cells),
        rate=cells["rate"],
        tail=cells["tail"],
        rate_before=rate_at(share=0.0, **cells),
        rate_after=rate_at(share=1.0, **cells),
    )
    assert agrees(time / HOUR, "6", "h")


@ours
def test_charge_to_eighty_per_cent_is_plain_division() -> None:
    # Worked example: 8 Ah from 20 to 80 % at 2 A takes 2.4 h.
    low, high = times(2.0 / 8.0, 0.2, 0.8)
    assert agrees(low, "2.4", "h")
    assert low == high


@ours
def test_time_falls_as_amps_rise() -> None:
    """5 Ah from 20 % said 2.08 h at 2.5 A, 2.8 at 3 A, 3.24 at 3.7 A and 2.4 at 5 A."""
    for tail in TAILS:
        taken = [
            time_to_charge(rate=amperes / 5.0 / HOUR, charge=0.2, target=1.0, tail=tail)
            for amperes in (0.2, 1.0, 2.0, 2.5, 3.0, 3.7, 5.0)
        ]
        assert taken == sorted(set(taken), reverse=True)


@ours
def test_above_one_c_no_time_is_given() -> None:
    with pytest.raises(InputError, match="above 1 C"):
        times(3.0 / 2.0)
    assert agrees(charge_rate(current=3.0, capacity=2.0 * HOUR) * HOUR, "1.5", "1/h")


@source("bu-charging BU-410", "second-hand")
@pytest.mark.parametrize(
    ("celsius", "key", "signal"),
    [
        pytest.param(-0.1, "below freezing", "WARNING", id="no charging below 0"),
        pytest.param(0.0, "cold", "CAUTION", id="slow from 0 to 5"),
        pytest.param(4.9, "cold", "CAUTION", id="slow up to 5"),
        pytest.param(5.0, "normal", "", id="from 5"),
        pytest.param(40.5, "normal", "", marks=source("fire-service tip sheets"), id="105 degrees F"),
        pytest.param(
            40.6, "warm", "CAUTION", marks=source("fire-service tip sheets"), id="above 105 degrees F"
        ),
        pytest.param(45.0, "hot", "WARNING", id="above 45"),
    ],
)
def test_temperature(celsius: float, key: str, signal: str) -> None:
    row = temperature_row(temperature=celsius + ICE)
    assert same(row.text("key"), key)
    assert row.text("signal") == signal


@ours
@pytest.mark.parametrize(("low", "high"), [pytest.param("1.12", "1.25", id="85 to 92 %, 95 to 98 %, 99 %")])
def test_wall_energy(low: str, high: str) -> None:
    band = wall_energy_band(energy=1.0)
    assert agrees(band.low, low)
    assert agrees(band.high, high)


@ours
@pytest.mark.parametrize(("charge", "target"), [(-0.1, 1.0), (1.1, 1.0), (0.5, 0.4), (0.5, 1.1)])
def test_shares_out_of_range_are_refused(charge: float, target: float) -> None:
    with pytest.raises(InputError):
        times(0.5, charge, target)
