"""The best top speed that the values so far allow: without load, then with weight, then with limits, then as it is.

What nobody knows before a bench test is never asked: a usual value stands in for it, with both ends of what is usual, and the
speed becomes a band. Each stand-in moves the speed by itself; their shares are added in squares, since they have nothing to
do with each other: nine boards in ten of the usual kind lie within.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property, partial
from math import hypot
from typing import Generic, Literal, TypeVar

from logic.answers.gearing import top_loaded, top_speed, top_unloaded
from logic.answers.parts import Parts
from logic.answers.reading import RIDER, Item, Open, Reading, Result, assumed
from logic.answers.run import Compute, Run, answer
from logic.board import Board, Value, field_of
from logic.drive.motor import resistance_of_size
from logic.errors import Missing
from logic.tables import Row, matching, pick, rows
from logic.units import quantities

FIRST = ("pack.series", "motor.kv", "drive.motor_teeth", "drive.wheel_teeth", "drive.wheel_diameter")
"""Values that give a first speed, those one reads off the board first."""
WEIGHT = ("load.board_mass", RIDER.key)
"""Values that put the road under it."""
LIMITS = ("controller.battery_current", "pack.parallel")
"""Values that say what controller and pack give."""

P = TypeVar("P")

Level = Literal["nothing", "without load", "with weight", "with limits"]
End = Literal["low", "usual", "high"]

OPEN = (
    "motor.kv",
    "motor.resistance",
    "motor.no_load_current",
    "pack.cell_resistance",
    "pack.parallel",
    "drive.motors",
    "load.rolling",
    "load.drag_area",
)
"""Values whose uncertainty makes the band, while they are not entered, or a constant only printed."""

POWER_CELLS = 15.0
"""Amps of one cell from which it is one for power."""


@dataclass(frozen=True)
class FirstSpeed:
    """The best speed so far, how far the values go, and which of them are taken as usual.

    `item` is the speed without load, then the top speed with its band; before that it names the values that are missing.
    `road` is what is left of the speed without load on the road, by the shares in `share`.
    """

    level: Level
    item: Item
    road: Item
    assumed: tuple[str, ...] = ()

    @property
    def share(self) -> tuple[float, float]:
        """Return the least and the most that is left on the road, as shares."""
        row = pick("spreads", name="top speed on the road")
        return float(row.cells["low"]), float(row.cells["high"])


class RoughReading(Reading):
    """Reads a board; what is not entered and usual comes from a table, one of them at an end of what is usual."""

    def __init__(self, board: Board, rider: Value | None, open_key: str = "", end: End = "usual") -> None:
        """Take the board, the rider, and which value is read at which end."""
        super().__init__(board, rider)
        self.open_key, self.at = open_key, end

    def end(self, key: str) -> End:
        """Return where a value is read."""
        return self.at if key == self.open_key else "usual"

    def __call__(self, key: str) -> float:
        """Return the SI value of a field. Raises Missing when it is not entered and nothing is usual."""
        end = self.end(key)
        if key == "motor.kv" and end != "usual":
            share = pick("spreads", name="printed speed constant").number("share")
            return super().__call__(key) * (1.0 + (share if end == "high" else -share))
        if key in SPREAD and end != "usual":
            return self._usual(key, pick("range_spread", end=end), SPREAD[key])
        try:
            return super().__call__(key)
        except Missing:
            if key == "pack.cell_resistance":
                return self._usual(key, pick("cell_kinds", kind=self._cells), "resistance" + SUFFIX[end])
            return self._usual(key, _row_of(key), end)

    def choice(self, key: str, otherwise: str | None = None) -> str:
        """Return the option of a choice; the chemistry is the usual one until it is entered."""
        return super().choice(key, "NMC" if key == "pack.chemistry" else otherwise)

    def count(self, key: str, otherwise: str | None = None) -> float:
        """Return a choice among numbers as a number."""
        if self.board.value(key) is None:
            return self._usual(key, _row_of(key), self.end(key))
        return super().count(key, otherwise)

    def _usual(self, key: str, row: Row, column: str) -> float:
        field = field_of(key)
        return assumed(
            field.label,
            row,
            column,
            quantities()[field.quantity].si if field.quantity else "1",
            field.quantity,
        )

    @property
    def _cells(self) -> str:
        limit = self.board.pack.cell_discharge_current
        if limit is None:
            return "not known"
        return "power" if float(limit.si) >= POWER_CELLS else "energy"


SPREAD = {"load.rolling": "rolling", "load.drag_area": "drag_area"}
"""Column of each in the table of both ends."""
SUFFIX: dict[End, str] = {"low": "_low", "usual": "", "high": "_high"}
"""What a column of an end is called after."""


def _row_of(key: str) -> Row:
    """Return the row of a value. Raises Missing when none is usual."""
    for row in matching("usual_values", field=key):
        return row
    raise Missing(key)


class RoughParts(Parts):
    """The parts of a board with what is usual where nothing is entered."""

    read: RoughReading

    @cached_property
    def _motor(self) -> Row:
        """The usual motor of the can's size, of any while it is not known."""
        can = self.read.board.mount.can_diameter
        if can is None:
            return pick("motor_usual", size="not known")
        return next(row for row in rows("motor_usual") if float(can.si) <= float(row.cells["diameter_most"]))

    @cached_property
    def winding_resistance(self) -> float:
        """Winding of one motor, by its size until it is entered."""
        if self.read.board.motor.resistance is not None:
            return super().winding_resistance
        column = "heat" + SUFFIX[self.read.end("motor.resistance")]
        name = f"Winding heat at 1 N m, {self._motor.text('size')}"
        heat = assumed(name, self._motor, column, "W/(N*m)**2")
        return resistance_of_size(heat=heat, torque_constant=self.torque_constant)

    @cached_property
    def no_load_current(self) -> float:
        """Current of a motor that turns free, by its size until it is entered."""
        if self.read.board.motor.no_load_current is not None:
            return super().no_load_current
        column = "drag" + SUFFIX[self.read.end("motor.no_load_current")]
        drag = assumed(
            f"Drag of a free motor, {self._motor.text('size')}", self._motor, column, "N*m", "torque"
        )
        return drag / self.torque_constant


@answer()
def first_speed(board: Board, rider: Value | None) -> FirstSpeed:
    """Return the best top speed that the values so far allow, in m/s."""
    run = Run(lambda: RoughParts(RoughReading(board, rider)))
    unloaded = run.figure("top_nominal", "speed", partial(top_unloaded, "nominal"))
    road = run.figure("on_road", "speed", _on_the_road)
    lacks = tuple(key for key in FIRST if board.value(key) is None)
    if lacks:
        return FirstSpeed("nothing", Open("top_nominal", missing=lacks), road)
    if rider is None or board.load.board_mass is None or isinstance(unloaded, Open):
        return FirstSpeed("without load", unloaded, road)
    item = run.figure("top_loaded", "speed", top_loaded)
    taken = taken_as_usual(board)
    limited = all(board.value(key) is not None for key in LIMITS)
    ends = Ends(lambda key, end: RoughParts(RoughReading(board, rider, key, end)), top_loaded)
    return FirstSpeed("with limits" if limited else "with weight", with_band(item, taken, ends), road, taken)


@answer()
def road_speed(board: Board, rider: Value | None) -> Item:
    """Return the top speed on the road alone: the full answer, else the best that the values so far allow."""
    full = top_speed(board, rider)
    if isinstance(full, Result) or not full.missing:
        return full
    first = first_speed(board, rider)
    return first.road if first.level == "without load" else first.item


def _on_the_road(parts: Parts) -> tuple[float, float]:
    row, speed = pick("spreads", name="top speed on the road"), top_unloaded("nominal", parts)
    return row.number("low") * speed, row.number("high") * speed


def taken_as_usual(board: Board) -> tuple[str, ...]:
    """Return the values for which something usual stands in, a constant that is only printed among them."""
    return tuple(key for key in OPEN if _is_open(board, key))


def _is_open(board: Board, key: str) -> bool:
    value = board.value(key)
    return value is None or (key == "motor.kv" and value.known != "measured")


@dataclass(frozen=True)
class Ends(Generic[P]):
    """How a figure comes out with one value at an end of what is usual."""

    make: Callable[[str, End], P]
    compute: Compute[P]

    def of(self, key: str) -> Iterator[float]:
        """Yield the figure with a value at each end; an end that gives none is left out."""
        ends: tuple[End, ...] = ("low", "high")
        for end in ends:
            found = Run(partial(self.make, key, end)).view(self.compute, None)
            if isinstance(found, float):
                yield float(found)


def with_band(item: Item, taken: tuple[str, ...], ends: Ends[P]) -> Item:
    """Return a figure with what each value that is taken as usual leaves open."""
    if not isinstance(item, Result):
        return item
    usual = float(item.value)
    reach = [(usual, *ends.of(key)) for key in taken]
    down = hypot(*(usual - min(found) for found in reach))
    up = hypot(*(max(found) - usual for found in reach))
    return replace(item, band=(usual - down, usual + up))
