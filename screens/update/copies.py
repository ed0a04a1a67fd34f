"""Copies for others, made from what is saved: handed on, or written beside the app's own file."""

from collections.abc import Callable
from dataclasses import replace
from importlib import import_module
from pathlib import Path
from typing import Any

from logic.exchange.board_file import board_text
from logic.exchange.files import file_name, write_whole
from logic.log_table import log_table
from logic.store.errors import CannotStore
from logic.store.opening import make_folder
from screens.acts.boards import Copy
from screens.acts.outside import PrintOut, PutFile, SendFile, Share
from screens.tongue import _
from screens.update import does
from screens.words.storage import sentence
from screens.world import World

FOLDER = "copies"
SEND = "send "
"""Before the name of what is handed on."""


NO_PDF = _("No PDF can be made here. Write the sheet with pictures, and print it from a browser.")


def _sheet(kind: str) -> Callable[[World], Any]:
    """Return what makes the sheet as "text", "page" or "pdf".

    It is loaded when one is made: the first act of the app loads this module, and the start waits for it.
    """

    def make(world: World) -> Any:  # noqa: ANN401  (a text, or the bytes of a PDF)
        from screens.sheet.content import sheet  # noqa: PLC0415  (said above)

        write = getattr(import_module(f"screens.sheet.{kind}"), f"as_{kind}")
        return write(sheet(world, drawn=kind != "text"))

    return make


def _log(world: World) -> str:
    board = world.saved
    return log_table(world.store.page(board.id, limit=-1), {board.id: board.name})


def _board(world: World) -> str:
    return board_text(world.saved, world.store.page(world.saved.id, limit=-1), at=world.now)


WRITES: dict[str, tuple[str, str, Callable[[World], str | bytes]]] = {
    "sheet text": ("build-sheet", "txt", _sheet("text")),
    "sheet page": ("build-sheet", "html", _sheet("page")),
    "sheet pdf": ("build-sheet", "pdf", _sheet("pdf")),
    "log": ("log", "csv", _log),
    "board": ("board", "json", _board),
}
"""Name and ending of each file, and what makes it."""


def _written(world: World, folder: Path, key: str) -> Path:
    what, ending, make = WRITES[key]
    path = folder / file_name(world.saved, what, ending, world.now)
    write_whole(path, make(world))
    return path


def _everything(world: World, folder: Path) -> Path:
    from logic.exchange.copies import write_copy  # noqa: PLC0415  (as the sheet)

    make_folder(folder)
    path = folder / f"everything-{world.now:%Y-%m-%d}.db"
    write_copy(world.store, path)
    return path


@does(Copy)
def copy(world: World, act: Copy) -> World:
    """Hand the sheet on, or write a file and say where it is or why it is not.

    "send ..." hands the file on; else the person chooses where it goes, where the phone has a page for that.
    """
    title = _("Build sheet: {board}").format(board=world.saved.name)
    if act.what == "print":
        return replace(world, out=(*world.out, PrintOut(title, _sheet("page")(world))))
    if act.what == "share":
        return replace(world, out=(*world.out, Share(title, _sheet("text")(world))))
    folder = world.store.path.parent / FOLDER
    try:
        what = act.what.removeprefix(SEND)
        path = _everything(world, folder) if what == "all" else _written(world, folder, what)
    except CannotStore as problem:
        return world.turned(_told=None, _said=sentence(problem))
    except ImportError:
        return world.turned(_told=None, _said=NO_PDF)
    said = _("Saved as {name} in the folder {folder}.").format(name=path.name, folder=FOLDER)
    goes = SendFile(str(path), world.saved.name) if act.what.startswith(SEND) else PutFile(str(path))
    return replace(world.turned(_told=None, _said=said), out=(*world.out, goes))
