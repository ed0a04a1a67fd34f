"""Board and its parts: the one description that everything reads."""

from dataclasses import fields, replace

from logic.board_joints import BoardJoint, joint_of, with_joint_value
from logic.errors import InputError
from logic.fields import (
    LONGEST_NAME,
    Field,
    Option,
    Value,
    board_fields,
    field_of,
    groups,
    value_from,
)
from logic.frozen import frozen

__all__ = [
    "PARTS",
    "Board",
    "BoardJoint",
    "Controller",
    "Drive",
    "Field",
    "Load",
    "Motor",
    "Mount",
    "Option",
    "Pack",
    "Value",
    "board_fields",
    "faults",
    "field_of",
    "groups",
    "value_from",
]


class _Part:
    """Checks each value of a part as it is made; rules across fields are `faults`."""

    def __post_init__(self) -> None:
        group = type(self).__name__.lower()
        known = board_fields()
        for item in fields(self):  # type: ignore[arg-type]
            value = getattr(self, item.name)
            if value is not None:
                known[f"{group}.{item.name}"].check(value.si)


@frozen
class Drive(_Part):
    """Pulleys, belt and wheel. Centre and span are the measured ones, when there are any; the mass is weighed."""

    motors: Value | None = None
    side: Value | None = None
    profile: Value | None = None
    motor_teeth: Value | None = None
    wheel_teeth: Value | None = None
    belt_teeth: Value | None = None
    belt_width: Value | None = None
    belt_mass: Value | None = None
    centre: Value | None = None
    span: Value | None = None
    service: Value | None = None
    wheel_diameter: Value | None = None
    wheel_diameter_new: Value | None = None


@frozen
class Motor(_Part):
    """One motor. Its resistance is line to line at 20 degrees C."""

    kv: Value | None = None
    resistance: Value | None = None
    no_load_current: Value | None = None
    pole_pairs: Value | None = None
    radial_load: Value | None = None


@frozen
class Controller(_Part):
    """Limits: motor and brake current per motor, battery and regen current for the whole board."""

    current_meaning: Value | None = None
    motor_current: Value | None = None
    brake_current: Value | None = None
    battery_current: Value | None = None
    regen_current: Value | None = None
    duty: Value | None = None
    erpm_limit: Value | None = None
    capacitance: Value | None = None
    voltage_limit: Value | None = None


@frozen
class Pack(_Part):
    """Cells per pack, packs joined in parallel, and what stands between them and the controller."""

    packs: Value | None = None
    series: Value | None = None
    parallel: Value | None = None
    chemistry: Value | None = None
    cell_capacity: Value | None = None
    cell_resistance: Value | None = None
    cell_discharge_current: Value | None = None
    cell_charge_current: Value | None = None
    marked_energy: Value | None = None
    tested: Value | None = None
    marked: Value | None = None
    cell_brake_current: Value | None = None
    cell_mass: Value | None = None
    window: Value | None = None
    charger_voltage: Value | None = None
    charger_current: Value | None = None
    bms_discharge_current: Value | None = None
    bms_charge_current: Value | None = None
    fuse: Value | None = None
    connector_current: Value | None = None
    lead_area: Value | None = None
    lead_length: Value | None = None
    lead_insulation: Value | None = None


@frozen
class Load(_Part):
    """What the motors move and against what."""

    board_mass: Value | None = None
    rolling: Value | None = None
    drag_area: Value | None = None
    efficiency: Value | None = None


@frozen
class Mount(_Part):
    """How the motors sit: the travel of the mount, the cans, the hanger and the deck above.

    The angle is above the horizontal through the axle, below zero hangs lower.
    """

    flanged: Value | None = None
    adjust: Value | None = None
    centre_least: Value | None = None
    centre_most: Value | None = None
    can_diameter: Value | None = None
    can_length: Value | None = None
    hanger_length: Value | None = None
    hanger_width: Value | None = None
    inset: Value | None = None
    plate: Value | None = None
    angle: Value | None = None
    deck_height: Value | None = None


PARTS = (Drive, Motor, Controller, Pack, Load, Mount)


@frozen
class Board:
    """A board: a name and its parts. Values that are not set are None, never zero."""

    id: str
    name: str
    example: bool = False
    drive: Drive = Drive()
    motor: Motor = Motor()
    controller: Controller = Controller()
    pack: Pack = Pack()
    load: Load = Load()
    mount: Mount = Mount()
    joints: tuple[BoardJoint, ...] = ()
    kept: tuple[tuple[tuple[str, ...], str], ...] = ()
    """What was saved and cannot be read here, a later version's field above all: its place and its JSON."""

    def __post_init__(self) -> None:
        """Refuse a name that cannot be shown."""
        if not 1 <= len(self.name.strip()) <= LONGEST_NAME:
            raise InputError("name", self.name, "name length", 1, LONGEST_NAME)

    def value(self, key: str) -> Value | None:
        """Return the value of a field such as "drive.motor_teeth", None when it is not set."""
        group, _, name = key.partition(".")
        if group == "joints":
            joint, _, name = name.partition(".")
            return self.joint(joint).value(name)
        found: Value | None = getattr(getattr(self, group), name)
        return found

    def joint(self, key: str) -> BoardJoint:
        """Return one joint; an empty one when nothing of it is set."""
        return joint_of(self.joints, key)

    def with_value(self, key: str, value: Value | None) -> "Board":
        """Return a board with one value set, or taken out by None. Raises InputError outside its limits."""
        group, _, name = key.partition(".")
        if group == "joints":
            joint, _, name = name.partition(".")
            return replace(self, joints=with_joint_value(self.joints, joint, name, value))
        return replace(self, **{group: replace(getattr(self, group), **{name: value})})

    @property
    def sides(self) -> tuple[str, ...]:
        """Return the sides that carry a belt, "left" first."""
        if self.drive.motors is not None and self.drive.motors.si == "2":
            return ("left", "right")
        side = self.drive.side
        return (str(side.si),) if side is not None else ("left",)

    def applies(self, field: Field) -> bool:
        """Tell whether a field has a meaning on this board: the driven side is asked for one motor only."""
        motors = self.drive.motors
        return not field.only_one_motor or (motors is not None and motors.si == "1")

    def missing(self) -> tuple[Field, ...]:
        """Return the fields still to be entered, the one that unlocks most first."""
        gaps = [field for field in board_fields().values() if field.need and self.value(field.key) is None]
        return tuple(sorted((field for field in gaps if self.applies(field)), key=lambda field: field.need))

    def filled(self) -> tuple[int, int]:
        """Return how many of the asked values are set, and how many are asked in all."""
        asked = [field for field in board_fields().values() if field.need and self.applies(field)]
        return sum(self.value(field.key) is not None for field in asked), len(asked)


def faults(board: Board) -> tuple[InputError, ...]:
    """Return what does not fit together across fields; single fields are checked when they are set."""
    found = []
    worn, new = board.drive.wheel_diameter, board.drive.wheel_diameter_new
    if worn is not None and new is not None and float(worn.si) > float(new.si):
        found.append(
            InputError(
                "drive.wheel_diameter", worn.si, "worn above new", high=float(new.si), quantity="length"
            )
        )
    motor, wheel = board.drive.motor_teeth, board.drive.wheel_teeth
    if motor is not None and wheel is not None and float(motor.si) > float(wheel.si):
        found.append(
            InputError(
                "drive.motor_teeth", motor.si, "motor above wheel", high=float(wheel.si), quantity="teeth"
            )
        )
    return tuple(found)
