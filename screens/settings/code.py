"""The board in use as a code for another phone's camera."""

from logic.board import Board
from logic.exchange.code import code_line
from screens.acts.outside import Share
from screens.blocks import Button, Picture, Words
from screens.page import Foot, Page
from screens.pictures.code import MOST, code
from screens.pictures.strokes import Picture as Strokes
from screens.tongue import _
from screens.world import World


def code_page(world: World) -> Page:
    """Return the code and what to do with it; or why there is none."""
    title = _("Board as a code")
    if world.is_scratch:
        return Page(title=title, blocks=(Words(key="none", text=_("Save a board first."), role="lead"),))
    line, drawn = world.kept(_code, world.saved)
    name = world.saved.name
    said = (Words(key="said", text=world.args["_said"], bold=True),) if world.args.get("_said") else ()
    if drawn is None:
        why = _("{board} holds {count} signs, and one code {most}. Send it as a file.")
        text = why.format(board=name, count=len(line), most=MOST)
        return Page(title=title, blocks=(*said, Words(key="none", text=text, role="lead")))
    return Page(
        title=title,
        blocks=(
            *said,
            Picture(key="code", strokes=drawn, text=_("Code of {board}, without its log").format(board=name)),
            Words(key="how", text=_("Point the camera of another phone at it, and copy the text it shows.")),
            Words(key="where", text=_("On that phone, paste it under Files and copies.")),
            Words(key="close", text=_("Hold it close, upright, with the screen bright.")),
        ),
        foot=Foot(main=Button(_("Share it as text"), Share(name, line))),
    )


def _code(board: Board) -> tuple[str, Strokes | None]:
    line = code_line(board)
    return line, code(line)
