"""A board as plain data, as it is kept and sent: written, read back, brought up from older versions."""

import json
from collections.abc import Callable
from dataclasses import asdict
from typing import Any, TypeAlias

from logic.board import PARTS, Board
from logic.board_joints import BoardJoint
from logic.errors import UNREADABLE, InputError, NewerVersion
from logic.fields import Field, Value, board_fields, joint_fields, value_from

VERSION = 1


def to_dict(board: Board) -> dict[str, Any]:
    """Return the board as plain data, with its version; values that are not set are left out."""
    body: dict[str, Any] = {"version": VERSION, "id": board.id, "name": board.name, "example": board.example}
    for part in PARTS:
        group = part.__name__.lower()
        values = {name: value for name, value in asdict(getattr(board, group)).items() if value is not None}
        body[group] = {name: _without_blanks(value) for name, value in values.items()}
    if board.joints:
        body["joints"] = {
            joint.key: {name: _without_blanks(asdict(value)) for name, value in joint.values()}
            for joint in board.joints
        }
    for (*path, name), text in board.kept:
        place = body
        for step in path:
            place = place.setdefault(step, {})
        # What was set since stands before what could not be read.
        place[name] = place.get(name) or json.loads(text)
    return body


def _without_blanks(value: dict[str, Any]) -> dict[str, Any]:
    return {item: content for item, content in value.items() if content != ""}


UPGRADES: dict[int, Callable[[dict[str, Any]], dict[str, Any]]] = {}
"""From each older version to the next; applied when a board is read."""


def from_dict(body: dict[str, Any]) -> Board:
    """Return the board of plain data, upgraded from older versions.

    A field that this version does not know, or a value that it cannot use, is not set but `kept`, and saved again
    as it was. Raises InputError for a newer version, and for what is no board.
    """
    version = body.get("version", VERSION)
    if not (isinstance(version, int) and all(isinstance(body.get(key), str) for key in ("id", "name"))):
        raise InputError("board", sorted(body), "no board")
    if version < 1:
        raise InputError("board", version, "no board")
    if version > VERSION:
        raise NewerVersion("version", version, "newer version", high=VERSION)
    for step in range(version, VERSION):
        body = UPGRADES[step](body)
    groups = {part.__name__.lower(): part for part in PARTS}
    kept: Kept = {(key,): said for key, said in body.items() if key not in {*HEAD, *groups, "joints"}}
    if not isinstance(body.get("example", False), bool):
        kept["example",] = body["example"]
    parts: dict[str, Any] = {}
    for group, part in groups.items():
        read, unread = _read_values((group,), body.get(group, {}), board_fields())
        parts[group] = part(**read)
        kept |= unread
    joints = body.get("joints", {})
    made = []
    for key, values in joints.items() if isinstance(joints, dict) else ():
        read, unread = _read_values(("joints", key), values, joint_fields())
        made.append(BoardJoint(key, **read))
        kept |= unread
    if not isinstance(joints, dict):
        kept["joints",] = joints
    return Board(
        body["id"],
        body["name"],
        body.get("example") is True,
        **parts,
        joints=tuple(made),
        kept=tuple((place, json.dumps(said)) for place, said in kept.items()),
    )


HEAD = ("version", "id", "name", "example")


Kept: TypeAlias = dict[tuple[str, ...], Any]


def _read_values(
    place: tuple[str, ...],
    values: Any,  # noqa: ANN401  (whatever was saved)
    known: dict[str, Field],
) -> tuple[dict[str, Value], Kept]:
    """Return the values of a group by name, then what of it is not known or cannot be used."""
    if not isinstance(values, dict):
        return {}, {place: values}
    read: dict[str, Value] = {}
    kept: Kept = {}
    for name, said in values.items():
        try:
            value = value_from(said)
            known[name if len(place) > 1 else f"{place[0]}.{name}"].check(value.si)
            read[name] = value
        except UNREADABLE:
            kept[*place, name] = said
    return read, kept
