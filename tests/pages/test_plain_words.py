"""Every sentence of the app, in its code and its tables: one word for one thing, at most fifteen words a sentence."""

import ast
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any, get_args

from logic.belt.verdict import CANNOT_TELL, MAY_BE_SLACK, MAY_BE_TIGHT, Word
from logic.exchange.errors import Broken, Foreign, Later, TooDeep, TooLarge
from logic.log.checks import CARE, FIT, NOT
from logic.store.errors import NoRight
from screens import tongue
from tests.pages.plain import INSTEAD
from tests.pages.sentences import too_long, unsaid

ROOT = Path(__file__).resolve().parents[2]
APART = {"sources.toml", "form.toml", "formats.toml"}
"""Titles of sources, and what research says of lists: no page shows them as a sentence of its own."""
NOT_SHOWN = {"where", "source", "words", "also", "publisher", "see", "key", "note"}
"""Columns that are looked up, or cite a place in a source."""


def sentences() -> Iterator[tuple[str, str]]:
    """Yield each text that a page can show, with where it stands."""
    for path in sorted((ROOT / "screens").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "_" and node.args:
                said = node.args[0]
                if isinstance(said, ast.Constant) and isinstance(said.value, str):
                    yield f"{path.relative_to(ROOT)}:{node.lineno}", said.value
    for folder in ("tables", "checklists", "words"):
        for path in sorted((ROOT / "assets" / folder).glob("*.toml")):
            if path.name not in APART:
                page = tomllib.loads(path.read_text(encoding="utf-8"))
                yield from ((f"{path.name} {column}", text) for column, text in _texts(page))


def _texts(cell: Any, column: str = "") -> Iterator[tuple[str, str]]:
    if isinstance(cell, dict):
        for name, inside in cell.items():
            yield from _texts(inside, name)
    elif isinstance(cell, list):
        for inside in cell:
            yield from _texts(inside, column)
    elif isinstance(cell, str) and " " in cell and column not in NOT_SHOWN:
        yield column, cell


def test_one_word_stands_for_one_thing() -> None:
    # A name that only the code looks a row up by is no sentence.
    shown = [(where, text) for where, text in sentences() if where != "spreads.toml name"]
    wrong = [
        f"{where}: {text!r} says {word!r}, not {INSTEAD[word]!r}"
        for where, text in shown
        for word in unsaid(text)
    ]
    assert len(shown) > 2000
    assert wrong == []


def test_a_sentence_has_at_most_fifteen_words() -> None:
    long = [f"{where}: {one}" for where, text in sentences() for one in too_long(text)]
    assert long == []


def test_a_word_that_is_not_said_is_found_by_the_search() -> None:
    """Nobody who types the other name is left without an answer."""
    rows = tomllib.loads((ROOT / "assets/tables/glossary.toml").read_text(encoding="utf-8"))["row"]
    also = {name.casefold() for row in rows for name in row["also"]}
    for word in (
        "speed constant",
        "deflection",
        "durometer",
        "ratcheting",
        "grub screw",
        "esc",
        "wheel size",
    ):
        assert word in also, word
        assert word in INSTEAD


def test_every_group_of_texts_is_read_and_none_that_there_is_not() -> None:
    """What stands in assets/words is asked for by its file and its group."""
    read = set()
    for path in (ROOT / "screens").rglob("*.py"):
        code = path.read_text(encoding="utf-8")
        read |= set(re.findall(r'texts\("(\w+)"\)\["(\w+)"\]', code))
        for name, file in re.findall(r'(\w+) = texts\("(\w+)"\)$', code, re.MULTILINE):
            read |= {(file, group) for group in re.findall(rf'\b{name}\["(\w+)"\]', code)}
    rows = tomllib.loads((ROOT / "assets/page_values.toml").read_text(encoding="utf-8")).values()
    for row in rows:
        named = (one for kind in ("labels", "details", "outcomes") for one in row.get(kind, []))
        read |= {(file, group) for file, _dot, group in (one.partition(".") for one in named)}
    written = {
        (path.stem, group)
        for path in (ROOT / "assets/words").glob("*.toml")
        for group in tomllib.loads(path.read_text(encoding="utf-8"))
    }
    assert len(written) > 50
    assert read == written


def named_rows(code: str) -> Iterator[tuple[str, str, str]]:
    """Yield file, group and name of each text that a module asks for by a name it writes out."""
    groups = re.findall(r'(\w+) = texts\("(\w+)"\)\["(\w+)"\]$', code, re.MULTILINE)
    asked = [(rf'texts\("{file}"\)\["(\w+)"\]', file, "") for file in re.findall(r'texts\("(\w+)"\)', code)]
    asked += [
        (rf'\b{name}\["(\w+)"\]', file, "")
        for name, file in re.findall(r'(\w+) = texts\("(\w+)"\)$', code, re.MULTILINE)
    ]
    asked += [(rf"\b{name}()", file, group) for name, file, group in groups]
    for start, file, group in asked:
        for found, key in re.findall(start + r"\[([^\[\]]*)\]", code):
            whole = re.fullmatch(r'"([^"]+)"(?: if .* else "([^"]+)")?', key)
            for name in whole.groups() if whole else ():
                if name is not None:
                    yield file, group or found, name


def test_every_text_that_is_asked_for_by_its_name_is_written_and_none_is_left_over() -> None:
    """What a page seldom says would fail when it does. All of the group `said` is asked for by name."""
    code = [path.read_text(encoding="utf-8") for path in (ROOT / "screens").rglob("*.py")]
    asked = {row for one in code for row in named_rows(one)}
    written = {
        (path.stem, group, name)
        for path in (ROOT / "assets" / "words").glob("*.toml")
        for group, texts in tomllib.loads(path.read_text(encoding="utf-8")).items()
        for name in texts
    }
    assert len(asked) > 20
    assert asked - written == set()
    said = {row for row in written if row[1] == "said" and row[0] != "tension"}
    assert said - asked == set()


def test_a_table_by_words_of_logic_has_just_these() -> None:
    """One that is written otherwise would not be found, and another sentence or none be shown."""
    tension, checks = tongue.texts("tension"), tongue.texts("checks")
    assert set(tension["said"]) == set(get_args(Word))
    assert set(tension["reasons"]) == {CANNOT_TELL, MAY_BE_SLACK, MAY_BE_TIGHT}
    assert set(checks["fitness"]) == {FIT, CARE, NOT}
    refused = {kind.__name__ for kind in (TooLarge, TooDeep, Broken, Foreign, Later, NoRight)}
    assert set(tongue.texts("files")["refusals"]) == refused
