"""Carriage by air: the classes at their edges, the first question, and rules that are dated."""

from datetime import date
from itertools import product

import pytest

from logic.errors import InputError
from logic.pack.cells import pack_energy
from logic.pack.travel import (
    ANSWERS,
    air_class,
    counted,
    edition,
    rules,
    verdict,
)
from logic.tables import rows, sources
from logic.workings import STANDINGS
from tests.printed import agrees, ours, same, source

HOUR = 3600.0
ASKED = {"marked": "yes", "tested": "yes", "joined": False, "spares": 0}


@source("iata-dgr classes")
@pytest.mark.parametrize(
    ("watt_hours", "kind", "spares"),
    [
        pytest.param(1.0, "up to 100 Wh", 20, id="small"),
        pytest.param(100.0, "up to 100 Wh", 20, id="100.0"),
        pytest.param(100.1, "over 100 to 160 Wh", 2, id="100.1"),
        pytest.param(158.4, "over 100 to 160 Wh", 2, marks=source("faa-boards 158.4 Wh"), id="158.4 Wh"),
        pytest.param(160.0, "over 100 to 160 Wh", 2, id="160.0"),
        pytest.param(160.1, "over 160 Wh", 0, id="160.1"),
    ],
)
def test_class_edges(watt_hours: float, kind: str, spares: int) -> None:
    row = air_class(energy=watt_hours * HOUR)
    assert same(row.text("class"), kind)
    assert row.cells["spares"] == spares


@ours
def test_a_pack_of_exactly_100_wh_by_its_cells_is_within() -> None:
    # 20 cells of 2.5 V and 2 Ah, in an order of factors that binary fractions may miss by a hair.
    for series in range(1, 21):
        energy = pack_energy(
            cell_voltage=100.0 / (2.0 * series), cell_capacity=2.0 * HOUR, series=series, parallel=1, packs=1
        )
        assert air_class(energy=energy).text("class") == "up to 100 Wh"


@ours
@pytest.mark.parametrize(("marked", "tested"), product(ANSWERS, ANSWERS))
def test_first_question(marked: str, tested: str) -> None:
    answer = verdict(energies=(90.0 * HOUR,), joined=False, spares=0, marked=marked, tested=tested)
    if (marked, tested) == ("yes", "yes"):
        assert (answer.outcome, answer.card) == ("allowed, ask the airline", True)
    else:
        assert (answer.outcome, answer.card) == ("do not pack", False)
        assert answer.reasons
        assert set(answer.reasons) <= {"not marked", "not tested"}


@ours
def test_the_size_that_no_label_mends_is_said_first() -> None:
    answer = verdict(
        energies=(288.0 * HOUR,), joined=False, spares=0, marked="not known", tested="not known", damaged=True
    )
    assert answer.outcome == "do not pack"
    assert answer.reasons == ("damaged", "over 160 Wh", "not marked", "not tested")


@source("iata-dgr spares")
@pytest.mark.parametrize(
    ("energies", "spares", "outcome", "reason"),
    [
        pytest.param(
            (48.8,),
            0,
            "allowed, ask the airline",
            "",
            marks=source("wh-sheets", "second-hand"),
            id="11.1 V x 4.4 Ah",
        ),
        pytest.param(
            (90.0, 90.0), 1, "allowed, ask the airline", "", marks=ours, id="two of 10S 2.5 Ah, apart"
        ),
        pytest.param(
            (158.4,), 0, "operator approval", "", marks=source("faa-boards 158.4 Wh"), id="158.4 Wh"
        ),
        pytest.param((158.4,) * 3, 2, "operator approval", "", id="two spares"),
        pytest.param((158.4,) * 3, 3, "not as baggage", "too many spares", id="three spares"),
        pytest.param(
            (90.0, 288.0),
            1,
            "not as baggage",
            "over 160 Wh",
            marks=source("faa-boards 158.4 Wh"),
            id="the largest decides",
        ),
    ],
)
def test_verdict(energies: tuple[float, ...], spares: int, outcome: str, reason: str) -> None:
    joules = tuple(energy * HOUR for energy in energies)
    answer = verdict(energies=joules, joined=False, marked="yes", tested="yes", spares=spares)
    assert same(answer.outcome, outcome)
    assert answer.reasons == ((reason,) if reason else ())
    assert answer.card is (outcome != "not as baggage")


@ours
def test_two_packs_joined_no_longer_fly_without_approval() -> None:
    # Worked example: 3.6 V x 10 x 2.0 Ah is 72 Wh, two of them joined 144 Wh.
    pack = 3.6 * 10 * 2.0 * HOUR
    asked = {"marked": "yes", "tested": "yes", "spares": 0}
    apart = verdict(energies=(pack, pack), joined=False, **asked)
    joined = verdict(energies=(pack, pack), joined=True, **asked)
    assert [battery.kind for battery in apart.batteries] == ["up to 100 Wh"] * 2
    assert [battery.kind for battery in joined.batteries] == ["over 100 to 160 Wh"]
    assert agrees(joined.batteries[0].energy / HOUR, "144", "Wh")
    assert (apart.outcome, joined.outcome) == ("allowed, ask the airline", "operator approval")


@ours
def test_damaged_pack_stays() -> None:
    answer = verdict(energies=(90.0 * HOUR,), damaged=True, **ASKED)
    assert (answer.outcome, answer.reasons, answer.card) == ("do not pack", ("damaged",), False)


@ours
def test_rules_are_dated_and_sourced() -> None:
    assert date.fromisoformat(edition().in_force) == date(2026, 3, 27)
    assert date.fromisoformat(edition().until) == date(2026, 12, 31)
    assert "67th" in edition().name
    keys = [row.text("key") for row in rules()]
    assert keys[0] == "ask"
    assert len(keys) == len(set(keys))
    assert {"marked", "tested", "joined", "terminals", "cabin", "damaged"} <= set(keys)
    for row in rules():
        assert row.source in sources()
        assert row.where


@ours
@pytest.mark.parametrize(
    "table",
    [
        "chemistry", "cell_kinds", "low_voltage", "charger", "charge_tail", "charge_temperature",
        "charge_losses", "air_travel", "air_rules", "joining", "joining_rules", "wire_constants",
        "wire_ampacity", "wire_practice", "range", "descent", "care",
    ],
)  # fmt: skip
def test_every_row_of_the_pack_tables_says_where(table: str) -> None:
    for row in rows(table):
        assert row.source in sources(), row
        assert row.standing in STANDINGS, row
        assert row.where, row


@ours
def test_wrong_answers_are_refused() -> None:
    with pytest.raises(InputError, match="unknown answer"):
        verdict(energies=(HOUR,), joined=False, marked="maybe", tested="yes", spares=0)
    with pytest.raises(InputError, match="spares"):
        verdict(energies=(HOUR,), joined=False, marked="yes", tested="yes", spares=2)
    with pytest.raises(InputError, match="empty"):
        counted(energies=(), joined=True)
