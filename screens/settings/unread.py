"""What could not be read when the file was opened: named, kept as it was, and ready to be sent."""

from collections.abc import Iterator

from logic import read_back
from screens.acts.outside import Share
from screens.blocks import RIGHT, UNSURE, Block, Line, Verdict, Words
from screens.page import Page
from screens.showing import fold
from screens.tongue import _, texts
from screens.world import World

SHOWN = 400
"""Characters of a thing that are shown here; the whole of it is sent."""


def unread_page(world: World) -> Page:
    """Return the things that could not be read, each to be opened."""
    things = read_back.unread(world.store)
    if not things:
        verdict = Verdict(key="all", word=_("All read"), text=_("Nothing was set aside."), form=RIGHT)
    else:
        verdict = Verdict(
            key="some",
            word=_("{count} not read").format(count=len(things)),
            text=_("Each is kept as it was. All else opens."),
            form=UNSURE,
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
        text = _(
            "The file was damaged on {day}. {boards} boards and {entries} entries were read from it."
            " The damaged file is kept as {name}. An older copy may hold more: see Files and copies."
        )
        yield Words(
            key="salvaged",
            text=text.format(
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
            Words(key=f"text {number}", text=thing.text[:SHOWN] or _("It is empty."), role="small"),
            Line(key=f"send {number}", title=_("Send it"), icon="send", act=Share(title, thing.text)),
        )

    yield from fold(world, f"thing {number}", title, inside)
