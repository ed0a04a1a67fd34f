"""Copies out of the app: the log as a table, the build sheet as text or as a page with pictures."""

from collections.abc import Iterator
from dataclasses import replace

from screens.acts.boards import Copy
from screens.blocks import Block, Button, Line, Section
from screens.page import Foot, Page
from screens.sheet.content import sheet
from screens.showing import fold
from screens.tongue import _
from screens.ways import came_of_it, way_from, ways_from
from screens.world import World


def export_page(world: World) -> Page:
    """Return what can be written, and the sheet to be read here."""
    return Page(
        title=_("Build sheet"),
        crown=came_of_it(world),
        blocks=tuple(_blocks(world)),
        foot=Foot(main=Button(_("Share the build sheet"), Copy("share"))),
    )


def _blocks(world: World) -> Iterator[Block]:
    yield from (replace(one, act=Copy(one.key)) for one in ways_from("log.export: copies"))
    yield way_from("log.export", "files")
    yield from fold(world, "sheet", _("Read the sheet here"), lambda: tuple(_sheet(world)))


def _sheet(world: World) -> Iterator[Block]:
    for part in sheet(world).parts:
        yield Section(part.title, part.title)
        for number, (label, value, known) in enumerate(part.lines):
            yield Line(f"{part.title} {number}", label, known, value=value)
