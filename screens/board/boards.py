"""All boards: choose one, add one, bring one back from the bin."""

from collections.abc import Iterator

from logic import read_back
from logic.board import Board
from screens.acts import Back, Both, Go
from screens.acts.boards import Choose, Examples, Unbin
from screens.blocks import Block, Button, Line, Section
from screens.page import Foot, Page
from screens.tongue import _
from screens.ways import leads_to
from screens.world import World


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
        yield Line(
            key=board.id,
            title=board.name,
            detail=_detail(board),
            icon="tick" if here else "",
            chosen=here,
            act=act,
        )


def _detail(board: Board) -> str:
    done, asked = board.filled()
    said = _("{done} of {asked} filled").format(done=done, asked=asked)
    return _("Example, {said}").format(said=said) if board.example else said


def _ready_made() -> Iterator[Block]:
    yield Section(key="ready", title=_("To begin from"))
    yield leads_to(
        "usual", "board.set_ups", _("A usual set-up"), _("Take one, change what differs"), icon="drive"
    )
    yield Line(
        key="examples",
        title=_("Add the example boards"),
        detail=_("Four invented boards, all filled"),
        icon="plus",
        act=Examples(),
    )
    yield leads_to(
        "file", "settings.files", _("A board from a file"), _("Shown before it is taken in"), icon="take_in"
    )


def _binned(world: World) -> Iterator[Block]:
    binned = read_back.binned(world.store)
    if binned:
        yield Section(key="bin", title=_("In the bin"))
    for board in binned:
        yield Line(
            key=board.id, title=board.name, detail=_("Tap to bring it back"), icon="bin", act=Unbin(board.id)
        )
