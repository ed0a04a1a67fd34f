"""What a board is described by: its fields with words, quantity and limits, and the values that stand in them."""

import tomllib
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

from logic.errors import InputError
from logic.frozen import frozen
from logic.tongue import _, said

TABLES = Path(__file__).resolve().parent.parent / "assets" / "tables"
LONGEST_NAME = 40


@frozen
class Option:
    """One answer of a choice."""

    key: str
    label: str


@frozen
class Field:
    """What a board value is: its words, its quantity and its limits in SI.

    `table` names where the options of a "named" field are found: they are looked up when they are asked for. `known` is
    how such a value is usually known: what a person who types it is taken to have done, until they say otherwise. `signs`
    are the characters beside digits that its prints are typed with.
    """

    key: str
    label: str
    kind: str
    need: int
    help: str
    quantity: str = ""
    low: float | None = None
    high: float | None = None
    stand_in: str = ""
    only_one_motor: bool = False
    options: tuple[Option, ...] = ()
    table: str = ""
    known: str = "measured"
    signs: str = ""

    @property
    def group(self) -> str:
        """Return the part of the board it belongs to."""
        return self.key.partition(".")[0]

    def option(self, key: str) -> Option:
        """Return a choice's option. Raises InputError for one it does not have."""
        for option in self.options:
            if option.key == key:
                return option
        raise InputError(self.key, key, "choice")

    def check(self, given: float | str) -> None:
        """Raise InputError unless `given` (SI, or an option's key) can stand in this field."""
        if self.kind == "choice":
            self.option(str(given))
            return
        if self.kind == "named":
            if not isinstance(given, str) or not 1 <= len(given) <= LONGEST_NAME:
                raise InputError(self.key, given, "choice")
            return
        if not isinstance(given, float):
            raise InputError(self.key, given, "not a number", self.low, self.high, self.quantity)
        if self.kind == "count" and not given.is_integer():
            raise InputError(self.key, given, "whole", self.low, self.high, self.quantity)
        if (self.low is not None and not self.low <= given) or (
            self.high is not None and not given <= self.high
        ):
            raise InputError(self.key, given, "range", self.low, self.high, self.quantity)


@frozen
class Value:
    """One value of a board: SI number or option key, and how it is known (measured, label, guess)."""

    si: float | str
    known: str = "guess"
    on: str = ""
    typed_unit: str = ""
    note: str = ""


def value_from(body: dict[str, Any]) -> Value:
    """Return a value of plain data; whole numbers become floats. Raises ValueError for what no value says of itself."""
    si = body["si"]
    if isinstance(si, bool):
        # Python would take it for the number one.
        raise ValueError(f"not a value: {body}")  # noqa: TRY004  (what else no value says is refused so)
    value = Value(**{**body, "si": si if isinstance(si, str) else float(si)})
    if value.known not in WAYS or not all(
        isinstance(text, str) for text in (value.on, value.typed_unit, value.note)
    ):
        raise ValueError(f"not a value: {body}")
    return value


WAYS = ("measured", "label", "guess", "assumed", "chosen")
"""How a value can be known."""


@cache
def page(name: str) -> dict[str, Any]:
    """Return a file of fields as written."""
    with (TABLES / f"{name}.toml").open("rb") as file:
        found: dict[str, Any] = said(name, tomllib.load(file))
    return found


def fields_of(lines: list[dict[str, Any]]) -> dict[str, Field]:
    """Return the fields of a file by their keys, in its order."""
    found = {}
    for line in lines:
        options = tuple(Option(**option) for option in line.get("options", ()))
        rest = {name: value for name, value in line.items() if name not in ("options", "from")}
        found[line["key"]] = Field(**rest, options=options, stand_in=line.get("from", ""))
    return found


@cache
def board_fields() -> dict[str, Field]:
    """Return every field of a board by its key, in the order of the file. Joints have their own: `joint_fields`."""
    return fields_of(page("board_fields")["field"])


@cache
def joint_fields() -> dict[str, Field]:
    """Return what a joint of a board is described by, by name: "thread", "engagement"..."""
    return fields_of(page("joint_fields")["field"])


@cache
def field_of(key: str) -> Field:
    """Return the field of a key: "drive.motor_teeth", or "joints.motor_face.thread" of one joint.

    Raises InputError for a key that no board has.
    """
    group, _, rest = key.partition(".")
    known = joint_fields() if group == "joints" else board_fields()
    name = rest.partition(".")[2] if group == "joints" else key
    if name not in known:
        raise InputError(key, key, "unknown field")
    return replace(known[name], key=key)


def groups() -> dict[str, str]:
    """Return the heading of each part of the board, in order."""
    return dict(page("board_fields")["groups"])


ARM = Field(
    "person.key_arm",
    _("Arm of your key or spanner"),
    "number",
    0,
    _("From the middle of the screw or nut to where the scale pulls. Pull square to the arm."),
    quantity="length",
    low=0.02,
    high=0.5,
)
"""The person's own key or spanner: a setting that is asked for like a value of the board."""
