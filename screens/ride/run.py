"""One item of a checklist at a time, large: what to do, what good looks like, and a button that says so."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.checks import nearly_empty, volts_fault
from logic.answers.tension import belt_plan
from logic.board import Field
from logic.checks.lists import Item
from logic.checks.run import ASIDE, RIGHT
from logic.checks.session import Session
from logic.tables import sources
from screens.acts import Go
from screens.acts.entering import Write
from screens.acts.keeping import Settle
from screens.acts.outside import Say
from screens.acts.runs import Answer, BackOne, Rerun
from screens.asking import number_entry, typed_value
from screens.bench.explained import explained
from screens.blocks import Block, Button, Choice, Entry, Line, Notice, Option, Progress, Words
from screens.page import Foot, Page
from screens.pictures.drive import drive
from screens.ride.run_with import figure_rows, links, said_of
from screens.showing import fold
from screens.tongue import _, texts
from screens.update.checks import typed_key
from screens.ways import picture_if, voice_line, way_from, words_if
from screens.words import within
from screens.words.checks import REFUSALS, broke_off, items_text, size_text
from screens.words.workings import source_text
from screens.world import World

VOLTS = Field("check.volts", _("Pack volts"), "number", 0, "", quantity="voltage", low=1.0, high=150.0)

NEARLY_EMPTY = "nearly empty, short ride only"
"""What is noted of volts below those at which the controller begins to hold back."""

TASK = ("progress", "problem", "care", "action", "before", "how", "wanted", "choice")
"""Keys of what must be in sight at once."""


def run_page(world: World) -> Page:
    """Return the item in front, or where the run was broken off."""
    key = world.args["list"]
    session = world.session(key)
    run = session.run
    if run is None:
        over = Words("over", _("This run has ended. Go back to begin another."), role="lead")
        return Page(title=session.of.title, blocks=(over,))
    if world.args.get("_broken") or not run.at:
        return broken(session)
    item = session.of.item(run.at)
    entry, value, note = _asked(world, key, item)
    ready = not item.ask or value is not None
    why = _("Pick one.") if item.ask == "choice" else _("Enter volts.") if item.ask else ""
    said = said_of(item, world)
    blocks = tuple(card(world, session, item))
    return Page(
        title=session.of.title,
        blocks=blocks,
        foot=Foot(
            main=Button(item.state.upper(), Answer(RIGHT, value, note) if ready else None, why),
            beside=(Button(_("NOT RIGHT"), Go("ride.not_right", {"list": key, "item": item.key}), bad=True),),
            entry=entry,
            tall=True,
        ),
        tools=(
            Button(_("Back one"), BackOne() if run.place else None, icon="step back"),
            Button(_("Say it"), Say(said), icon="say"),
        ),
        places=False,
        awake=True,
        # What is read and answered at the left, what belongs to it at the right.
        aside=frozenset(block.key for block in blocks if block.key not in TASK),
        whole="choice" if item.ask == "choice" else "wanted",
        card=f"{item.key} {len(run.answers)}",
        say=said,
    )


def _place(session: Session) -> str:
    run = session.under_way
    return _("{number} of {all}").format(number=min(run.place + 1, len(run.order)), all=len(run.order))


def _progress(session: Session) -> Progress:
    run = session.under_way

    def state(key: str) -> str:
        answer = run.answers.get(key)
        if answer is not None:
            return "right" if answer.state == RIGHT else "noted"
        return "front" if key == run.at else "open"

    place = _place(session)
    return Progress("progress", tuple(state(key) for key in run.order), place, place=place)


def card(world: World, session: Session, item: Item) -> Iterator[Block]:
    """Yield what is said of an item: its hazard first, then the act and what is wanted, the rest after."""
    yield _progress(session)
    yield from _task(world, session, item)
    yield from _with_it(world, item)
    if item.why:
        yield from fold(world, "why", _("Why this item"), lambda: tuple(_why(item)))
    yield from _more(world, session, item)


def _task(world: World, session: Session, item: Item) -> Iterator[Block]:
    """Yield what must be in sight at once: the hazard, what to do, and what is wanted."""
    big = world.person.bench
    yield from words_if("problem", world.args.get("_problem"), tone="bad", bold=True)
    if item.care:
        yield Notice("care", item.care_word, item.care)
    yield Words("action", item.action, role="number" if big else "title", bold=True)
    before = session.noted_before(item, world.history().faults)
    if before:
        yield Words("before", _("Last time: {note}").format(note=before), tone="bad", bold=True)
    how = _("MUST PASS. {how}").format(how=item.how).strip() if item.stop else item.how
    yield from words_if("how", how, role="title" if big else "lead")
    wanted = _("Wanted: {state}.").format(state=within(item.state))
    yield Words("wanted", wanted, role="title" if big else "lead", bold=True)
    if item.ask == "choice":
        yield _choice(world, session.of.key, item)


def _with_it(world: World, item: Item) -> Iterator[Block]:
    """Yield what belongs to the item: its figures, its tool, where it leads, its picture."""
    yield from figure_rows(item, world)
    if item.tool and not world.person.bench:
        yield Words("tool", _("Tool: {tool}.").format(tool=item.tool), tone="second")
    yield from links(item, world)
    yield from words_if("hint", world.args.get("_hint"), tone="second")
    if not world.person.bench:
        yield from explained(world, world.saved, item.picture, item.joint)
    if item.picture == "drive" and not world.person.bench:
        plan = world.kept(belt_plan, world.saved, world.person)
        picture = drive(world.saved, plan, world.style, world.person.scale_unit)
        yield from picture_if("drive", picture, _("The drive to scale, with the pull."))


def _why(item: Item) -> Iterator[Block]:
    fix = _(" If not: {fix}").format(fix=within(item.fix)) if item.fix else ""
    yield Words("why text", item.why + fix)
    if item.source in sources():
        yield Words("source", source_text(item.source, item.where), role="small", tone="second")


def _more(world: World, session: Session, item: Item) -> Iterator[Line]:
    """Yield the same rows from card to card; a stop item cannot be skipped."""
    person = world.person
    if not item.stop:
        yield Line(
            "aside",
            _("Skip this for now"),
            _("The end of the check reminds you."),
            icon="clock",
            act=Answer(ASIDE),
        )
    whole = way_from("ride.run", "whole", list=session.of.key)
    yield replace(whole, detail=items_text(len(session.of.items)))
    yield Line(
        "bench",
        _("Bench view"),
        _("On: large text") if person.bench else _("Large text, read at arm's length"),
        icon="view",
        act=Settle({"bench": not person.bench}),
    )
    yield voice_line(world, "aloud", _("Say items aloud"), said_of(item, world))


def _asked(world: World, key: str, item: Item) -> tuple[Entry | None, float | str | None, str]:
    """Return the entry for what an item asks, what was entered, None while it cannot be used, and what is noted of it.

    Volts that this pack cannot have are refused as well.
    """
    name = typed_key(key, item.key)
    if item.ask != "volts":
        return None, world.typed.get(name) if item.ask == "choice" else None, ""
    entry, found = number_entry(world, name, VOLTS, "V"), typed_value(world, name, VOLTS, "V")
    if found is None:
        return entry, None, ""
    volts = float(found.si)
    fault = volts_fault(item, volts, world.saved)
    if fault:
        return replace(entry, sentence=REFUSALS[fault]), None, ""
    if nearly_empty(item, volts, world.saved):
        return replace(entry, read_back=texts("checks")["said"]["nearly empty"]), volts, NEARLY_EMPTY
    return entry, volts, ""


def _choice(world: World, key: str, item: Item) -> Choice:
    name = typed_key(key, item.key)
    chosen = world.typed.get(name, "")
    options = tuple(Option(text, Write(name, text), text == chosen) for text in item.options)
    return Choice("choice", _("What it is"), options)


def broken(session: Session) -> Page:
    """Return where the run was broken off: go on there, or begin again."""
    run = session.under_way
    where = broke_off(run.place, len(run.order), session.minutes_away())
    at = (
        _("Next: {action}.").format(action=session.of.item(run.at).action)
        if run.at
        else _("Only the sign-off is left.")
    )
    size = size_text(len(run.order), session.of.seconds)
    more = _("{at} All in all {size}. What was answered is kept.").format(at=at, size=size)
    on, again = Button(_("GO ON"), Rerun(again=False)), Button(_("START AGAIN"), Rerun(again=True))
    return Page(
        title=session.of.title,
        blocks=(
            _progress(session),
            Words("action", where, role="title"),
            Words("wanted", more, role="lead"),
        ),
        foot=Foot(main=on, beside=(again,), tall=True),
        places=False,
        awake=True,
        card="broken",
        say="",
    )
