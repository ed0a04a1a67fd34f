"""What others wrote and Deckhand brings along: names, licences and the texts of these."""

import tomllib
from functools import cache

from logic.frozen import frozen
from logic.tables import ASSETS


@frozen
class Licence:
    """One thing that is brought along: its name, its licence in a few words, and the file of its text."""

    name: str
    licence: str
    file: str

    def paragraphs(self) -> tuple[str, ...]:
        """Return the text as its authors wrote it, without ruled lines and the ends of lines in a paragraph."""
        text = (ASSETS / "licences" / self.file).read_text(encoding="utf-8")
        lines = ["" if set(line) <= set("=-") else line for line in text.splitlines()]
        return tuple(" ".join(part.split()) for part in "\n".join(lines).split("\n\n") if part.strip())


@cache
def licences() -> tuple[Licence, ...]:
    """Return all of them in the order of the page.

    >>> licences()[0].paragraphs()[0]
    'MIT License'
    """
    with (ASSETS / "licences.toml").open("rb") as file:
        return tuple(Licence(**row) for row in tomllib.load(file)["row"])
