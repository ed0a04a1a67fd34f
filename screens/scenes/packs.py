"""Walks to everything about packs, in Numbers, Ride and Bench."""

from logic.log import Ride
from screens.driver import Driver
from screens.scenes.held import Held
from screens.scenes.steps import Step, asked, board, place, scene, settled, sight

RIDES = ((8.2, 98.0), (5.1, 64.0), (11.4, 140.0), (3.0, 190.0), (9.6, 121.0))
"""Invented rides: km and Wh, one of them odd."""


def clean(driver: Driver) -> None:
    """Forget what an earlier scene answered."""
    held = Held(driver)
    held.forget_answers()
    held.remember(f"pack_out/{held.saved.id}", None)


def some_rides(driver: Driver) -> None:
    """Have rides in the log, one of them odd."""
    held = Held(driver)
    if held.last("ride") is None:
        for kilometres, watt_hours in RIDES:
            held.record(Ride(distance=kilometres * 1000.0, energy=watt_hours * 3600.0))


def row(title: str) -> tuple[Step, ...]:
    """Open a row of Numbers."""
    return (clean, "Numbers", title)


PACKS, RANGE, CHARGING = row("Pack energy and limits"), row("Range"), row("Charging")
JOINING, WIRING, DESCENTS = row("Joining packs"), row("Wiring and fuse"), row("Long descents")
WRONG = (*CHARGING, "Charger volts", "=50.4")
"""A charger for twelve cells on ten."""
SECOND = "Volts of the second pack"
LEVEL = (board("Ferry"), *JOINING, *asked("Volts of the first pack", "41.2"), *asked(SECOND, "41.0"))
UNMARKED = (clean, settled, "Pack for a flight")
FLIES = (
    board("Ferry"),
    place("ride"),
    settled,
    *UNMARKED,
    "Apart",
    *asked("Packs out of the board, one more", "0"),
)
# No other scene rides this board.
SIGNS = (board("Lock-keeper"), clean, place("ride"), settled, "Pack hot or swollen?")
SIGNS_OUT = (*SIGNS, "Swollen", "Take this pack out of use", settled)

NUMBERS = (
    scene("packs", "numbers.packs", *PACKS),
    # Its brake is set above what the cells take.
    scene("packs-warning", "numbers.packs", board("Lock-keeper"), *PACKS),
    scene("packs-trial", "numbers.packs", *PACKS, "Cells in parallel, per pack, one more"),
    scene("range", "numbers.range", *RANGE),
    scene("range-chart", "numbers.range", *RANGE, sight("Range over speed")),
    scene("range-learnt", "numbers.range", board("Weir"), some_rides, *RANGE),
    scene("charging", "numbers.charging", *CHARGING),
    scene("charging-wrong-typing", "numbers.charging", *WRONG),
    scene("charging-wrong", "numbers.charging", *WRONG, "Done"),
    scene("charging-cold", "numbers.charging", *CHARGING, *["Temperature of the cells, one less"] * 5),
    scene("charging-pack-out", "numbers.charging", *SIGNS_OUT, place("ride"), "Numbers", "Charging"),
    scene("joining", "numbers.joining", *JOINING),
    scene("joining-level", "numbers.joining", *LEVEL),
    scene("joining-apart", "numbers.joining", *LEVEL, *asked(SECOND, "38")),
    scene(
        "joining-unlike",
        "numbers.joining",
        board("Ferry"),
        *JOINING,
        *asked("Second pack, cells in series", "12"),
    ),
    scene("joining-series", "numbers.joining", *JOINING, "In series"),
    scene("wiring", "numbers.wiring", *WIRING),
    scene("wiring-empty", "numbers.wiring", board("Weir"), *WIRING),
    scene("descents", "numbers.descents", *DESCENTS),
    scene("descents-room", "numbers.descents", *DESCENTS, *["Charge at the top, one less"] * 4),
    scene("care", "numbers.care", *row("Storage and care")),
)
RIDE = (
    scene("flight-no", "ride.flight", *UNMARKED),
    scene("flight", "ride.flight", *FLIES),
    scene("flight-joined", "ride.flight", *FLIES, "Joined by a lead"),
    scene("flight-card", "ride.flight_card", *FLIES, "Show at the counter"),
    scene("pack-signs", "ride.pack_signs", *SIGNS),
    scene("pack-signs-out", "ride.pack_signs", *SIGNS_OUT),
    scene("ride-pack-out", "ride", *SIGNS_OUT, place("ride")),
)
BENCH = (
    scene("controller", "bench.controller", "Numbers", settled, "Set the controller"),
    scene("first-power", "bench.power", clean, "Bench", "Build, stage by stage", "First power"),
)
