"""Walks through Numbers."""

from collections.abc import Iterator

from logic.answers.gearing import gearing
from logic.answers.reading import Result
from screens.driver import Driver
from screens.scenes import Scene
from screens.scenes.held import Held
from screens.scenes.packs import NUMBERS
from screens.words import Style
from screens.words.gearing import ITEMS
from screens.world import World


def home(driver: Driver) -> None:
    """Open Numbers."""
    driver.tap("Numbers")


def gears(driver: Driver) -> None:
    """Open gearing and speed."""
    home(driver)
    driver.tap("Gearing and speed")


def trial(driver: Driver) -> None:
    """Try two more teeth on the motor."""
    gears(driver)
    driver.tap("Motor pulley, one more")
    driver.tap("Motor pulley, one more")


def typing(driver: Driver) -> None:
    """Type another wheel."""
    trial(driver)
    driver.tap("Wheel diameter")
    driver.type("97mm")


def refused(driver: Driver) -> None:
    """Type a wheel no board has, and wait for its sentence."""
    gears(driver)
    driver.tap("Wheel diameter")
    driver.type("97 yards")
    driver.settle()


def choosing(driver: Driver) -> None:
    """Open a choice."""
    gears(driver)
    driver.tap("What the motor amps mean")


def chips(driver: Driver) -> None:
    """Scroll to the values of the board."""
    gears(driver)
    driver.find("From the board: tap one to try another value").bring()


def band(driver: Driver) -> None:
    """Show a board whose motor constant is only printed."""
    held = Held(driver)
    held.choose_named("Weir")
    gears(driver)


def working(driver: Driver) -> None:
    """Open the working of the top speed."""
    gears(driver)
    driver.tap("Top speed, loaded")


def comes_short(driver: Driver) -> None:
    """Show what a gap in the board leaves open."""
    Held(driver).choose("none")
    gears(driver)


def belt(driver: Driver) -> None:
    """Open the belt's page."""
    home(driver)
    driver.tap("Belt length and load")


def belt_trial(driver: Driver) -> None:
    """Try another belt of those in stock."""
    belt(driver)
    driver.tap("59 teeth")


def belt_stock(driver: Driver) -> None:
    """Scroll to what is in stock."""
    belt(driver)
    driver.find("In stock near").bring()


def belt_load(driver: Driver) -> None:
    """Scroll to what the belt carries."""
    belt(driver)
    driver.tap("All figures")
    driver.find("Rated torque at the start").bring()


def belt_typing(driver: Driver) -> None:
    """Type a wanted centre distance."""
    belt(driver)
    driver.tap("Wanted centre distance")
    driver.type("75")


def belt_scratch(driver: Driver) -> None:
    """Show what the page needs."""
    Held(driver).choose("none")
    belt(driver)


def fit(driver: Driver) -> None:
    """Open the gaps."""
    home(driver)
    driver.tap("Does it fit")


def fit_tight(driver: Driver) -> None:
    """Try motors that are too long for the hanger."""
    fit(driver)
    driver.tap("Motor can, length")
    driver.type("92")
    driver.tap("Done")


SCENES = (
    Scene("numbers", home, "numbers"),
    Scene("gearing", gears, "numbers.gearing"),
    Scene("gearing-trial", trial, "numbers.gearing"),
    Scene("gearing-typing", typing, "numbers.gearing"),
    Scene("gearing-refused", refused, "numbers.gearing"),
    Scene("gearing-choice", choosing, "numbers.gearing"),
    Scene("gearing-chips", chips, "numbers.gearing"),
    Scene("gearing-band", band, "numbers.gearing"),
    Scene("gearing-working", working, "working"),
    Scene("gearing-scratch", comes_short, "numbers.gearing"),
    *NUMBERS,
    Scene("belt", belt, "numbers.belt"),
    Scene("belt-trial", belt_trial, "numbers.belt"),
    Scene("belt-stock", belt_stock, "numbers.belt"),
    Scene("belt-load", belt_load, "numbers.belt"),
    Scene("belt-typing", belt_typing, "numbers.belt"),
    Scene("belt-scratch", belt_scratch, "numbers.belt"),
    Scene("fit", fit, "numbers.fit"),
    Scene("fit-too-long", fit_tight, "numbers.fit"),
)


def results(world: World) -> Iterator[str]:
    """Yield ratio and speeds."""
    style = Style()
    answer = gearing(world.saved, world.person.rider, 20 / 3.6)
    yield f"Board: {world.saved.name}"
    for name in ("ratio", "top_nominal", "top_loaded", "push_start", "climb_at"):
        item = answer.items[name]
        if isinstance(item, Result):
            label = ITEMS[name].format(speed=style.number(20 / 3.6, "speed"))
            yield f"{label}: {style.number(item.value, item.quantity)}"
