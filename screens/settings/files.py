"""Files out and in: a board, or everything; what would change is shown before it does."""

from collections.abc import Iterator

from logic.exchange.arriving import Arrival
from logic.exchange.copies import FOLDER, CopyLook, weekly_copies
from screens.acts import Turn
from screens.acts.boards import Copy, OpenFile, OpenText, TakeIn
from screens.acts.outside import PickFile
from screens.blocks import PLAIN, UNSURE, Block, Button, Field, Line, Section, Verdict, Words
from screens.page import Foot, Page
from screens.showing import fold
from screens.tongue import _
from screens.ways import leads_to
from screens.world import World

PATH, PASTED = "file/path", "file/text"
"""Where a path and a pasted text are typed."""


def files_page(world: World) -> Page:
    """Return what can be written and taken in; or what a file that was opened would change."""
    look = world.args.get("_look")
    if look is None:
        return Page(title=_("Files and copies"), blocks=tuple(_ways(world)))
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
    for key in ("_told", "_said"):
        if world.args.get(key):
            yield Words(key=key, text=world.args[key], bold=True)
    yield Section(key="out", title=_("Write a file"))
    if not world.is_scratch:
        title, detail = _("{board}, with its log"), _("One file, for another phone or a friend")
        board = title.format(board=world.saved.name)
        yield Line(key="board", title=board, detail=detail, icon="file", act=Copy("board"))
        detail = _("The same file, to another app on this phone")
        yield Line(key="send", title=_("Send it"), detail=detail, icon="send", act=Copy("send board"))
        yield leads_to(
            "code", "settings.code", _("Show it as a code"), _("For another phone's camera, without its log")
        )
    detail = _("All boards, logs and settings in one file")
    yield Line(key="all", title=_("Copy of everything"), detail=detail, icon="save", act=Copy("all"))
    yield Section(key="in", title=_("Take a file in"), note=_("What would change is shown first."))
    yield Line(key="pick", title=_("Choose a file"), act=PickFile(), icon="take_in")
    path, pasted = world.typed.get(PATH, "").strip(), world.typed.get(PASTED, "")
    yield Field(key=PATH, label=_("Where the file is"), text=path, hint=_("Or drop the file on this window"))
    yield Line(key="open", title=_("Look into this file"), act=OpenFile(path) if path else None, icon="view")
    yield from fold(
        world, "paste", _("Paste the text of a board or of its code"), lambda: tuple(_paste(pasted))
    )
    yield from _kept(world)
    yield leads_to("unread", "settings.unread", _("Could not be read"), icon="question")


def _paste(pasted: str) -> Iterator[Block]:
    yield Field(key=PASTED, label=_("Text of the file"), text=pasted)
    yield Line(
        key="look",
        title=_("Look into this text"),
        act=OpenText(pasted) if pasted.strip() else None,
        icon="view",
    )


def _kept(world: World) -> Iterator[Block]:
    copies = weekly_copies(world.store.path.parent / FOLDER)[::-1]
    if copies:
        yield Section(key="kept", title=_("Kept aside every week"))
    for path in copies:
        yield Line(
            key=path.stem,
            title=_("Copy of {day}").format(day=path.stem.removeprefix("weekly-")),
            icon="history",
            act=OpenFile(str(path)),
        )


def _arriving(look: Arrival) -> tuple[Block, ...]:
    if look.kind == "same" and not look.entries:
        verdict = Verdict(key="what", word=_("Nothing new"), text=_("All of it is here."), form=PLAIN)
    elif look.kind == "same":
        verdict = Verdict(
            key="what",
            word=_("Adds to the log"),
            text=_("{board} is here already.").format(board=look.board.name),
            form=PLAIN,
        )
    else:
        text = _("A new board.") if look.kind == "new" else _("It differs from the one here. Both are kept.")
        form = PLAIN if look.kind == "new" else UNSURE
        verdict = Verdict(
            key="what", word=_("Adds {board}").format(board=look.board.name), text=text, form=form
        )
    rows = [Line(key="entries", title=_("Entries that are added"), value=str(len(look.entries)))]
    if look.here:
        rows.append(Line(key="here", title=_("Entries that are here already"), value=str(look.here)))
    if look.differs:
        rows.append(Line(key="differs", title=_("Values that differ"), value=str(len(look.differs))))
    return (verdict, *rows)


def _copy(look: CopyLook) -> tuple[Block, ...]:
    newest = look.newest.date().isoformat() if look.newest else _("no entries")
    return (
        Verdict(
            key="what",
            word=_("Takes the place of everything"),
            text=_("What is here now is kept as a copy."),
            form=UNSURE,
        ),
        Line(key="boards", title=_("Boards"), value=str(len(look.boards)), detail=", ".join(look.boards)),
        Line(key="entries", title=_("Entries of the log"), value=str(look.entries)),
        Line(key="newest", title=_("The last one"), value=newest),
    )
