"""Files out and in: a board, as a file or as a code, or everything; and what could not be read."""

from collections.abc import Iterator

from logic import read_back
from logic.board import Board
from logic.exchange.arriving import Arrival
from logic.exchange.code import code_line
from logic.exchange.copies import FOLDER, CopyLook, weekly_copies
from screens.acts import Turn
from screens.acts.boards import Copy, OpenFile, OpenText, TakeIn
from screens.acts.outside import PickFile, Share
from screens.blocks import Block, Button, Field, Line, Picture, Section, Verdict, Words
from screens.page import Foot, Page
from screens.pictures.code import MOST, code
from screens.pictures.strokes import Picture as Strokes
from screens.showing import fold
from screens.tongue import _, texts
from screens.ways import came_of_it, way_from, words_if
from screens.world import World

PATH, PASTED = "file/path", "file/text"
"""Where a path and a pasted text are typed."""
SHOWN = 400
"""Characters of a thing that are shown here; the whole of it is sent."""


def files_page(world: World) -> Page:
    """Return what can be written and taken in; or what a file that was opened would change."""
    look = world.args.get("_look")
    if look is None:
        return Page(title=_("Files and copies"), crown=came_of_it(world), blocks=tuple(_ways(world)))
    seen = _arriving(look) if isinstance(look, Arrival) else _copy(look)
    main = _("Take it in") if isinstance(look, Arrival) else _("Bring it back")
    return Page(
        title=_("What it would change"),
        crown=seen[0],
        blocks=seen[1:],
        foot=Foot(main=Button(main, TakeIn()), beside=(Button(_("Leave it"), Turn({"_look": None})),)),
        back=Turn({"_look": None}),
        card="look",
    )


def _ways(world: World) -> Iterator[Block]:
    yield Section("out", _("Write a file"))
    if not world.is_scratch:
        title, detail = _("{board}, with its log"), _("One file, for another phone or a friend")
        yield Line("board", title.format(board=world.saved.name), detail, icon="file", act=Copy("board"))
        detail = _("The same file, to another app on this phone")
        yield Line("send", _("Send it"), detail, icon="send", act=Copy("send board"))
        yield way_from("settings.files", "code")
    detail = _("All boards, logs and settings in one file")
    yield Line("all", _("Copy of everything"), detail, icon="save", act=Copy("all"))
    yield Section("in", _("Take a file in"), _("What would change is shown first."))
    yield Line("pick", _("Choose a file"), act=PickFile(), icon="take_in")
    path, pasted = world.typed.get(PATH, "").strip(), world.typed.get(PASTED, "")
    yield Field(PATH, _("Where the file is"), path, hint=_("Or drop the file on this window"))
    first = "" if path else _("First say where it is.")
    yield Line("open", _("Look into this file"), first, act=OpenFile(path) if path else None, icon="view")
    yield from fold(
        world, "paste", _("Paste the text of a board or of its code"), lambda: tuple(_paste(pasted))
    )
    yield from _kept(world)
    yield way_from("settings.files", "unread")


def _paste(pasted: str) -> Iterator[Block]:
    yield Field(PASTED, _("Text of the file"), pasted)
    there = bool(pasted.strip())
    first = "" if there else _("First paste it here.")
    yield Line("look", _("Look into this text"), first, act=OpenText(pasted) if there else None, icon="view")


def _kept(world: World) -> Iterator[Block]:
    copies = weekly_copies(world.store.path.parent / FOLDER)[::-1]
    if copies:
        yield Section("kept", _("Kept aside every week"))
    for path in copies:
        yield Line(
            path.stem,
            _("Copy of {day}").format(day=path.stem.removeprefix("weekly-")),
            icon="history",
            act=OpenFile(str(path)),
        )


def _arriving(look: Arrival) -> tuple[Block, ...]:
    if look.kind == "same" and not look.entries:
        verdict = Verdict(_("Nothing new"), _("All of it is here."), key="what", form="plain")
    elif look.kind == "same":
        verdict = Verdict(
            _("Adds to the log"),
            _("{board} is here already.").format(board=look.board.name),
            key="what",
            form="plain",
        )
    else:
        text = _("A new board.") if look.kind == "new" else _("It differs from the one here. Both are kept.")
        form = "plain" if look.kind == "new" else "unsure"
        verdict = Verdict(_("Adds {board}").format(board=look.board.name), text, key="what", form=form)
    rows = [Line("entries", _("Entries that are added"), value=str(len(look.entries)))]
    if look.here:
        rows.append(Line("here", _("Entries that are here already"), value=str(look.here)))
    if look.differs:
        rows.append(Line("differs", _("Values that differ"), value=str(len(look.differs))))
    return (verdict, *rows)


def _copy(look: CopyLook) -> tuple[Block, ...]:
    newest = look.newest.date().isoformat() if look.newest else _("no entries")
    return (
        Verdict(
            _("Takes the place of everything"),
            _("What is here now is kept as a copy."),
            key="what",
            form="unsure",
        ),
        Line("boards", _("Boards"), ", ".join(look.boards), value=str(len(look.boards))),
        Line("entries", _("Entries of the log"), value=str(look.entries)),
        Line("newest", _("The last one"), value=newest),
    )


def code_page(world: World) -> Page:
    """Return the code and what to do with it; or why there is none."""
    title = _("Board as a code")
    if world.is_scratch:
        return Page(title=title, blocks=(Words("none", _("Save a board first."), role="lead"),))
    line, drawn = world.kept(_code, world.saved)
    name = world.saved.name
    said = words_if("said", world.args.get("_said"), bold=True)
    if drawn is None:
        why = _("{board} holds {count} signs, and one code {most}. Send it as a file.")
        text = why.format(board=name, count=len(line), most=MOST)
        return Page(title=title, blocks=(*said, Words("none", text, role="lead")))
    return Page(
        title=title,
        blocks=(
            *said,
            Picture("code", drawn, _("Code of {board}, without its log").format(board=name)),
            Words("how", _("Point the camera of another phone at it, and copy the text it shows.")),
            Words("where", _("On that phone, paste it under Files and copies.")),
            Words("close", _("Hold it close, upright, with the screen bright.")),
        ),
        foot=Foot(main=Button(_("Share it as text"), Share(name, line))),
    )


def _code(board: Board) -> tuple[str, Strokes | None]:
    line = code_line(board)
    return line, code(line)


def unread_page(world: World) -> Page:
    """Return the things that could not be read, each to be opened."""
    things = read_back.unread(world.store)
    if not things:
        verdict = Verdict(_("All read"), _("Nothing was set aside."), key="all", form="right")
    else:
        verdict = Verdict(
            _("{count} not read").format(count=len(things)),
            _("Each is kept as it was. All else opens."),
            key="some",
            form="unsure",
        )
    return Page(
        title=_("Could not be read"),
        crown=verdict,
        blocks=(*_salvaged(world), *(block for one in enumerate(things) for block in _thing(world, *one))),
    )


def _salvaged(world: World) -> Iterator[Block]:
    told = world.store.get("salvaged", {})
    rows = told.get("rows")
    if isinstance(rows, dict):
        text = texts("files")["said"]["salvaged"]
        yield Words(
            "salvaged",
            text.format(
                day=str(told.get("at", ""))[:10],
                boards=rows.get("board", 0),
                entries=rows.get("log", 0),
                name=told.get("kept", ""),
            ),
        )


def _thing(world: World, number: int, thing: read_back.UnreadThing) -> Iterator[Block]:
    what = texts("files")["what"].get(thing.what, thing.what)
    title = f"{what}: {thing.name}"

    def inside() -> tuple[Block, ...]:
        return (
            Words(f"text {number}", thing.text[:SHOWN] or _("It is empty."), role="small"),
            Line(f"send {number}", _("Send it"), icon="send", act=Share(title, thing.text)),
        )

    yield from fold(world, f"thing {number}", title, inside)
