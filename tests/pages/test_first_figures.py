"""Stopping, motor heat and long descents on an empty app: a headline that says something, and what makes it more exact."""

import pytest

from logic.units import GAP
from screens.acts.entering import Ask
from tests.pages.reader import Reader

FIRST = ("10", "190", "15", "36", "90")
WEIGHTS = ("11", "80")


def fill(pages: Reader, texts: tuple[str, ...]) -> None:
    """Type one value after the other."""
    for place, text in enumerate(texts, start=1):
        pages.type(text)
        pages.tap("Next" if place < len(texts) else "Done")


def test_a_stop_is_told_before_any_value(bare: Reader) -> None:
    bare.open("numbers.stopping")
    crown = bare.page.crown
    assert crown.label == f"Stopping distance from 25{GAP}km/h: dry, 2.5{GAP}s to react"
    # Ours: 17.36 m gone while reacting, then 6.944^2 / (2 x 2.5) = 9.64 m or / (2 x 0.6) = 40.19 m.
    assert (crown.number, crown.unit) == ("27 to 57.5", "m")
    assert crown.detail == "By how motors alone usually slow a board."


def test_seven_values_model_the_stop(bare: Reader) -> None:
    bare.open("numbers.stopping")
    bare.tap("More exact: the drive")
    fill(bare, FIRST)
    bare.tap("More exact: the weights")
    fill(bare, WEIGHTS)
    low, _, high = bare.page.crown.number.partition(" to ")
    assert 17.4 < float(low) < float(high) < 80.0
    assert bare["nearer controller.brake_current"].title == "More exact: limits of the brake"
    bare.tap("10 usual values stand in")
    assert "usual controller.regen_current" in bare


def test_motor_heat_says_what_it_needs_and_asks_for_it(bare: Reader) -> None:
    bare.open("numbers.hold")
    crown = bare.page.crown
    assert (crown.number, crown.unit) == ("8", "values to give")
    bare.act(crown.act)
    assert bare.world.asking.key == "pack.series"
    fill(bare, (*FIRST, *WEIGHTS))
    assert bare.page.crown.number == "1"
    bare.act(bare.page.crown.act)
    assert bare.world.asking.key == "drive.motors"


def test_a_drop_says_what_it_needs_and_asks_for_it(bare: Reader) -> None:
    bare.open("numbers.descents")
    assert (bare.page.crown.number, bare.page.crown.unit) == ("3", "values to give")
    bare.act(bare.page.crown.act)
    fill(bare, ("10", "2", "4"))
    crown = bare.page.crown
    assert (crown.number, crown.unit) == ("0", "m")
    assert crown.detail == "A full pack takes nothing back: start lower."
    bare.tap("Charge at the top, one less")
    low, _, high = bare.page.crown.number.partition(" to ")
    assert 0.0 < float(low) < float(high)


@pytest.mark.parametrize("page", ["charging", "wiring"])
def test_one_missing_value_leads_to_the_next(bare: Reader, page: str) -> None:
    bare.open(f"numbers.{page}")
    bare.act(bare.page.crown.act)
    first = bare.world.asking.key
    bare.type("5")
    assert bare.page.foot.main.text == "Next"
    then = bare.page.foot.main.act
    assert isinstance(then, Ask)
    assert then.key != first


def test_a_centre_distance_says_what_it_needs_and_asks_for_it(bare: Reader) -> None:
    bare.open("numbers.belt")
    assert (bare.page.crown.number, bare.page.crown.unit) == ("4", "values to give")
    bare.act(bare.page.crown.act)
    # The print on the belt's back gives its profile, too.
    fill(bare, ("280-5M-15", "16", "40"))
    # Ours: the centres of Towpath 36, worked for its page of the belt.
    assert (bare.page.crown.number, bare.page.crown.unit) == ("67.3", "mm")
