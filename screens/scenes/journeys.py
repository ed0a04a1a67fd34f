"""Each job from the start of an app without any board to its answer, a picture a step."""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from screens.acts import Dismiss, Place
from screens.acts.keeping import Drop
from screens.driver import Driver
from screens.scenes import Scene
from screens.scenes.held import Held
from screens.world import HOME

TYPED = "="
"""What stands before a value that is typed; all else is touched."""


class Step(NamedTuple):
    """What is done up to a picture, and the page it shows."""

    page: str
    done: tuple[str, ...]


def _filled(*values: str, after: str = "Next", last: str = "Done") -> tuple[str, ...]:
    """Return what types one value after the other."""
    between = tuple(one for value in values[:-1] for one in (TYPED + value, after))
    return (*between, TYPED + values[-1], last)


SPEED, FAULT, PAIRS = "numbers.gearing", "bench.fault", "numbers.pairs"
JOURNEYS = {
    "screw": (
        Step("bench.joints", ("A screw",)),
        Step("bench.lookup_card", ("Motor face screws",)),
        Step("bench.lookup_card", ("5 mm",)),
    ),
    "speed": (
        Step(SPEED, ("Speed and range",)),
        Step(SPEED, ("Give them one by one", "=10")),
        Step(SPEED, ("Next", *_filled("190", "15", "36", "90"))),
        Step(SPEED, ("More exact: the weights", "=11", "Done")),
        Step(SPEED, ("More exact: limits", *_filled("30", "3"))),
    ),
    "belt": (
        Step("ride.tension", ("A belt",)),
        Step("ride.tension", _filled("280-5M-15", "16", after="Next", last="Next")),
        Step("ride.tension", _filled("40", "170", "45", after="Next", last="Next")),
        Step("ride.tension", ("=0.92",)),
    ),
    "flight": (
        Step("ride.flight", ("May it fly?",)),
        Step("ride.flight", ("=90", "Done")),
        Step("ride.flight", ("2", "Apart")),
    ),
    "hot": (
        Step("bench.faults", ("Something is wrong",)),
        Step(FAULT, ("Hot motor",)),
    ),
    "before": (
        Step("ride.run", ("Before a ride",)),
        Step("ride.not_right", ("FLAT, DRY, NO SMELL", "NOT RIGHT")),
        Step("ride.run_over", ("Wobbles", "STOP: NOT RIDING")),
    ),
    "pulleys": (
        Step("numbers", ("Numbers", "Top speed you want", *_filled("35", "12"))),
        Step(PAIRS, ("Pairs of pulleys",)),
        Step(PAIRS, ("Give them one by one", "HTD 5M")),
        Step(PAIRS, ("Next", *_filled("90", "190", "10", "11", "45", last="Next"), "Two", "Done")),
    ),
}
"""Each job in its steps. The rider of the pictures is known, and not asked."""


def walk_of(steps: Sequence[Step]) -> Callable[[Driver], None]:
    """Return the walk from an empty app through steps."""

    def walk(driver: Driver) -> None:
        held = Held(driver)
        held.do(Place(HOME))
        held.choose("none")
        held.do(Drop())
        held.do(Dismiss())
        held.forget_answers()
        held.store.drop_run(held.saved.id, "before_ride")
        driver.settle()
        for step in steps:
            for one in step.done:
                if one.startswith(TYPED):
                    driver.type(one.removeprefix(TYPED))
                else:
                    driver.tap(one)
                driver.settle()

    return walk


SCENES = tuple(
    Scene(f"journey-{job}-{number}", walk_of(steps[:number]), steps[number - 1].page)
    for job, steps in JOURNEYS.items()
    for number in range(1, len(steps) + 1)
)
