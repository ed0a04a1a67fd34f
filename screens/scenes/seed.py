"""A few weeks of an invented board's life, so that pictures of the log show one; and runs at any item."""

from dataclasses import asdict
from datetime import timedelta

from logic.answers.fitted import snapshot
from logic.checks.run import NOTED, RIGHT
from logic.checks.session import Session
from logic.log import BeltFitted, Entry, Note, Ride, Tension, Work
from screens.driver import Driver
from screens.scenes import FIXED
from screens.scenes.held import Held
from screens.scenes.steps import later, step

TENSIONS = (
    (21, "left", 112.0),
    (21, "right", 110.0),
    (17, "left", 98.0),
    (17, "right", 97.0),
    (9, "left", 104.0),
    (9, "right", 101.0),
    (3, "left", 99.0),
    (3, "right", 84.0),
)
"""Days ago, belt, belt tension in N."""
RIDES = ((18, 6200.0, 70.0), (12, 8400.0, 92.0), (6, 11300.0, 121.0), (2, 9700.0, 118.0))
"""Days ago, metres, watt-hours."""


@step
def seed(driver: Driver) -> None:
    """Write the weeks into the log of the board in use, once."""
    held = Held(driver)
    board = held.saved.id
    if held.store.get("seeded") == board:
        return
    held.remember("seeded", board)

    events: list[tuple[float, Entry]] = [
        (22, BeltFitted(belt=side, note="280-5M-15, second hole")) for side in ("left", "right")
    ]
    events += [(days, measured(side, force)) for days, side, force in TENSIONS]
    for days, way, watt_hours in RIDES:
        wet, energy = days == 6, watt_hours * 3600.0  # noqa: PLR2004
        events.append((days, Ride(distance=way, energy=energy, volts_before=41.2, volts_after=37.8, wet=wet)))
    events.append((5, Work(note="Dried the bearings after the rain, one drop of oil each")))
    events.append((1, Note(note="Right belt sounds brighter than the left one")))
    for before, entry in sorted(events, key=lambda event: -event[0]):
        held.record(entry, FIXED - timedelta(days=before))


def measured(side: str, force: float) -> Tension:
    """Return a tension reading as the check writes it."""
    floor, ceiling = 75.6, 118.8
    word = "in window" if floor <= force <= ceiling else "slack"
    return Tension(
        belt=side,
        method="scale",
        pull=force * 0.14,
        unit="kg",
        depth=0.0015,
        tension=force,
        error=11.0,
        floor=floor,
        ceiling=ceiling,
        target=108.0,
        word=word,
        certainty="inside",
        scale="luggage scale",
        depth_tool="calliper",
    )


def session(driver: Driver, key: str) -> Session:
    """Return a new run of a list on the board in use, whatever was left of it before."""
    held = Held(driver)
    held.store.drop_run(held.saved.id, key)
    made = Session(held.store, held.saved.id, held.world.checklist(key), held.world.clock)
    made.begin()
    return made


def run_to(driver: Driver, key: str, item: str = "", *, noted: str = "") -> Session:
    """Answer a list up to an item, or all of it; `noted` is the item that is noted on the way."""
    made = session(driver, key)
    while made.run is not None and made.run.at and made.run.at != item:
        at = made.of.item(made.run.at)
        value = 40.6 if at.ask == "volts" else at.options[0] if at.options else None
        if at.key == noted:
            sign = next(sign for sign in at.signs if not at.stops(sign))
            made.answer(at.key, NOTED, note=sign, sign=sign)
        else:
            made.answer(at.key, RIGHT, value=value)
    return made


def aged(driver: Driver, made: Session, seconds: float = 81.0) -> None:
    """Let a run have begun so long ago: the clock of the pictures stands still."""
    began = (FIXED - timedelta(seconds=seconds)).isoformat()
    body = {**asdict(made.under_way), "began": began}
    Held(driver).store.save_run(made.board, made.of.key, body)


def finished(driver: Driver, key: str, *, noted: str = "") -> None:
    """Write a finished run into the log."""
    made = run_to(driver, key, noted=noted)
    aged(driver, made, made.of.seconds)
    held = Held(driver)
    Session(held.store, made.board, made.of, held.world.clock).finish(snapshot(held.saved))
    held.changed()


def show_run(driver: Driver, key: str) -> None:
    """Open a run at the item in front."""
    driver.app.front.go("ride.run", list=key, _going_on=True)
    later(driver)
