"""The name of a board: for a new one, a copy, a kept trial or a change."""

from dataclasses import replace

from logic.errors import InputError
from screens.acts import Act, Back, Both, Go, Swap
from screens.acts.boards import AddBoard, KeepAs, Rename
from screens.acts.entering import Write
from screens.blocks import Button, Field, Words
from screens.board.naming import check_name, typed_name
from screens.page import Foot, Page
from screens.tongue import _
from screens.words import refusal
from screens.world import World

TITLES = {
    "new": _("New board"),
    "copy": _("Copy of the board"),
    "keep": _("Save as a board"),
    "rename": _("Rename the board"),
}
GUIDE = Go("board.value", {"guided": True})


def name_page(world: World) -> Page:
    """Return the page that asks for a name for `purpose`. Until it can be used, the bar says why not."""
    purpose, text = world.args["purpose"], world.typed.get(typed_name(world), "")
    why = _refused(world, text)
    return Page(
        title=TITLES[purpose],
        blocks=(
            Field(
                key=typed_name(world),
                label=_("A name you will know it by"),
                text=text,
                hint=_("1 to 40 letters"),
            ),
            Words(key="why", text=why if text else "", tone="bad", bold=True, reserve=1),
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
