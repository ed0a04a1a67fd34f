"""The page with the code of a board, drawn in each theme: run as a program of its own by `test_codes.py`."""

import sys
from pathlib import Path


def main(folder: Path) -> None:
    """Write a picture of the page in each theme, on the smallest phone and on a usual one."""
    from screens.driver import prepare  # noqa: PLC0415  (Kivy reads its environment when it is imported)

    prepare(folder / "kivy", width=412, height=915)
    from screens.acts.keeping import Settle  # noqa: PLC0415  (the same)
    from screens.scenes import start  # noqa: PLC0415  (the same)

    driver = start(folder / "data")
    for width, height in ((412, 915), (320, 568)):
        driver.resize(width, height)
        for theme in ("day", "night", "sun"):
            driver.app.front.perform(
                Settle({"theme": "day" if theme == "sun" else theme, "sun": theme == "sun"})
            )
            driver.app.front.go("settings.code")
            driver.settle()
            driver.shot(folder / f"{theme}-{width}.png")
    driver.stop()


if __name__ == "__main__":
    main(Path(sys.argv[1]))
