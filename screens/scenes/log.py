"""Walks through the log."""

from dataclasses import replace
from datetime import timedelta

from logic.log import BeltFitted, Ride, Tension
from screens.acts import Write
from screens.driver import Driver
from screens.scenes import FIXED, Scene
from screens.scenes.held import Held
from screens.scenes.seed import finished, seed


def weeks(driver: Driver) -> None:
    """Have some weeks in the log."""
    seed(driver)
    if not Held(driver).last("check", list="before_ride"):
        finished(driver, "before_ride", noted="mounts")


def home(driver: Driver) -> None:
    """Open the log."""
    weeks(driver)
    driver.app.front.place("log")
    driver.frame(2, seconds=0.3)


def filtered(driver: Driver) -> None:
    """Look for a word among the rides of this board."""
    home(driver)
    driver.tap("Filter and search")


def due(driver: Driver) -> None:
    """Show all upkeep."""
    home(driver)
    driver.tap("All upkeep")


def put_off(driver: Driver) -> None:
    """Put a stop item off without a reason."""
    weeks(driver)
    driver.app.front.go("log.snooze", rule="water", label="Check after water", stop=True)


def entry(driver: Driver) -> None:
    """Show a ride that was corrected."""
    weeks(driver)
    held = Held(driver)
    record = held.newest("ride")
    if record.corrected_by is None:
        held.correct(record.id, replace(record.body, distance=9900.0, note="Read from the map"))
    driver.app.front.go("log.entry", number=record.id)


def check(driver: Driver) -> None:
    """Show a check."""
    weeks(driver)
    driver.app.front.go("log.entry", number=Held(driver).newest("check", list="before_ride").id)


def ride(driver: Driver) -> None:
    """Enter a ride."""
    weeks(driver)
    driver.app.front.go("log.ride")
    driver.frame(2)
    driver.type("8.4")


def note(driver: Driver) -> None:
    """Write a note."""
    weeks(driver)
    driver.app.front.go("log.note")
    driver.frame(2)


def belt(driver: Driver) -> None:
    """Enter a new belt."""
    note(driver)
    driver.tap("New belt")


def taken_out(driver: Driver) -> None:
    """Take an entry out and look where it went."""
    weeks(driver)
    held = Held(driver)
    if not held.store.voided(held.saved.id):
        held.take_back(held.newest("note").id)
    driver.app.front.go("log.bin")


def export(driver: Driver) -> None:
    """Show the build sheet."""
    weeks(driver)
    driver.app.front.go("log.export")


def history(driver: Driver) -> None:
    """Open the history of a belt that was measured five times over fifty kilometres."""
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
    home(driver)
    driver.tap("History of a belt")


def history_empty(driver: Driver) -> None:
    """Show a belt without readings."""
    Held(driver).record(BeltFitted(belt="right"))
    home(driver)
    driver.tap("History of a belt")
    driver.tap("Right")


def searched(driver: Driver) -> None:
    """Look for a word in everything."""
    home(driver)
    driver.tap("Search")
    driver.app.front.perform(Write("search", "belt"))


def glossary(driver: Driver) -> None:
    """Open the words of the trade."""
    driver.app.front.go("glossary")


def word(driver: Driver) -> None:
    """Read what one of them means."""
    driver.app.front.go("glossary", word="kv")


SCENES = (
    Scene("log", home, "log"),
    Scene("log-filter", filtered, "log"),
    Scene("log-due", due, "log.due"),
    Scene("log-put-off", put_off, "log.snooze"),
    Scene("log-entry", entry, "log.entry"),
    Scene("log-check", check, "log.entry"),
    Scene("log-ride", ride, "log.ride"),
    Scene("log-note", note, "log.note"),
    Scene("log-new-belt", belt, "log.note"),
    Scene("log-bin", taken_out, "log.bin"),
    Scene("log-history", history, "log.tension"),
    Scene("log-history-empty", history_empty, "log.tension"),
    Scene("log-build-sheet", export, "log.export"),
    Scene("search", searched, "search"),
    Scene("glossary", glossary, "glossary"),
    Scene("glossary-word", word, "glossary"),
)
