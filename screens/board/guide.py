"""The guided entry: which value of the board is asked for next, and how many there are."""

from operator import attrgetter

from logic.answers.reading import RIDER
from logic.board import Board, board_fields
from logic.frozen import frozen
from screens.asked import not_known
from screens.world import World

RIDER_AFTER = 6
"""The need of the last value that a speed without load takes."""
FIRST = frozenset(
    {
        "drive.motor_teeth",
        "drive.wheel_teeth",
        "drive.wheel_diameter",
        "motor.kv",
        "pack.series",
        "pack.chemistry",
        RIDER.key,
        "drive.motors",
        "drive.side",
        "controller.motor_current",
        "controller.battery_current",
        "load.board_mass",
    }
)
"""What is asked for in the first round: what people know or can read off, and no more than a first answer takes."""


@frozen
class Guide:
    """One round of questions: what of it is answered, what was skipped in it, and what is open, in the order it is asked."""

    answered: tuple[str, ...]
    skipped: tuple[str, ...]
    open: tuple[str, ...]

    @property
    def count(self) -> int:
        """Return how many questions the round has."""
        return len(self.answered) + len(self.skipped) + len(self.open)

    @property
    def place(self) -> int:
        """Return which of them is in front, from 1."""
        return min(len(self.answered) + len(self.skipped) + 1, self.count)


def written(world: World) -> Board:
    """Return the board whose values are written: the saved one; where none is, the one that is tried."""
    return world.board if world.is_scratch else world.saved


def guide(world: World, *, rest: bool, skipped: tuple[str, ...] = ()) -> Guide:
    """Return a round: the few values that give first answers, or the rest."""
    board, unknown = written(world), not_known(world)
    asked = [key for key in _asked(board) if (key in FIRST) is not rest]

    def is_answered(key: str) -> bool:
        return key in unknown or (world.person.rider if key == RIDER.key else board.value(key)) is not None

    answered = tuple(key for key in asked if is_answered(key))
    left = [key for key in asked if key not in answered]
    return Guide(
        answered,
        tuple(key for key in left if key in skipped),
        tuple(key for key in left if key not in skipped),
    )


def missing(world: World) -> tuple[str, ...]:
    """Return what is asked for and neither known nor said to be unknown, the first round first."""
    return (*guide(world, rest=False).open, *guide(world, rest=True).open)


def _asked(board: Board) -> list[str]:
    """Return the values that are asked for, the one that unlocks most first; the rider when the speed without load is known."""
    wanted = (field for field in board_fields().values() if field.need and board.applies(field))
    fields = sorted(wanted, key=attrgetter("need"))
    keys = [field.key for field in fields]
    after = next(place for place, field in enumerate(fields) if field.need > RIDER_AFTER)
    return [*keys[:after], RIDER.key, *keys[after:]]
