"""One item of an own list: what to do and what good looks like, in one's own words."""

from collections.abc import Iterator

from logic.checks.lists import Checklist
from logic.checks.own import moved, reworded, with_item, without
from logic.errors import InputError
from screens.acts import Act, Back, Both
from screens.acts.entering import Write
from screens.acts.runs import KeepList
from screens.blocks import Block, Button, Field, Line, Words
from screens.page import Foot, Page
from screens.settings.own_list import GONE
from screens.tongue import _
from screens.update.writing import PARTS, typed_part
from screens.words.checks import REFUSALS
from screens.world import World


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
        yield Field(key=key, label=label, text=world.typed.get(key, ""), hint=hint)
    key = world.args["item"]
    if not key:
        return
    if of.items[0].key != key:
        yield Line(key="up", title=_("Move up"), icon="shut", act=_keep(world, moved(of, key, -1)))
    if of.item(key).stop:
        text = _("A stop item: its words can change, it cannot be taken out.")
        yield Words(key="stop", text=text, tone="second")
    else:
        yield Line(key="out", title=_("Take it out"), icon="bin", act=_keep(world, without(of, key)))


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
