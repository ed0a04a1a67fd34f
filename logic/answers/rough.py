"""A board of which some values are not known: usual ones stand in for them.

What nobody knows before a bench test is never asked: a usual value stands in for it, with both ends of what is usual, and a
figure becomes a band. Each stand-in moves the figure by itself; their shares are added in squares, since they have nothing to
do with each other: nine boards in ten of the usual kind lie within.
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cached_property, partial
from math import hypot
from typing import Literal, TypeVar

from logic.answers.parts import Parts
from logic.answers.reading import Item, Reading, Result, assumed
from logic.answers.run import Compute, Run
from logic.board import Board, Value, field_of
from logic.drive.motor import resistance_of_size
from logic.errors import Missing
from logic.tables import Row, matching, pick, rows
from logic.units import quantities
from logic.workings import is_recording

P = TypeVar("P")

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


class RoughReading(Reading):
    """Reads a board; what is not entered and usual comes from a table, one of them at an end of what is usual."""

    def __init__(self, board: Board, rider: Value | None, open_key: str = "", end: End = "usual") -> None:
        """Take the board, the rider, and which value is read at which end."""
        super().__init__(board, rider)
        self.open_key, self.at = open_key, end
        self._known: dict[str, float] = {}

    def with_end(self, key: str, end: End) -> "RoughReading":
        """Return the reading with one value at an end; what is the same in both is read once."""
        made = RoughReading(self.board, self.rider, key, end)
        made._known = self._known
        return made

    def end(self, key: str) -> End:
        """Return where a value is read."""
        return self.at if key == self.open_key else "usual"

    def __call__(self, key: str) -> float:
        """Return the SI value of a field. Raises Missing when it is not entered and nothing is usual."""
        end = self.end(key)
        if end != "usual" or is_recording():
            return self._read(key, end)
        if key not in self._known:
            self._known[key] = self._read(key, end)
        return self._known[key]

    def _read(self, key: str, end: End) -> float:
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


def taken_as_usual(board: Board) -> tuple[str, ...]:
    """Return the values for which something usual stands in, a constant that is only printed among them."""
    return tuple(key for key in OPEN if _is_open(board, key))


def _is_open(board: Board, key: str) -> bool:
    value = board.value(key)
    return value is None or (key == "motor.kv" and value.known != "measured")


class RoughRun(Run[P]):
    """A run over what is usual, and over the same board with each value that is taken as usual at both ends."""

    def __init__(
        self,
        board: Board,
        rider: Value | None,
        make: Callable[[RoughReading], P],
        taken: tuple[str, ...] | None = None,
    ) -> None:
        """Take the board, the rider, what makes the parts of a reading, and what is taken as usual, if not what mostly is."""
        self._reading = RoughReading(board, rider)
        self._of = make
        super().__init__(lambda: make(self._reading))
        self.taken = taken_as_usual(board) if taken is None else taken

    @cached_property
    def ends(self) -> tuple[tuple[Run[P], Run[P]], ...]:
        """The runs with each value that is taken as usual at its low and its high end."""
        return tuple((self._end(key, "low"), self._end(key, "high")) for key in self.taken)

    def _end(self, key: str, end: End) -> Run[P]:
        return Run(partial(self._of, self._reading.with_end(key, end)))

    def banded(self, name: str, quantity: str, compute: Compute[P]) -> Item:
        """Return a figure with what each value that is taken as usual leaves open."""
        item = self.figure(name, quantity, compute)
        if not isinstance(item, Result):
            return item
        usual = float(item.value)
        reach = [(usual, *_found(both, compute)) for both in self.ends]
        down = hypot(*(usual - min(found) for found in reach))
        up = hypot(*(max(found) - usual for found in reach))
        return replace(item, band=(usual - down, usual + up))


def _found(ends: tuple[Run[P], Run[P]], compute: Compute[P]) -> Iterator[float]:
    """Yield a figure at each end; an end that gives none is left out."""
    for run in ends:
        found = run.view(compute, None)
        if isinstance(found, float):
            yield float(found)
