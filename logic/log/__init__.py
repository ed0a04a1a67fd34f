"""The kinds of log entry, each a frozen class with its version, its upgrades and its own check.

`read` never raises: what a later version wrote, or what cannot be read, comes back as `Unread`, its text untouched in the
file. A new kind is a class in a module here and a name in `KINDS`; DEVELOPERS.md says what else it wants.
"""

import json
from typing import Any

from logic.errors import UNREADABLE
from logic.frozen import frozen
from logic.log.belts import BeltFitted, Tension
from logic.log.checks import Check, Fault
from logic.log.entry import Entry
from logic.log.joints import Tightening
from logic.log.notes import BoardChanged, Change, Note, Snooze, Work
from logic.log.rides import Ride

__all__ = [
    "KINDS",
    "BeltFitted",
    "BoardChanged",
    "Change",
    "Check",
    "Entry",
    "Fault",
    "Note",
    "Ride",
    "Snooze",
    "Tension",
    "Tightening",
    "Unread",
    "Work",
    "json_text",
    "json_value",
    "read",
    "text_of",
]

KINDS: dict[str, type[Entry]] = {
    kind.KIND: kind
    for kind in (BeltFitted, Tension, Tightening, Check, Ride, Work, Note, BoardChanged, Snooze)
}
"""The class of each kind of entry."""


@frozen(kw_only=True)
class Unread(Entry):
    """An entry that this version cannot read; `later` when a later version wrote it. `why` is for scripts."""

    later: bool = False
    why: str = ""


def read(kind: str, version: int, text: str) -> Entry:
    """Return the entry that a row of the log holds, `Unread` for one that cannot be read.

    >>> read("ride", 1, '{"distance": 4200}').distance
    4200.0
    >>> read("ride", 1, "{").later, read("ride", 2, "{}").later
    (False, True)
    """
    made = KINDS.get(kind)
    if made is None:
        return Unread(why=f"{kind!r} is not a kind of log entry")
    try:
        if version > made.VERSION:
            return Unread(later=True, why=f"a {kind} entry of version {version}")
        body = json_value(text)
        if not isinstance(body, dict):
            return Unread(why="no object")
        return made.of(made.upgraded(version, body))
    except UNREADABLE as problem:
        return Unread(why=str(problem))


def text_of(entry: Entry) -> str:
    """Return an entry as it stands in the file. Raises ValueError for a number that JSON does not have."""
    return json_text(entry.body())


def json_value(text: str | bytes) -> Any:  # noqa: ANN401  (whatever JSON holds)
    r"""Return what a JSON text of the file holds, so that it can be written again. Raises ValueError for what is no JSON.

    What no JSON should hold is read as a text: not-a-number and infinity by their names, half a letter as a question mark.

    >>> json_value('{"pull": NaN, "note": "belt\\ud800"}')
    {'pull': 'NaN', 'note': 'belt?'}
    """
    found = json.loads(text, parse_constant=str)
    if "\\ud" in str(text).casefold():
        whole = json.dumps(found, ensure_ascii=False).encode("utf-8", "replace")
        return json.loads(whole)
    return found


def json_text(value: object) -> str:
    """JSON text of `value`. Raises ValueError for not-a-number and infinity, which JSON does not have.

    >>> json_text({"belt": "left", "pull": 14.5})
    '{"belt":"left","pull":14.5}'
    """
    return json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
