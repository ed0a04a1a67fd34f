"""What there is to translate: `uv run python -m tests.messages > deckhand.pot` writes it as a template for translators.

Sentences of modules are found by `_("...")`, those of tables and lists by the columns that `logic.tongue` names.
"""

import ast
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from logic.tongue import SAID, SHOWN, through

ROOT = Path(__file__).resolve().parents[1]
ASSETS = ROOT / "assets"
HEAD = 'msgid ""\nmsgstr ""\n"Content-Type: text/plain; charset=UTF-8\\n"\n"Content-Transfer-Encoding: 8bit\\n"\n'


def messages() -> dict[str, list[str]]:
    """Return every message with the files it stands in."""
    found: dict[str, list[str]] = {}
    for path, text in (*_of_modules(), *_of_words(), *_of_tables()):
        places = found.setdefault(text, [])
        place = path.relative_to(ROOT).as_posix()
        if text and place not in places:
            places.append(place)
    found.pop("", None)
    return found


def _of_modules() -> Iterator[tuple[Path, str]]:
    for path in sorted((*(ROOT / "screens").rglob("*.py"), *(ROOT / "logic").rglob("*.py"))):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "_":
                for part in ast.walk(node.args[0]) if not isinstance(node.args[0], ast.Subscript) else ():
                    if isinstance(part, ast.Constant) and isinstance(part.value, str):
                        yield path, part.value


def _of_words() -> Iterator[tuple[Path, str]]:
    for path in sorted((ASSETS / "words").glob("*.toml")):
        for group in _read(path).values():
            yield from ((path, text) for text in group.values())


def _of_tables() -> Iterator[tuple[Path, str]]:
    for path in sorted(ASSETS.rglob("*.toml")):
        name = path.stem if path.parent in (ASSETS, ASSETS / "tables") else path.parent.name
        texts: dict[str, str] = {}
        through(
            _read(path),
            (*SAID.get(name, ()), *SHOWN.get(name, ())),
            lambda text, kept=texts: kept.setdefault(text, text),
        )
        yield from ((path, text) for text in texts)


def _read(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text(encoding="utf-8"))


def _quoted(text: str) -> str:
    for sign, written in (("\\", "\\\\"), ('"', '\\"'), ("\n", "\\n"), ("\t", "\\t")):
        text = text.replace(sign, written)
    return f'"{text}"'


def template() -> str:
    """Return the template: each message with its places, and room for what it is in the other language."""
    rows = [
        "".join(f"#: {place}\n" for place in places) + f'msgid {_quoted(text)}\nmsgstr ""\n'
        for text, places in sorted(messages().items())
    ]
    return "\n".join((HEAD, *rows))


if __name__ == "__main__":
    sys.stdout.write(template())
