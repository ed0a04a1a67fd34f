"""Walks to everything about packs, in Numbers, Ride and Bench."""

from collections.abc import Callable

from logic.log import Ride
from screens.driver import Driver
from screens.scenes import Scene
from screens.scenes.held import Held

RIDES = ((8.2, 98.0), (5.1, 64.0), (11.4, 140.0), (3.0, 190.0), (9.6, 121.0))
"""Invented rides: km and Wh, one of them odd."""


def board(driver: Driver, name: str) -> None:
    """Put an example board in use."""
    held = Held(driver)
    held.choose_named(name)


def clean(driver: Driver) -> None:
    """Forget what an earlier scene answered."""
    held = Held(driver)
    held.forget_answers()
    held.remember(f"pack_out/{held.saved.id}", None)


def numbers(title: str) -> Callable[[Driver], None]:
    """Return a walk to a row of Numbers."""

    def walk(driver: Driver) -> None:
        clean(driver)
        driver.tap("Numbers")
        driver.tap(title)

    return walk


packs = numbers("Pack energy and limits")
charging = numbers("Charging")
joining = numbers("Joining packs")
wiring = numbers("Wiring and fuse")
descents = numbers("Long descents")
care = numbers("Storage and care")
modelled = numbers("Range")


def packs_warning(driver: Driver) -> None:
    """Show a brake set above what the cells take."""
    board(driver, "Lock-keeper")
    packs(driver)


def packs_trial(driver: Driver) -> None:
    """Try another row of cells."""
    packs(driver)
    driver.tap("Cells in parallel, per pack, one more")


def learnt(driver: Driver) -> None:
    """Show a range learnt from rides, one of them odd."""
    board(driver, "Weir")
    held = Held(driver)
    if held.last("ride") is None:
        for kilometres, watt_hours in RIDES:
            held.record(Ride(distance=kilometres * 1000.0, energy=watt_hours * 3600.0))
    modelled(driver)


def range_chart(driver: Driver) -> None:
    """Scroll to the chart."""
    modelled(driver)
    driver.find("Range over speed").bring()


def wrong_charger(driver: Driver) -> None:
    """Try a charger for twelve cells on ten."""
    charging(driver)
    driver.tap("Charger volts")
    driver.type("50.4")
    driver.tap("Done")


def wrong_typing(driver: Driver) -> None:
    """See the wrong charger while it is typed."""
    charging(driver)
    driver.tap("Charger volts")
    driver.type("50.4")


def cold_charging(driver: Driver) -> None:
    """Ask about cells below freezing."""
    charging(driver)
    for _ in range(5):
        driver.tap("Temperature of the cells, one less")


def joined_level(driver: Driver) -> None:
    """Type two readings that are near each other."""
    board(driver, "Ferry")
    joining(driver)
    driver.tap("Volts of the first pack")
    driver.type("41.2")
    driver.tap("Done")
    driver.tap("Volts of the second pack")
    driver.type("41.0")
    driver.tap("Done")


def joined_apart(driver: Driver) -> None:
    """Type two readings that are far apart."""
    joined_level(driver)
    driver.tap("Volts of the second pack")
    driver.type("38")
    driver.tap("Done")


def joined_unlike(driver: Driver) -> None:
    """Say that the second pack has other cells."""
    board(driver, "Ferry")
    joining(driver)
    driver.tap("Second pack, cells in series")
    driver.type("12")
    driver.tap("Done")


def in_series(driver: Driver) -> None:
    """Ask about joining in series."""
    joining(driver)
    driver.tap("In series")


def wire_empty(driver: Driver) -> None:
    """Show what is asked of a board without wire."""
    board(driver, "Weir")
    wiring(driver)


def below_full(driver: Driver) -> None:
    """Begin the hill with room in the packs."""
    descents(driver)
    for _ in range(4):
        driver.tap("Charge at the top, one less")


def pack_out(driver: Driver) -> None:
    """Charge a pack that was taken out of use."""
    signs_out(driver)
    driver.app.front.place("ride")
    driver.tap("Numbers")
    driver.tap("Charging")


def flight_no(driver: Driver) -> None:
    """Show a pack that is not marked."""
    clean(driver)
    driver.settle()
    driver.tap("Pack for a flight")


def flight_yes(driver: Driver) -> None:
    """Show packs that may fly."""
    board(driver, "Ferry")
    driver.app.front.place("ride")
    driver.settle()
    flight_no(driver)
    driver.tap("Apart")
    driver.tap("Packs out of the board, one more")
    driver.type("0")
    driver.tap("Done")


def flight_joined(driver: Driver) -> None:
    """Carry both packs joined by a lead."""
    flight_yes(driver)
    driver.tap("Joined by a lead")


def card(driver: Driver) -> None:
    """Show the card for the counter."""
    flight_yes(driver)
    driver.tap("Show at the counter")


def signs(driver: Driver) -> None:
    """Open the stop signs of a board that no other scene rides."""
    board(driver, "Lock-keeper")
    clean(driver)
    driver.app.front.place("ride")
    driver.settle()
    driver.tap("Pack hot or swollen?")


def signs_out(driver: Driver) -> None:
    """Take the pack out of use."""
    signs(driver)
    driver.tap("Swollen")
    driver.tap("Take this pack out of use")
    driver.settle()


def ride_out(driver: Driver) -> None:
    """Show Ride with a pack out of use."""
    signs_out(driver)
    driver.app.front.place("ride")


def controller(driver: Driver) -> None:
    """Open the card of what to set."""
    driver.tap("Numbers")
    driver.settle()
    driver.tap("Set the controller")


def power(driver: Driver) -> None:
    """Open first power."""
    clean(driver)
    driver.tap("Bench")
    driver.tap("Build, stage by stage")
    driver.tap("First power")


NUMBERS = (
    Scene("packs", packs, "numbers.packs"),
    Scene("packs-warning", packs_warning, "numbers.packs"),
    Scene("packs-trial", packs_trial, "numbers.packs"),
    Scene("range", modelled, "numbers.range"),
    Scene("range-chart", range_chart, "numbers.range"),
    Scene("range-learnt", learnt, "numbers.range"),
    Scene("charging", charging, "numbers.charging"),
    Scene("charging-wrong-typing", wrong_typing, "numbers.charging"),
    Scene("charging-wrong", wrong_charger, "numbers.charging"),
    Scene("charging-cold", cold_charging, "numbers.charging"),
    Scene("charging-pack-out", pack_out, "numbers.charging"),
    Scene("joining", joining, "numbers.joining"),
    Scene("joining-level", joined_level, "numbers.joining"),
    Scene("joining-apart", joined_apart, "numbers.joining"),
    Scene("joining-unlike", joined_unlike, "numbers.joining"),
    Scene("joining-series", in_series, "numbers.joining"),
    Scene("wiring", wiring, "numbers.wiring"),
    Scene("wiring-empty", wire_empty, "numbers.wiring"),
    Scene("descents", descents, "numbers.descents"),
    Scene("descents-room", below_full, "numbers.descents"),
    Scene("care", care, "numbers.care"),
)
RIDE = (
    Scene("flight-no", flight_no, "ride.flight"),
    Scene("flight", flight_yes, "ride.flight"),
    Scene("flight-joined", flight_joined, "ride.flight"),
    Scene("flight-card", card, "ride.flight_card"),
    Scene("pack-signs", signs, "ride.pack_signs"),
    Scene("pack-signs-out", signs_out, "ride.pack_signs"),
    Scene("ride-pack-out", ride_out, "ride"),
)
BENCH = (Scene("controller", controller, "bench.controller"), Scene("first-power", power, "bench.power"))
