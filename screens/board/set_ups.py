"""Usual set-ups: one is taken as a new board, then changed where one's own differs."""

from dataclasses import replace

from logic.set_ups import SetUp, set_ups
from screens.acts import Back, Both
from screens.acts.boards import AddBoard
from screens.blocks import Line, Words
from screens.board.naming import free_name
from screens.page import Page
from screens.tongue import _
from screens.world import World


def set_ups_page(world: World) -> Page:
    """Return the set-ups; a tap takes one and goes back to the board's page."""
    text = _("Invented boards of a usual kind. Every value is a guess: change what differs on yours.")
    return Page(
        title=_("Usual set-ups"),
        blocks=(Words(key="text", text=text), *(_line(world, one) for one in set_ups())),
        places=False,
    )


def _line(world: World, one: SetUp) -> Line:
    name = free_name(world, one.board.name)
    return Line(
        key=one.key,
        title=one.board.name,
        detail=_("Example, {about}").format(about=one.about),
        icon="plus",
        act=Both((AddBoard(name, replace(one.board, name=name)), Back(), Back())),
    )
