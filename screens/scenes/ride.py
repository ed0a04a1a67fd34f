"""Walks through Ride."""

from collections.abc import Iterator
from dataclasses import asdict
from datetime import timedelta

from logic.answers.reading import Result
from logic.answers.tension import belt_plan
from screens.driver import Driver
from screens.scenes import FIXED
from screens.scenes.held import Held
from screens.scenes.packs import RIDE, SIGNS_OUT
from screens.scenes.seed import aged, finished, run_to, seed, session, show_run
from screens.scenes.steps import Step, board, go, no_board, place, scene, settled, sight
from screens.words import Style
from screens.words.tension import ITEMS
from screens.world import World


def at(item: str, run: str = "before_ride", *, noted: str = "") -> tuple[Step, ...]:
    """Come to an item of a run; `noted` is one that was noted on the way."""
    return (
        lambda driver: run_to(driver, run, item, noted=noted),
        lambda driver: show_run(driver, run),
    )


def all_answered(*, noted: str = "") -> tuple[Step, ...]:
    """Come to the sign-off of the check before a ride."""
    return (
        lambda driver: aged(driver, run_to(driver, "before_ride", noted=noted)),
        lambda driver: show_run(driver, "before_ride"),
    )


def from_a_metre(driver: Driver) -> None:
    """Want items that are read at arm's length."""
    Held(driver).set_person(bench=True)


def run_begun(driver: Driver) -> None:
    """Begin the check before a ride."""
    session(driver, "before_ride")
    show_run(driver, "before_ride")


def run_left(driver: Driver) -> None:
    """Leave a run for a quarter of an hour."""
    left = run_to(driver, "before_ride", "mounts").under_way
    held = Held(driver)
    touched = (FIXED - timedelta(minutes=14)).isoformat()
    held.store.save_run(held.saved.id, "before_ride", {**asdict(left), "touched": touched})


def run_finished(driver: Driver) -> None:
    """Sign a check before a ride off."""
    finished(driver, "before_ride")


def later(driver: Driver) -> None:
    """Let a second pass."""
    driver.frame(2, seconds=0.5)


CHECK = "TENSION CHECK"
BELTS = at("belts")
WHEELS = (*at("wheels"), "NOT RIGHT")
MOUNTS = (*at("mounts"), "NOT RIGHT")

SCENES = (
    scene("ride-first-start", "ride", no_board),
    scene("ride", "ride"),
    scene("ride-due", "ride", seed, settled),
    # The ride after the check is not entered yet.
    scene("ride-riding", "ride", board("Weir"), run_finished, place("ride")),
    scene("run", "ride.run", run_begun),
    scene("run-value", "ride.run", *at("charge"), "=40.6"),
    scene("run-volts-refused", "ride.run", *at("charge"), "=58", "ENOUGH FOR THIS RIDE"),
    scene("run-belts", "ride.run", *BELTS),
    scene("run-why", "ride.run", *BELTS, "Why this item"),
    scene("run-bench-view", "ride.run", from_a_metre, *at("tension", "first_recheck")),
    scene("run-noted", "ride.run", *at("brake", noted="mounts")),
    scene("run-list", "ride.run_list", *at("brake", noted="mounts"), later, "The whole list"),
    # The sign that is touched ends the ride.
    scene("run-problem-sign", "ride.not_right", *MOUNTS, "Screw missing"),
    scene("run-problem", "ride.not_right", *WHEELS),
    scene("run-problem-noted", "ride.not_right", *MOUNTS, "NOTE IT AND GO ON"),
    scene("run-broken-off", "ride.run", run_left, go("ride.run", list="before_ride")),
    # Nothing is due on the first of these boards.
    scene("run-over", "ride.run_over", board("Weir"), *all_answered()),
    scene("run-over-noted", "ride.run_over", board("Weir"), *all_answered(noted="mounts")),
    scene("run-over-due", "ride.run_over", seed, *all_answered()),
    scene("run-over-pack-out", "ride.run_over", *SIGNS_OUT, *all_answered()),
    scene("run-stopped", "ride.run_over", *WHEELS, "Wobbles", "STOP: NOT RIDING"),
    scene("run-after-ride", "ride.run", *at("heat", "after_ride")),
    scene("lists", "ride.lists", go("ride.lists")),
    scene("tension-check", "ride.tension", CHECK),
    scene("tension-in-window", "ride.tension", CHECK, "=0.92"),
    scene("tension-slack", "ride.tension", CHECK, "=0.65"),
    scene("tension-tight", "ride.tension", CHECK, "=1.15"),
    scene("tension-refused", "ride.tension", CHECK, "=1.5x", settled),
    scene("tension-working", "working", CHECK, "=0.92", "Working of this reading"),
    scene("tension-drawing", "ride.tension", CHECK, sight("One pulley must be free to turn")),
    scene(
        "tension-saved",
        "ride.tension_saved",
        CHECK,
        "=0.92",
        "Save left, go to right",
        "=0.6",
        "Save right as it is",
    ),
    *RIDE,
)


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
