"""Named walks to each screen and each important state, for the pictures, the audit and the README."""

import faulthandler
import os
import sys
import tempfile
from collections.abc import Iterator
from datetime import UTC, datetime
from importlib import import_module
from pathlib import Path
from threading import Timer

from screens import environment
from screens.acts import Dismiss, Place
from screens.driver import Driver
from screens.scenes.held import Held
from screens.scenes.steps import Scene, Step, walked, written
from screens.world import HOME, World

PLACES = ("ride", "bench", "numbers", "log", "settings")
"""Modules of what is done on the way, in the order of the main results."""

FIXED = datetime(2026, 11, 25, 10, 0, tzinfo=UTC)
"""The time of every picture, so that two runs show the same."""

FAILED = 1
"""Exit status when a scene went astray or hung."""
HANGS = 120.0
"""Seconds of real time after which a scene hangs; on a busy machine one takes a few."""

CANNOT_SHOW = "cannot show"
"""Stands for the page that is shown in place of one that failed."""


class AstrayError(Exception):
    """A scene that did not come to its page, or not to rest; the text says which scene, and where it is."""


def scenes() -> Iterator[Scene]:
    """Yield the scenes of every place in order, then each job from an app without any board, a picture a step."""
    for place in PLACES:
        import_module(f"screens.scenes.{place}")
    for walks in written()["scenes"].values():
        yield from (walked(name, page, steps) for name, (page, *steps) in walks.items())
    for job, parts in written()["journeys"].items():
        steps: list[Step] = ["!begun"]
        for number, (page, *done) in enumerate(parts, start=1):
            steps += [one for touched in done for one in (touched, "!settled")]
            yield walked(f"journey-{job}-{number}", page, tuple(steps))


def results(world: World) -> Iterator[str]:
    """Yield the main results of the board in use as lines of text."""
    for place in PLACES:
        module = import_module(f"screens.scenes.{place}")
        if hasattr(module, "results"):
            yield from module.results(world)


def start(folder: Path) -> Driver:
    """Start the app on the example boards in a folder, on a fixed clock."""
    environment.open_window()
    from screens.app import DeckhandApp  # noqa: PLC0415  (after Kivy's environment is set)

    driver = Driver(DeckhandApp(folder, lambda: FIXED, demo=True))
    driver.settle()
    return driver


def reset(driver: Driver, theme: str = "day", text: float = 1.0) -> None:
    """Go back to the first screen: no trial, nothing typed, no bin, the theme and text size of the run."""
    held = Held(driver)
    held.begin_anew()
    held.do(Dismiss())
    held.do(Place(HOME))
    held.set_person(theme=theme, text=text, bench=False, say=False, sun=False)
    driver.settle()


def arrive(driver: Driver, scene: Scene) -> None:
    """Walk to a scene and make sure it is there. Raises AstrayError, with a sentence, when it is not."""
    try:
        scene.walk(driver)
        still = driver.settle()
    except Exception as problem:
        raise AstrayError(f"{scene.name}: the walk ends on {here(driver)}: {problem}") from problem
    if here(driver) != scene.page:
        raise AstrayError(f"{scene.name}: is on {here(driver)}, not on {scene.page}")
    if not still:
        raise AstrayError(f"{scene.name}: {scene.page} does not come to rest")


def here(driver: Driver) -> str:
    """Return the name of the page in front, `CANNOT_SHOW` when another stands in for one that failed."""
    front = driver.app.front
    return CANNOT_SHOW if front.paper.lost else str(front.world.trail[-1].page)


def _hung(driver: Driver, scene: Scene) -> None:
    print(f"{scene.name}: hangs on {here(driver)}", file=sys.stderr, flush=True)
    faulthandler.dump_traceback()
    os._exit(FAILED)


def visited(driver: Driver, theme: str, text: float, astray: list[str]) -> Iterator[tuple[int, Scene]]:
    """Walk to each scene in turn and yield it with its number; one that goes astray adds a sentence and is left out.

    One that hangs ends the run. What is drawn on the way nobody looks at.
    """
    driver.unseen = True
    for number, scene in enumerate(scenes(), start=1):
        watch = Timer(HANGS, _hung, (driver, scene))
        watch.daemon = True
        watch.start()
        try:
            reset(driver, theme, text)
            arrive(driver, scene)
            yield number, scene
        except AstrayError as problem:
            astray.append(str(problem))
        watch.cancel()


def write_pictures(folder: Path, size: tuple[int, int], text: float, theme: str) -> int:
    """Write a PNG of each scene and print the main results. Returns the exit status.

    A scene that goes astray gets no picture but a sentence, and the status tells of it; the others go on.
    """
    astray: list[str] = []
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as data:
        driver = start(Path(data))
        driver.resize(*size)
        written = 0
        for number, scene in visited(driver, theme, text, astray):
            driver.shot(folder / f"{number:02d}-{scene.name}.png")
            written += 1
        reset(driver, theme, text)
        for line in results(driver.app.front.world):
            print(line)
        driver.stop()
    print(f"{written} pictures in {folder}")
    return tell(astray) or (0 if written else FAILED)


def tell(astray: list[str]) -> int:
    """Say which scenes went astray; return the exit status."""
    for problem in astray:
        print(problem, file=sys.stderr)
    return FAILED if astray else 0
