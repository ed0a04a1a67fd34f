"""The example boards, for who wants to look before a board of one's own is entered."""

from dataclasses import replace

from logic.board import Value, to_dict
from logic.exchange import demo_boards
from logic.person import person_to_dict
from screens.acts.boards import Choose, Examples
from screens.update import does, update
from screens.world import World

RIDER = Value(80.0, "guess", typed_unit="kg", note="example")
"""Rider of the example boards, until the person gives a mass of their own."""


@does(Examples)
def examples(world: World, _act: Examples) -> World:
    """Save the example boards and put the first in use."""
    boards = demo_boards()
    for board in boards:
        world.store.save_board(board.id, board.name, to_dict(board))
    if world.person.rider is None:
        world.store.put("person", person_to_dict(replace(world.person, rider=RIDER)))
    return update(world, Choose(boards[0].id))
