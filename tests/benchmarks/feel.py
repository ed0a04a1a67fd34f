"""Prints what a hand feels, each number beside its bar: opening a page, a digit, memory, start; and how much there is.

CPU of the main thread, drawing by software in a thread of its own; baselines run beside ours.

    uv run python -m tests.benchmarks.feel
"""

import os
import re
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from statistics import median
from typing import Any

from tests.benchmarks.start import compare

ROOT = Path(__file__).resolve().parents[2]
TENSION, GEARING = ("ride.tension", ""), ("numbers.gearing", "drive.wheel_diameter")
DIGITS = "7531246895" * 3


def opened(folder: Path) -> Any:
    """Return a driver with the app on the example boards."""
    from screens.driver import prepare  # noqa: PLC0415  (Kivy's environment comes first)

    prepare(folder / "kivy", width=412, height=915)
    from screens.scenes import start  # noqa: PLC0415  (after `prepare`)

    return start(folder / "data")


def cpu(act: Callable[[], object]) -> float:
    """Return what an act costs the main thread in ms."""
    began = time.thread_time()
    act()
    return (time.thread_time() - began) * 1000


def plain_pages() -> list[str]:
    """Return the pages that open without parameters."""
    from screens.register import PAGES  # noqa: PLC0415  (after Kivy's environment is set)
    from tests.pages.states import examples  # noqa: PLC0415

    return [name for name in PAGES if examples(name) == ({},)]


def opening(driver: Any) -> Iterator[tuple[float, str]]:
    """Yield what the first opening of each page costs, to the page at rest."""
    from screens.acts import Go  # noqa: PLC0415  (after Kivy's environment is set)

    for name in plain_pages():
        driver.app.front.place("ride")
        driver.settle()
        yield cpu(lambda name=name: (driver.app.front.perform(Go(name, {})), driver.frame(2))), name
        driver.settle()


def digit(driver: Any, page: str, key: str) -> float:
    """Return what a digit costs, from the key to the end of its frame."""
    from screens.acts import Ask, Go  # noqa: PLC0415  (after Kivy's environment is set)

    driver.app.front.place("ride")
    driver.app.front.perform(Go(page, {}))
    if key:
        driver.app.front.perform(Ask(key))
    driver.settle()
    driver.type("9" if key else "1")
    took = []
    for character in DIGITS:
        took.append(
            cpu(lambda typed=character: (driver.window.dispatch("on_textinput", typed), driver.frame()))
        )
        driver.key(8)
        driver.settle()
    return median(took)


def resident() -> float:
    """Return the memory of this process in MB."""
    found = re.search(r"VmRSS:\s+(\d+)", Path("/proc/self/status").read_text())
    return int(found.group(1)) / 1024 if found else 0.0


def ours() -> None:
    """Print what is measured inside the app."""
    with tempfile.TemporaryDirectory() as folder:
        driver = opened(Path(folder))
        took = list(opening(driver))
        worst = max(took)
        alive = max(_alive(driver, name) for name in plain_pages())
        print(f"first opening of a page: median {median(ms for ms, _ in took):.0f} ms (bar 40),", end=" ")
        print(f"worst {worst[0]:.0f} ms, {worst[1]} (bar 80), {len(took)} pages")
        print(f"memory after every page {resident():.0f}")
        print(f"a digit: tension check {digit(driver, *TENSION):.1f} ms (bar 4),", end=" ")
        print(f"gearing {digit(driver, *GEARING):.1f} ms (bar 8)")
        print(f"widgets alive on the largest page: {alive}")
        driver.stop()
        print("\n".join(matter_table(Path(folder))))


def matter_table(folder: Path) -> Iterator[str]:
    """Yield the least share of the height that any page leaves for its matter, by size and text scale."""
    from screens.paper.room import matter  # noqa: PLC0415  (after Kivy's environment is set)
    from tests.pages.states import states  # noqa: PLC0415
    from tests.pages.test_layout import SCALES, SIZES  # noqa: PLC0415

    pages = [page for name in plain_pages() for _, page in states(name, folder / name)]
    yield "least share of the matter (bar 45 %)" + "".join(f"{f'text {scale}':>10}" for scale in SCALES)
    for width, height in SIZES:
        if width < height:
            shares = (min(matter(page, width, height, scale) for page in pages) for scale in SCALES)
            yield f"{f'{width}x{height}':>36}" + "".join(f"{share:>10.0%}" for share in shares)


def _alive(driver: Any, name: str) -> int:
    from screens.acts import Go  # noqa: PLC0415  (after Kivy's environment is set)

    driver.app.front.place("ride")
    driver.app.front.perform(Go(name, {}))
    driver.settle()
    return sum(1 for _widget in driver.app.front.paper.walk())


def bare() -> None:
    """Print the memory of a KivyMD app with one label."""
    with tempfile.TemporaryDirectory() as folder:
        from screens.driver import Driver, prepare  # noqa: PLC0415  (Kivy's environment comes first)

        prepare(Path(folder) / "kivy", width=412, height=915)
        from kivymd.app import MDApp  # noqa: PLC0415  (after `prepare`)
        from kivymd.uix.label import MDLabel  # noqa: PLC0415

        class Bare(MDApp):
            """A label alone."""

            def build(self) -> Any:
                """Return the label."""
                return MDLabel(text="Deckhand")

        Driver(Bare()).settle()
        print(f"memory {resident():.0f}")


def _run(kind: str) -> str:
    done = subprocess.run(  # noqa: S603  (our own interpreter)
        [sys.executable, "-m", "tests.benchmarks.feel", kind],
        env={**os.environ, "LP_NUM_THREADS": "1"},
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    return done.stdout


def main() -> None:
    """Run each part in a process of its own and print the table."""
    said = _run("ours").splitlines()
    kept, alone = (float(line.split()[-1]) for line in (said.pop(1), _run("bare").strip()))
    print("\n".join(said))
    print(
        f"memory after every page {kept:.0f} MB, bare KivyMD app {alone:.0f} MB: {kept / alone:.2f} (bar 1.3)"
    )
    mine, kivymd, kivy = compare(7)
    print(f"start, CPU: {mine:.0f} ms; against a bare KivyMD app {mine / kivymd:.2f} (bar 0.85),", end=" ")
    print(f"a bare Kivy app {mine / kivy:.2f} (bar 1.3)")
    lines = sum(len(path.read_text("utf-8").splitlines()) for path in (ROOT / "screens").rglob("*.py"))
    print(f"lines of screens: {lines}")


if __name__ == "__main__":
    {"ours": ours, "bare": bare}.get("".join(sys.argv[1:]), main)()
