"""Prints how long it takes to walk to a few of the fuller pages, built anew, without graphics.

Run it by hand: `uv run python -m tests.benchmarks.pages`. The baseline is the same walk with Python's own
settings of the garbage collector, taken in turn; the median of several counts.
"""

import gc
import statistics
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from screens.driver import Driver, prepare

ROUNDS = 5
PAGES = ("lookup-card", "log-build-sheet", "joint-thread", "pairs", "push")
PYTHONS_OWN = (700, 10, 10)


def timed(driver: Driver, walk: Callable[[Driver], None]) -> float:
    """Return the time of one walk to a page that is not built yet, in ms."""
    from screens.scenes import reset  # noqa: PLC0415  (after Kivy's environment is set)

    reset(driver)
    driver.app.front.forget()
    began = time.perf_counter()
    walk(driver)
    return (time.perf_counter() - began) * 1000.0


def main() -> None:
    """Walk to each page both ways and print the times and their ratios."""
    with tempfile.TemporaryDirectory() as folder:
        prepare(Path(folder) / "kivy", width=412, height=915, mock=True)
        from screens.scenes import scenes, start  # noqa: PLC0415  (after Kivy's environment is set)

        ours = gc.get_threshold()
        driver = start(Path(folder) / "data")
        walks = {scene.name: scene.walk for scene in scenes() if scene.name in PAGES}
        print(f"{'':20}{'ours':>12}{'baseline':>12}   ratio")
        for name, walk in walks.items():
            times: dict[tuple[int, ...], list[float]] = {ours: [], PYTHONS_OWN: []}
            for setting in (ours, PYTHONS_OWN) * (ROUNDS + 1):
                gc.set_threshold(*setting)
                times[setting].append(timed(driver, walk))
            # The first of each also compiles its kv rules and reads its tables.
            mine, base = (statistics.median(times[setting][1:]) for setting in (ours, PYTHONS_OWN))
            print(f"{name:20}{mine:>9.0f} ms{base:>9.0f} ms{mine / base:>8.2f}")
        driver.stop()


if __name__ == "__main__":
    main()
