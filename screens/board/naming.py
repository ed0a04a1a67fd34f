"""Names of boards: which can be given."""

from logic.board import Board
from logic.errors import InputError
from screens.world import World


def check_name(world: World, name: str, of: Board | None = None) -> None:
    """Raise InputError for a name that cannot be shown, or that another board than `of` has."""
    Board("new", name)
    others = {board.name.casefold() for board in world.store.boards() if of is None or board.id != of.id}
    if name.strip().casefold() in others:
        raise InputError("name", name, "name taken")


def free_name(world: World, name: str) -> str:
    """Return a name, numbered where it is taken."""
    taken = {board.name.casefold() for board in world.store.boards()}
    numbered = (name if number == 1 else f"{name[:36]} {number}" for number in range(1, len(taken) + 2))
    return next(one for one in numbered if one.casefold() not in taken)


def typed_name(world: World) -> str:
    """Return the key under which the name that is asked for is typed."""
    return f"name/{world.args['purpose']}"
