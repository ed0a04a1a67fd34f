"""The app put away on a phone that takes its graphics meanwhile: run as a program of its own by `test_lost.py`."""

import array
import sys
from pathlib import Path


def main(folder: Path) -> None:
    """Write pictures of the first page before and after every texture was taken away and the app came back."""
    from screens.driver import prepare  # noqa: PLC0415  (Kivy reads its environment when it is imported)

    prepare(folder / "kivy", width=412, height=915)
    from kivy.graphics.opengl import glDeleteTextures  # noqa: PLC0415  (the same)

    from screens.scenes import start  # noqa: PLC0415  (the same)

    driver = start(folder / "data")
    driver.resize(412, 915)
    driver.shot(folder / "before.png")
    names = array.array("I", range(1, 4000))
    glDeleteTextures(len(names), names.tobytes())
    driver.app.dispatch("on_pause")
    driver.app.dispatch("on_resume")
    driver.settle()
    driver.shot(folder / "after.png")
    driver.app.front.picture(folder / "page.png")
    driver.stop()


if __name__ == "__main__":
    main(Path(sys.argv[1]))
