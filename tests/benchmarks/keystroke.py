"""A digit typed in gearing to the frame that shows its results, against a bare Kivy label that changes its text.

One process, real graphics off the screen. Each time runs from the key to the end of the frame, the drawing finished.

    uv run tests/benchmarks/keystroke.py [--rounds 40]
"""

import argparse
import sys
import tempfile
import time
from pathlib import Path
from statistics import median
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))


def typed(driver: Any, digits: str) -> list[float]:
    """Return the milliseconds of each digit, typed and taken away again, on the gearing page."""
    driver.tap("Numbers")
    driver.tap("Gearing and speed")
    driver.tap("Wheel diameter")
    driver.type("9")
    took = []
    for digit in digits:
        began = time.perf_counter()
        driver.window.dispatch("on_textinput", digit)
        driver.frame()
        took.append((time.perf_counter() - began) * 1000)
        if driver.app.front.page.crown.grey:
            sys.exit(f"9{digit} was refused: nothing is measured")
        driver.key(8)
        driver.settle()
    return took


def labelled(driver: Any, digits: str) -> list[float]:
    """Return the milliseconds of each change of one label."""
    took = []
    for number, digit in enumerate(digits):
        began = time.perf_counter()
        driver.app.root.text = f"9{digit}.{number}"
        driver.frame()
        took.append((time.perf_counter() - began) * 1000)
        driver.settle()
    return took


def main() -> int:
    """Print both medians and their ratio."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--rounds", type=int, default=40)
    digits = "".join(str(number % 10) for number in range(parser.parse_args().rounds))
    with tempfile.TemporaryDirectory() as folder:
        from screens.driver import Driver, prepare  # noqa: PLC0415  (Kivy's environment comes first)

        prepare(Path(folder) / "kivy", width=412, height=915)
        from kivy.app import App  # noqa: PLC0415  (after `prepare`)
        from kivy.uix.label import Label  # noqa: PLC0415

        from screens.scenes import start  # noqa: PLC0415

        driver = start(Path(folder) / "data")
        ours = typed(driver, digits)
        driver.stop()

        class Bare(App):
            """A label alone."""

            def build(self) -> Label:
                """Return the label."""
                return Label(text="9", font_size=57)

        driver = Driver(Bare())
        bare = labelled(driver, digits)
        driver.stop()
    print(
        f"A digit in gearing {median(ours):.1f} ms (slowest {max(ours):.1f}), bare label {median(bare):.1f} ms"
        f" (slowest {max(bare):.1f}), ratio {median(ours) / median(bare):.1f}"
    )
    return 0


if __name__ == "__main__":
    sys.exit(main())
