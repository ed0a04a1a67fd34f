"""A scene is what its name says, or the run of pictures tells that it is not."""

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from screens.blocks import Picture
from screens.register import PAGES
from screens.scenes import CANNOT_SHOW, AstrayError, Scene, arrive, scenes, start
from screens.scenes.held import Held
from screens.scenes.steps import STEPS, written
from tests.alone import NEEDS_GRAPHICS, alone
from tests.screens.session import Session

RUN = """
import sys, time
import main, screens.scenes as scenes
scenes.HANGS = float(sys.argv[2])
told = {
    "right": scenes.Scene("right", lambda driver: driver.tap("Bench"), "bench"),
    "elsewhere": scenes.Scene("elsewhere", lambda driver: None, "bench"),
    "fails": scenes.Scene("fails", lambda driver: driver.tap("No such row"), "ride"),
    "hangs": scenes.Scene("hangs", lambda driver: time.sleep(60), "ride"),
}
scenes.scenes = lambda: iter([told[name] for name in sys.argv[3:]])
sys.exit(main.main(["--pictures", sys.argv[1]]))
"""

SHEETS = """
import sys
import main
from screens import scenes
from screens.scenes import sheets
walks = [scene for scene in scenes.scenes() if scene.name in sys.argv[2:]]
scenes.scenes = lambda: iter(walks)
sheets.RUNS = sheets.RUNS[:2]
sys.exit(main.main(["--pictures", sys.argv[1], "--sheets"]))
"""


@pytest.mark.parametrize("scene", scenes(), ids=lambda scene: scene.name)
def test_every_scene_names_a_page(scene: Scene) -> None:
    assert scene.page in (*PAGES, CANNOT_SHOW)


def test_every_step_of_a_walk_is_known_and_none_is_left_over() -> None:
    assert list(scenes())
    walks = written()["walks"]
    ways = [*walks.values(), *(way for place in written()["scenes"].values() for way in place.values())]
    steps = [one for way in ways for one in way]
    touched = [one for one in steps if isinstance(one, str)]
    done = {one[1:] for one in touched if one.startswith("!")}
    done |= {next(iter(one)) for one in steps if isinstance(one, dict)}
    assert done | {"begun"} == set(STEPS)
    assert {one[1:] for one in touched if one.startswith("@")} == set(walks)


@pytest.mark.parametrize("size", [(915, 412), (360, 640)])
@pytest.mark.parametrize("name", ["joint-cross", "joint-pull"])
def test_a_scene_of_a_drawing_shows_it_in_whichever_pane_it_stands(
    begin: Callable[..., Session], size: tuple[int, int], name: str
) -> None:
    """On its side only the left pane was scrolled; the fold with the drawing is at the right."""
    app = begin(demo=True)
    app.resize(*size)
    arrive(app, next(scene for scene in scenes() if scene.name == name))
    shares = []
    for pane in app.front.paper.parts.panes:
        top = -pane.offset
        for block, laid in zip(pane.blocks, pane.laids, strict=True):
            if isinstance(block, Picture):
                shares.append((min(pane.height, top + laid.height) - max(0.0, top)) / laid.height)
            top += laid.height
    assert max(shares) > 0.4


def test_a_scene_that_is_elsewhere_says_so(tmp_path: Path) -> None:
    driver = start(tmp_path)
    with pytest.raises(AstrayError, match="lost: is on ride, not on bench"):
        arrive(driver, Scene("lost", lambda _driver: None, "bench"))
    with pytest.raises(AstrayError, match="stuck: the walk ends on ride: nothing shows"):
        arrive(driver, Scene("stuck", lambda driver: driver.tap("No such row"), "ride"))
    failed = Scene("failed", lambda driver: driver.app.front.cannot_show(RuntimeError("made")), "ride")
    with pytest.raises(AstrayError, match="failed: is on cannot show, not on ride"):
        arrive(driver, failed)
    driver.stop()


def test_a_widget_higher_than_its_scroller_is_touched_where_it_shows(tmp_path: Path) -> None:
    """Its middle lies behind the bars there: a touch on it would go to one of the four places, or the board's chip."""
    driver = start(tmp_path)
    driver.resize(320, 568)
    Held(driver).set_person(text=2.0)
    driver.app.front.place("ride")
    driver.settle()
    driver.tap("Pack hot or swollen?")
    driver.settle()
    assert driver.app.front.world.trail[-1].page == "ride.pack_signs"
    Held(driver).set_person(text=1.0)
    driver.stop()


@NEEDS_GRAPHICS
@pytest.mark.parametrize(("names", "hangs", "status", "told"), [
    (("right",), "60", 0, []),
    (("elsewhere", "fails", "right"), "60", 1, [
        "elsewhere: is on ride, not on bench", "fails: the walk ends on ride: nothing shows 'No such row'",
    ]),
    (("hangs", "right"), "4", 1, ["hangs: hangs on ride"]),
])  # fmt: skip
def test_no_scene_passes_silently(
    tmp_path: Path, names: tuple[str, ...], hangs: str, status: int, told: list[str]
) -> None:
    done = _run(RUN, tmp_path, hangs, *names)
    assert done.returncode == status, done.stderr
    for sentence in told:
        assert sentence in done.stderr


@NEEDS_GRAPHICS
def test_contact_sheets_of_one_size_know_nothing_of_the_size_before(tmp_path: Path) -> None:
    """The last of these walks notes a fault, which the next check would begin with."""
    done = _run(SHEETS, tmp_path, "journey-before-2", "journey-before-3")
    assert done.returncode == 0, done.stderr
    assert len(list((tmp_path / "pictures").glob("*.png"))) == 2


def _run(program: str, folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    """Run a program of ours that writes pictures, in a process of its own."""
    return alone(folder, "-c", program, str(folder / "pictures"), *arguments)
