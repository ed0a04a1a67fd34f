"""The joints of a board: which screws hold it together. Values that are not set are None."""

from collections.abc import Iterator
from dataclasses import fields, replace
from functools import cache
from typing import Any

from logic.errors import InputError
from logic.fields import Value, joint_fields, page
from logic.frozen import frozen


@frozen
class JointPlace:
    """A joint that a board has: its key, its row of joint_kinds.toml, and the fields that are asked of it."""

    key: str
    kind: str
    asks: tuple[str, ...]


@cache
def joint_places() -> dict[str, JointPlace]:
    """Return the joints of a board by key, in the order of building."""
    return {
        line["key"]: JointPlace(line["key"], line["kind"], tuple(line["asks"]))
        for line in page("joint_fields")["joint"]
    }


@frozen
class BoardJoint:
    """One joint as it is on this board. `key` is one of `joint_places`, or another one for a look-up."""

    key: str
    count: Value | None = None
    thread: Value | None = None
    strength: Value | None = None
    condition: Value | None = None
    into: Value | None = None
    engagement: Value | None = None
    head: Value | None = None
    member: Value | None = None
    washer: Value | None = None
    running: Value | None = None
    stack: Value | None = None
    carries: Value | None = None
    shaft: Value | None = None
    screws: Value | None = None
    key_width: Value | None = None
    key_height: Value | None = None
    key_length: Value | None = None

    def __post_init__(self) -> None:
        """Check each value by its field."""
        known = joint_fields()
        for name, value in self.values():
            known[name].check(value.si)

    def values(self) -> Iterator[tuple[str, Value]]:
        """Yield the values that are set, by name."""
        for item in fields(self):
            value = getattr(self, item.name)
            if item.name != "key" and value is not None:
                yield item.name, value

    def value(self, name: str) -> Value | None:
        """Return one value, None when it is not set."""
        found: Value | None = getattr(self, name)
        return found

    @property
    def known(self) -> str:
        """Return how the least sure of its values is known, "" when none is set."""
        found = {value.known for _, value in self.values()}
        return next((known for known in ("guess", "label", "measured") if known in found), "")


def joint_of(joints: tuple[BoardJoint, ...], key: str) -> BoardJoint:
    """Return the joint of a key; an empty one when the board says nothing of it."""
    return next((joint for joint in joints if joint.key == key), BoardJoint(key))


def with_joint_value(
    joints: tuple[BoardJoint, ...], key: str, name: str, value: Value | None
) -> tuple[BoardJoint, ...]:
    """Return the joints with one value of one of them set, or taken out by None.

    >>> with_joint_value((), "motor_face", "thread", Value("M4"))[0].thread.si
    'M4'
    """
    if name not in joint_fields():
        raise InputError(f"joints.{key}.{name}", name, "unknown field")
    setting: dict[str, Any] = {name: value}
    changed = replace(joint_of(joints, key), **setting)
    others = [joint for joint in joints if joint.key != key]
    kept = [*others, changed] if any(True for _ in changed.values()) else others
    order = list(joint_places())
    return tuple(sorted(kept, key=lambda joint: order.index(joint.key) if joint.key in order else len(order)))
