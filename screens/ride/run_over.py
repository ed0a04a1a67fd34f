"""The end of a run: its verdict, a count, what is noted, who checked. Nothing here promises anything."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

from logic.checks.session import Session
from logic.log.checks import CARE, FIT, STOPPED
from screens.acts import Act, Back, Both, Go, Swap
from screens.acts.runs import BackOne, Finish
from screens.blocks import Button, Line, Verdict, Words
from screens.holds import due_stops, forbids, open_elsewhere, pack_held, put_off
from screens.page import Foot, Page
from screens.tongue import _
from screens.ways import due_act, later_act
from screens.words import begun
from screens.words import checks as words
from screens.world import World

if TYPE_CHECKING:
    from logic.log import Check

STAYS = _("Ride shows this until a check finds it right. The next check begins with it.")
PROMISE = Words("promise", _("A record of what you looked at, not a promise."), tone="second")
FORMS = {FIT: "right", CARE: "unsure"}
"""How a verdict on riding looks; the third is a no."""


def run_over(world: World) -> Page:
    """Sign `list` off, or show the stopped run that is logged in `row`."""
    of = world.checklist(world.args["list"])
    session = world.session(of.key)
    if "row" in world.args:
        return _logged(world, of.title)
    if session.run is None:
        return Page(title=of.title, blocks=(Words("none", _("No run of this list is under way.")),))
    return _found(world, session)


def _logged(world: World, title: str) -> Page:
    """Return what is in the log. What ended the run is no reason for a great bar."""
    record = world.store.entry(world.args["row"])
    check: Check = record.body
    stopped = check.verdict == STOPPED
    word = (
        (check.halted or _("Stopped"))
        if stopped and not check.fit
        else words.FITNESS.get(check.fit, words.check_text(check))
    )
    reason = _("{item}: {reason}").format(item=check.stopped_by, reason=check.reason) if stopped else ""
    close = Button(_("CLOSE"), Back())
    foot = Foot(beside=(close,), tall=True) if stopped else Foot(main=close, tall=True)
    if world.args.get("about_pack"):
        signs = Go("ride.pack_signs")
        foot = Foot(main=Button(_("TAKE THE PACK OUT OF USE"), signs), beside=(close,), tall=True)
    notes = () if stopped else check.notes
    return Page(
        title=title,
        crown=Verdict(word, reason, form="wrong" if stopped else "right"),
        blocks=(
            *((Words("stays", STAYS),) if stopped else ()),
            *_notes(notes),
            Words("who", _("Checked by you, {at}. In the log.").format(at=f"{record.at:%H:%M}")),
            PROMISE,
        ),
        foot=foot,
        places=False,
        card="logged",
    )


def _found(world: World, session: Session) -> Page:
    """Return what the run found, under what forbids riding."""
    of, found = session.of, session.verdict
    stops = () if pack_held(world) else due_stops(world, of)
    end = _end(world, session)
    items = {item.key: item for item in of.items}
    who = _("{time}. Checked by you, {at}.").format(
        time=words.seconds_text(found.seconds), at=f"{world.now:%H:%M}"
    )
    back = Both((BackOne(), Swap("ride.run", {"list": of.key, "_going_on": True})))
    return Page(
        title=of.title,
        crown=end,
        blocks=(
            *_notes(tuple((items[key].action, note) for key, note in found.notes)),
            *_due(world, session),
            Words("who", who),
            *((Words("fast", _("Done fast: the log says so."), tone="second"),) if found.fast else ()),
            PROMISE,
        ),
        foot=_foot(world, back, fit=end.form != "wrong"),
        places=False,
        back=back,
        card="due" if stops else "found",
    )


def _end(world: World, session: Session) -> Verdict:
    """Return the verdict: what holds the pack first, then what is due, then what the items say."""
    of, found, held = session.of, session.verdict, pack_held(world)
    count = words.headline(found)
    if held:
        text = _("That forbids it. Of the items here, {count}").format(count=count)
        return Verdict(words.held_text(held), text, form="wrong")
    stops = due_stops(world, of)
    if stops:
        word = words.not_yet_text([words.due_name(one, world.saved.sides) for one in stops])
        text = _("That comes first. Of the items here, {count}").format(count=count)
        return Verdict(word, text, form="wrong")
    fit = session.fitness(forbids(world, of), put_off(world, of), open_elsewhere(world, of))
    if fit is None:
        return Verdict(count.removesuffix("."), form="unsure" if found.notes or found.aside else "right")
    why = "; ".join(fit.why)
    said = f"{begun(why)}. {count}" if why else count
    return Verdict(words.FITNESS[fit.word], said, form=FORMS.get(fit.word, "wrong"))


def _notes(notes: tuple[tuple[str, str], ...]) -> Iterator[Line]:
    for place, (action, note) in enumerate(notes):
        yield Line(f"note {place}", action, note, icon="cross")


def _due(world: World, session: Session) -> Iterator[Line]:
    """Yield what is due, the stop items first, then what of them was put off and why."""
    for one in due_stops(world, session.of) or world.due[:2]:
        title = _("Due: {name}").format(name=words.due_name(one, world.saved.sides))
        yield Line(
            f"due {one.key} {one.subject}",
            title,
            words.due_when(one, world.style),
            icon="due",
            act=due_act(one),
        )
    for name, reason in put_off(world, session.of):
        yield Line(f"off {name}", _("Put off: {name}").format(name=name), reason, icon="clock")


def _foot(world: World, back: Act, *, fit: bool) -> Foot:
    one_back = Button(_("BACK ONE"), back)
    stops = due_stops(world, world.checklist(world.args["list"]))
    if pack_held(world):
        return Foot(
            main=Button(_("PACK OUT OF USE:\nwhat to do"), Go("ride.pack_signs")),
            beside=(one_back, Button(_("FINISH: NOT RIDING"), Finish())),
        )
    if stops:
        first = stops[0]
        name = words.due_name(first, world.saved.sides)
        return Foot(
            main=Button(_("{check}\ndue now: do it first").format(check=name.upper()), due_act(first)),
            beside=(one_back, Button(_("PUT IT OFF"), later_act(first))),
            tall=True,
        )
    if not fit:
        return Foot(beside=(one_back, Button(_("FINISH: NOT RIDING"), Finish())), tall=True)
    return Foot(main=Button(_("FINISH"), Finish()), beside=(one_back,), tall=True)
