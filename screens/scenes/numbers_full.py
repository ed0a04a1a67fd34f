"""Walks through the fuller half of Numbers."""

from collections.abc import Iterator

from logic.answers.pairs import pair_table
from logic.answers.range import range_answer
from logic.answers.reading import Result
from logic.answers.stopping import stop_alone
from logic.board import Value
from logic.log import Ride
from screens.acts.entering import Put
from screens.driver import Driver
from screens.scenes.held import Held
from screens.scenes.steps import Step, asked, board, go, no_board, place, scene, settled, sight
from screens.words import Style
from screens.world import World


def page(name: str) -> tuple[Step, ...]:
    """Open a page of Numbers."""
    return (place("numbers"), go(f"numbers.{name}"), settled)


def more_teeth(driver: Driver) -> None:
    """Try two more teeth on the motor."""
    Held(driver).do(Put("drive.motor_teeth", Value(18.0)))


RIDES = ((12.0, 7.4), (16.0, 8.9), (21.0, 10.4), (25.0, 13.0), (29.0, 15.8), (33.0, 18.3))
"""Invented rides of six kilometres: usual speed in km/h, Wh/km."""


def six_rides(driver: Driver) -> None:
    """Have six rides in the log, each with its usual speed."""
    held = Held(driver)
    if held.last("ride") is not None:
        return
    speeds = {}
    for speed, used in RIDES:
        ride = held.record(Ride(distance=6000.0, energy=used * 3.6 * 6000.0))
        speeds[str(ride)] = speed / 3.6
    held.remember(f"ride speeds {held.saved.id}", speeds)


PAIRS, FEEL, STOPPING, UNITS = page("pairs"), page("feel"), page("stopping"), page("units")
WISH = (*PAIRS, *asked("Top speed you want", "38"), *asked("Hill you want", "15"))
PUSH = (*page("gearing"), "Hills, wind and every charge")
TRIAL = (more_teeth, *page("compare"))
HOLD = (*page("hold"), *asked("Climb", "14"))

SCENES = (
    scene("pairs", "numbers.pairs", *PAIRS),
    scene("pairs-wish", "numbers.pairs", *WISH),
    scene("pairs-sorted", "numbers.pairs", *PAIRS, "Sort by another figure", "Push"),
    # Its motor constant is only printed.
    scene("pairs-printed", "numbers.pairs", board("Ferry"), *PAIRS),
    scene("pairs-scratch", "numbers.pairs", no_board, *PAIRS),
    scene("pair", "numbers.pair", *WISH, "16:40"),
    scene("stopping", "numbers.stopping", *STOPPING),
    # The hill is stronger than the brake.
    scene("stopping-hill", "numbers.stopping", *STOPPING, *asked("Slope under it", "-20")),
    scene(
        "stopping-pack",
        "numbers.stopping",
        *STOPPING,
        *asked("Pack at rest", "39"),
        "All figures",
        sight("Volts at the plug while braking"),
    ),
    scene("push", "numbers.gearing", *PUSH),
    scene("push-hill", "numbers.gearing", *PUSH, *asked("Grade", "8"), *asked("Headwind", "15")),
    # It cannot start on the first, and gravity runs past the motors on the second.
    scene("push-steep", "numbers.gearing", *PUSH, *asked("Grade", "40")),
    scene("push-down", "numbers.gearing", *PUSH, *asked("Grade", "-20")),
    scene("push-figures", "numbers.gearing", *PUSH, "Along the curve, one more", "All figures on this road"),
    scene("feel", "numbers.feel", *FEEL),
    scene("feel-wheels", "numbers.feel", *FEEL, "Wheels"),
    scene("compare", "numbers.compare", *page("compare")),
    scene("compare-trial", "numbers.compare", *TRIAL),
    scene("compare-chart", "numbers.compare", *TRIAL, sight("Push against road load, both")),
    scene("range-spent", "numbers.range", *page("range"), "Energy over speed"),
    scene("rides-none", "numbers.rides", board("Weir"), *page("rides")),
    scene("rides", "numbers.rides", board("Ferry"), six_rides, *page("rides")),
    scene(
        "coast",
        "numbers.coast",
        *page("coast"),
        *asked("Coast from", "18"),
        *asked("Rolled until standstill", "62"),
    ),
    scene("hold", "numbers.hold", *HOLD),
    # It is held for good.
    scene("hold-cool", "numbers.hold", *page("hold"), *asked("Climb", "2")),
    scene("hold-trial", "numbers.hold", *HOLD, *asked("Mass of the board", "14")),
    scene("hold-chart", "numbers.hold", *HOLD, sight("Temperature over time")),
    scene(
        "wheel",
        "numbers.wheel",
        *page("wheel"),
        *asked("Rolled from mark to mark", "3.02"),
        *asked("Compare with", "100"),
    ),
    scene(
        "bench-motor",
        "numbers.bench_motor",
        *page("bench_motor"),
        *asked("Volts while spinning", "30"),
        *asked("Motor turns at", "5080"),
        *asked("Volts between two wires", "0.46"),
        *asked("Amps through them", "10"),
        *asked("Magnets in the can", "14"),
    ),
    scene("units", "numbers.units", *UNITS, "Torque", "=1.5"),
    scene("units-wire", "numbers.units", *UNITS, *asked("Wire gauge", "14")),
)


def results(world: World) -> Iterator[str]:
    """Yield how many pairs there are, the stop and the energy on the way."""
    board, rider, style = world.saved, world.person.rider, Style()
    yield f"Pairs of pulleys: {len(pair_table(board, rider, {}).pairs)}"
    stop = stop_alone(board, rider, {})
    if isinstance(stop, Result):
        yield f"Stopping distance from {style.number(25 / 3.6, 'speed')}: {style.number(stop.value, 'way')}"
    used = range_answer(board, rider, {}, drawn=False).items["per_distance"]
    if isinstance(used, Result):
        yield f"Energy at {style.number(20 / 3.6, 'speed')}: {style.number(used.value, used.quantity)}"
