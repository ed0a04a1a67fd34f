"""The words of the trade: what each is, and how one finds it on the part."""

import re
from functools import cache

from logic.frozen import frozen
from logic.tables import Row, rows

SHORTEST = 4
"""Letters of a name that is looked for in running text: shorter ones stand in too many words."""


@frozen
class Word:
    """One word. `also` are its other names, `fields` the values of a board that it names, `see` the keys of words beside it."""

    key: str
    subject: str
    name: str
    also: tuple[str, ...]
    what: str
    find: str
    fields: tuple[str, ...]
    see: tuple[str, ...]
    picture: str
    row: Row


@cache
def words() -> dict[str, Word]:
    """Return every word by its key, by subject.

    >>> words()["kv"].fields
    ('motor.kv',)
    """
    return {row.text("key"): _word(row) for row in rows("glossary")}


def _word(row: Row) -> Word:
    cells = row.cells
    return Word(
        key=row.text("key"),
        subject=row.text("subject"),
        name=row.text("word"),
        also=tuple(cells["also"]),
        what=row.text("what"),
        find=row.text("find"),
        fields=tuple(cells["fields"]),
        see=tuple(cells["see"]),
        picture=str(cells.get("picture", "")),
        row=row,
    )


def word_of(field: str) -> Word | None:
    """Return the word that names a value of a board, None where there is none.

    >>> word_of("pack.series").name, word_of("load.board_mass")
    ('Cells in series', None)
    """
    return next((word for word in words().values() if field in word.fields), None)


def words_in(text: str) -> tuple[Word, ...]:
    """Return the words that stand in a text, by any of their longer names, in the order of the glossary.

    >>> [word.key for word in words_in("Top speed by gear ratio and motor constant (Kv)")]
    ['ratio', 'kv']
    """
    found = text.casefold()
    return tuple(word for word in words().values() if any(name.search(found) for name in _names(word.key)))


@cache
def _names(key: str) -> tuple[re.Pattern[str], ...]:
    word = words()[key]
    names = {word.name, re.sub(r" \(.*\)", "", word.name), *word.also}
    return tuple(
        re.compile(rf"\b{re.escape(name.casefold())}s?\b")
        for name in sorted(names)
        if len(name) >= SHORTEST and name[0].isalpha() and name[-1].isalpha()
    )
