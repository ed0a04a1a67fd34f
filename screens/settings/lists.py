"""One's own lists: copy one of ours, change its items, take it out. Ours stay as they are."""

from collections.abc import Iterator

from logic.checks.lists import Checklist
from logic.checks.own import moved, reworded, with_item, without
from logic.errors import InputError
from screens.acts import Act, Back, Both, Go
from screens.acts.entering import Write
from screens.acts.runs import CopyList, DropList, KeepList
from screens.blocks import Block, Button, Field, Line, Section, Words
from screens.page import Foot, Page
from screens.tongue import _
from screens.update.beginning import PARTS, typed_part
from screens.ways import leads_to
from screens.words.checks import REFUSALS, items_text
from screens.world import World

GONE = Page(
    title=_("List taken out"),
    blocks=(Words("gone", _("This list is not there any more.")),),
    places=False,
)
"""In place of a page of a list that is not there."""


def lists_page(world: World) -> Page:
    """Return the own lists, and under them what can be copied."""
    return Page(title=_("My lists"), blocks=(*_own(world), *_to_copy(world)), places=False)


def _own(world: World) -> Iterator[Block]:
    own = world.own_lists()
    if not own:
        yield Words("none", _("No list of your own yet. Copy one and change it; ours stays as it is."))
    for key, of in own.items():
        yield leads_to(
            key,
            "settings.list",
            of.title,
            _("{items}, version {version}").format(items=items_text(len(of.items)), version=of.version),
            icon="edit",
            key=key,
        )


def _to_copy(world: World) -> Iterator[Block]:
    """Yield ours; the stages of building follow each other by their letter, wherever they are kept."""
    own = world.own_lists()
    yield Section("ours", _("Copy one of these"))
    for key, of in sorted(world.lists().items(), key=lambda entry: _order(entry[1])):
        if key not in own:
            yield Line(key, of.title, items_text(len(of.items)), icon="plus", act=CopyList(key))


def _order(of: Checklist) -> tuple[bool, str]:
    return of.title[1:2] == ":", of.title


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
    yield Words("summary", text, tone="second")
    for item in of.items:
        detail = _("Must pass. {state}").format(state=item.state) if item.stop else item.state
        yield Line(item.key, item.action, detail, act=_change(of, item.key))
    yield Line("add", _("Add an item"), icon="plus", act=_change(of, ""))
    yield Line("drop", _("Take this list out"), icon="bin", act=DropList(of.key))


def _change(of: Checklist, item: str) -> Go:
    return Go("settings.item", {"key": of.key, "item": item})


def item_page(world: World) -> Page:
    """Return the page that changes `item` of list `key`; an empty `item` adds one."""
    of, key = world.own_lists().get(world.args["key"]), world.args["item"]
    if of is None or (key and all(item.key != key for item in of.items)):
        return GONE
    save, why = _save(world, of)
    return Page(
        title=_("Change the item") if key else _("Add an item"),
        blocks=tuple(_fields(world, of)),
        foot=Foot(main=Button(_("Save"), save, why)),
        places=False,
    )


def _fields(world: World, of: Checklist) -> Iterator[Block]:
    labels = (_("What to do: verb first, one thing"), _("What good looks like: it goes on the button"))
    hints = (_("Look at the lights"), _("Both lit"))
    for part, label, hint in zip(PARTS, labels, hints, strict=True):
        key = typed_part(world, part)
        yield Field(key, label, world.typed.get(key, ""), hint=hint)
    key = world.args["item"]
    if not key:
        return
    if of.items[0].key != key:
        yield Line("up", _("Move up"), icon="shut", act=_keep(world, moved(of, key, -1)))
    if of.item(key).stop:
        yield Words("stop", _("A stop item: its words can change, it cannot be taken out."), tone="second")
    else:
        yield Line("out", _("Take it out"), icon="bin", act=_keep(world, without(of, key)))


def _save(world: World, of: Checklist) -> tuple[Act | None, str]:
    """Return the act that keeps the words, or why they cannot be used."""
    key, words = world.args["item"], [world.typed.get(typed_part(world, part), "") for part in PARTS]
    try:
        changed = reworded(of, key, *words) if key else with_item(of, *words, number=of.version)
    except InputError as problem:
        return None, REFUSALS.get(problem.reason, _("These words cannot be used."))
    return _keep(world, changed), ""


def _keep(world: World, changed: Checklist) -> Both:
    """Return the act that keeps the list and goes back; nothing stays typed."""
    return Both((*(Write(typed_part(world, part), "") for part in PARTS), KeepList(changed), Back()))
