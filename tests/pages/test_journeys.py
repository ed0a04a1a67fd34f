"""From an app without any board to each answer: every touch and value counted, only what is in sight is touched.

`pytest -s` prints the counts as a table.
"""

import pytest

from logic.units import GAP
from screens.blocks import PLAIN, RIGHT, UNSURE, WRONG, Field, Notice
from screens.paper.measure import measure
from screens.paper.scale import Look
from tests.pages.hand import Hand
from tests.pages.reader import Reader
from tests.pages.sight import in_sight

SIZES = ((360.0, 640.0), (412.0, 915.0))


@pytest.fixture(params=SIZES, ids=lambda size: f"{size[0]:.0f}x{size[1]:.0f}")
def hand(bare: Reader, request: pytest.FixtureRequest) -> Hand:
    """Give a hand at the app's start, on two sizes of phones."""
    return Hand(bare, request.param)


def test_torque_and_locker_of_a_motor_screw(hand: Hand) -> None:
    """M4, 5 mm in aluminium."""
    hand.tap("A screw")
    hand.tap("Motor face screws")
    before = measure(hand.pages.page.crown, hand.size[0], Look()).height
    hand.tap("5 mm")
    crown = hand.pages.page.crown
    # Ours: the hole of an alloy nobody named bears 0.808; / 1.06 = 0.762 -> 0.7; the ceiling down to a mark of 0.05: 0.8.
    assert crown.word == f"0.7{GAP}N·m, never over 0.8"
    locker, pull = crown.text.split("\n")
    assert locker.startswith("Medium locker, ride after ")
    # Ours: 0.7 N m over 80 mm is 8.75 N, 0.892 kg.
    assert pull == f"No wrench: 0.892{GAP}kg at 80{GAP}mm"
    # What was tapped stays where it was.
    assert measure(crown, hand.size[0], Look()).height == pytest.approx(before)
    hand.told("torque and locker of a motor screw", taps=4)
    assert {"thread", "into", "engagement"} <= in_sight(hand.pages.page, *hand.size)
    # Who knows that it is 6061 needs one tap more.
    hand.tap("6061")
    assert hand.pages.page.crown.word.startswith(f"1.2{GAP}N·m")


# The board of the example in the handbook of electric drives: 10S, Kv 190, 15:36 teeth, a 90 mm wheel.
SPEED = ("10", "190", "15", "36", "90")


def test_a_first_speed(hand: Hand) -> None:
    hand.tap("Speed and range")
    hand.tap("Give them one by one")
    hand.fill(*SPEED)
    # The example's: at 36 V and 95 % duty it runs 45.9 km/h without load.
    assert hand.pages.page.crown.number == "45.9"
    hand.told("first speed", taps=8, values=5)


def test_a_loaded_speed_with_its_band(hand: Hand) -> None:
    hand.tap("Speed and range")
    hand.tap("Give them one by one")
    hand.fill(*SPEED)
    hand.tap("More exact: the weights")
    hand.fill("11", "80")
    hand.tap("More exact: limits")
    hand.fill("30", "3")
    crown = hand.pages.page.crown
    assert crown.label == "Top speed, loaded, about"
    low, high = (float(end) for end in crown.number.split(" to "))
    assert 30.0 < low < high < 45.9
    hand.told("loaded top speed with a band", taps=13, values=9)


@pytest.mark.parametrize("way", ["A belt", "Set a belt"])
def test_is_a_belt_right(hand: Hand, way: str) -> None:
    """Belt print, teeth of both pulleys, motor constant, motor amps: those of Towpath 36. Then the scale."""
    if way == "Set a belt":
        hand.place("bench")
    hand.tap(way)
    for value in ("280-5M-15", "16", "40", "170", "45"):
        hand.keys(value)
        hand.tap("Next")
    assert hand.pages["verdict"].form == PLAIN
    hand.keys("0.92")
    verdict = hand.pages["verdict"]
    # The same pull on the saved board of these values, in test_tension.py: in window.
    assert verdict.word.endswith("JUST RIGHT")
    assert verdict.form == (RIGHT if way == "A belt" else UNSURE)
    assert hand.pages.shows(f"102{GAP}N{GAP}±{GAP}20{GAP}N")
    hand.told("belt right or not, by scale", taps=10, values=6)


def test_which_pulleys_for_35_km_h_and_12_percent(hand: Hand) -> None:
    hand.place("numbers")
    hand.pages.rest()
    hand.tap("Top speed you want")
    hand.fill("35", "12")
    hand.tap("Pairs of pulleys")
    hand.tap("Give them one by one")
    hand.option("HTD 5M")
    hand.tap("Next")
    for value in ("90", "190", "10", "11", "80", "40"):
        hand.keys(value)
        hand.tap("Next")
    hand.option("Two")
    hand.done()
    best = hand.pages.page.crown
    assert best.word == "14:40"
    hand.pages.back()
    # The answer is the first row of Numbers.
    first = hand.pages.rest().page.blocks[0]
    assert (first.key, first.value) == ("numbers.pairs", best.word)
    hand.told("which pulleys for 35 km/h and 12 %", taps=16, values=8)


def test_which_pulleys_on_a_board_that_is_saved(pages: Reader) -> None:
    hand = Hand(pages)
    hand.place("numbers")
    pages.rest()
    hand.tap("Top speed you want")
    hand.fill("35", "12")
    first = pages.rest().page.blocks[0]
    assert (first.key, first.value) == ("numbers.pairs", "16:44")
    hand.told("which pulleys, on a saved board", taps=4, values=2)


def test_may_two_packs_of_90_wh_fly(hand: Hand) -> None:
    hand.tap("May it fly?")
    hand.keys("90")
    hand.done()
    assert "all_joined" not in hand.pages
    crown = hand.pages.page.crown
    # IATA: up to 100 Wh each. What nobody said yet is taken for granted, and said so.
    assert (crown.word, crown.form) == ("May fly, ask the airline", UNSURE)
    assert crown.text.startswith("Only if there is one pack; it is tested to UN 38.3")
    hand.tap("2")
    hand.tap("Apart")
    crown = hand.pages.page.crown
    assert (crown.word, crown.form) == ("May fly, ask the airline", UNSURE)
    assert crown.text.startswith("Only if it is tested to UN 38.3; ")
    # Where each may travel stands with the rules below; it is what the airline says to whoever may fly at all.
    assert hand.pages["where 1"].text == "Loose: cabin only, at most 20 a person."
    # The Wh were typed as they are marked: it is not asked whether they are.
    assert "pack.marked" not in hand.pages
    hand.told("may two packs of 90 Wh fly", taps=4, values=1)
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
    field = hand.pages.blocks()[1]
    assert isinstance(field, Field)
    assert field.hint != field.label
    hand.tap("Hot motor")
    page = hand.pages.page
    assert isinstance(page.crown, Notice)
    assert "burn" in page.crown.text
    seen = in_sight(page, *hand.size)
    assert {"cause 0", "cause 0 check", "cause 0 remedy"} <= seen
    assert hand.pages["cause 0 remedy"].text.startswith("Stop and let it cool")
    hand.told("hot motor: what now", taps=3)


def test_before_a_ride_with_one_fault_to_the_verdict(hand: Hand) -> None:
    hand.tap("Before a ride")
    pages = hand.pages
    while pages.name == "ride.run":
        session = pages.world.session("before_ride")
        one = session.of.item(session.under_way.at)
        if one.ask == "volts":
            hand.keys("38.5")
        if one.key == "mounts":
            hand.tap("NOT RIGHT")
            hand.tap("Line broken")
            hand.tap("NOTE IT AND GO ON")
            continue
        hand.tap(one.state.upper())
    assert pages.page.crown.word == "With care"
    assert pages.page.crown.text.startswith("Mounts: Line broken.")
    hand.told("pre-ride with one fault, to the verdict", taps=12, values=1)


def test_before_a_ride_with_a_fault_that_ends_it(hand: Hand) -> None:
    hand.tap("Before a ride")
    hand.tap("FLAT, DRY, NO SMELL")
    hand.tap("NOT RIGHT")
    hand.tap("Wobbles")
    hand.tap("STOP: NOT RIDING")
    assert hand.pages.page.crown.word == "Do not ride"
    hand.told("pre-ride with a loose wheel, to the verdict", taps=12)
