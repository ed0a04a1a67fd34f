"""The guide for contributors is true: its page and the test of it run as they are printed, and what it names is there."""

import re
import sys
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path
from textwrap import dedent
from types import ModuleType

import pytest

from screens import register
from tests.pages.reader import Reader

ROOT = Path(__file__).parents[2]
GUIDE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
NAMED = re.compile(r"`([\w./-]+/[\w./-]*|[\w-]+\.(?:py|md|toml|json))`")
BASES = (ROOT, *(ROOT / name for name in ("screens", "logic", "tests/pages", "tests/logic")))
CODE = re.compile(r"`@?([A-Za-z]\w*(?:\.\w+)*)(?:\([^`]*\))?`")
"""A name of the code as the guide writes one, with or without what it is given."""
HOUSE = GUIDE.partition("## The house")[2].partition("## How a number")[0]
NOT_OURS = {"LANGUAGE", "LC_ALL", "LANG", "de", "po"}


def printed(first: str, folder: Path) -> ModuleType:
    """Return the code of the guide that begins with a line as a module."""
    lines = GUIDE[GUIDE.index(f"    {first}") :].splitlines()
    code = []
    for line in lines:
        if line and not line.startswith("    "):
            break
        code.append(line)
    path = folder / "printed.py"
    path.write_text(dedent("\n".join(code)), encoding="utf-8")
    spec = spec_from_file_location("printed", path)
    assert spec is not None
    assert spec.loader is not None
    module = module_from_spec(spec)
    module.__dict__["Reader"] = Reader
    spec.loader.exec_module(module)
    return module


def test_the_page_and_its_test_run_as_printed(
    pages: Reader, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "printed_page", printed("# screens/numbers/ratio.py", tmp_path))
    monkeypatch.setitem(register.PAGES, "numbers.ratio", "printed_page.ratio_page")
    printed("def test_more_teeth_on_the_motor", tmp_path).test_more_teeth_on_the_motor_gear_up(pages)


@pytest.mark.parametrize("path", sorted(set(NAMED.findall(GUIDE)) - {"numbers/ratio.py"}))
def test_what_the_guide_names_is_there(path: str) -> None:
    places = [base / path for base in BASES]
    assert any(place.exists() or place.with_suffix(".py").exists() for place in places)


def test_each_name_of_the_code_that_the_guide_says_is_in_the_code() -> None:
    folders = ("logic", "screens", "tests", "assets")
    code = [
        path for name in folders for path in (ROOT / name).rglob("*.*") if path.suffix in {".py", ".toml"}
    ]
    words = {path.stem for path in code} | {"DEVELOPERS"}
    for path in (*code, ROOT / "pyproject.toml", ROOT / "main.py"):
        if path != Path(__file__):
            words.update(re.findall(r"\w+", path.read_text("utf-8")))
    named = {word for name in CODE.findall(GUIDE) for word in name.split(".")}
    assert len(named) > 90
    assert sorted(named - words - NOT_OURS) == []


@pytest.mark.parametrize("top", ["logic", "screens"])
def test_the_house_names_each_module(top: str) -> None:
    said = set(re.findall(r"\w+", HOUSE))
    inside = {path.stem for path in (ROOT / top).iterdir()} - {"__init__", "__pycache__"}
    assert sorted(inside - said) == []
