"""Start to the first frame: our app, first usable page, against a bare KivyMD app and a bare Kivy app with one label.

All run as whole processes off the screen, in turn, on their own empty folders; CPU of the whole process, the median of
several counts. Part of the table.
"""

import os
import resource
import subprocess
import sys
import tempfile
from pathlib import Path
from statistics import median

ROOT = Path(__file__).resolve().parents[2]

FLIP = """
from kivy.core.window import Window
import os
Window.bind(on_flip=lambda *_: os._exit(0))
"""

BARE = """
import os, sys
os.environ.update(KIVY_NO_ARGS="1", KIVY_NO_FILELOG="1", KIVY_NO_CONFIG="1", KIVY_HOME=sys.argv[1], KIVY_WINDOW="sdl2",
    KIVY_NO_CONSOLELOG="1")
{flip}
from {package}.app import {app}
from {package}.uix.label import {label}
class Bare({app}):
    def build(self):
        return {label}(text="Deckhand")
Bare().run()
"""

OURS = """
import sys
sys.argv = ["main.py", "--data", sys.argv[1] + "/data", "--demo"]
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

TEXTS = {
    "ours": OURS.format(flip=FLIP),
    "kivymd": BARE.format(flip=FLIP, package="kivymd", app="MDApp", label="MDLabel"),
    "kivy": BARE.format(flip=FLIP, package="kivy", app="App", label="Label"),
}


def start(script: Path, environment: dict[str, str]) -> float:
    """Return the milliseconds of CPU from the start of a process to its first frame; its data go beside the script."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(  # noqa: S603  (our own interpreter and the texts above)
        [sys.executable, str(script), str(script.with_suffix(""))],
        env={**environment, "PYTHONPATH": str(ROOT)},
        cwd=ROOT,
        stdout=subprocess.DEVNULL,
        check=True,
    )
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return (after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime) * 1000


def compare(rounds: int, *, cached: bool = True) -> tuple[float, float, float]:
    """Return the medians of ours and of the bare apps, each started in turn after one start that does not count."""
    clean = {name: value for name, value in os.environ.items() if not name.startswith(("KIVY_", "SDL_"))}
    clean |= {"LP_NUM_THREADS": "1", "SDL_VIDEODRIVER": "offscreen"}
    times: dict[str, list[float]] = {name: [] for name in TEXTS}
    with tempfile.TemporaryDirectory() as folder:
        for name, text in TEXTS.items():
            (Path(folder) / f"start_{name}.py").write_text(text)
            (Path(folder) / f"start_{name}").mkdir()
        clean["PYTHONPYCACHEPREFIX"] = f"{folder}/compiled"
        clean.pop("PYTHONDONTWRITEBYTECODE", None)
        if not cached:
            clean["PYTHONDONTWRITEBYTECODE"] = "1"
        for turn in range(rounds + 1):
            for name, kept in times.items():
                took = start(Path(folder) / f"start_{name}.py", clean)
                if turn:
                    kept.append(took)
    return median(times["ours"]), median(times["kivymd"]), median(times["kivy"])
