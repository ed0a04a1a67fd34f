"""All boards: choose one, name it, begin one from a usual set-up, bring one back from the bin."""

from collections.abc import Iterator
from dataclasses import replace

from logic import read_back
from logic.board import Board
from logic.errors import InputError
from logic.set_ups import SetUp, set_ups
from screens.acts import Act, Back, Both, Go, Swap
from screens.acts.boards import AddBoard, Choose, Examples, KeepAs, Rename, Unbin
from screens.acts.entering import Write
from screens.blocks import Block, Button, Field, Line, Section, Words
from screens.board.naming import check_name, free_name, typed_name
from screens.page import Foot, Page
from screens.tongue import _
from screens.ways import way_from
from screens.words import refusal
from screens.world import World

TITLES = {
    "new": _("New board"),
    "copy": _("Copy of the board"),
    "keep": _("Save as a board"),
    "rename": _("Rename the board"),
}
GUIDE = Go("board.value", {"guided": True})


def boards_page(world: World) -> Page:
    """Return the boards, the one in use ticked, then what a new one can begin as, and the bin."""
    return Page(
        title=_("Boards"),
        blocks=(*_boards(world), *_ready_made(), *_binned(world)),
        foot=Foot(main=Button(_("New board"), Go("board.name", {"purpose": "new"}))),
        places=False,
    )


def _boards(world: World) -> Iterator[Block]:
    for board in world.boards():
        here = board.id == world.saved.id
        act = Both((Choose(board.id), Back()))
        yield Line(board.id, board.name, _detail(board), icon="tick" if here else "", chosen=here, act=act)


def _detail(board: Board) -> str:
    done, asked = board.filled()
    said = _("{done} of {asked} filled").format(done=done, asked=asked)
    return _("Example, {said}").format(said=said) if board.example else said


def _ready_made() -> Iterator[Block]:
    yield Section("ready", _("To begin from"))
    yield way_from("board.boards", "usual")
    yield Line(
        "examples",
        _("Add the example boards"),
        _("Four invented boards, all filled"),
        icon="plus",
        act=Examples(),
    )
    yield way_from("board.boards", "file")


def _binned(world: World) -> Iterator[Block]:
    binned = read_back.binned(world.store)
    if binned:
        yield Section("bin", _("In the bin"))
    for board in binned:
        yield Line(board.id, board.name, _("Tap to bring it back"), icon="bin", act=Unbin(board.id))


def set_ups_page(world: World) -> Page:
    """Return the set-ups; a tap takes one and goes back to the board's page."""
    text = _("Invented boards of a usual kind. Every value is a guess: change what differs on yours.")
    return Page(
        title=_("Usual set-ups"),
        blocks=(Words("text", text), *(_set_up(world, one) for one in set_ups())),
        places=False,
    )


def _set_up(world: World, one: SetUp) -> Line:
    name = free_name(world, one.board.name)
    return Line(
        one.key,
        one.board.name,
        _("Example, {about}").format(about=one.about),
        icon="plus",
        act=Both((AddBoard(name, replace(one.board, name=name)), Back(), Back())),
    )


def name_page(world: World) -> Page:
    """Return the page that asks for a name for `purpose`. Until it can be used, the bar says why not."""
    purpose, text = world.args["purpose"], world.typed.get(typed_name(world), "")
    why = _refused(world, text)
    return Page(
        title=TITLES[purpose],
        blocks=(
            Field(typed_name(world), _("A name you will know it by"), text, hint=_("1 to 40 letters")),
            Words("why", why if text else "", tone="bad", bold=True, reserve=1),
        ),
        foot=Foot(main=Button(_("Save"), None if why else _save(world, text), why)),
        places=False,
    )


def _refused(world: World, text: str) -> str:
    try:
        check_name(world, text, world.saved if world.args["purpose"] == "rename" else None)
    except InputError as problem:
        return refusal(problem, world.style)
    return ""


def _save(world: World, name: str) -> Act:
    """Return what the name is for, then the way on: a new board's values are asked for at once."""
    written = Write(typed_name(world), "")
    if world.args["purpose"] == "new":
        # What was typed while there was no board is of this one.
        made = KeepAs(name) if world.is_scratch else AddBoard(name)
        return Both((written, made, Swap("board"), GUIDE))
    acts = {
        "copy": AddBoard(name, replace(world.saved, example=False)),
        "keep": KeepAs(name),
        "rename": Rename(name),
    }
    return Both((written, acts[world.args["purpose"]], Back()))
