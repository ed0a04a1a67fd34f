"""The person and the tools in the hand: settings that answers need and that belong to no board."""

from dataclasses import asdict, dataclass, fields
from typing import Any

from logic.board import Value, value_from

TEXT_SCALES = (1.0, 1.3, 1.6, 2.0)


@dataclass(frozen=True)
class Person:
    """Units, reading, tools, and what the phone may do. `scale` and `depth_tool` name rows of measuring_tools.toml.

    `key_arm` is the arm of the hex key from the screw to where the scale pulls; `day` the temperature at the bench in K.
    """

    system: str = "metric"
    mark: str = "."
    theme: str = "day"
    text: float = 1.0
    rider: Value | None = None
    scale: str = "luggage scale"
    scale_unit: str = "kg"
    depth_tool: str = "calliper"
    say: bool = False
    bench: bool = False
    vibrate: bool = True
    remind: bool = False
    key_arm: Value | None = None
    day: float = 293.15


def person_to_dict(person: Person) -> dict[str, Any]:
    """Return the settings as plain data."""
    return asdict(person)


def person_from_dict(body: dict[str, Any]) -> Person:
    """Return the settings of plain data; what is not in it keeps its default, what is not known is left out."""
    known = {item.name for item in fields(Person)}
    kept = {name: value for name, value in body.items() if name in known}
    for name in ("rider", "key_arm"):
        if kept.get(name) is not None:
            kept[name] = value_from(kept[name])
    return Person(**kept)
