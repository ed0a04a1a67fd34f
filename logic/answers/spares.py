"""Tools and spares: what this board needs at the bench and in the bag, from its own values and the tables."""

from collections.abc import Callable
from string import Formatter

from logic.answers.checks import figures
from logic.answers.parts import Parts
from logic.answers.reading import Reading, Result
from logic.board import Board, board_fields
from logic.board_joints import joint_places
from logic.errors import InputError, Missing
from logic.frozen import frozen
from logic.joints.lookup import kinds, tools
from logic.person import Person
from logic.tables import Row, rows
from logic.workings import unrecorded

BOARD_VALUES = {
    "profile": "drive.profile",
    "belt_teeth": "drive.belt_teeth",
    "belt_width": "drive.belt_width",
    "motor_teeth": "drive.motor_teeth",
}
"""Names in the texts that are board values."""

RESULTS = {"target": "target", "pull": "pull_target", "depth": "depth", "full_voltage": "full_voltage"}
"""Names in the texts that are results of other answers."""

KEYS = {
    "socket_keys": ("socket", ("M3", "M4", "M5", "M6")),
    "set_keys": ("set_screw", ("M3", "M4", "M5")),
    "nut_m5": ("nut", ("M5",)),
    "nut_m8": ("nut", ("M8",)),
    "nut_m10": ("nut", ("M10",)),
    "nut_10": ("nut", ("10-32",)),
    "nut_516": ("nut", ("5/16-24",)),
    "nut_38": ("nut", ("3/8-24",)),
}
"""Names in the texts that are tool sizes: what the tool turns, and the threads."""

SENTENCES = Formatter()

Shown = Callable[[float, str], str]
"""Writes an SI value of a quantity for the person."""


@frozen
class Need:
    """One line of the list. `detail` is written for the person; `missing` are board values it still lacks."""

    part: str
    detail: str
    kind: str
    count: int
    missing: tuple[str, ...]
    row: Row


def spares(board: Board, person: Person, shown: Shown) -> tuple[Need, ...]:
    """Return what a board needs, in the order of the table. `shown` writes the numbers."""
    words = _words(board, person, shown)
    return tuple(_need(row, board, words) for row in rows("spares"))


def joint_name(key: str) -> str:
    """Return the trade name of a joint by its key, or the key in plain words.

    >>> joint_name("mount_clamp"), joint_name("lid")
    ('Mount clamp screws', 'lid')
    """
    wanted = key.replace("_", " ")
    place = joint_places().get(key)
    if place is not None:
        wanted = place.kind
    return next((row.text("name") for row in kinds() if row.text("kind") == wanted), wanted or "joint")


def _need(row: Row, board: Board, words: dict[str, str | None]) -> Need:
    names = [name for _, name, _, _ in SENTENCES.parse(row.text("detail")) if name]
    missing = tuple(BOARD_VALUES.get(name, name) for name in names if words.get(name) is None)
    detail = row.text("detail").format(**{name: words.get(name) or "not set" for name in names})
    return Need(row.text("part"), detail, row.text("kind"), _count(row.text("each"), board), missing, row)


def _count(each: str, board: Board) -> int:
    """Return how many of a part one board has.

    >>> _count("8", Board("a", "Weir"))
    8
    """
    return len(board.sides) if each in ("belt", "motor") else int(each)


def _words(board: Board, person: Person, shown: Shown) -> dict[str, str | None]:
    found: dict[str, str | None] = {}
    for name, key in BOARD_VALUES.items():
        value, field = board.value(key), board_fields()[key]
        if value is None:
            found[name] = None
        elif field.kind == "count":
            found[name] = f"{float(value.si):.0f}"
        else:
            found[name] = (
                str(value.si) if isinstance(value.si, str) else shown(float(value.si), field.quantity)
            )
    for name, item in figures(RESULTS.values(), board, person).items():
        word = next(word for word, result in RESULTS.items() if result == name)
        found[word] = shown(item.value, item.quantity) if isinstance(item, Result) else None
    try:
        with unrecorded():
            found["belt_length"] = shown(Parts(Reading(board)).belt_length, "length")
    except (Missing, InputError):
        found["belt_length"] = None
    for name, (column, threads) in KEYS.items():
        found[name] = ", ".join(dict.fromkeys(tools(thread).text(column) for thread in threads))
    return found
