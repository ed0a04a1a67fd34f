"""The word and the certainty of a reading, at and around every edge. Cases of our own."""

import pytest

from logic.belt.verdict import Reading, Verdict, judge
from logic.errors import InputError

FLOOR, CEILING = 70.0, 110.0


@pytest.mark.parametrize(
    ("tension", "error", "word", "certainty"),
    [
        pytest.param(90.0, 10.0, "in window", "inside", id="band within"),
        pytest.param(90.0, 20.0, "in window", "inside", id="band from edge to edge"),
        pytest.param(90.0, 20.1, "in window", "cannot tell", id="band past both edges"),
        pytest.param(75.0, 10.0, "in window", "may be slack", id="band across the floor, estimate inside"),
        pytest.param(65.0, 10.0, "slack", "may be slack", id="band across the floor, estimate outside"),
        pytest.param(105.0, 10.0, "in window", "may be tight", id="band across the ceiling, estimate inside"),
        pytest.param(115.0, 10.0, "tight", "may be tight", id="band across the ceiling, estimate outside"),
        pytest.param(60.0, 9.9, "slack", "surely", id="band below"),
        pytest.param(60.0, 10.0, "slack", "may be slack", id="band below, touching the floor"),
        pytest.param(120.0, 9.9, "tight", "surely", id="band above"),
        pytest.param(120.0, 10.0, "tight", "may be tight", id="band above, touching the ceiling"),
        pytest.param(60.0, 60.0, "slack", "cannot tell", id="estimate slack, band past both"),
        pytest.param(130.0, 70.0, "tight", "cannot tell", id="estimate tight, band past both"),
        pytest.param(70.0, 0.0, "in window", "inside", id="on the floor, exact"),
        pytest.param(110.0, 0.0, "in window", "inside", id="on the ceiling, exact"),
        pytest.param(69.999, 0.0, "slack", "surely", id="under the floor, exact"),
        pytest.param(110.001, 0.0, "tight", "surely", id="over the ceiling, exact"),
        pytest.param(-12.0, 8.0, "slack", "surely", id="hung loose before the pull"),
    ],
)
def test_verdict(tension: float, error: float, word: str, certainty: str) -> None:
    """The word follows the best estimate, the certainty the band."""
    found = judge(reading=Reading(tension, error), floor=FLOOR, ceiling=CEILING)
    assert (found.word, found.certainty) == (word, certainty)


def test_one_verdict_for_every_reading() -> None:
    """On a grid: surely means no part of the band is inside, inside means all of it, and the words agree."""
    for tension in range(-50, 250):
        for error in range(120):
            found = judge(reading=Reading(float(tension), float(error)), floor=FLOOR, ceiling=CEILING)
            low, high = tension - error, tension + error
            touches = not (high < FLOOR or low > CEILING)
            assert (found.certainty == "surely") == (not touches)
            assert (found.certainty == "inside") == (low >= FLOOR and high <= CEILING)
            assert (found.certainty == "cannot tell") == (low < FLOOR and high > CEILING)
            if found.certainty in ("surely", "inside"):
                assert (found.certainty == "inside") == (found.word == "in window")
            if found.certainty == "may be slack":
                assert found.word in ("slack", "in window")
            if found.certainty == "may be tight":
                assert found.word in ("tight", "in window")


@pytest.mark.parametrize(
    ("reading", "floor", "ceiling", "field"),
    [
        pytest.param(Reading(90.0, -1.0), 70.0, 110.0, "error", id="negative error"),
        pytest.param(Reading(90.0, float("inf")), 70.0, 110.0, "error", id="endless error"),
        pytest.param(Reading(float("nan"), 1.0), 70.0, 110.0, "tension", id="no number"),
        pytest.param(Reading(90.0, 1.0), 120.0, 110.0, "floor", id="edges crossed"),
        pytest.param(Reading(90.0, 1.0), 0.0, 110.0, "floor", id="no floor"),
    ],
)
def test_refusals(reading: Reading, floor: float, ceiling: float, field: str) -> None:
    """Never a silent verdict on numbers that cannot be."""
    with pytest.raises(InputError) as refused:
        judge(reading=reading, floor=floor, ceiling=ceiling)
    assert refused.value.field == field


def test_a_verdict_is_a_value() -> None:
    """Equal verdicts are equal, so that a screen can tell a change."""
    assert judge(reading=Reading(90.0, 1.0), floor=70.0, ceiling=110.0) == Verdict("in window", "inside")
