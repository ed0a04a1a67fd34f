"""A translation is a file: every sentence of the pages passes through `_`, and pages hold in a language two fifths longer."""

import ast
import re
import struct
import subprocess
import sys
from collections.abc import Iterator
from gettext import GNUTranslations
from io import BytesIO
from pathlib import Path

import pytest

from logic import tongue
from screens.pictures.strokes import Label
from screens.tongue import texts
from tests.messages import messages, template
from tests.pages.made_up import SIGNS, MadeUp, unsaid
from tests.pages.reader import Reader

ROOT = Path(__file__).parents[2]
SAID = re.compile(r"^\s*(?:[A-Z{]|\d).*[a-z]{2}", re.DOTALL)
"""How what is said begins: with a capital, a number or what is put in; names of things in data begin small."""
AFTER = re.compile(r"\0[\s,]+(?!(?:mm|min|s|h)\b)[a-zA-Z]{2,}(?=[\s.,:;)]|$)")
"""A whole word after what is put in: units are none. One before it may begin a key."""
ELSEWHERE = (
    "scenes",
    "phone",
    "paper",
    "driver",
    "environment",
    "app",
    "ends",
    "faults",
    "svg",
    "html",
    "workings",
)
"""Modules whose words are no page's: walks, the terminal, the record of a fault, markup, formulas.

What the paper and the phone say is named by `_` as well, but beside key names and Java that look the same.
"""
NAMES = {"Scratch board", "Tooth missing or torn"}
"""What is written to the file of the data, or names an answer of a list."""
SILENT = {"_", "texts", "getLogger", "warning", "info", "error", "exception", "compile"}
"""Calls whose texts are said already, or are for nobody."""


def called(node: ast.Call) -> str:
    """Return the name of what is called."""
    return node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")


def passed_over(node: ast.AST) -> bool:
    """Tell whether nothing under a node is shown: annotations are left out by `shown`."""
    if isinstance(node, ast.keyword):
        return node.arg == "key"
    if isinstance(node, ast.Expr):
        return isinstance(node.value, ast.Constant)
    if isinstance(node, ast.Call):
        return called(node) in SILENT
    return isinstance(node, (ast.Raise, ast.Assert, ast.Compare, ast.arg))


def shown(node: ast.AST) -> Iterator[ast.AST]:
    """Yield the parts of a node that can hold what is shown: no keys, no annotations."""
    if isinstance(node, ast.Dict):
        yield from node.values
    elif isinstance(node, ast.Call) and called(node)[:1].isupper():
        # A block says its key first.
        yield from (*node.args[1:], *node.keywords)
    elif isinstance(node, ast.Subscript):
        yield node.value
    elif isinstance(node, ast.AnnAssign):
        yield from [node.value] if node.value is not None else []
    else:
        yield from ast.iter_child_nodes(node)


def not_said(node: ast.AST) -> Iterator[str]:
    """Yield each sentence under a node that does not pass through `_`."""
    if passed_over(node):
        return
    if isinstance(node, (ast.JoinedStr, ast.Constant)):
        parts = node.values if isinstance(node, ast.JoinedStr) else [node]
        text = "".join(
            part.value if isinstance(part, ast.Constant) and isinstance(part.value, str) else "\0"
            for part in parts
        )
        after, text = AFTER.search(text), text.replace("\0", " ")
        words = [word for word in text.split() if re.search("[A-Za-z]{2}", word)]
        if (after or (SAID.match(text) and len(words) > 1)) and "<" not in text:
            yield text.strip()
        return
    for part in shown(node):
        yield from not_said(part)


def modules() -> list[Path]:
    """Return the modules that say something on a page."""
    return [
        path
        for path in sorted((ROOT / "screens").rglob("*.py"))
        if not {*path.relative_to(ROOT).parts, path.stem} & {*ELSEWHERE}
    ]


def test_every_sentence_passes_through_the_language() -> None:
    found = [
        f"{path.relative_to(ROOT)}: {text}"
        for path in modules()
        for text in not_said(ast.parse(path.read_text(encoding="utf-8")))
        if text not in NAMES
    ]
    assert found == []


@pytest.mark.parametrize(
    ("code", "found"),
    [
        ('title = "Gear ratio"', ["Gear ratio"]),
        ('title = _("Gear ratio")', []),
        ('text = f"Rough: {name} and {count} more"', ["Rough:   and   more"]),
        ('text = _("Rough: {name}").format(name="a guess")', []),
        ('rows = {"Gear ratio": 1}', []),
        ('text = f"{count} items"', ["items"]),
        ('text = f"{count} mm"', []),
        ('row = Line(f"item {count} why", f"{count} items")', ["items"]),
    ],
)
def test_a_sentence_that_does_not_is_found(code: str, found: list[str]) -> None:
    assert list(not_said(ast.parse(code))) == found


def test_pages_say_all_in_a_language_two_fifths_longer() -> None:
    """Kivy's messages go elsewhere: what is printed are faults of the layout, and texts that are in no language."""
    run = subprocess.run(  # noqa: S603  (our own interpreter and module)
        [sys.executable, "-m", "tests.pages.made_up"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert (run.stdout, run.returncode) == ("", 0), run.stderr


def test_a_word_in_no_language_is_found() -> None:
    assert unsaid("Rátíó ẋẋ: 2.5 to 3 mm, M4 UNC, 1024.5", frozenset({"mm"})) == ["to"]


def test_the_template_of_a_translation_has_all_there_is_to_say() -> None:
    found = messages()
    for text, place in (
        ("Gear ratio", "assets/words/gearing.toml"),
        ("Motor pulley", "assets/tables/board_fields.toml"),
        ("Look at and smell the pack", "assets/checklists/before_ride.toml"),
        ("Numbers", "screens/paper/furniture.py"),
        ("teeth", "assets/tables/units.toml"),
    ):
        assert place in found[text], text
    assert 'msgid "{name} is missing. Add it."' not in template()
    assert 'msgid "{names} is missing. Add it."\nmsgstr ""' in template()


def catalogue() -> GNUTranslations:
    """Return a compiled catalogue as its tool writes it: what stands for no words is its head, and one sentence."""
    said = {"": "Content-Type: text/plain; charset=UTF-8\n", "Numbers": "Zahlen"}
    pairs = [(key.encode(), text.encode()) for key, text in said.items()]
    at, places, body = 28 + 16 * len(pairs), [], b""
    for column in zip(*pairs, strict=True):
        for text in column:
            places += [len(text), at + len(body)]
            body += text + b"\0"
    count = len(pairs)
    head = struct.pack("<7I", 0x950412DE, 0, count, 28, 28 + 8 * count, 0, 0)
    return GNUTranslations(BytesIO(head + struct.pack(f"<{4 * count}I", *places) + body))


def test_of_no_words_a_catalogue_says_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    """Source: manual of GNU gettext, "The Format of PO Files": the entry of the empty text is the catalogue's own head."""
    spoken = catalogue()
    assert spoken.gettext("")
    monkeypatch.setattr(tongue, "_spoken", [spoken])
    assert (tongue._("Numbers"), tongue._("")) == ("Zahlen", "")


def test_the_lines_of_a_chart_are_named_in_the_language(
    pages: Reader, monkeypatch: pytest.MonkeyPatch
) -> None:
    # What stands in a module is said when it is loaded: not in this language.
    assert pages.open("numbers.gearing", open_road=True)["road chart"].text
    monkeypatch.setattr(tongue, "_spoken", [MadeUp()])
    texts.cache_clear()
    chart = pages.open("numbers.gearing", open_road=True)["road chart"].strokes
    texts.cache_clear()
    named = {one.text for one in chart.strokes if isinstance(one, Label) and one.others}
    assert len(named) == 4
    assert [name for name in named if not set(name) & SIGNS] == []
