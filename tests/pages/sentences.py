"""What is said on a page, cut into sentences, and what is wrong with one: too long, or a word that is not said any more."""

import re
from collections.abc import Iterator

from screens.page import Page
from tests.pages.plain import INSTEAD, MOST_WORDS

SAID = ("text", "detail", "title", "word", "label", "note", "value", "change", "hint")
"""What of a block is read."""
CITED = {"source", "standing"}
"""Blocks that give the title of a source: it is called as it is."""
OTHER_NAMES = "glossary"
"""The page that lists what a thing is called elsewhere."""
OTHERS = ("settings.sources", "settings.licences")
"""Pages that cite what others wrote."""


def sentences(text: str) -> list[str]:
    """Return the sentences of a text; what follows a colon or a semicolon counts by itself."""
    return re.split(r"(?<=[.!?;:])\s+|\n", text)


def too_long(text: str) -> list[str]:
    """Return the sentences with too many words. A number and its unit are one."""
    return [one for one in sentences(text) if len(re.split(r"[ \t]+", one.strip())) > MOST_WORDS]


def unsaid(text: str) -> list[str]:
    """Return the words in a text for which another one is said."""
    return [word for word in INSTEAD if re.search(rf"\b{re.escape(word)}\b", text.casefold())]


def texts(page: Page) -> Iterator[str]:
    """Yield every text of a page that is read as one."""
    for block in page.matter:
        if block.key not in CITED:
            yield from (getattr(block, name, "") for name in SAID)
            yield from (option.text for option in getattr(block, "options", ()))
    foot = page.foot
    for bar in foot.bars:
        yield bar.text
    if foot.entry is not None:
        yield from (foot.entry.label, foot.entry.sentence, foot.entry.read_back)


def faults_of(name: str, page: Page) -> Iterator[str]:
    """Yield a line for each sentence of a page that is not plain."""
    if name in OTHERS:
        return
    for text in texts(page):
        yield from (f"more than {MOST_WORDS} words: {one}" for one in too_long(text))
        if name != OTHER_NAMES:
            yield from (f"{word!r} is {INSTEAD[word]!r}: {text}" for word in unsaid(text))
