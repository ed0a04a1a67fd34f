"""The language of the app: every sentence passes through `_` where it is written, its numbers put in by name afterwards.

A translation is a compiled catalogue in assets/languages; without one the sentences are shown as they are written.
What is only looked up by a name, labels of results and sentences by their cause, is written in assets/words.
"""

import tomllib
from functools import cache
from gettext import NullTranslations, translation
from pathlib import Path

ASSETS = Path(__file__).resolve().parent.parent / "assets"
LANGUAGES = ASSETS / "languages"

_spoken: list[NullTranslations] = [NullTranslations()]


def speak(language: str) -> None:
    """Take the sentences of a language from now on; those of an unknown one are as they are written."""
    _spoken[0] = translation("deckhand", str(LANGUAGES), [language], fallback=True)


def take(catalogue: NullTranslations) -> None:
    """Take a catalogue that is no file: the made-up language that shows which sentence was never passed through here."""
    _spoken[0] = catalogue


def _(text: str) -> str:
    """Return a sentence in the language that is spoken. Of no words a catalogue would tell who wrote it."""
    return _spoken[0].gettext(text) if text else ""


@cache
def texts(file: str) -> dict[str, dict[str, str]]:
    """Return the texts of a file of assets/words, each by its group and its name there."""
    written = tomllib.loads((ASSETS / "words" / f"{file}.toml").read_text(encoding="utf-8"))
    return {group: {name: _(text) for name, text in under.items()} for group, under in written.items()}
