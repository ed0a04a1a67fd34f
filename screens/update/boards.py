"""Acts on whole boards, and the example boards for who wants to look before one of their own is entered."""

from dataclasses import replace

from logic.board import Board, Value
from logic.board_saved import to_dict
from logic.exchange import demo_boards
from logic.person import person_to_dict
from logic.store.stand_in import STAND_IN, next_id
from screens.acts.boards import AddBoard, Bin, Choose, Examples, KeepAs, NotKnown, Rename, Unbin
from screens.acts.keeping import Save
from screens.asked import not_known, not_known_key
from screens.board.naming import check_name
from screens.tongue import _
from screens.update import does, update
from screens.update.entering import left
from screens.words import label_of
from screens.world import TakeBack, World, open_world

RIDER = Value(80.0, "guess", typed_unit="kg", note="example")
"""Rider of the example boards, until the person gives a mass of their own."""


@does(Choose)
def choose(world: World, act: Choose) -> World:
    """Put another board in use."""
    world = left(world)
    world.store.put("board", act.board)
    return in_front(world, act.board)


def in_front(world: World, board: str) -> World:
    """Return the world of another board, on the same way. What belonged to the one before can still be taken back."""
    other = open_world(world.store, world.clock, board)
    return replace(other, trail=world.trail, kept=world.kept, units=world.units, undo=world.undo)


@does(AddBoard)
def add_board(world: World, act: AddBoard) -> World:
    """Save a new board. Raises InputError for a name that is taken or cannot be shown."""
    check_name(world, act.name)
    like = act.like or Board("", act.name)
    return _saved(world, replace(like, id=next_id(), name=act.name.strip()))


def _saved(world: World, board: Board) -> World:
    world.store.save_board(board.id, board.name, to_dict(board))
    # The way back of an older step might bring back a name that is taken now.
    return replace(choose(world, Choose(board.id)), undo=None)


@does(Rename)
def rename(world: World, act: Rename) -> World:
    """Give the board in use another name. Raises InputError as `add_board`."""
    before, name = world.saved, act.name.strip()
    if name != before.name:
        check_name(world, name, before)
    after = replace(before, name=name)
    world.store.save_board(after.id, name, to_dict(after))
    said = _("Renamed to {name}").format(name=name)
    return replace(world, saved=after, undo=TakeBack(said, Save(before), before.id))


@does(KeepAs)
def keep_as(world: World, act: KeepAs) -> World:
    """Save the board that stands in with what was tried on it, in one transaction. Raises InputError as `add_board`.

    What else was typed, answered, checked and logged is of it already.
    """
    world = left(world)
    check_name(world, act.name)
    board = replace(world.board, name=act.name.strip())
    left_over = {"values": {}, "typed": dict(world.typed)} if world.typed else {}
    settings = {"board": board.id, STAND_IN: next_id()}
    world.store.keep_trial_as(board.id, board.name, to_dict(board), left_over, settings)
    return in_front(world, board.id)


@does(Bin)
def put_in_bin(world: World, _act: Bin) -> World:
    """Put the board in use into the bin."""
    gone = world.saved
    world.store.bin_board(gone.id)
    rest = world.store.boards()
    world = choose(world, Choose(rest[0].id if rest else ""))
    said = _("{name} is in the bin").format(name=gone.name)
    return replace(world, undo=TakeBack(said, Unbin(gone.id), ""))


@does(Unbin)
def take_out_of_bin(world: World, act: Unbin) -> World:
    """Take a board out of the bin."""
    world.store.restore_board(act.board)
    return choose(world, Choose(act.board))


@does(NotKnown)
def say_not_known(world: World, act: NotKnown) -> World:
    """Ask for a value no more, or again."""
    others = not_known(world) - {act.key}
    world.store.put(not_known_key(world), sorted(others if act.again else others | {act.key}))
    said = _("Not asked again: {label}").format(label=label_of(act.key))
    return replace(world, undo=TakeBack(said, NotKnown(act.key, again=not act.again), world.saved.id))


@does(Examples)
def examples(world: World, _act: Examples) -> World:
    """Save the example boards and put the first in use."""
    boards = demo_boards()
    for board in boards:
        world.store.save_board(board.id, board.name, to_dict(board))
    if world.person.rider is None:
        world.store.put("person", person_to_dict(replace(world.person, rider=RIDER)))
    return update(world, Choose(boards[0].id))
