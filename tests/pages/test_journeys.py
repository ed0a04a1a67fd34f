"""From an app without any board to an answer: every touch counted, digits too, only what is in sight is touched."""

import pytest

from screens.blocks import RIGHT, UNSURE, WRONG, Notice
from tests.pages.hand import Hand
from tests.pages.reader import Reader
from tests.pages.sight import in_sight

SIZES = ((360.0, 640.0), (412.0, 915.0))


@pytest.fixture(params=SIZES, ids=lambda size: f"{size[0]:.0f}x{size[1]:.0f}")
def hand(bare: Reader, request: pytest.FixtureRequest) -> Hand:
    """Give a hand at the app's start, on two sizes of phones."""
    return Hand(bare, request.param)


def test_may_two_packs_of_90_wh_fly(hand: Hand) -> None:
    hand.tap("May it fly?")
    hand.keys("90")
    hand.done()
    crown = hand.pages.page.crown
    # IATA: up to 100 Wh each. What nobody said yet is taken for granted, and said so.
    assert (crown.word, crown.form) == ("May fly, ask the airline", UNSURE)
    assert crown.text.startswith("2 answers make it sure. Counted as one pack. If it is tested to UN 38.3.")
    hand.tap("2")
    hand.tap("Apart")
    crown = hand.pages.page.crown
    assert (crown.word, crown.form) == ("May fly, ask the airline", UNSURE)
    assert crown.text.startswith("2 answers make it sure. If it is tested to UN 38.3.")
    # Where each may travel stands with the rules below; it is what the airline says to whoever may fly at all.
    assert hand.pages["where 1"].text == "Loose: cabin only, at most 20 a person."
    # The Wh were typed as they are marked: it is not asked whether they are.
    assert "pack.marked" not in hand.pages
    hand.told("may two packs of 90 Wh fly", 6)
    # Joined by a lead they are one battery of 180 Wh: over 160 Wh none flies.
    hand.tap("Joined by a lead")
    assert (hand.pages.page.crown.word, hand.pages.page.crown.form) == ("Not as baggage", WRONG)
    hand.tap("Apart")
    hand.tap("Yes")
    hand.pages.tap("Packs out of the board")
    hand.pages.type("0")
    hand.pages.tap("Done")
    assert (hand.pages.page.crown.word, hand.pages.page.crown.form) == ("May fly, ask the airline", RIGHT)
    hand.pages.tap("Show at the counter")
    assert hand.pages.page.crown.label == "2 packs, each"


def test_a_hot_motor_what_now(hand: Hand) -> None:
    hand.tap("Something is wrong")
    hand.tap("Hot motor")
    page = hand.pages.page
    assert isinstance(page.crown, Notice)
    assert "burn" in page.crown.text
    seen = in_sight(page, *hand.size)
    assert {"cause 0", "cause 0 check", "cause 0 remedy"} <= seen
    assert hand.pages["cause 0 remedy"].text.startswith("Stop and let it cool")
    hand.told("hot motor: what now", 3)


def test_before_a_ride_with_one_fault_to_the_verdict(hand: Hand) -> None:
    hand.tap("Before a ride")
    pages = hand.pages
    digits = 0
    while pages.name == "ride.run":
        session = pages.world.session("before_ride")
        one = session.of.item(session.under_way.at)
        if one.ask == "volts":
            digits = len("38.5")
            hand.keys("38.5")
        if one.key == "mounts":
            hand.tap("NOT RIGHT")
            hand.tap("Line broken")
            hand.tap("Note it and go on")
            continue
        hand.tap(one.state.upper())
    assert pages.page.crown.word == "With care"
    assert pages.page.crown.text.startswith("Mounts: Line broken.")
    assert hand.taps - digits <= 12
    hand.told("pre-ride with one fault, to the verdict", 12 + digits)


def test_before_a_ride_with_a_fault_that_ends_it(hand: Hand) -> None:
    hand.tap("Before a ride")
    hand.tap("FLAT, DRY, NO SMELL")
    hand.tap("NOT RIGHT")
    hand.tap("Wobbles")
    hand.tap("Stop: not riding")
    assert hand.pages.page.crown.word == "Do not ride"
    hand.told("pre-ride with a loose wheel, to the verdict", 12)
