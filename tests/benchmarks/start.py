"""Start to the first frame: our app, first usable screen, against a bare KivyMD app with one label.

Both run as whole processes off the screen, in turn, on their own empty folders; the median of several counts.

    uv run tests/benchmarks/start.py [--rounds 9] [--uncached]

`--uncached` also prints both without their compiled modules, as on the first start after an installation.
"""

import argparse
import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from statistics import median

ROOT = Path(__file__).resolve().parents[2]

FLIP = """
from kivy.core.window import Window
import os, sys, time
def stands(*_):
    sys.stdout.write(f"{time.time()}\\n")
    sys.stdout.flush()
    os._exit(0)
Window.bind(on_flip=stands)
"""

BARE = """
import os, sys
os.environ.update(KIVY_NO_ARGS="1", KIVY_NO_FILELOG="1", KIVY_NO_CONFIG="1", KIVY_HOME=sys.argv[1], KIVY_WINDOW="sdl2",
    KIVY_NO_CONSOLELOG="1")
from kivymd.app import MDApp
from kivymd.uix.label import MDLabel
{flip}
class Bare(MDApp):
    def build(self):
        return MDLabel(text="Deckhand")
Bare().run()
"""

OURS = """
import sys
sys.argv = ["main.py", "--data", sys.argv[1], "--demo"]
from screens import environment
# As on a phone or a desk: the window is off the screen here, which main.py would take for a machine without one.
environment.has_screen = lambda _window: True
open_window = environment.open_window
def opened():
    window = open_window()
    exec({flip!r}, {{}})
    return window
environment.open_window = opened
import main
main.main(sys.argv[1:])
"""


def start(script: Path, environment: dict[str, str]) -> float:
    """Return the milliseconds from the start of a process to its first frame; its data go beside the script."""
    began = time.time()
    done = subprocess.run(  # noqa: S603  (our own interpreter and the texts above)
        [sys.executable, str(script), str(script.with_suffix(""))],
        env={**environment, "PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        text=True,
        check=True,
    )
    return (float(done.stdout.split()[-1]) - began) * 1000


def compare(rounds: int, *, cached: bool) -> tuple[float, float]:
    """Return the medians of ours and of the bare app, each started in turn after one start that does not count."""
    clean = {name: value for name, value in os.environ.items() if not name.startswith(("KIVY_", "SDL_"))}
    times: dict[str, list[float]] = {"ours": [], "bare": []}
    with tempfile.TemporaryDirectory() as folder:
        for name, text in (("ours", OURS), ("bare", BARE)):
            (Path(folder) / f"{name}.py").write_text(text.format(flip=FLIP))
            (Path(folder) / name).mkdir()
        clean["PYTHONPYCACHEPREFIX"] = f"{folder}/compiled"
        clean.pop("PYTHONDONTWRITEBYTECODE", None)
        if not cached:
            clean["PYTHONDONTWRITEBYTECODE"] = "1"
        for turn in range(rounds + 1):
            for name, kept in times.items():
                took = start(Path(folder) / f"{name}.py", clean)
                if turn:
                    kept.append(took)
    return median(times["ours"]), median(times["bare"])


def main() -> None:
    """Print both and their ratio."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--rounds", type=int, default=9)
    parser.add_argument("--uncached", action="store_true")
    wanted = parser.parse_args()
    for cached in (True, False) if wanted.uncached else (True,):
        ours, bare = compare(wanted.rounds, cached=cached)
        note = "" if cached else ", nothing compiled"
        print(f"Deckhand {ours:.0f} ms, bare KivyMD app {bare:.0f} ms, ratio {ours / bare:.2f}{note}")


if __name__ == "__main__":
    main()
