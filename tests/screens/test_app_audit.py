"""Every screen of the app in each of its states, at each size and text scale: nothing cut, covered or too small."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from screens.driver import Driver
from screens.page import Page
from screens.scenes import Scene, arrive, reset, scenes, start
from screens.theme import theme
from tests.pages import test_layout
from tests.screens.audit import faults

SIZES = ((320, 568), (412, 915), (800, 1280))
SCALES = (1.0, 1.3, 1.6, 2.0)


@pytest.fixture(scope="module")
def driver(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Driver]:
    """Keep one app for the module."""
    driver = start(Path(tmp_path_factory.mktemp("data")))
    yield driver
    driver.stop()
    theme.apply("day", 1.0)


@pytest.mark.parametrize("scene", scenes(), ids=lambda scene: scene.name)
def test_no_screen_has_a_fault(driver: Driver, scene: Scene) -> None:
    reset(driver, "day", 1.0)
    arrive(driver, scene)
    if getattr(driver.app.shell.page, "data", False):
        assert list(of_data(driver.app.shell.page.page)) == []
        return
    found = []
    for size, scales in zip(SIZES, (SCALES[::-1], SCALES, SCALES[::-1]), strict=True):
        driver.resize(*size)
        # Built at the first scale; the others come while it is on the screen.
        reset(driver, "day", scales[0])
        arrive(driver, scene)
        for scale in scales:
            driver.app.state.set_person(text=scale)
            driver.settle()
            found += [f"{size} at {scale}: {fault}" for fault in faults()]
    assert found == []


def of_data(page: Page) -> Iterator[str]:
    """Yield the faults of a page of data at every size and scale: measured, not built."""
    for width, height in test_layout.SIZES:
        for scale in SCALES:
            for part, laid in test_layout.laids(page, width, height, scale):
                for fault in test_layout.faults(laid):
                    yield f"{width}x{height} at {scale}, {part}: {fault}"
