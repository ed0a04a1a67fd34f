"""Tools and spares of this board, as a list to pack from or to share."""

from collections.abc import Iterator
from itertools import groupby

from logic.answers.spares import Need, spares
from logic.board import Board
from logic.person import Person
from screens.acts import Go
from screens.acts.outside import Share
from screens.blocks import Block, Button, Line, Section
from screens.page import Foot, Page
from screens.tongue import _
from screens.ways import came_of_it
from screens.words import STANDING, Style, label_of
from screens.world import World

HEADINGS = {"spare": _("Parts"), "tool": _("Tools"), "bag": _("In the bag")}


def spares_page(world: World) -> Page:
    """Return the list by kind, with what is missing to say a size."""
    needs = world.kept(_needs, world.saved, world.person, world.style)
    return Page(
        title=_("Tools and spares"),
        crown=came_of_it(world),
        blocks=tuple(blocks(needs)),
        foot=Foot(main=Button(_("Share the list"), Share(_title(world), as_text(world, needs)))),
    )


def _needs(board: Board, person: Person, style: Style) -> tuple[Need, ...]:
    return spares(board, person, style.number)


def blocks(needs: tuple[Need, ...]) -> Iterator[Block]:
    """Yield each kind with its lines."""
    for kind, of in groupby(needs, lambda need: need.kind):
        group = tuple(of)
        standings = [need.row.standing for need in group]
        shared = max(standings, key=standings.count)
        yield Section(kind, HEADINGS[kind], _standing(shared))
        yield from (line(need, shared) for need in group)


def line(need: Need, shared: str) -> Line:
    """Return one line, its standing where it is not the shared one; what it lacks is added with a tap."""
    gap = next((key for key in need.missing if "." in key), "")
    known = f"{need.detail[0].upper()}{need.detail[1:]}."
    detail = _("Not known yet.") if need.missing else known
    if not need.missing and need.row.standing != shared:
        detail += f" {_standing(need.row.standing)}"
    if gap:
        detail += _(" {value} is missing: tap to add it.").format(value=label_of(gap))
    return Line(
        f"{need.kind} {need.part}",
        need.part,
        detail,
        value=f"{need.count} ×" if need.count > 1 else "",
        act=Go("board.value", {"key": gap}) if gap else None,
    )


def as_text(world: World, needs: tuple[Need, ...]) -> str:
    """Return the list as a text to send."""
    counts = (f"{need.count} x " if need.count > 1 else "" for need in needs)
    said = (_("not known yet") if need.missing else need.detail for need in needs)
    lines = [f"{count}{need.part}: {detail}" for count, need, detail in zip(counts, needs, said, strict=True)]
    return "\n".join([_title(world), "", *lines]) + "\n"


def _standing(standing: str) -> str:
    return f"{STANDING[standing].capitalize()}."


def _title(world: World) -> str:
    return _("Tools and spares: {board}").format(board=world.saved.name)
