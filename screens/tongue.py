"""The language, for what pages say; what is only looked up by a name, or said of a cause, is written in assets/words."""

import tomllib
from functools import cache
from pathlib import Path

from logic.tongue import _

__all__ = ["ASSETS", "_", "texts"]

ASSETS = Path(__file__).resolve().parent.parent / "assets"


@cache
def texts(file: str) -> dict[str, dict[str, str]]:
    """Return the texts of a file of assets/words, each by its group and its name there."""
    written = tomllib.loads((ASSETS / "words" / f"{file}.toml").read_text(encoding="utf-8"))
    return {group: {name: _(text) for name, text in under.items()} for group, under in written.items()}
