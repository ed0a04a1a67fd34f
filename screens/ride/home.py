"""Ride: the state of the board first, then what can be done with it; without a board, what one may want now."""

from collections.abc import Iterator

from logic.answers.hazards import Hazard
from logic.answers.tension_entry import word_of
from logic.checks.lists import checklists
from logic.checks.open_faults import OpenFault
from logic.ledger import ride_open
from screens.acts import Go
from screens.acts.boards import Examples
from screens.asked import out_of_use
from screens.blocks import Block, Button, Line, Notice, Section, Verdict
from screens.page import Foot, Page
from screens.pictures.gauge import small_gauge
from screens.search_tool import search_tools
from screens.tongue import _
from screens.ways import due_act, leads_to, signs_line
from screens.words import begun, within
from screens.words.checks import FITNESS, due_name, due_when, fault_text, items_text, size_text
from screens.words.tension import SAID, ago, belt_name, tension_text
from screens.world import World

WANTED = (
    ("screw", "driver", _("A screw"), _("Torque and threadlocker"), Go("bench.joints")),
    ("belt", "gauge", _("A belt"), _("Loose, right or tight"), Go("ride.tension")),
    ("before", "checklist", _("Before a ride"), "", Go("ride.run", {"list": "before_ride"})),
    (
        "speed",
        "speed",
        _("Speed and range"),
        _("From Kv, cells, teeth, wheel"),
        Go("numbers.gearing"),
    ),
    ("wrong", "fault", _("Something is wrong"), _("Hot motor, noise, weak brake"), Go("bench.faults")),
    ("fly", "flight", _("May it fly?"), _("From the Wh on the pack"), Go("ride.flight")),
)
"""Key, picture, title, detail and way of each row."""
FAULTS_SHOWN, NEXT_SHOWN = 3, 3


def first_start(world: World, pinned: Block | None) -> Page:
    """Return the rows; the red line for a pack, or what forbids riding, stays in sight above them."""
    of = world.checklist("before_ride")
    size = _("{count} items to check").format(count=len(of.items))
    red = signs_line()
    rows = tuple(
        Line(key, title, detail or size, icon=icon, act=act) for key, icon, title, detail, act in WANTED
    )
    return Page(
        title=_("What do you want now?"),
        crown=pinned or red,
        whole=WANTED[-1][0],
        aside=frozenset(row.key for row in rows[len(rows) // 2 :]),
        blocks=rows if pinned is None else (red, *rows),
        tools=search_tools(),
        foot=Foot(
            beside=(
                Button(_("My board"), Go("board.name", {"purpose": "new"})),
                Button(_("An example"), Examples()),
            )
        ),
    )


def ride_page(world: World) -> Page:
    """Return the belts, the pack, what is open and what is due; what forbids riding stays in sight above them."""
    if world.is_scratch:
        return first_start(world, pinned(world))
    more = (*_more(world), *_next(world))
    return Page(
        title=_("Ride"),
        crown=pinned(world),
        blocks=(
            *(_belt(world, side) for side in world.saved.sides),
            *_pack(world),
            *_faults(world),
            *_due(world),
            signs_line(),
            *more,
        ),
        foot=_foot(world),
        aside=frozenset(block.key for block in more),
        chip=True,
        tools=search_tools(),
    )


def pinned(world: World) -> Notice | Verdict | None:
    """Return what forbids riding: a pack out of use, else what a check found and none found right since."""
    out = out_of_use(world)
    if out is not None:
        from screens.words.packs import hazard_text  # noqa: PLC0415  (few starts tell of a hazard)

        text = hazard_text(Hazard("DANGER", "pack out"), world.style, sign=out["sign"])
        return Notice("out", "danger", text)
    last = _stop(world)
    if last is None:
        return None
    when = ago(last.at, world.now)
    title, act = _list(last.base)
    text = _("{fault}. {list}, {when}.").format(fault=last.text, list=title, when=when)
    if act is not None:
        text = _("{text} Tap to check it again.").format(text=text)
    return Verdict(FITNESS["do not ride"], text, key="stop", form="wrong", act=act)


def _stop(world: World) -> OpenFault | None:
    """Return the newest fault that forbids riding, where the pack's state does not already."""
    if out_of_use(world) is not None:
        return None
    return next((one for one in reversed(world.history().faults) if one.stops), None)


def _list(base: str) -> tuple[str, Go | None]:
    """Return the title of the list that clears a fault and the way to it; a later version may have had one that is not here."""
    found = checklists().get(base)
    return (base, None) if found is None else (found.title, Go("ride.run", {"list": base}))


def _belt(world: World, side: str) -> Line:
    """Return a belt's last tension with its verdict, its age and its small gauge."""
    name = _("Belt") if len(world.saved.sides) == 1 else belt_name(side)
    record = world.last("tension", belt=side)
    act = Go("ride.tension", {"side": side})
    if record is None:
        return Line(side, name, _("Not measured yet"), icon="gauge", act=act)
    entry, when = record.body, ago(record.at, world.now)
    if entry.tension is None:
        return Line(side, name, f"{tension_text(record, world.style)}, {when}", icon="gauge", act=act)
    word = word_of(entry)
    return Line(
        side,
        _("{belt}: {tension}").format(belt=name, tension=world.style.number(entry.tension, "force")),
        ", ".join(part for part in (SAID.get(word, ""), when) if part),
        bad=word in ("slack", "tight"),
        strokes=small_gauge(entry),
        act=act,
    )


def _pack(world: World) -> Iterator[Line]:
    check = world.last("check", base="before_ride")
    volts = check.body.volts("charge") if check is not None else None
    if check is None or volts is None:
        return
    title = _("Pack: {volts}").format(volts=world.style.number(volts, "voltage"))
    detail = _("Read {when}").format(when=ago(check.at, world.now))
    yield leads_to("pack", "numbers.packs", title, detail, icon="battery")


def _faults(world: World) -> Iterator[Line]:
    """Yield what checks found wrong and no later one found right, what forbids riding first."""
    faults = [one for one in world.history().faults if one != _stop(world)]
    first = sorted(faults, key=lambda one: (not one.stops, -one.at.timestamp()))[:FAULTS_SHOWN]
    for place, one in enumerate(first):
        title, act = _list(one.base)
        detail = f"{title}, {ago(one.at, world.now)}."
        if one is first[-1] and len(faults) > len(first):
            detail += _(" {count} more in the log.").format(count=len(faults) - len(first))
        yield Line(f"fault {place}", fault_text(one), detail, icon="cross", bad=one.stops, act=act)


def _due(world: World) -> Iterator[Line]:
    """Yield the one thing that is most overdue and the way to the rest; with nothing due, what comes next."""
    due, upcoming = world.due, world.upcoming
    if not due:
        if upcoming:
            name, when = due_name(upcoming[0], world.saved.sides), due_when(upcoming[0], world.style)
            detail = _("Next: {name}, {when}.").format(name=within(name), when=when)
            yield leads_to("upkeep", "log.due", _("Nothing is due"), detail, icon="clock")
        return
    first, name = due[0], due_name(due[0], world.saved.sides)
    when = due_when(first, world.style)
    detail = f"{begun(when)}. {first.why}"
    yield Line("due", _("DUE: {name}").format(name=name), detail, icon="due", act=due_act(first))
    rest = _("{count} more due").format(count=len(due) - 1) if len(due) > 1 else _("All upkeep")
    yield leads_to("upkeep", "log.due", rest, _("Do it, or put it off"), icon="clock")


def _next(world: World) -> Iterator[Line | Section]:
    """Yield what of upkeep comes next and is not named among what is due."""
    rest = [one for one in world.upcoming if not one.due][0 if world.due else 1 :]
    if rest:
        yield Section("next", _("Next") if world.due else _("After that"))
    for one in rest[:NEXT_SHOWN]:
        yield Line(
            f"next {one.key} {one.subject}",
            due_name(one, world.saved.sides),
            value=due_when(one, world.style),
            icon="clock",
            act=due_act(one),
        )


def _more(world: World) -> Iterator[Block]:
    """Yield what has no bar; while the pack is out of use, the checks as well."""
    yield Section("more", _("More"))
    out = out_of_use(world) is not None
    if out:
        for key in ("before_ride", "after_ride"):
            of = world.checklist(key)
            act = Go("ride.run", {"list": key})
            yield Line(key, of.title, items_text(len(of.items)), icon="checklist", act=act)
    if out or _riding(world):
        yield leads_to("tension", "ride.tension", _("Tension check"), icon="gauge")
    if not _riding(world):
        yield leads_to("add", "log.ride", _("Add a ride"), _("Distance, energy or volts"), icon="road")
    yield leads_to(
        "lists", "ride.lists", _("All checks"), _("After a crash, after water, storage"), icon="checklist"
    )
    yield leads_to("wrong", "bench.faults", _("Something is wrong"), icon="fault")
    yield leads_to("fly", "ride.flight", _("Pack for a flight"), icon="flight")


def _riding(world: World) -> bool:
    """Tell whether a ride waits to be entered."""
    return ride_open(world.last("check", base="before_ride"), world.last("ride"), world.now)


def _foot(world: World) -> Foot:
    """Return the one great bar before a ride, and what is wanted beside it."""
    if out_of_use(world) is not None:
        return Foot(main=Button(_("PACK OUT OF USE:\nwhat to do"), Go("ride.pack_signs")))
    before = world.checklist("before_ride")
    size = size_text(len(before.items), before.seconds)
    main = Button(_("BEFORE A RIDE\n{size}").format(size=size), Go("ride.run", {"list": "before_ride"}))
    after = Button(_("AFTER THE RIDE"), Go("ride.run", {"list": "after_ride"}))
    first = (
        Button(_("ADD A RIDE"), Go("log.ride"))
        if _riding(world)
        else Button(_("TENSION CHECK"), Go("ride.tension"))
    )
    return Foot(main=main, beside=(first, after), great=True)
