"""Walks through the fuller half of Numbers."""

from collections.abc import Iterator

from logic.answers.pairs import pair_table
from logic.answers.range import range_answer
from logic.answers.reading import Result
from logic.answers.stopping import stop_alone
from logic.board import Value
from logic.log import Ride
from screens.driver import Driver
from screens.scenes import Scene
from screens.scenes.held import Held
from screens.words import Style
from screens.world import World


def visit(driver: Driver, name: str) -> None:
    """Open a page of Numbers."""
    driver.app.front.place("numbers")
    driver.app.front.go(f"numbers.{name}")
    driver.settle()


def pairs(driver: Driver) -> None:
    """Open the pairs of pulleys."""
    visit(driver, "pairs")


def pairs_wish(driver: Driver) -> None:
    """Ask which pairs do 38 km/h and a 15 % hill."""
    pairs(driver)
    ask(driver, "Top speed wished for", "38")
    ask(driver, "Hill wished for", "15")


def pairs_sorted(driver: Driver) -> None:
    """Sort by push."""
    pairs(driver)
    driver.tap("Sort by another figure")
    driver.tap("Push")


def pairs_printed(driver: Driver) -> None:
    """Show a board whose motor constant is only printed."""
    held = Held(driver)
    held.choose_named("Ferry")
    pairs(driver)


def pairs_scratch(driver: Driver) -> None:
    """Show what a board without values lacks."""
    Held(driver).choose("none")
    pairs(driver)


def pair(driver: Driver) -> None:
    """Open one pair."""
    pairs_wish(driver)
    driver.tap("16:40")


def feel(driver: Driver) -> None:
    """Open wheels, bushings and trucks."""
    visit(driver, "feel")


def feel_parts(driver: Driver) -> None:
    """Open what a change of wheels does."""
    feel(driver)
    driver.tap("Wheels")


def stopping(driver: Driver) -> None:
    """Open stopping."""
    visit(driver, "stopping")


def ask(driver: Driver, chip: str, text: str) -> None:
    """Type a value for a chip and close the keypad."""
    driver.tap(chip)
    driver.type(text)
    driver.tap("Done")


def stopping_hill(driver: Driver) -> None:
    """Ask for a hill that is stronger than the brake."""
    stopping(driver)
    ask(driver, "Slope under it", "-20")


def stopping_pack(driver: Driver) -> None:
    """Scroll to what tyre and pack allow, on a pack that is not full."""
    stopping(driver)
    ask(driver, "Pack at rest", "39")
    driver.tap("All figures")
    driver.find("Volts at the plug while braking").bring()


def push(driver: Driver) -> None:
    """Open what gearing tells of other roads."""
    visit(driver, "gearing")
    driver.tap("Hills, wind and every charge")


def push_hill(driver: Driver) -> None:
    """Climb against the wind."""
    push(driver)
    ask(driver, "Grade", "8")
    ask(driver, "Headwind", "15")


def push_steep(driver: Driver) -> None:
    """Ask for a hill it cannot start."""
    push(driver)
    ask(driver, "Grade", "40")


def push_down(driver: Driver) -> None:
    """Ask for a slope on which gravity runs past the motors."""
    push(driver)
    ask(driver, "Grade", "-20")


def push_figures(driver: Driver) -> None:
    """Step along the curve and scroll to the figures there."""
    push(driver)
    driver.tap("Along the curve, one more")
    driver.tap("All figures on this road")


def compare(driver: Driver) -> None:
    """Compare the board with another one."""
    visit(driver, "compare")


def compare_trial(driver: Driver) -> None:
    """Compare the board with a trial of two more teeth."""
    Held(driver).try_value("drive.motor_teeth", Value(18.0))
    visit(driver, "compare")


def compare_chart(driver: Driver) -> None:
    """Scroll to both curves."""
    compare_trial(driver)
    driver.find("Push against road load, both").bring()


def range_spent(driver: Driver) -> None:
    """Scroll to energy over speed."""
    visit(driver, "range")
    driver.tap("Energy over speed")


def rides_none(driver: Driver) -> None:
    """Open drag from rides on a board without any."""
    held = Held(driver)
    held.choose_named("Weir")
    visit(driver, "rides")


RIDES = ((12.0, 7.4), (16.0, 8.9), (21.0, 10.4), (25.0, 13.0), (29.0, 15.8), (33.0, 18.3))
"""Invented rides of six kilometres: usual speed in km/h, Wh/km."""


def rides(driver: Driver) -> None:
    """Open drag from rides with six of them, each with its usual speed."""
    held = Held(driver)
    held.choose_named("Ferry")
    if held.last("ride") is None:
        speeds = {}
        for speed, used in RIDES:
            ride = held.record(Ride(distance=6000.0, energy=used * 3.6 * 6000.0))
            speeds[str(ride)] = speed / 3.6
        held.remember(f"ride speeds {held.saved.id}", speeds)
    visit(driver, "rides")


def coast(driver: Driver) -> None:
    """Enter a coast by distance."""
    visit(driver, "coast")
    ask(driver, "Coast from", "18")
    ask(driver, "Rolled until standstill", "62")


def hold(driver: Driver) -> None:
    """Open hold for how long."""
    visit(driver, "hold")
    ask(driver, "Climb", "14")


def hold_cool(driver: Driver) -> None:
    """Ask for a gentle climb that is held for good."""
    visit(driver, "hold")
    ask(driver, "Climb", "2")


def hold_trial(driver: Driver) -> None:
    """Try a heavier board on the climb."""
    hold(driver)
    ask(driver, "Mass of the board", "14")


def hold_chart(driver: Driver) -> None:
    """Scroll to temperature over time."""
    hold(driver)
    driver.find("Temperature over time").bring()


def wheel(driver: Driver) -> None:
    """Enter a roll-out."""
    visit(driver, "wheel")
    ask(driver, "Rolled from mark to mark", "3.02")
    ask(driver, "Compare with", "100")


def bench_motor(driver: Driver) -> None:
    """Enter a spin-up, a resistance and magnets."""
    visit(driver, "bench_motor")
    for chip, text in (
        ("Volts while spinning", "30"),
        ("Motor turns at", "5080"),
        ("Volts between two wires", "0.46"),
        ("Amps through them", "10"),
        ("Magnets in the can", "14"),
    ):
        ask(driver, chip, text)


def units(driver: Driver) -> None:
    """Type a torque."""
    visit(driver, "units")
    driver.tap("Torque")
    driver.type("1.5")


def units_wire(driver: Driver) -> None:
    """Type a wire gauge."""
    visit(driver, "units")
    ask(driver, "Wire gauge", "14")


SCENES = (
    Scene("pairs", pairs, "numbers.pairs"),
    Scene("pairs-wish", pairs_wish, "numbers.pairs"),
    Scene("pairs-sorted", pairs_sorted, "numbers.pairs"),
    Scene("pairs-printed", pairs_printed, "numbers.pairs"),
    Scene("pairs-scratch", pairs_scratch, "numbers.pairs"),
    Scene("pair", pair, "numbers.pair"),
    Scene("stopping", stopping, "numbers.stopping"),
    Scene("stopping-hill", stopping_hill, "numbers.stopping"),
    Scene("stopping-pack", stopping_pack, "numbers.stopping"),
    Scene("push", push, "numbers.gearing"),
    Scene("push-hill", push_hill, "numbers.gearing"),
    Scene("push-steep", push_steep, "numbers.gearing"),
    Scene("push-down", push_down, "numbers.gearing"),
    Scene("push-figures", push_figures, "numbers.gearing"),
    Scene("feel", feel, "numbers.feel"),
    Scene("feel-wheels", feel_parts, "numbers.feel"),
    Scene("compare", compare, "numbers.compare"),
    Scene("compare-trial", compare_trial, "numbers.compare"),
    Scene("compare-chart", compare_chart, "numbers.compare"),
    Scene("range-spent", range_spent, "numbers.range"),
    Scene("rides-none", rides_none, "numbers.rides"),
    Scene("rides", rides, "numbers.rides"),
    Scene("coast", coast, "numbers.coast"),
    Scene("hold", hold, "numbers.hold"),
    Scene("hold-cool", hold_cool, "numbers.hold"),
    Scene("hold-trial", hold_trial, "numbers.hold"),
    Scene("hold-chart", hold_chart, "numbers.hold"),
    Scene("wheel", wheel, "numbers.wheel"),
    Scene("bench-motor", bench_motor, "numbers.bench_motor"),
    Scene("units", units, "numbers.units"),
    Scene("units-wire", units_wire, "numbers.units"),
)


def results(world: World) -> Iterator[str]:
    """Yield how many pairs there are, the stop and the energy on the way."""
    board, rider, style = world.saved, world.person.rider, Style()
    yield f"Pairs of pulleys: {len(pair_table(board, rider, {}).pairs)}"
    stop = stop_alone(board, rider, {})
    if isinstance(stop, Result):
        yield f"Whole way of a stop from {style.number(25 / 3.6, 'speed')}: {style.number(stop.value, 'way')}"
    used = range_answer(board, rider, {}, drawn=False).items["per_distance"]
    if isinstance(used, Result):
        yield f"Energy at {style.number(20 / 3.6, 'speed')}: {style.number(used.value, used.quantity)}"
