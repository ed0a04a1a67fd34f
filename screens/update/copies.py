"""Copies for others, made from what is saved: handed on, or written beside the app's own file."""

from collections.abc import Callable
from dataclasses import replace

from logic.exchange.files import file_name, write_whole
from logic.log_table import log_table
from logic.store.errors import CannotStore
from screens.acts import Copy, Share
from screens.tongue import _
from screens.update import does
from screens.words.storage import sentence
from screens.world import World

FOLDER = "copies"


# The sheet is loaded when one is made: the first act of the app loads this module, and the start waits for it.


def _sheet_text(world: World) -> str:
    from screens.sheet.content import sheet  # noqa: PLC0415  (see above)
    from screens.sheet.text import as_text  # noqa: PLC0415

    return as_text(sheet(world))


def _sheet_page(world: World) -> str:
    from screens.sheet.content import sheet  # noqa: PLC0415  (see above)
    from screens.sheet.page import as_page  # noqa: PLC0415

    return as_page(sheet(world), world.saved, world.style, world.person)


def _log(world: World) -> str:
    board = world.saved
    return log_table(world.store.page(board.id, limit=-1), {board.id: board.name})


WRITES: dict[str, tuple[str, str, Callable[[World], str]]] = {
    "sheet text": ("build-sheet", "txt", _sheet_text),
    "sheet page": ("build-sheet", "html", _sheet_page),
    "log": ("log", "csv", _log),
}
"""Name and ending of each file, and what makes it."""


@does(Copy)
def copy(world: World, act: Copy) -> World:
    """Hand the sheet on, or write a file and say where it is or why it is not."""
    if act.what == "share":
        title = _("Build sheet: {board}").format(board=world.saved.name)
        return replace(world, out=(*world.out, Share(title, _sheet_text(world))))
    what, ending, make = WRITES[act.what]
    path = world.store.path.parent / FOLDER / file_name(world.saved, what, ending, world.now)
    try:
        write_whole(path, make(world))
    except CannotStore as problem:
        return world.turned(_said=sentence(problem))
    said = _("Saved as {name} in the folder {folder}.").format(name=path.name, folder=FOLDER)
    return world.turned(_said=said)
