"""Walks through Ride."""

from collections.abc import Iterator
from dataclasses import asdict
from datetime import timedelta

from logic.answers.reading import Result
from logic.answers.tension import belt_plan
from screens.driver import Driver
from screens.scenes import FIXED, Scene
from screens.scenes.held import Held
from screens.scenes.packs import RIDE, board, signs_out
from screens.scenes.seed import aged, finished, run_to, seed, session, show_run
from screens.words import Style
from screens.words.tension import ITEMS
from screens.world import World


def home(_driver: Driver) -> None:
    """Stay where the app opens."""


def first_start(driver: Driver) -> None:
    """Show the app without any board."""
    Held(driver).choose("none")


def check(driver: Driver) -> None:
    """Open the tension check."""
    driver.tap("TENSION CHECK")


def in_window(driver: Driver) -> None:
    """Type a right pull."""
    check(driver)
    driver.type("0.92")


def slack(driver: Driver) -> None:
    """Type a pull that is too small."""
    check(driver)
    driver.type("0.65")


def tight(driver: Driver) -> None:
    """Type a pull that is too large."""
    check(driver)
    driver.type("1.15")


def refused(driver: Driver) -> None:
    """Type what cannot be a pull, and wait for its sentence."""
    check(driver)
    driver.type("1.5x")
    driver.settle()


def working(driver: Driver) -> None:
    """Open the working of a reading."""
    in_window(driver)
    driver.tap("Working of this reading")


def drawing(driver: Driver) -> None:
    """Scroll to the drawing of the drive."""
    check(driver)
    driver.find("One pulley must be free to turn").bring()


def saved(driver: Driver) -> None:
    """Save both belts."""
    in_window(driver)
    driver.tap("SAVE LEFT, GO TO RIGHT")
    driver.type("0.6")
    driver.tap("Save right as it is")


def due(driver: Driver) -> None:
    """Show the one thing most overdue."""
    seed(driver)
    driver.settle()


def riding(driver: Driver) -> None:
    """Come back from a ride that is not entered yet."""
    board(driver, "Weir")
    finished(driver, "before_ride")
    driver.app.front.place("ride")


def run(driver: Driver) -> None:
    """Begin the check before a ride."""
    session(driver, "before_ride")
    show_run(driver, "before_ride")


def run_value(driver: Driver) -> None:
    """Come to the item that takes a value."""
    run_to(driver, "before_ride", "charge")
    show_run(driver, "before_ride")
    driver.type("40.6")


def run_refused(driver: Driver) -> None:
    """Type volts that this pack cannot have."""
    run_to(driver, "before_ride", "charge")
    show_run(driver, "before_ride")
    driver.type("58")
    driver.tap("ENOUGH FOR THIS RIDE")


def run_belts(driver: Driver) -> None:
    """Come to the belts, with their drawing."""
    run_to(driver, "before_ride", "belts")
    show_run(driver, "before_ride")


def run_why(driver: Driver) -> None:
    """Ask why an item is there."""
    run_belts(driver)
    driver.tap("Why this item")


def run_bench_view(driver: Driver) -> None:
    """Read an item at arm's length."""
    Held(driver).set_person(bench=True)
    run_to(driver, "first_recheck", "tension")
    show_run(driver, "first_recheck")


def run_noted(driver: Driver) -> None:
    """Come to an item that was noted the last time."""
    run_to(driver, "before_ride", "brake", noted="mounts")
    show_run(driver, "before_ride")


def problem(driver: Driver) -> None:
    """Say that a stop item is not right."""
    run_to(driver, "before_ride", "wheels")
    show_run(driver, "before_ride")
    driver.tap("NOT RIGHT")


def problem_noted(driver: Driver) -> None:
    """Say that another item is not right, without saying what."""
    run_to(driver, "before_ride", "mounts")
    show_run(driver, "before_ride")
    driver.tap("NOT RIGHT")
    driver.tap("Note it and go on")


def problem_sign(driver: Driver) -> None:
    """Say what is not right of another item: a sign that ends the ride."""
    run_to(driver, "before_ride", "mounts")
    show_run(driver, "before_ride")
    driver.tap("NOT RIGHT")
    driver.tap("Screw missing")


def run_all(driver: Driver) -> None:
    """Show all items of a run."""
    run_to(driver, "before_ride", "brake", noted="mounts")
    show_run(driver, "before_ride")
    driver.frame(2, seconds=0.5)
    driver.tap("The whole list")


def broken_off(driver: Driver) -> None:
    """Come back to a run after a quarter of an hour."""
    left = run_to(driver, "before_ride", "mounts").under_way
    held = Held(driver)
    touched = (FIXED - timedelta(minutes=14)).isoformat()
    body = {**asdict(left), "touched": touched}
    held.store.save_run(held.saved.id, "before_ride", body)
    driver.app.front.go("ride.run", list="before_ride")


def run_over(driver: Driver) -> None:
    """Come to the sign-off with everything right, on a board that nothing is due on."""
    board(driver, "Weir")
    aged(driver, run_to(driver, "before_ride"))
    show_run(driver, "before_ride")


def run_over_noted(driver: Driver) -> None:
    """Come to the sign-off with one item noted."""
    board(driver, "Weir")
    aged(driver, run_to(driver, "before_ride", noted="mounts"))
    show_run(driver, "before_ride")


def run_over_due(driver: Driver) -> None:
    """Come to the sign-off while a check that stops a ride is due."""
    seed(driver)
    aged(driver, run_to(driver, "before_ride"))
    show_run(driver, "before_ride")


def run_over_out(driver: Driver) -> None:
    """Come to the sign-off with the pack out of use."""
    signs_out(driver)
    aged(driver, run_to(driver, "before_ride"))
    show_run(driver, "before_ride")


def stopped(driver: Driver) -> None:
    """Stop at a failed stop item."""
    problem(driver)
    driver.tap("Wobbles")
    driver.tap("Stop: not riding")


def lists(driver: Driver) -> None:
    """Show every list."""
    driver.app.front.go("ride.lists")


def after_ride(driver: Driver) -> None:
    """Come to the warmth of the motors after a ride."""
    run_to(driver, "after_ride", "heat")
    show_run(driver, "after_ride")


SCENES = (
    Scene("ride-first-start", first_start, "ride"),
    Scene("ride", home, "ride"),
    Scene("ride-due", due, "ride"),
    Scene("ride-riding", riding, "ride"),
    Scene("run", run, "ride.run"),
    Scene("run-value", run_value, "ride.run"),
    Scene("run-volts-refused", run_refused, "ride.run"),
    Scene("run-belts", run_belts, "ride.run"),
    Scene("run-why", run_why, "ride.run"),
    Scene("run-bench-view", run_bench_view, "ride.run"),
    Scene("run-noted", run_noted, "ride.run"),
    Scene("run-list", run_all, "ride.run_list"),
    Scene("run-problem-sign", problem_sign, "ride.not_right"),
    Scene("run-problem", problem, "ride.not_right"),
    Scene("run-problem-noted", problem_noted, "ride.not_right"),
    Scene("run-broken-off", broken_off, "ride.run"),
    Scene("run-over", run_over, "ride.run_over"),
    Scene("run-over-noted", run_over_noted, "ride.run_over"),
    Scene("run-over-due", run_over_due, "ride.run_over"),
    Scene("run-over-pack-out", run_over_out, "ride.run_over"),
    Scene("run-stopped", stopped, "ride.run_over"),
    Scene("run-after-ride", after_ride, "ride.run"),
    Scene("lists", lists, "ride.lists"),
    Scene("tension-check", check, "ride.tension"),
    Scene("tension-in-window", in_window, "ride.tension"),
    Scene("tension-slack", slack, "ride.tension"),
    Scene("tension-tight", tight, "ride.tension"),
    Scene("tension-refused", refused, "ride.tension"),
    Scene("tension-working", working, "working"),
    Scene("tension-drawing", drawing, "ride.tension"),
    Scene("tension-saved", saved, "ride.tension_saved"),
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
