"""Words of the trade: all of them or those of a page, and one of them: what it is and how one finds it on the part."""

from collections.abc import Iterator
from itertools import groupby

from logic.glossary import Word, words
from logic.search import Thing, search
from screens.acts import Act, Go, Turn
from screens.blocks import Block, Field, Line, Picture, Section, Words
from screens.page import Page
from screens.pictures.asked import picture_of
from screens.tongue import _, texts
from screens.trying import board_line
from screens.words import founded_on
from screens.world import World

SEARCH = "glossary"
"""Key under which the words of the search are typed."""


def things() -> Iterator[Thing]:
    """Yield every word as a search finds it."""
    for word in words().values():
        yield Thing("word", word.key, word.name, word.also, word.what)


def line(key: str) -> Line:
    """Return the row of a word."""
    word = words()[key]
    return Line(f"word {key}", word.name, word.what, act=meaning(key))


def meaning(key: str) -> Act:
    """Return the act that opens a word."""
    return Go("glossary", {"word": key})


def glossary_page(world: World) -> Page:
    """Return one `word`, the words of `keys`, or all."""
    word = words().get(world.args.get("word", ""))
    if word is not None:
        return Page(
            title=word.name, blocks=tuple(_one(world, word)), aside=frozenset({word.picture, "picture"})
        )
    of = [key for key in world.args.get("keys", ()) if key in words()]
    return Page(title=_("Words"), blocks=tuple(_some(of) if of else _all(world.typed.get(SEARCH, ""))))


def _one(world: World, word: Word) -> Iterator[Block]:
    yield Words("what", word.what, role="lead")
    yield from _picture(world, word)
    yield Section("find", _("How you find it"))
    yield Words("found", word.find)
    if word.also:
        yield Words("also", _("Also: {names}.").format(names=", ".join(word.also)), tone="second")
    if word.fields:
        yield Section("here", _("On this board"))
        yield from (board_line(world, key) for key in word.fields)
    if word.see:
        yield Section("see", _("Beside it"))
        yield from (line(key) for key in word.see)
    yield Words("source", f"{founded_on(word.row)}.", role="small", tone="second")


def _picture(world: World, word: Word) -> Iterator[Block]:
    """Yield the drawing of a word, else where its value is read or measured."""
    from screens.bench.explained import explained  # noqa: PLC0415  (the list of words wants no drawing)

    yield from explained(world, world.board, word.picture)
    drawn = next((found for found in map(picture_of, word.fields) if found is not None), None)
    if drawn is not None and not word.picture:
        yield Picture("picture", drawn, _("Where it is found."))


def _some(keys: list[str]) -> Iterator[Block]:
    yield Section("here", _("On that page"))
    yield from (line(key) for key in keys)
    yield Line("all", _("All words"), icon="search", act=Turn({"keys": None}))


def _all(wanted: str) -> Iterator[Block]:
    yield Field(SEARCH, _("Word, or what is printed"), wanted, hint=_("Kv, 10S2P, slack"))
    if not wanted.strip():
        for subject, of in groupby(words().values(), lambda word: word.subject):
            yield Section(subject, texts("glossary")["subjects"][subject])
            yield from (line(word.key) for word in of)
        return
    found = search(wanted, things())
    if not found:
        yield Words("none", _("No word fits. Try the beginning of another one."))
    yield from (line(one.key) for one in found)
