"""What comes from outside, spoilt at random: it is read, or refused with an error of our own. Nothing else may happen.

Each case follows from its number alone, so that it can be played again.
"""

import json
import math
import tempfile
from collections import Counter
from collections.abc import Callable
from copy import deepcopy
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

from logic.belt.recording import from_wav
from logic.board_saved import from_dict, to_dict
from logic.errors import InputError
from logic.exchange import demo_boards
from logic.exchange.board_file import board_text, read_board_file
from logic.exchange.errors import NotTaken
from logic.log import KINDS, Ride, Unread, read, text_of
from logic.store import NewerFile, NotAStore
from logic.store.errors import CannotStore
from logic.store.opening import NAME, look_next_time, open_store
from logic.units import quantities
from logic.units import read as read_number

AT = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
PIECES = (
    *"0123456789.,+-–−/×x '\u00a0\u202f½¼e\n\t",
    *(
        "mm",
        "in",
        "N",
        "kg",
        "lbf",
        "km/h",
        "Mohm",
        "mohm",
        "%",
        "°C",
        "1e999",
        "nan",
        "inf",
        "٣",
        "1/0",
        "9" * 40,
    ),
)
STRANGE: tuple[Any, ...] = (
    None,
    True,
    0,
    -1,
    10**30,
    1e308,
    "",
    "x",
    "\ud800",
    [],
    {},
    [[]],
    {"si": None},
    2.5,
)


def number(dice: Random) -> str:
    """Read a text of a few pieces as a number of some quantity."""
    text = "".join(dice.choice(PIECES) for _ in range(dice.randint(0, 7)))
    try:
        typed = read_number(text, dice.choice(tuple(quantities())))
    except InputError:
        return "refused"
    assert math.isfinite(typed.si), text
    return "read"


def board(dice: Random) -> str:
    """Read a board with a few of its parts put in place by strange ones."""
    body = json.loads(json.dumps(to_dict(dice.choice(demo_boards()))))
    for _ in range(dice.randint(1, 4)):
        _spoil_tree(body, dice)
    try:
        found = from_dict(body)
    except InputError:
        return "refused"
    written = to_dict(found)
    assert to_dict(from_dict(written)) == written
    return "read"


def board_file(dice: Random) -> str:
    """Read the file of a board with a few bytes of it spoilt."""
    try:
        read_board_file(_spoil_bytes(_whole_file(), dice))
    except (NotTaken, InputError):
        return "refused"
    return "read"


def log_body(dice: Random) -> str:
    """Read the body of an entry of the log with parts or letters of it spoilt."""
    kind = dice.choice((*KINDS, "unknown"))
    body: Any = {
        "distance": 4.0,
        "note": "x",
        "verdict": "all right",
        "belt": "left",
        "faults": [["a"]],
        "answers": {},
    }
    for _ in range(dice.randint(0, 4)):
        body[dice.choice(tuple(body))] = dice.choice(STRANGE)
    text = json.dumps(body)
    if dice.random() < 0.3:
        text = _spoil_bytes(text.encode(), dice).decode("utf-8", "replace")
    found = read(kind, dice.choice((0, 1, 1, 1, 2, 99)), text)
    if isinstance(found, Unread):
        return "refused"
    read(kind, 1, text_of(found))
    return "read"


def sound(dice: Random) -> str:
    """Read a WAV file with bytes of its head or its end spoilt."""
    head = b"RIFF\x64\x1f\0\0WAVEfmt \x10\0\0\0\1\0\1\0\x44\xac\0\0\x88\x58\1\0\2\0\x10\0data\x40\x1f\0\0"
    try:
        from_wav(_spoil_bytes(head, dice) + bytes(dice.choice((0, 1, 8000))))
    except InputError:
        return "refused"
    return "read"


def store_file(dice: Random) -> str:
    """Open the file of the data with bytes or a part of it spoilt."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / NAME).write_bytes(_spoil_bytes(_whole_store(), dice))
        if dice.random() < 0.5:
            look_next_time(folder)
        try:
            with open_store(folder, lambda: AT) as opened:
                opened.page(limit=-1)
        except (CannotStore, NotAStore, NewerFile):
            return "refused"
    return "read"


TARGETS: dict[str, Callable[[Random], str]] = {
    "number": number,
    "board": board,
    "board file": board_file,
    "log body": log_body,
    "sound": sound,
    "store file": store_file,
}


def fuzz(target: str, cases: range) -> Counter[str]:
    """Return how many cases were read and how many refused; what fails names its case."""
    seen: Counter[str] = Counter()
    for case in cases:
        try:
            seen[TARGETS[target](Random(f"{target} {case}"))] += 1
        except Exception as problem:
            problem.add_note(f"{target}, case {case}")
            raise
    return seen


def _spoil_bytes(whole: bytes, dice: Random) -> bytes:
    body = bytearray(whole)
    for _ in range(dice.randint(1, 6)):
        place = dice.randrange(len(body) + 1)
        what = dice.random()
        if what < 0.6:
            body[place : place + 1] = bytes(
                [dice.choice((0, 1, 34, 91, 123, 127, 128, 255, dice.randrange(256)))]
            )
        elif what < 0.8:
            del body[place : place + dice.choice((1, 7, 400))]
        else:
            body[place:place] = body[: dice.choice((1, 30, 400))]
    return bytes(body)


def _spoil_tree(tree: Any, dice: Random) -> None:
    while isinstance(tree, dict) and tree:
        key = dice.choice(tuple(tree))
        if not isinstance(tree[key], dict) or dice.random() < 0.3:
            tree[key] = deepcopy(dice.choice(STRANGE))
            return
        tree = tree[key]


@cache
def _whole_file() -> bytes:
    return board_text(demo_boards()[0], at=AT).encode()


@cache
def _whole_store() -> bytes:
    with tempfile.TemporaryDirectory() as name:
        with open_store(Path(name), lambda: AT) as opened:
            opened.save_board("b1", "Weir", {"name": "Weir"})
            for metres in range(60):
                opened.append("b1", Ride(distance=float(metres + 1), note="x" * 200))
        return (Path(name) / NAME).read_bytes()
