"""The fault guide: from what one sees or feels to likely causes, the check for each and what helps."""

import tomllib
from functools import cache

from logic.checks.lists import FOLDER, glued
from logic.frozen import frozen
from logic.tongue import said


@frozen
class Cause:
    """One likely cause: `effort` from 1 (look) to 4 (take apart); `danger` ends the ride until cleared."""

    name: str
    check: str
    remedy: str
    effort: int
    danger: bool
    opens: str
    source: str
    where: str
    standing: str


@frozen
class GuideFault:
    """What is seen or felt, with its hazard if there is one, and the causes in order."""

    key: str
    title: str
    words: tuple[str, ...]
    word: str
    hazard: str
    causes: tuple[Cause, ...]


@cache
def faults() -> tuple[GuideFault, ...]:
    """Return every fault; its causes the easiest first, of equal ones the dangerous first.

    >>> faults()[0].causes[0].effort
    1
    """
    with (FOLDER / "faults.toml").open("rb") as file:
        page = glued(said("checklists", tomllib.load(file)))
    common = {name: page[name] for name in ("source", "where", "standing")}
    found = []
    for line in page["fault"]:
        causes = [Cause(**{**common, **cause}) for cause in line["cause"]]
        causes.sort(key=lambda cause: (cause.effort, not cause.danger))
        rest = {name: value for name, value in line.items() if name not in ("cause", "words")}
        found.append(GuideFault(**rest, words=tuple(line["words"]), causes=tuple(causes)))
    return tuple(found)


def fault(key: str) -> GuideFault:
    """Return a fault by its key."""
    return next(one for one in faults() if one.key == key)


def find_faults(text: str) -> tuple[GuideFault, ...]:
    """Return the faults that a few words may mean, the best match first; all of them for no words.

    >>> find_faults("belt noise")[0].key
    'skips'
    """
    wanted = text.casefold().split()
    if not wanted:
        return faults()
    scored = [
        (sum(any(word in known for known in (*one.words, one.title.casefold())) for word in wanted), one)
        for one in faults()
    ]
    best = sorted((pair for pair in scored if pair[0]), key=lambda pair: -pair[0])
    return tuple(one for _, one in best)
