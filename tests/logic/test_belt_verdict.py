"""The word of a reading at and around every edge. Cases of our own."""

import pytest

from logic.belt.verdict import (
    CANNOT_TELL,
    MAY_BE_SLACK,
    MAY_BE_TIGHT,
    BeltVerdict,
    Measured,
    judge,
    word_of,
)
from logic.errors import InputError

FLOOR, CEILING = 70.0, 110.0


@pytest.mark.parametrize(
    ("tension", "error", "word"),
    [
        pytest.param(90.0, 10.0, "in window", id="band within"),
        pytest.param(90.0, 20.0, "in window", id="band from edge to edge"),
        pytest.param(90.0, 20.1, CANNOT_TELL, id="band past both edges"),
        pytest.param(75.0, 12.0, "in window", id="inside the floor by more than a third of the error"),
        pytest.param(75.0, 15.0, "in window", id="inside the floor by a third of the error"),
        pytest.param(74.9, 15.0, MAY_BE_SLACK, id="inside the floor by less"),
        pytest.param(65.1, 15.0, MAY_BE_SLACK, id="under the floor by less than a third"),
        pytest.param(65.0, 15.0, "slack", id="under the floor by a third"),
        pytest.param(105.0, 15.0, "in window", id="inside the ceiling by a third of the error"),
        pytest.param(105.1, 15.0, MAY_BE_TIGHT, id="inside the ceiling by less"),
        pytest.param(114.9, 15.0, MAY_BE_TIGHT, id="over the ceiling by less than a third"),
        pytest.param(115.0, 15.0, "tight", id="over the ceiling by a third"),
        pytest.param(60.0, 9.9, "slack", id="band below"),
        pytest.param(120.0, 9.9, "tight", id="band above"),
        pytest.param(60.0, 60.0, CANNOT_TELL, id="estimate slack, band past both"),
        pytest.param(130.0, 70.0, CANNOT_TELL, id="estimate tight, band past both"),
        pytest.param(70.0, 0.0, "in window", id="on the floor, exact"),
        pytest.param(110.0, 0.0, "in window", id="on the ceiling, exact"),
        pytest.param(69.999, 0.0, "slack", id="under the floor, exact"),
        pytest.param(110.001, 0.0, "tight", id="over the ceiling, exact"),
        pytest.param(-12.0, 8.0, "slack", id="hung loose before the pull"),
    ],
)
def test_verdict(tension: float, error: float, word: str) -> None:
    """One word for the estimate and its error."""
    found = judge(reading=Measured(tension, error), floor=FLOOR, ceiling=CEILING)
    assert found.word == word


def test_a_reading_on_the_floor_is_no_tick() -> None:
    """54 N, good to 19 N, against a floor of 53.5 N: half a newton inside is nothing of 19."""
    found = judge(reading=Measured(54.0, 19.0), floor=53.5, ceiling=84.1)
    assert found.word == "on the edge: may be slack"
    assert not found.right
    assert not found.wrong


def test_one_verdict_for_every_reading() -> None:
    """On a grid, by the rule in its own words: margins in thirds of the error, bands past the edges."""
    for tension in range(-50, 250):
        for error in range(120):
            found = judge(reading=Measured(float(tension), float(error)), floor=FLOOR, ceiling=CEILING)
            past_both = tension - error < FLOOR and tension + error > CEILING
            assert (found.word == CANNOT_TELL) == past_both
            if past_both:
                continue
            inside = min(tension - FLOOR, CEILING - tension)
            assert found.right == (3 * inside >= error)
            assert found.wrong == (inside < 0 and -3 * inside >= error)
            if not found.right:
                assert ("slack" in found.word) == (tension < (FLOOR + CEILING) / 2)


def test_the_log_keeps_the_form_of_the_word() -> None:
    """An entry of an earlier rule is judged by its own figures; without them its word stands."""
    assert word_of("in window", 54.0, 19.0, 53.5, 84.1) == "on the edge: may be slack"
    assert word_of("in window", 65.0, 19.0, 53.5, 84.1) == "in window"
    assert word_of("", 54.0, 19.0, 53.5, 84.1) == ""
    assert word_of("slack", 40.0, 5.0, None, None) == "slack"
    assert word_of("slack", 40.0, None, 50.0, 80.0) == "slack"
    assert word_of("no such word", None, None, None, None) == ""


@pytest.mark.parametrize(
    ("reading", "floor", "ceiling", "field"),
    [
        pytest.param(Measured(90.0, -1.0), 70.0, 110.0, "error", id="negative error"),
        pytest.param(Measured(90.0, float("inf")), 70.0, 110.0, "error", id="endless error"),
        pytest.param(Measured(float("nan"), 1.0), 70.0, 110.0, "tension", id="no number"),
        pytest.param(Measured(90.0, 1.0), 120.0, 110.0, "floor", id="edges crossed"),
        pytest.param(Measured(90.0, 1.0), 0.0, 110.0, "floor", id="no floor"),
    ],
)
def test_refusals(reading: Measured, floor: float, ceiling: float, field: str) -> None:
    """Never a silent verdict on numbers that cannot be."""
    with pytest.raises(InputError) as refused:
        judge(reading=reading, floor=floor, ceiling=ceiling)
    assert refused.value.field == field


def test_a_verdict_is_a_value() -> None:
    """Equal verdicts are equal, so that a screen can tell a change."""
    assert judge(reading=Measured(90.0, 1.0), floor=70.0, ceiling=110.0) == BeltVerdict("in window")
