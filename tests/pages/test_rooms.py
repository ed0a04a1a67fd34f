"""Pages are data: neither they nor what they are made of needs Kivy, and each is found through the register."""

import subprocess
import sys
from pathlib import Path

from screens.register import PAGES
from screens.world import Memo

ROOT = Path(__file__).parents[2]
CORE = ("acts", "asking", "blocks", "page", "register", "tongue", "trying", "update", "world")


def modules() -> list[str]:
    """What pages are made of, and every module that has a page of data."""
    pictures = [f"screens.pictures.{path.stem}" for path in (ROOT / "screens" / "pictures").glob("*.py")]
    pages = [path.rpartition(".")[0] for path in PAGES.values()]
    return [*(f"screens.{name}" for name in CORE), *pictures, *pages]


def test_pages_and_what_they_are_made_of_need_no_kivy() -> None:
    script = (
        "import importlib, sys\n"
        "for name in ('kivy', 'kivymd', 'pint', 'numpy'):\n"
        "    sys.modules[name] = None\n"
        f"for name in {modules()!r}:\n"
        "    importlib.import_module(name.removesuffix('.__init__'))\n"
    )
    run = subprocess.run(  # noqa: S603  (our own interpreter and the text above)
        [sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert (run.returncode, run.stderr) == (0, "")


def test_only_the_paper_knows_kivy_among_the_rooms_of_data() -> None:
    rooms = [ROOT / "screens" / "update", ROOT / "screens" / "pictures"]
    found = [
        path.name for room in rooms for path in room.glob("*.py") if "kivy" in path.read_text("utf-8").lower()
    ]
    assert found == []


def test_what_rests_on_the_same_is_worked_out_once() -> None:
    asked: list[tuple[object, float]] = []

    def work_out(board: object, speed: float) -> int:
        asked.append((board, speed))
        return len(asked)

    kept, one, other = Memo(), object(), object()
    assert [kept(work_out, one, 1.0), kept(work_out, one, 1.0), kept(work_out, other, 1.0)] == [1, 1, 2]
    assert kept(work_out, one, 2.0) == 3
    assert kept(work_out, one, 1.0) == 1
