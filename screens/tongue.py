"""The language, for what pages say; what is only looked up by a name, or said of a cause, is written in assets/words."""

import tomllib
from functools import cache
from pathlib import Path
from typing import Any

from logic.tongue import _, said

__all__ = ["ASSETS", "_", "asset", "texts"]

ASSETS = Path(__file__).resolve().parent.parent / "assets"


@cache
def asset(file: str) -> dict[str, Any]:
    """Return a table of assets, what is said in it in the language that is spoken."""
    return dict(said(file, tomllib.loads((ASSETS / f"{file}.toml").read_text(encoding="utf-8"))))


@cache
def texts(file: str) -> dict[str, dict[str, str]]:
    """Return the texts of a file of assets/words, each by its group and its name there."""
    written = tomllib.loads((ASSETS / "words" / f"{file}.toml").read_text(encoding="utf-8"))
    return {group: {name: _(text) for name, text in under.items()} for group, under in written.items()}
