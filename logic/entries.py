"""What is typed for one field, read: its value, what the same text says of other fields, and what else it could mean.

Text that cannot be used is refused whole, with the reason. Nothing is stripped and nothing is altered.
"""

from logic.board import Board
from logic.errors import InputError, UnknownUnit
from logic.fields import Field, Value, field_of
from logic.frozen import frozen
from logic.prints import (
    belt_print,
    cells_of_volts,
    meant_in_millimetres,
    motor_print,
    pack_print,
    teeth_of,
    with_capacity,
)
from logic.units import read

BELT = ("drive.belt_teeth", "drive.belt_width")
"""Fields in which a belt's whole print may be typed."""

PACK = ("pack.series", "pack.parallel")
"""Fields in which a pack's print may be typed."""

CAPACITY = "pack.cell_capacity"

KV, CAN = "motor.kv", ("mount.can_diameter", "mount.can_length")
"""Fields in which a motor's print may be typed."""

UNKNOWN_CHEMISTRY = "NMC"
"""Taken for a pack's volts while no chemistry is entered; its cells and those of NCA have the same volts."""


@frozen
class Entered:
    """What was read. `others` are values of other fields, by key.

    `told` says why it deserves a read-back: "comma", "length", "print", "volts", or "no parallel" for amp-hours that cannot
    be shared out over cells yet; empty where it is as typed. `offer` is
    another value that may have been meant.
    """

    value: Value
    others: tuple[tuple[str, Value], ...] = ()
    told: str = ""
    offer: Value | None = None

    @property
    def values(self) -> dict[str, Value]:
        """Return the values of the other fields by key."""
        return dict(self.others)


def entered(field: Field, text: str, unit: str | None = None, board: Board | None = None) -> Entered:
    """Return what typed text says of a field. `unit` (as shown) stands where none is typed.

    A belt's print is read in the fields of the belt, a pack's print or its volts, with its amp-hours, in those of the
    pack, a motor's in its constant and its can; `board` tells the profile, the chemistry and the cells in parallel they are
    read with. Raises InputError, with the text as typed and the key of the field, for what cannot be used.

    >>> entered(field_of("drive.belt_teeth"), "280-5M-15").values["drive.profile"].si
    'HTD 5M'
    >>> entered(field_of("pack.series"), "36 V").value.si
    10.0
    """
    try:
        found = (
            _belt(field, text, board)
            or _pack(field, text, board)
            or _motor(field, text)
            or _number(field, text, unit)
        )
        field.check(found.value.si)
        for key, value in found.others:
            field_of(key).check(value.si)
    except InputError as problem:
        raise InputError(
            field.key, text, problem.reason, problem.low, problem.high, problem.quantity
        ) from problem
    return _with_offer(field, found, text, board)


def _number(field: Field, text: str, unit: str | None) -> Entered:
    typed = read(text, field.quantity, unit)
    return Entered(Value(typed.si, typed_unit=typed.unit), told="comma" if typed.read_back else "")


def _belt(field: Field, text: str, board: Board | None) -> Entered | None:
    if field.key not in BELT:
        return None
    belt = belt_print(text)
    if belt is not None:
        values = {
            "drive.profile": Value(belt.profile),
            "drive.belt_teeth": Value(float(belt.teeth), typed_unit="teeth"),
            "drive.belt_width": Value(belt.width, typed_unit="mm"),
        }
        return Entered(values.pop(field.key), tuple(values.items()), "print")
    if field.key != BELT[0]:
        return None
    try:
        # A unit of length must be typed: a bare number is teeth.
        read(text, field.quantity)
    except UnknownUnit:
        length = read(text, "length").si
        return Entered(
            Value(float(teeth_of(length, _profile(field, text, board))), typed_unit="teeth"), told="length"
        )
    return None


def _profile(field: Field, text: str, board: Board | None) -> str:
    profile = board.drive.profile if board is not None else None
    if profile is None:
        raise InputError(field.key, text, "profile first")
    return str(profile.si)


def _motor(field: Field, text: str) -> Entered | None:
    printed = motor_print(text) if field.key in (KV, *CAN) else None
    if printed is None:
        return None
    sizes = zip(CAN, (printed.diameter, printed.length), strict=True)
    values = {key: Value(size, typed_unit="mm") for key, size in sizes if size is not None}
    if printed.turns is not None:
        turns = read(str(printed.turns), "speed_constant", "rpm/V")
        values[KV] = Value(turns.si, typed_unit=turns.unit)
    # Four digits alone are a can's size only where its size is asked for.
    return Entered(values.pop(field.key), tuple(values.items()), "print") if field.key in values else None


def _pack(field: Field, text: str, board: Board | None) -> Entered | None:
    if field.key not in PACK:
        return None
    label, hours = with_capacity(text)
    found = _cells(field, label, board)
    if found is None or not hours:
        return found
    values = {field.key: found.value, **found.values}
    parallel = values.get(PACK[1]) or (board.pack.parallel if board is not None else None)
    if parallel is None:
        return Entered(found.value, found.others, "no parallel")
    cell = Value(read(hours, "charge", "Ah").si / float(parallel.si), typed_unit="Ah")
    return Entered(found.value, (*found.others, (CAPACITY, cell)), found.told)


def _cells(field: Field, text: str, board: Board | None) -> Entered | None:
    printed = pack_print(text)
    if printed is not None:
        values = {
            key: Value(float(cells)) for key, cells in zip(PACK, printed, strict=True) if cells is not None
        }
        if field.key in values:
            return Entered(values.pop(field.key), tuple(values.items()), "print")
    if field.key != PACK[0]:
        return None
    chemistry = board.pack.chemistry if board is not None else None
    cells = cells_of_volts(text, UNKNOWN_CHEMISTRY if chemistry is None else str(chemistry.si))
    return None if cells is None else Entered(Value(float(cells)), told="volts")


def _with_offer(field: Field, found: Entered, text: str, board: Board | None) -> Entered:
    profile = board.drive.profile if board is not None else None
    if field.key != BELT[0] or found.told or profile is None:
        return found
    teeth = meant_in_millimetres(float(found.value.si), str(profile.si))
    if teeth is None or not text.strip().isdigit():
        return found
    return Entered(found.value, offer=Value(float(teeth), typed_unit="teeth"))
