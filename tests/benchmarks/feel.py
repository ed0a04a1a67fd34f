"""What a hand feels inside the app, part of the table: opening a page, a digit, a frame of a scroll, memory, widgets.

CPU of the main thread, drawing by software in a thread of its own.
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

ROOT = Path(__file__).resolve().parents[2]
TENSION, GEARING = ("ride.tension", ""), ("numbers.gearing", "drive.wheel_diameter")
DIGITS = "7531246895" * 3
VALUES, DEAREST = 6, 8
"""Values a page is typed in, and pages that are named."""


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


def plain_page(driver: Any) -> float:
    """Return what Kivy itself takes for twenty plain labels, from nothing to their frame: what a page is held beside."""
    from kivy.core.window import Window  # noqa: PLC0415  (after Kivy's environment is set)
    from kivy.uix.boxlayout import BoxLayout  # noqa: PLC0415
    from kivy.uix.label import Label  # noqa: PLC0415

    def shown() -> BoxLayout:
        column = BoxLayout(orientation="vertical")
        for number in range(20):
            column.add_widget(Label(text=f"Line {number} of a plain page"))
        Window.add_widget(column)
        driver.frame(2)
        return column

    took = []
    for _ in range(7):
        columns: list[Any] = []
        took.append(cpu(lambda columns=columns: columns.append(shown())))
        Window.remove_widget(columns[0])
        driver.settle()
    return median(took)


def digit(driver: Any, page: str, key: str, typed: str = DIGITS) -> float:
    """Return what a digit costs, from the key to the end of its frame: the middle of some; 0.0 where none is typed."""
    from screens.acts import Go  # noqa: PLC0415  (after Kivy's environment is set)
    from screens.acts.entering import Ask  # noqa: PLC0415  (after Kivy's environment is set)

    driver.app.front.place("ride")
    driver.app.front.perform(Go(page, {}))
    if key:
        driver.app.front.perform(Ask(key))
    driver.settle()
    entry = driver.app.front.page.foot.entry
    if entry is None or entry.field.kind == "choice":
        return 0.0
    driver.type("9" if key else "1")
    took = []
    for character in typed:
        took.append(
            cpu(lambda typed=character: (driver.window.dispatch("on_textinput", typed), driver.frame()))
        )
        driver.key(8)
        driver.settle()
    return median(took)


def digits(driver: Any) -> Iterator[tuple[float, str, str]]:
    """Yield what a digit costs on each page for the dearest of the first values it asks for, with page and value."""
    from screens.acts import Go  # noqa: PLC0415  (after Kivy's environment is set)
    from screens.acts.entering import Ask  # noqa: PLC0415

    for page in plain_pages():
        driver.app.front.place("ride")
        driver.app.front.perform(Go(page, {}))
        driver.settle()
        acts = (act for block in driver.app.front.page.blocks for act in block.acts().values())
        keys = dict.fromkeys(act.key for act in acts if isinstance(act, Ask))
        cost, key = max((digit(driver, page, key, DIGITS[:5]), key) for key in ("", *list(keys)[:VALUES]))
        if cost:
            yield cost, page, key


def scroll(driver: Any) -> float:
    """Return what a frame costs while the longest page moves by a row."""
    from kivy.uix.recycleview import RecycleView  # noqa: PLC0415  (after Kivy's environment is set)

    from screens.acts import Go  # noqa: PLC0415

    driver.app.front.place("ride")
    driver.app.front.perform(Go("numbers.gearing", {}))
    driver.settle()
    pane = next(one for one in driver.app.front.paper.walk() if isinstance(one, RecycleView))
    return median(cpu(lambda at=at: (pane.to(at), driver.frame())) for at in range(0, 600, 24))


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
        page = plain_page(driver)
        print(f"a column of 20 plain labels of Kivy, made and shown in the same app: {page:.1f} ms")
        first = median(ms for ms, _ in took)
        print(
            f"first opening of a page: median {first:.0f} ms (bar 40), {first / page:.1f} of the column,",
            end=" ",
        )
        print(f"worst {worst[0]:.0f} ms, {worst[1]} (bar 80), {len(took)} pages")
        again = [ms for ms, _ in opening(driver)]
        print(f"memory after every page {resident():.0f}")
        print(f"opening again: median {median(again):.0f} ms, worst {max(again):.0f} ms")
        for name, cost, bar in (
            ("a frame of a scroll", scroll(driver), 8),
            ("a digit, tension check", digit(driver, *TENSION), 4),
            ("a digit, gearing", digit(driver, *GEARING), 8),
        ):
            print(f"{name}: {cost:.1f} ms (bar {bar}), {cost / page:.2f} of the column")
        dear = sorted(digits(driver), reverse=True)
        over = sum(cost > 8.0 for cost, *_ in dear)
        print(f"a digit on {len(dear)} pages, dearest value of each (bar 8): {over} above, the dearest:")
        for cost, name, key in dear[:DEAREST]:
            print(f"{cost:>8.1f} ms {cost / page:>6.2f} of the column  {name}, {key}")
        print(f"widgets alive on the largest page: {alive}")
        driver.stop()
        print("\n".join(matter_table()))


def matter_table() -> Iterator[str]:
    """Yield the least share of the window that any page leaves for its matter, by size and text scale."""
    from tests.pages.matter import matter  # noqa: PLC0415  (after Kivy's environment is set)
    from tests.pages.states import states  # noqa: PLC0415
    from tests.pages.test_layout import LIES, SCALES, SIZES  # noqa: PLC0415

    pages = [page for name in plain_pages() for _, page in states(name)]
    yield "least share of the matter (bar 45 %)" + "".join(f"{f'text {scale}':>10}" for scale in SCALES)
    for width, height in (*SIZES, *LIES):
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


def run(kind: str) -> str:
    done = subprocess.run(  # noqa: S603  (our own interpreter)
        [sys.executable, "-m", "tests.benchmarks.feel", kind],
        env={**os.environ, "LP_NUM_THREADS": "1"},
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    return done.stdout


if __name__ == "__main__":
    {"ours": ours, "bare": bare}[sys.argv[1]]()
