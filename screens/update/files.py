"""Files from outside: looked into first, then taken in, all or nothing."""

from dataclasses import replace
from pathlib import Path

from logic.errors import UNREADABLE
from logic.exchange.arriving import Arrival, arrival, take_in
from logic.exchange.board_file import LARGEST, read_board_file
from logic.exchange.copies import CopyLook, bring_back, look_at_copy
from logic.exchange.errors import NotTaken, TooLarge
from logic.store.errors import CannotStore, NoRight
from screens.acts.boards import OpenFile, OpenText, TakeIn
from screens.tongue import _
from screens.update import does
from screens.words.storage import not_taken
from screens.world import World, open_world

_SQLITE = b"SQLite format 3\0"


@does(OpenFile)
def open_file(world: World, act: OpenFile) -> World:
    """Say what a file would add or change, or why it cannot be taken in."""
    path = place(act.path)
    try:
        with _readable(path).open("rb") as file:
            head = file.read(len(_SQLITE))
            if head == _SQLITE:
                look: Arrival | CopyLook = look_at_copy(path, world.clock)
            else:
                look = arrival(world.store, read_board_file(head + file.read(LARGEST + 1)))
    except (NotTaken, CannotStore) as problem:
        return world.turned(_look=None, _said=None, _told=not_taken(problem))
    except OSError as problem:
        return world.turned(_look=None, _said=None, _told=not_taken(NoRight(str(problem))))
    return world.turned(_look=look, _path=str(path), _told=None, _said=None)


@does(OpenText)
def open_text(world: World, act: OpenText) -> World:
    """Say what a pasted text would add or change, or why it cannot be taken in."""
    try:
        look = arrival(world.store, read_board_file(act.text))
    except NotTaken as problem:
        return world.turned(_look=None, _said=None, _told=not_taken(problem))
    return world.turned(_look=look, _told=None, _said=None)


@does(TakeIn)
def taken_in(world: World, _act: TakeIn) -> World:
    """Do what was looked at. The board that came in is then in use; a copy brought back is the whole app's."""
    look = world.args.get("_look")
    try:
        if isinstance(look, Arrival):
            board = take_in(world.store, look)
            world.store.put("board", board)
            told = _("{board} is here, with {count} entries of its log.").format(
                board=look.board.name, count=len(look.entries)
            )
        elif isinstance(look, CopyLook):
            kept = bring_back(world.store, Path(world.args["_path"]), world.clock)
            told = _("Brought back. What was here before is kept as {name} in the folder {folder}.").format(
                name=kept.name, folder=kept.parent.name
            )
        else:
            return world
    except (NotTaken, CannotStore, *UNREADABLE) as problem:
        return world.turned(_look=None, _said=None, _told=not_taken(problem))
    anew = replace(open_world(world.store, world.clock), trail=world.trail)
    return anew.turned(_look=None, _path=None, _said=None, _told=told)


def place(text: str) -> Path:
    """Return the path that a person typed, "~" being their home where there is one."""
    try:
        return Path(text).expanduser()
    except RuntimeError:
        return Path(text)


def _readable(path: Path) -> Path:
    try:
        size = path.stat().st_size if path.is_file() else -1
    except (OSError, ValueError) as problem:
        raise NoRight(str(problem)) from problem
    if size < 0:
        raise NoRight(f"{path} is no file")
    if size > LARGEST and path.suffix != ".db":
        raise TooLarge(f"{size} bytes")
    return path
