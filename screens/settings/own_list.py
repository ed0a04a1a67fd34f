"""An own list: its items, each of them a way to other words; add one, take the list out."""

from collections.abc import Iterator

from logic.checks.lists import Checklist
from screens.acts import Go
from screens.acts.runs import DropList
from screens.blocks import Block, Button, Line, Words
from screens.page import Foot, Page
from screens.tongue import _
from screens.words.checks import items_text
from screens.world import World

GONE = Page(
    title=_("List taken out"),
    blocks=(Words(key="gone", text=_("This list is not there any more.")),),
    places=False,
)
"""In place of a page of a list that is not there."""


def list_page(world: World) -> Page:
    """Return list `key`."""
    key = world.args["key"]
    of = world.own_lists().get(key)
    if of is None:
        return GONE
    return Page(
        title=of.title,
        blocks=tuple(_list(world, of)),
        foot=Foot(main=Button(_("Run this list"), Go("ride.run", {"list": key}))),
        places=False,
    )


def _list(world: World, of: Checklist) -> Iterator[Block]:
    text = _("{items}, version {version}. Counts as: {base}.").format(
        items=items_text(len(of.items)), version=of.version, base=world.lists()[of.base].title
    )
    yield Words(key="summary", text=text, tone="second")
    for item in of.items:
        detail = _("Must pass. {state}").format(state=item.state) if item.stop else item.state
        yield Line(key=item.key, title=item.action, detail=detail, act=_change(of, item.key))
    yield Line(key="add", title=_("Add an item"), icon="plus", act=_change(of, ""))
    yield Line(key="drop", title=_("Take this list out"), icon="bin", act=DropList(of.key))


def _change(of: Checklist, item: str) -> Go:
    return Go("settings.item", {"key": of.key, "item": item})
