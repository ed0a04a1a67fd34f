"""What is done on the way to scenes of the log."""

from dataclasses import replace
from datetime import timedelta

from logic.log import BeltFitted, Ride, Tension
from screens.acts.keeping import Correct, Void
from screens.driver import Driver
from screens.scenes import FIXED
from screens.scenes.held import Held
from screens.scenes.seed import finished, seed
from screens.scenes.steps import step


@step
def weeks(driver: Driver) -> None:
    """Have some weeks in the log."""
    seed(driver)
    if not Held(driver).last("check", list="before_ride"):
        finished(driver, "before_ride", noted="mounts")


@step
def corrected(driver: Driver) -> None:
    """Open a ride that was corrected."""
    held = Held(driver)
    record = held.newest("ride")
    if record.corrected_by is None:
        held.do(Correct(record.id, replace(record.body, distance=9900.0, note="Read from the map")))
    driver.app.front.go("log.entry", number=record.id)


@step
def check(driver: Driver) -> None:
    """Open a check."""
    driver.app.front.go("log.entry", number=Held(driver).newest("check", list="before_ride").id)


@step
def taken_out(driver: Driver) -> None:
    """Take an entry out."""
    held = Held(driver)
    if not held.store.voided(held.saved.id):
        held.do(Void(held.newest("note").id))


@step
def measured(driver: Driver) -> None:
    """Have a belt that was measured five times over fifty kilometres."""
    held = Held(driver)
    begin = FIXED - timedelta(days=30)
    held.record(BeltFitted(belt="left"), begin)
    for number, (tension, error) in enumerate(
        ((111.0, 15.0), (101.0, 14.0), (95.0, 9.0), (91.0, 14.0), (84.0, 9.0))
    ):
        at = begin + timedelta(days=6 * number)
        if number:
            held.record(Ride(distance=12000.0 if number > 1 else 4000.0), at)
        way = "together" if error < 10 else "scale"  # noqa: PLR2004  (two ways are better)
        said = Tension(belt="left", method=way, tension=tension, error=error, word="in window")
        held.record(said, at + timedelta(minutes=5))


@step
def fitted(driver: Driver) -> None:
    """Have a belt without readings."""
    Held(driver).record(BeltFitted(belt="right"))
