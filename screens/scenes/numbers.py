"""Walks through Numbers: gearing, belts, and with the packs all that stands there first."""

from collections.abc import Iterator

from logic.answers.gearing import gearing
from logic.answers.reading import Result
from screens.scenes.packs import NUMBERS
from screens.scenes.steps import asked, board, no_board, scene, settled, sight
from screens.tongue import texts
from screens.words import Style
from screens.world import World

GEARS = ("Numbers", "Gearing and speed")
TRIAL = (*GEARS, "Motor pulley, one more", "Motor pulley, one more")
BELT = ("Numbers", "Belt length and load")
FIT = ("Numbers", "Does it fit")
VALUES = "From the board: tap one to try another value"

SCENES = (
    scene("numbers", "numbers", "Numbers"),
    scene("gearing", "numbers.gearing", *GEARS),
    scene("gearing-trial", "numbers.gearing", *TRIAL),
    scene("gearing-typing", "numbers.gearing", *TRIAL, "Wheel diameter", "=97mm"),
    scene("gearing-refused", "numbers.gearing", *GEARS, "Wheel diameter", "=97 yards", settled),
    scene("gearing-choice", "numbers.gearing", *GEARS, "What the motor amps mean"),
    scene("gearing-chips", "numbers.gearing", *GEARS, sight(VALUES)),
    # Its motor constant is only printed.
    scene("gearing-band", "numbers.gearing", board("Weir"), *GEARS),
    scene("gearing-working", "working", *GEARS, "Top speed, loaded"),
    scene("gearing-scratch", "numbers.gearing", no_board, *GEARS),
    *NUMBERS,
    scene("belt", "numbers.belt", *BELT),
    scene("belt-trial", "numbers.belt", *BELT, "59 teeth"),
    scene("belt-stock", "numbers.belt", *BELT, sight("In stock near")),
    scene("belt-load", "numbers.belt", *BELT, "All figures", sight("Rated torque at the start")),
    scene("belt-typing", "numbers.belt", *BELT, "Wanted centre distance", "=75"),
    scene("belt-scratch", "numbers.belt", no_board, *BELT),
    scene("fit", "numbers.fit", *FIT),
    scene("fit-too-long", "numbers.fit", *FIT, *asked("Motor can, length", "92")),
)


def results(world: World) -> Iterator[str]:
    """Yield ratio and speeds."""
    style = Style()
    answer = gearing(world.saved, world.person.rider, 20 / 3.6)
    yield f"Board: {world.saved.name}"
    for name in ("ratio", "top_nominal", "top_loaded", "push_start", "climb_at"):
        item = answer.items[name]
        if isinstance(item, Result):
            label = texts("gearing")["items"][name].format(speed=style.number(20 / 3.6, "speed"))
            yield f"{label}: {style.number(item.value, item.quantity)}"
