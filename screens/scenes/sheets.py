"""Contact sheets: every scene small, many on one picture, for each size, text scale and theme that counts."""

import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

from screens.driver import Driver, png
from screens.ends import keep_picture
from screens.scenes import reset, start, tell, visited


class Run(NamedTuple):
    """One look at all scenes."""

    size: tuple[int, int]
    text: float = 1.0
    theme: str = "day"

    @property
    def name(self) -> str:
        """Return what its sheets are called."""
        return f"{self.size[0]}x{self.size[1]}-text-{self.text:g}-{self.theme}"


RUNS = (
    *(Run(size) for size in ((320, 568), (360, 640), (360, 740), (412, 915), (915, 412), (800, 1280))),
    *(Run((412, 915), theme=theme) for theme in ("night", "sun")),
    *(Run((320, 568), text) for text in (1.3, 1.6, 2.0)),
    *(Run((915, 412), text) for text in (1.3, 2.0)),
    Run((320, 568), 2.0, "night"),
    Run((360, 740), 1.3, "sun"),
)
"""Every size, text scale and theme once, and those together that have least room."""

ACROSS, DOWN = 6, 4
WIDE = 240
"""Width of an upright scene on a sheet in pixels."""
NAME = 18
"""Height of the line with its name."""


class Sheet:
    """One picture of up to ACROSS times DOWN scenes."""

    def __init__(self, size: tuple[int, int]) -> None:
        """Begin empty, for scenes of a size."""
        from kivy.graphics import (  # noqa: PLC0415  (after Kivy's environment is set)
            ClearBuffers,
            ClearColor,
            Fbo,
        )

        width, height = size
        self.wide = WIDE if width < height else WIDE * 2
        self.tall = round(self.wide * height / width)
        self.across = ACROSS if width < height else ACROSS // 2
        self.count = 0
        self.whole = self.across * (self.wide + 4), DOWN * (self.tall + NAME)
        self.fbo = Fbo(size=self.whole)
        with self.fbo:
            ClearColor(0.5, 0.5, 0.5, 1.0)
            ClearBuffers()
        self.fbo.draw()
        self.fbo.clear()

    @property
    def full(self) -> bool:
        """Tell whether there is no room for another one."""
        return self.count >= self.across * DOWN

    def add(self, picture: Any, name: str) -> None:  # noqa: ANN401  (Kivy's texture has no public type)
        """Put a scene on the sheet, its name over it."""
        from kivy.core.text import Label  # noqa: PLC0415  (after Kivy's environment is set)
        from kivy.graphics import Color, Rectangle  # noqa: PLC0415

        row, column = divmod(self.count, self.across)
        x, top = column * (self.wide + 4), self.whole[1] - row * (self.tall + NAME)
        label = Label(text=name, font_size=13)
        label.refresh()
        with self.fbo:
            Color(1, 1, 1, 1)
            Rectangle(texture=label.texture, pos=(x, top - NAME), size=label.texture.size)
            Rectangle(texture=picture, pos=(x, top - NAME - self.tall), size=(self.wide, self.tall))
        self.fbo.draw()
        self.fbo.clear()
        self.count += 1

    def write(self, path: Path) -> None:
        """Write it as a PNG."""
        keep_picture(path, png(self.fbo.texture))


def looks(driver: Driver, run: Run, astray: list[str]) -> Iterator[Sheet]:
    """Yield the sheets of a run, each as it is full."""
    driver.resize(*run.size)
    sheet = Sheet(run.size)
    for number, scene in visited(driver, run.theme, run.text, astray):
        if sheet.full:
            yield sheet
            sheet = Sheet(run.size)
        sheet.add(driver.picture(), f"{number:02d} {scene.name}")
    yield sheet


def write_sheets(folder: Path) -> int:
    """Write the sheets of every run, each on boards of its own. Returns the exit status."""
    astray: list[str] = []
    folder.mkdir(parents=True, exist_ok=True)
    for run in RUNS:
        # What an earlier run wrote into the log would be met by the walks of the next.
        with tempfile.TemporaryDirectory() as data:
            driver = start(Path(data))
            for number, sheet in enumerate(looks(driver, run, astray), start=1):
                sheet.write(folder / f"{run.name}-{number}.png")
            reset(driver)
            driver.stop()
        print(f"{run.name}: {number} sheets", flush=True)
    return tell(sorted(set(astray)))
