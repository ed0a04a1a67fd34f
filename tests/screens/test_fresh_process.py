"""`main.py` as a person starts it: pictures off the screen, and one sentence where it cannot go on."""

import os
import re
import signal
import struct
import subprocess
import sys
import time
import zlib
from pathlib import Path

import pytest

from main import options
from screens import ends
from screens.scenes import scenes
from tests.alone import NEEDS_GRAPHICS, ROOT, alone, surroundings

NO_NUMPY = """
import runpy, sys
sys.modules["numpy"] = None
sys.argv = ["main.py", *sys.argv[1:]]
runpy.run_path("main.py", run_name="__main__")
"""

HEARS_SIGNALS = """
import runpy, signal, sys
# A suite that runs behind a shell has Ctrl-C shut off, and so have its children.
signal.signal(signal.SIGINT, signal.default_int_handler)
sys.argv = ["main.py", *sys.argv[1:]]
runpy.run_path("main.py", run_name="__main__")
"""

FIRST_FRAME = """
import os, sys
from screens import environment
environment.has_screen = lambda _window: True
open_window = environment.open_window
def opened():
    window = open_window()
    from screens.paper.arranging import Arranging
    arrange, sizes = Arranging.arrange, []
    def counted(self, page, frame, way):
        sizes.append((round(way.whole.width), round(way.whole.height)))
        arrange(self, page, frame, way)
    Arranging.arrange = counted
    def said(*_):
        print(sizes, [name for name in %r if name in sys.modules], flush=True)
        os._exit(0)
    window.bind(on_flip=said)
    return window
environment.open_window = opened
import main
main.main(sys.argv[1:])
"""


def run(folder: Path, *arguments: str, **changes: str) -> subprocess.CompletedProcess[str]:
    """Run main.py in a process of its own, as from a terminal with an empty home."""
    return alone(folder, "-c", NO_NUMPY, *arguments, within=300.0, **changes)


def picture(path: Path) -> tuple[tuple[int, int], int]:
    """Return the size of a PNG and how many different rows it has, read from its bytes alone."""
    data = path.read_bytes()
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    width, height, depth, kind = struct.unpack(">IIBB", data[16:26])
    assert depth == 8
    body, place = b"", 8
    while place < len(data):
        length, name = struct.unpack(">I4s", data[place : place + 8])
        if name == b"IDAT":
            body += data[place + 8 : place + 8 + length]
        place += length + 12
    row = 1 + width * {2: 3, 6: 4}[kind]
    raw = zlib.decompress(body)
    assert len(raw) == row * height
    return (width, height), len({raw[start : start + row] for start in range(0, len(raw), row)})


NOT_AT_THE_START = (
    *("argparse", "asyncio", "pint", "segno", "reportlab", "kivy.uix.textinput"),
    *("logic.entries", "logic.prints", "logic.drive", "logic.pack", "logic.joints", "screens.words.packs"),
)


@NEEDS_GRAPHICS
def test_the_first_frame_is_laid_out_once_and_loads_only_what_it_shows(tmp_path: Path) -> None:
    for _turn in ("with the example boards to write", "with them written"):
        done = subprocess.run(  # noqa: S603  (our own interpreter and program)
            [sys.executable, "-c", FIRST_FRAME % (NOT_AT_THE_START,), "--data", str(tmp_path), "--demo"],
            cwd=ROOT,
            env={**os.environ, "TMPDIR": str(tmp_path), "SDL_VIDEODRIVER": "offscreen"},
            capture_output=True,
            text=True,
            check=False,
            timeout=120,
        )
    assert (done.returncode, done.stdout) == (0, "[(412, 915)] []\n"), done.stderr


TEXT_FIELD = """
import sys
from pathlib import Path
from screens.driver import prepare
prepare(Path(sys.argv[1]) / "kivy", width=412, height=915)
from screens.scenes import start
driver = start(Path(sys.argv[1]) / "data")
from kivy.lang.builder import Builder, BuilderBase
from kivy.resources import resource_find
paper = driver.app.front.paper
driver.app.front.go("log.note")
driver.settle()
driver.tap("A few words")
driver.settle()
field = paper.writing
# Handles and the bubble that cuts and pastes come by a long touch, on phones only.
field.use_bubble = field.use_handles = True
field.text = "Belt frayed"
field.select_all()
field._show_cut_copy_paste(field.center, driver.window)
field._show_handles(0)
driver.frame()
everything = BuilderBase()
everything.load_file(resource_find("data/style.kv"), rulesonly=True)
names = lambda builder, part: [rule.name for rule in builder.match(part)]
tops = (field, field._bubble, field._handle_left, field._handle_right)
parts = [part for top in tops for part in top.walk(restrict=True)]
wrong = [part for part in parts if names(Builder, part) != names(everything, part)]
print(len(parts) > len(tops), wrong, len(Builder.rules) < len(everything.rules) / 4)
"""


@NEEDS_GRAPHICS
def test_a_text_field_has_all_of_kivys_rules_for_it_and_no_others_are_read(tmp_path: Path) -> None:
    done = alone(tmp_path, "-c", TEXT_FIELD, str(tmp_path))
    assert (done.returncode, done.stdout) == (0, "True [] True\n"), done.stderr


@pytest.mark.parametrize(
    ("arguments", "status", "said"),
    [
        (("--help",), 0, "--theme NAME"),
        (("--sounds",), 2, "option --sounds not recognized"),
        (("--theme", "dusk"), 2, "--theme dusk: choose one of day, night, sun"),
        (("here",), 2, "here is no option"),
        (("--data",), 2, "option --data requires argument"),
    ],
)
def test_what_cannot_be_asked_for_ends_in_a_sentence(
    capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...], status: int, said: str
) -> None:
    with pytest.raises(SystemExit) as ended:
        options(list(arguments))
    out, err = capsys.readouterr()
    assert (ended.value.code, said in (err if status else out)) == (status, True)


@NEEDS_GRAPHICS
def test_pictures_of_every_screen_and_the_main_results(tmp_path: Path) -> None:
    folder = tmp_path / "pictures"
    done = run(tmp_path, "--pictures", str(folder), "--size", "320x568", "--text", "1.3", "--theme", "night")
    # The scene of a page that fails leaves the record of its fault; nothing else may be said there.
    assert done.stderr == "Deckhand: a page failed\nRuntimeError: a fault made for the picture\n"
    assert done.returncode == 0
    names = [scene.name for scene in scenes()]
    assert len(set(names)) == len(names)
    assert sorted(path.name.partition("-")[2] for path in folder.iterdir()) == sorted(
        f"{name}.png" for name in names
    )
    for path in folder.iterdir():
        size, rows = picture(path)
        assert size == (320, 568), path.name
        # A blank picture has one row, or two where one line shows.
        assert rows > 20, path.name
    said = done.stdout.replace("\u00a0", " ").splitlines()
    for line in (
        "Board: Towpath 36",
        "Gear ratio: 2.5",
        "Without load, nominal pack: 43.8 km/h",
        "Belt tension to set: 108 N",
        "Pull depth: 1.1 mm",
        "Pull for the target: 9.41 N",
        "Scale reading for the target: 0.959 kg",
    ):
        assert line in said
    assert any(re.fullmatch(r"Top speed, loaded: 3\d(\.\d)? km/h", line) for line in said)
    assert said[-1] == f"{len(names)} pictures in {folder}"


@pytest.mark.parametrize("driver", ["x11", "dummy"])
def test_without_a_window_it_names_what_to_install(tmp_path: Path, driver: str) -> None:
    done = run(tmp_path, SDL_VIDEODRIVER=driver)
    assert done.returncode == 3
    assert done.stdout == ""
    assert done.stderr == "Deckhand needs a window with OpenGL: install libgl1 libegl1.\n"


@pytest.mark.parametrize("size", ["412", "412x", "x915", "big", "412x915x3", "0x0", "-1x5", "99999x99999"])
def test_a_size_that_is_none_is_told_in_a_sentence(tmp_path: Path, size: str) -> None:
    done = run(tmp_path, f"--size={size}", "--pictures", str(tmp_path / "pictures"))
    assert done.returncode == 1
    assert done.stderr == (
        f"--size {size}: write it as width x height in dp, such as 412x915, each from 200 to 4000\n"
    )
    assert not (tmp_path / "pictures").exists()


@pytest.mark.parametrize("scale", ["big", "0", "nan", "-1", "3"])
def test_a_text_scale_that_is_none_is_told_in_a_sentence(tmp_path: Path, scale: str) -> None:
    done = run(tmp_path, f"--text={scale}", "--pictures", str(tmp_path / "pictures"))
    assert (done.returncode, done.stderr) == (1, f"--text {scale}: write a number from 1.0 to 2.0\n")


def begin(folder: Path, pictures: Path) -> subprocess.Popen[str]:
    """Start writing pictures in a process of its own."""
    return subprocess.Popen(  # noqa: S603  (our own interpreter and program)
        [sys.executable, "-c", HEARS_SIGNALS, "--pictures", str(pictures), "--size", "320x568"],
        cwd=ROOT,
        env=surroundings(folder),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


@pytest.mark.parametrize("below", ["", "pictures"])
def test_pictures_into_a_file_end_in_a_sentence_before_a_window_opens(tmp_path: Path, below: str) -> None:
    taken = tmp_path / "a note"
    taken.write_text("kept")
    done = run(tmp_path, "--pictures", str(taken / below))
    assert (done.returncode, done.stdout) == (ends.NO_FOLDER, "")
    assert done.stderr == f"{taken / below} cannot be a folder: name another one.\n"
    assert taken.read_text() == "kept"


@NEEDS_GRAPHICS
@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device here that is always full")
def test_a_full_disk_ends_the_pictures_in_a_sentence_and_leaves_no_half_of_one(tmp_path: Path) -> None:
    pictures = tmp_path / "pictures"
    pictures.mkdir()
    first = pictures / f"01-{next(scenes()).name}.png"
    first.symlink_to("/dev/full")
    done = run(tmp_path, "--pictures", str(pictures))
    assert (done.returncode, done.stdout) == (ends.FULL, "")
    assert done.stderr == f"The disk of {pictures} is full: free some space and start again.\n"
    assert not first.is_symlink()


@NEEDS_GRAPHICS
@pytest.mark.parametrize(
    ("number", "status", "said"),
    [(signal.SIGINT, 130, "Stopped."), (signal.SIGTERM, 143, "Ended by the system.")],
)
def test_a_signal_ends_the_pictures_in_a_sentence(
    tmp_path: Path, number: int, status: int, said: str
) -> None:
    pictures = tmp_path / "pictures"
    with begin(tmp_path, pictures) as child:
        # Something is written before it is ended.
        while child.poll() is None and not any(pictures.glob("*.png")):
            time.sleep(0.02)
        child.send_signal(number)
        out, told = child.communicate(timeout=60)
    assert (child.returncode, out) == (status, "")
    assert told == f"{said} What was written is in {pictures}.\n"
    for path in pictures.iterdir():
        picture(path)


@pytest.mark.parametrize(("number", "status"), [(signal.SIGINT, 130), (signal.SIGTERM, 143)])
def test_an_end_waits_for_the_next_picture_and_comes_at_once_when_asked_again(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], number: int, status: int
) -> None:
    """A callback inside Kivy would lose what is raised in it."""
    before, reached = signal.getsignal(number), []

    def asked_once() -> int:
        signal.raise_signal(number)
        reached.append("once")
        ends.keep_picture(tmp_path / "next.png", b"")
        return 0

    def asked_twice() -> int:
        signal.raise_signal(number)
        reached.append("twice")
        signal.raise_signal(number)
        return 0

    assert [ends.guarded(tmp_path, run) for run in (asked_once, asked_twice)] == [status, status]
    assert reached == ["once", "twice"]
    assert str(tmp_path) in capsys.readouterr().err
    assert not any(tmp_path.iterdir())
    assert signal.getsignal(number) is before
