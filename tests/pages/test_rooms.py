"""Pages are data: neither they nor what they are made of needs Kivy, and each is found through the register."""

import ast
import re
import subprocess
import sys
from pathlib import Path

from screens.memo import Memo
from screens.register import PAGES

ROOT = Path(__file__).parents[2]
CORE = (
    "acts",
    "asking",
    "blocks",
    "page",
    "register",
    "showing",
    "tongue",
    "trying",
    "update",
    "ways",
    "world",
)


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


KNOW_KIVY = {
    "app",
    "front",
    "outside",
    "theme",
    "trouble",
    "driver",
    "environment",
    "scenes.sheets",
    "paper",
    "phone",
}
"""The rooms that know Kivy: the app and what is in front, the paper, the phone's adapters, what drives and pictures them."""


def imported(path: Path) -> set[str]:
    """What a module needs when it is loaded: not what it names for the reader of types, nor what it loads later."""
    tree = ast.parse(path.read_text("utf-8"))
    found: set[str] = set()
    for node in tree.body:
        if isinstance(node, ast.Import):
            found |= {one.name for one in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module, *(f"{node.module}.{one.name}" for one in node.names)}
    return found


def screens() -> dict[str, Path]:
    """Every module of screens by its name."""
    found = {}
    for path in (ROOT / "screens").rglob("*.py"):
        parts = path.relative_to(ROOT).with_suffix("").parts
        found[".".join(parts).removesuffix(".__init__")] = path
    return found


def test_only_the_app_the_paper_and_the_phone_know_kivy() -> None:
    knows = {
        name.removeprefix("screens.")
        for name, path in screens().items()
        if re.search(r"^\s*(?:from|import) kivy", path.read_text("utf-8"), re.MULTILINE)
    }
    assert {name for name in knows if not {name, name.partition(".")[0]} & KNOW_KIVY} == set()
    assert {"app", "front", "paper.paper"} <= knows


def test_no_imports_of_screens_run_in_a_circle() -> None:
    graph = {name: imported(path) & set(screens()) - {name} for name, path in screens().items()}
    assert {"screens.paper.paper", "screens.update", "screens.world"} <= graph["screens.front"]
    # What needs nothing that is left is taken away, until only circles are left.
    while free := [name for name, needs in graph.items() if not needs & set(graph)]:
        for name in free:
            del graph[name]
    assert graph == {}


def test_what_rests_on_the_same_is_worked_out_once() -> None:
    asked: list[tuple[object, float]] = []

    def work_out(board: object, speed: float) -> int:
        asked.append((board, speed))
        return len(asked)

    kept, one, other = Memo(), object(), object()
    assert [kept(work_out, one, 1.0), kept(work_out, one, 1.0), kept(work_out, other, 1.0)] == [1, 1, 2]
    assert kept(work_out, one, 2.0) == 3
    assert kept(work_out, one, 1.0) == 1
