"""What is not right: an item of a check, and a pack that swells, hisses, smokes or is hot."""

from collections.abc import Iterator
from datetime import datetime

from logic.answers.care import advice
from logic.checks.lists import Checklist, Item
from logic.checks.run import NOTED
from screens.acts import Back, Both, Go
from screens.acts.keeping import PutBack, TakeOut
from screens.acts.runs import Answer, Halt
from screens.asked import out_of_use
from screens.asking import page_choice
from screens.blocks import Block, Button, Field, Line, Notice, Section, Words
from screens.page import Foot, Page
from screens.tongue import _, texts
from screens.update.checks import note_key
from screens.ways import way_from
from screens.words import within
from screens.words.tension import ago
from screens.world import World

WORDS = texts("pack_signs")


def not_right(world: World) -> Page:
    """Return `item` of `list`. Whatever is chosen, the item itself is never answered right from here."""
    of = world.checklist(world.args["list"])
    item, sign = of.item(world.args["item"]), str(world.args.get("sign", ""))
    key = note_key(of.key, item.key)
    words = world.typed.get(key, "").strip()
    danger = bool(item.hazard) and (item.stops(sign) or not item.stop_signs)
    return Page(
        title=_("Not right"),
        crown=Notice("hazard", item.word, item.hazard) if danger else None,
        blocks=tuple(_blocks(item, sign, key, world.typed.get(key, ""))),
        foot=_foot(of, item, sign, ". ".join(part for part in (sign, words) if part)),
        places=False,
        whole="fix" if item.fix else "action",
        aside=frozenset(("fix", "tension", "signs", "joint", "guide", key)),
        # A hazard that comes with a sign is read from the top.
        card="danger" if danger else "",
    )


def _blocks(item: Item, sign: str, key: str, words: str) -> Iterator[Block]:
    yield Words("action", item.action, role="lead", bold=True)
    if item.signs:
        yield page_choice("sign", _("What is it?"), ((one, one) for one in item.signs), sign)
    fix = item.remedy(sign)
    if fix:
        yield Words("fix", _("Do: {fix}").format(fix=within(fix)), role="lead", bold=True)
    yield from _links(item)
    yield Field(key, _("In your own words"), words)


def _links(item: Item) -> Iterator[Line]:
    if item.belt:
        yield way_from("ride.not_right", "tension")
    if item.opens == "ride.pack_signs":
        yield Line("signs", _("Pack: stop signs"), icon="fire", bad=True, act=Go(item.opens))
    if item.joint:
        act = Go("bench.joint", {"joint": item.joint})
        yield Line("joint", _("Torque and locker of this screw"), icon="driver", act=act)
    yield way_from("ride.not_right", "guide")


def _foot(of: Checklist, item: Item, sign: str, note: str) -> Foot:
    """Return the ways on: where the run ends, no great bar says that all is well."""
    why = _("Tap a sign.") if item.signs else _("Write why.")
    again = Button(_("FIXED: CHECK IT AGAIN"), Back())
    stop = Button(of.halt.upper(), Both((Back(), Halt(note, sign))) if note else None, why, bad=True)
    if item.stops(sign):
        return Foot(beside=(again, stop), tall=True)
    noted = Both((Back(), Answer(NOTED, note=note, sign=sign))) if note else None
    return Foot(main=again, beside=(stop, Button(_("NOTE IT AND GO ON"), noted, why)), tall=True)


def pack_signs(world: World) -> Page:
    """Return the danger first, always.

    Taking out needs a sign and a bar; putting back needs a reason and the same bar's place. No single tap and no repeated tap
    on one spot does either, and Back leaves everything as it is.
    """
    stop, *others = advice("stop")
    out = out_of_use(world)
    chosen = str(world.args.get("sign", ""))
    return Page(
        title=_("Pack: stop signs"),
        crown=Notice("danger", "danger", stop.text),
        blocks=(
            *(Words(f"fire {row.key}", row.text, bold=True) for row in advice("fire")),
            *_state(world, out, chosen),
            Section("others", _("Other signs")),
            *(Words(f"stop {row.key}", row.text) for row in others),
        ),
        foot=_pack_foot(chosen, out=out is not None),
        aside=frozenset(("others", *(f"stop {row.key}" for row in others))),
        places=False,
    )


def _state(world: World, out: dict[str, str] | None, chosen: str) -> Iterator[Block]:
    if out is not None:
        when = ago(datetime.fromisoformat(out["at"]), world.now)
        text = _("Out of use: {sign}, {when}.").format(sign=out["sign"], when=when)
        yield Words("since", text, tone="bad", bold=True)
    question = _("What do you see?") if out is None else _("What came of it?")
    yield page_choice("sign", question, (WORDS["signs"] if out is None else WORDS["ends"]).items(), chosen)


def _pack_foot(chosen: str, *, out: bool) -> Foot:
    if out:
        back = Button(
            _("Put into use again"), PutBack(chosen) if chosen else None, _("First say what came of it.")
        )
        return Foot(beside=(back,))
    take = TakeOut(chosen) if chosen else None
    return Foot(main=Button(_("Take this pack out of use"), take, _("First tap what you see.")))
