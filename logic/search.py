"""Finding things by a few words, whatever they are: pages, joints, faults, words of the trade."""

from collections.abc import Iterable

from logic.frozen import frozen

STEM = 4
"""Letters that a word has at least where it goes on past a known one, or stands inside it: belts finds belt."""
SAID = 3
"""Letters that are looked for in the sentence about a thing; fewer stand in every one."""


@frozen
class Thing:
    """What can be found: its kind, its key in that kind, what it is called, other words for it, and what is said of it."""

    kind: str
    key: str
    title: str
    also: tuple[str, ...] = ()
    said: str = ""


def search(wanted: str, things: Iterable[Thing]) -> tuple[Thing, ...]:
    """Return the things that every word typed fits, the closest first; nothing for no words.

    A word fits the beginning of a word of the title, of another name, or of what is said; a long one also what is inside a
    word: locker finds threadlocker. The title counts most, then the names; the order given decides between equals.

    >>> things = (Thing("page", "gearing", "Gearing and speed"), Thing("word", "kv", "Motor constant", ("rpm", "speed")))
    >>> [thing.key for thing in search("speeds", things)], [thing.key for thing in search("mot con", things)]
    (['gearing', 'kv'], ['kv'])
    """
    typed = wanted.casefold().split()
    if not typed:
        return ()
    ranked = [(_rank(typed, thing), thing) for thing in things]
    fitting = [(rank, thing) for rank, thing in ranked if rank is not None]
    return tuple(thing for _rank_of, thing in sorted(fitting, key=lambda pair: pair[0]))


def _rank(typed: list[str], thing: Thing) -> tuple[int, int] | None:
    """Return how far a thing is from what was typed, the least first; None where a word fits nothing of it."""
    title = _parts(thing.title)
    names = [part for name in thing.also for part in _parts(name)]
    said = _parts(thing.said)
    total = 0
    for word in typed:
        if any(_fits(word, part) for part in title):
            total += 0 if title and _fits(word, title[0]) else 1
        elif any(_fits(word, part) for part in names):
            total += 2
        elif len(word) >= STEM and any(word in part for part in (*title, *names)):
            total += 4
        elif len(word) >= SAID and any(part.startswith(word) for part in said):
            total += 6
        else:
            return None
    return (total, len(title))


def _parts(text: str) -> list[str]:
    return [part for part in (one.strip("().,:;?!\"'") for one in text.casefold().split()) if part]


def _fits(word: str, part: str) -> bool:
    return part.startswith(word) or (len(part) >= STEM and word.startswith(part))
