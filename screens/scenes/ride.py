"""What is done on the way to scenes of Ride: runs of checks, at any item; and the main results of a belt."""

from collections.abc import Iterator
from dataclasses import asdict
from datetime import timedelta

from logic.answers.reading import Result
from logic.answers.tension import belt_plan
from screens.driver import Driver
from screens.scenes import FIXED
from screens.scenes.held import Held
from screens.scenes.seed import aged, finished, run_to, session, show_run
from screens.scenes.steps import step
from screens.words import Style
from screens.words.tension import ITEMS
from screens.world import World


@step
def at(driver: Driver, item: str, run: str = "before_ride", noted: str = "") -> None:
    """Come to an item of a run; `noted` is one that was noted on the way."""
    run_to(driver, run, item, noted=noted)
    show_run(driver, run)


@step
def all_answered(driver: Driver, noted: str = "") -> None:
    """Come to the sign-off of the check before a ride."""
    aged(driver, run_to(driver, "before_ride", noted=noted))
    show_run(driver, "before_ride")


@step
def from_a_metre(driver: Driver) -> None:
    """Want items that are read at arm's length."""
    Held(driver).set_person(bench=True)


@step
def run_begun(driver: Driver) -> None:
    """Begin the check before a ride."""
    session(driver, "before_ride")
    show_run(driver, "before_ride")


@step
def run_left(driver: Driver) -> None:
    """Leave a run for a quarter of an hour."""
    left = run_to(driver, "before_ride", "mounts").under_way
    held = Held(driver)
    touched = (FIXED - timedelta(minutes=14)).isoformat()
    held.store.save_run(held.saved.id, "before_ride", {**asdict(left), "touched": touched})


@step
def run_finished(driver: Driver) -> None:
    """Sign a check before a ride off."""
    finished(driver, "before_ride")


def results(world: World) -> Iterator[str]:
    """Yield the belt's target, the depth and the pull."""
    plan, style = belt_plan(world.saved, world.person), Style()
    for name in ("target", "floor", "ceiling", "depth", "pull_target"):
        item = plan.items[name]
        if isinstance(item, Result):
            yield f"{ITEMS[name]}: {style.number(item.value, item.quantity)}"
    pull = plan.items["pull_target"]
    if isinstance(pull, Result):
        yield f"Scale reading for the target: {style.shown(pull.value, 'force', unit='kg')}"
