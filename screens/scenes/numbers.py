"""What is done on the way to scenes of Numbers: rides, trials, answers taken back; and the main results of a board."""

from collections.abc import Iterator

from logic.answers.gearing import gearing
from logic.answers.pairs import pair_table
from logic.answers.range import range_answer
from logic.answers.reading import Result
from logic.answers.stopping import stop_alone
from logic.board import Value
from logic.log import Ride
from screens.acts.entering import Put
from screens.driver import Driver
from screens.scenes.held import Held
from screens.scenes.steps import go, place, settled, step
from screens.tongue import texts
from screens.words import Style
from screens.world import World

RIDES = ((8.2, 98.0), (5.1, 64.0), (11.4, 140.0), (3.0, 190.0), (9.6, 121.0))
"""Invented rides: km and Wh, one of them odd."""
AT_SPEEDS = ((12.0, 7.4), (16.0, 8.9), (21.0, 10.4), (25.0, 13.0), (29.0, 15.8), (33.0, 18.3))
"""Invented rides of six kilometres: usual speed in km/h, Wh/km."""


@step
def numbers(driver: Driver, name: str) -> None:
    """Open a page of Numbers."""
    place(driver, "numbers")
    go(driver, f"numbers.{name}")
    settled(driver)


@step
def more_teeth(driver: Driver) -> None:
    """Try two more teeth on the motor."""
    Held(driver).do(Put("drive.motor_teeth", Value(18.0)))


@step
def clean(driver: Driver) -> None:
    """Forget what an earlier scene answered."""
    held = Held(driver)
    held.forget_answers()
    held.remember(f"pack_out/{held.saved.id}", None)


@step
def some_rides(driver: Driver) -> None:
    """Have rides in the log, one of them odd."""
    held = Held(driver)
    if held.last("ride") is None:
        for kilometres, watt_hours in RIDES:
            held.record(Ride(distance=kilometres * 1000.0, energy=watt_hours * 3600.0))


@step
def six_rides(driver: Driver) -> None:
    """Have six rides in the log, each with its usual speed."""
    held = Held(driver)
    if held.last("ride") is not None:
        return
    speeds = {}
    for speed, used in AT_SPEEDS:
        ride = held.record(Ride(distance=6000.0, energy=used * 3.6 * 6000.0))
        speeds[str(ride)] = speed / 3.6
    held.remember(f"ride speeds {held.saved.id}", speeds)


def results(world: World) -> Iterator[str]:
    """Yield ratio and speeds, how many pairs there are, the stop and the energy on the way."""
    board, rider, style = world.saved, world.person.rider, Style()
    speed = style.number(20 / 3.6, "speed")
    yield f"Board: {board.name}"
    items = gearing(board, rider, 20 / 3.6).items
    for name in ("ratio", "top_nominal", "top_loaded", "push_start", "climb_at"):
        item = items[name]
        if isinstance(item, Result):
            label = texts("gearing")["items"][name].format(speed=speed)
            yield f"{label}: {style.number(item.value, item.quantity)}"
    yield f"Pairs of pulleys: {len(pair_table(board, rider, {}).pairs)}"
    stop = stop_alone(board, rider, {})
    if isinstance(stop, Result):
        yield f"Stopping distance from {style.number(25 / 3.6, 'speed')}: {style.number(stop.value, 'way')}"
    used = range_answer(board, rider, {}).items["per_distance"]
    if isinstance(used, Result):
        yield f"Energy at {speed}: {style.number(used.value, used.quantity)}"
