"""The person and the tools in the hand: settings that answers need and that belong to no board."""

import json
from dataclasses import Field, asdict, field, fields
from math import isfinite
from typing import Any

from logic.board import Value, value_from
from logic.errors import UNREADABLE
from logic.frozen import frozen
from logic.tables import pick

TEXT_SCALES = (1.0, 1.3, 1.6, 2.0)
SYSTEMS = ("metric", "inch")
MARKS = (".", ",")
THEMES = ("day", "night", "phone", "sun")
DAY_LOW, DAY_HIGH = 233.15, 333.15
"""Temperatures of a day that anyone works in, K: -40 to 60 degrees C (common practice, no source)."""


def _chosen(default: Any, *choices: Any) -> Any:  # noqa: ANN401  (as dataclasses.field)
    return field(default=default, metadata={"choices": choices})


def _tool(default: str) -> Any:  # noqa: ANN401  (as dataclasses.field)
    return field(default=default, metadata={"table": "measuring_tools"})


@frozen
class Person:
    """Units, reading, tools, and what the phone may do. `scale` and `depth_tool` name rows of measuring_tools.toml.

    `theme` may be "phone": as the phone is. `sun` is the theme for bright light, on for a while over the usual one.
    `key_arm` is the arm of the hex key from the screw to where the scale pulls; `day` the temperature at the bench in K.
    `kept` are settings that cannot be read here, by name, as JSON.
    """

    system: str = _chosen("metric", *SYSTEMS)
    mark: str = _chosen(".", *MARKS)
    theme: str = _chosen("day", *THEMES)
    text: float = _chosen(1.0, *TEXT_SCALES)
    rider: Value | None = None
    scale: str = _tool("luggage scale")
    scale_unit: str = "kg"
    depth_tool: str = _tool("calliper")
    say: bool = False
    bench: bool = False
    vibrate: bool = True
    remind: bool = False
    sun: bool = False
    fade: bool = True
    key_arm: Value | None = None
    day: float = field(default=293.15, metadata={"low": DAY_LOW, "high": DAY_HIGH})
    kept: tuple[tuple[str, str], ...] = ()


def person_to_dict(person: Person) -> dict[str, Any]:
    """Return the settings as plain data; one that could not be read stands as it was until it is set anew."""
    said = asdict(person)
    first = asdict(Person())
    for name, text in said.pop("kept"):
        if said.get(name) == first.get(name):
            said[name] = json.loads(text)
    return said


def person_from_dict(body: dict[str, Any]) -> Person:
    """Return the settings of plain data.

    What is not in it has its default; what is not known, or cannot stand, is not used but `kept`.
    """
    known = {one.name: one for one in fields(Person) if one.name != "kept"}
    used: dict[str, Any] = {}
    kept = []
    for name, said in body.items():
        try:
            used[name] = _taken(known[name], said)
        except UNREADABLE:
            kept.append((name, json.dumps(said)))
    return Person(**used, kept=tuple(kept))


def _taken(one: Field[Any], said: Any) -> Any:  # noqa: ANN401  (whatever JSON holds)
    """Return a setting from what JSON holds. Raises ValueError, TypeError or LookupError for what cannot stand."""
    if one.type == (Value | None):
        return None if said is None else _value(said)
    if isinstance(one.default, float) and type(said) is int:
        said = float(said)
    if type(said) is not type(one.default):
        raise TypeError(f"{one.name}: {said!r} is no {type(one.default).__name__}")
    told = one.metadata
    if "choices" in told and said not in told["choices"]:
        raise ValueError(f"{one.name}: {said!r} is none of {told['choices']}")
    if "table" in told and said != one.default:
        pick(told["table"], name=said)
    if isinstance(said, float) and not (
        isfinite(said) and told.get("low", said) <= said <= told.get("high", said)
    ):
        raise ValueError(f"{one.name}: {said!r} is outside its limits")
    return said


def _value(said: Any) -> Value:  # noqa: ANN401  (whatever JSON holds)
    value = value_from(said)
    if not (isinstance(value.si, float) and 0.0 < value.si < float("inf")):
        raise ValueError(f"{value.si!r} is no positive number")
    return value
