"""Reading a board for an answer, and the results an answer is made of."""

from functools import cached_property

from logic.board import Board, Field, Value, field_of
from logic.errors import InputError, Missing
from logic.frozen import frozen
from logic.tables import Row, pick, rows
from logic.tongue import _
from logic.units import quantities
from logic.workings import (
    Call,
    Entry,
    Given,
    Traced,
    choice,
    given,
    origins,
    rough,
    standing_of,
    trace,
)

RIDER = Field(
    "rider.mass",
    _("Rider"),
    "number",
    1,
    _("Rider with helmet, bag and clothes, on a bathroom scale."),
    quantity="mass",
    low=10.0,
    high=250.0,
)
"""The rider is a setting, not part of the board, and is read like a field of it."""


def stand_in(field: Field) -> Row:
    """Return the table row whose figure is assumed while a field is not set."""
    return next(row for row in rows("road") if field.stand_in in row)


def assumed(name: str, row: Row, column: str, unit: str, quantity: str = "") -> float:
    """Record a number of a table that stands in for a value, under the name of the value, and return it."""
    return given(
        Given(
            name,
            float(row.cells[column]),
            unit,
            quantity,
            known="assumed",
            standing=row.standing,
            source=row.source,
            where=row.where,
        )
    )


class Reading:
    """Reads values of a board; each read is recorded as a number put in. Raises Missing for what is not set."""

    def __init__(self, board: Board, rider: Value | None = None) -> None:
        """Read from a board, and from the rider's mass when an answer needs it."""
        self.board = board
        self.rider = rider

    def __call__(self, key: str) -> float:
        """Return the SI value of a field. Raises Missing when it is not set and nothing stands in for it."""
        field = RIDER if key == RIDER.key else field_of(key)
        value = self.rider if key == RIDER.key else self.board.value(key)
        unit = quantities()[field.quantity].si if field.quantity else "1"
        if value is None and field.stand_in:
            return assumed(field.label, stand_in(field), field.stand_in, unit, field.quantity)
        if value is None:
            raise Missing(key)
        return given(
            Given(
                field.label,
                float(value.si),
                unit,
                field.quantity,
                known=value.known,
                typed_unit=value.typed_unit,
            )
        )

    def choice(self, key: str, otherwise: str | None = None) -> str:
        """Return the option of a choice. Raises Missing when it is not set and `otherwise` is None.

        What is assumed otherwise is a row of assets/tables/assumed_choices.toml: InputError for one without.
        """
        value = self.board.value(key)
        if value is not None:
            return choice(Given(field_of(key).label, str(value.si), "", known=value.known))
        if otherwise is None:
            raise Missing(key)
        row = pick("assumed_choices", field=generic(key), option=otherwise)
        return choice(
            Given(
                field_of(key).label,
                otherwise,
                "",
                known="assumed",
                standing=row.standing,
                source=row.source,
                where=row.where,
            )
        )

    def count(self, key: str, otherwise: str | None = None) -> float:
        """Return a choice among numbers as a number. Raises Missing as `choice` does."""
        option = self.choice(key, otherwise)
        return given(Given(field_of(key).label, float(option), "1", "ratio", because=origins((option,))))


def generic(key: str) -> str:
    """Return a key without the name of its joint.

    >>> generic("joints.motor_face.thread"), generic("drive.motors")
    ('joints.thread', 'drive.motors')
    """
    parts = key.split(".")
    return f"{parts[0]}.{parts[-1]}"


@frozen
class Result:
    """One shown number: SI value, its quantity, and the working that made it. `band` is set where it is open."""

    name: str
    value: float
    quantity: str
    band: tuple[float, float] | None = None

    def __post_init__(self) -> None:
        """Refuse a number that does not say what made it: that is a fault of the program, not of an input."""
        if not isinstance(self.value, Traced):
            raise TypeError(f"{self.name}: {self.value!r} does not carry what made it")

    @cached_property
    def working(self) -> tuple[Entry, ...]:
        """Return what made the value, and the ends of its band where these say it."""
        return trace(*(self.band or ()), self.value)

    @property
    def standing(self) -> str:
        """Return the weakest standing among formulas and rows."""
        return standing_of(self.working)

    @property
    def rough(self) -> bool:
        """Tell whether a guess, an assumed default or an estimate is among what made it."""
        return rough(self.working)

    @property
    def inputs(self) -> tuple[Given, ...]:
        """Return the numbers of the board and the tables that were put in."""
        return tuple(entry for entry in self.working if isinstance(entry, Given))

    @property
    def calls(self) -> tuple[Call, ...]:
        """Return the formulas that were used, in order."""
        return tuple(entry for entry in self.working if isinstance(entry, Call))


@frozen
class Open:
    """A result that cannot be given: what is missing, or what is wrong, or a plain outcome in place of a number."""

    name: str
    missing: tuple[str, ...] = ()
    problem: InputError | None = None
    outcome: str = ""


Item = Result | Open
