"""Walks through the log."""

from dataclasses import replace
from datetime import timedelta

from logic.log import BeltFitted, Ride, Tension
from screens.acts.entering import Write
from screens.acts.keeping import Correct, Void
from screens.driver import Driver
from screens.scenes import FIXED
from screens.scenes.held import Held
from screens.scenes.seed import finished, seed
from screens.scenes.steps import go, moment, place, scene


def weeks(driver: Driver) -> None:
    """Have some weeks in the log."""
    seed(driver)
    if not Held(driver).last("check", list="before_ride"):
        finished(driver, "before_ride", noted="mounts")


def drawn(driver: Driver) -> None:
    """Let the log be drawn."""
    driver.frame(2, seconds=0.3)


def corrected(driver: Driver) -> None:
    """Open a ride that was corrected."""
    held = Held(driver)
    record = held.newest("ride")
    if record.corrected_by is None:
        held.do(Correct(record.id, replace(record.body, distance=9900.0, note="Read from the map")))
    driver.app.front.go("log.entry", number=record.id)


def check(driver: Driver) -> None:
    """Open a check."""
    driver.app.front.go("log.entry", number=Held(driver).newest("check", list="before_ride").id)


def taken_out(driver: Driver) -> None:
    """Take an entry out."""
    held = Held(driver)
    if not held.store.voided(held.saved.id):
        held.do(Void(held.newest("note").id))


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


def fitted(driver: Driver) -> None:
    """Have a belt without readings."""
    Held(driver).record(BeltFitted(belt="right"))


def looked_for(driver: Driver) -> None:
    """Write a word to look for."""
    driver.app.front.perform(Write("search", "belt"))


LOG = (weeks, place("log"), drawn)
HISTORY = "History of a belt"
NOTE = (weeks, go("log.note"), moment)
PUT_OFF = go("log.snooze", rule="water", label="Check after water", stop=True)

SCENES = (
    scene("log", "log", *LOG),
    scene("log-filter", "log", *LOG, "Filter and search"),
    scene("log-due", "log.due", *LOG, "All upkeep"),
    scene("log-put-off", "log.snooze", weeks, PUT_OFF),
    scene("log-entry", "log.entry", weeks, corrected),
    scene("log-check", "log.entry", weeks, check),
    scene("log-ride", "log.ride", weeks, go("log.ride"), moment, "=8.4"),
    scene("log-note", "log.note", *NOTE),
    scene("log-new-belt", "log.note", *NOTE, "New belt"),
    scene("log-bin", "log.bin", weeks, taken_out, go("log.bin")),
    scene("log-history", "log.tension", measured, *LOG, HISTORY),
    scene("log-history-empty", "log.tension", fitted, *LOG, HISTORY, "Right"),
    scene("log-build-sheet", "log.export", weeks, go("log.export")),
    scene("search", "search", *LOG, "Search", looked_for),
    scene("glossary", "glossary", go("glossary")),
    scene("glossary-word", "glossary", go("glossary", word="kv")),
)
