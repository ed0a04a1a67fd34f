"""Every checklist of the kerb, with when it was last run, and all items of a run under way."""

from logic.checks.lists import Checklist
from logic.checks.run import ASIDE, RIGHT, fit, pause_of
from logic.checks.session import run_under_way
from screens.acts import Back, Both, Go
from screens.acts.runs import PutInFront
from screens.blocks import Line, Words
from screens.page import Page
from screens.tongue import _
from screens.ways import ways_from
from screens.words.checks import broke_off, check_text, items_text
from screens.words.tension import ago
from screens.world import World

FIRST = ("before_ride", "after_ride", "first_recheck", "after_crash", "after_water", "travel", "storage")
ICONS = {"right": "ticked", "noted": "cross", "failed": "cross", "aside": "clock"}


def lists_page(world: World) -> Page:
    """Return the lists, ours first in the order of use, then one's own."""
    lists = world.lists()
    order = [key for key in FIRST if key in lists]
    order += [key for key, of in lists.items() if of.place == "ride" and key not in order]
    return Page(
        title=_("All checks"),
        blocks=(
            *(_line(world, key, lists[key]) for key in order),
            *ways_from("ride.lists"),
        ),
    )


def _line(world: World, key: str, of: Checklist) -> Line:
    return Line(key, of.title, list_state(world, of), icon="checklist", act=Go("ride.run", {"list": key}))


def list_state(world: World, of: Checklist) -> str:
    """Return where a list, fitted to the board in use, stands: broken off, or what it found last and when."""
    of, now = world.checklist(of.key), world.clock()
    saved = run_under_way(world.store, world.saved.id, of.key)
    if saved is not None and saved.answers:
        run = fit(saved, of)
        return broke_off(run.place, len(run.order), int(pause_of(run, now).total_seconds() // 60))
    last = world.last("check", list=of.key)
    if last is None:
        return f"{items_text(len(of.items))}, {of.pause}."
    return f"{check_text(last.body)}, {ago(last.at, now)}."


def run_list(world: World) -> Page:
    """Return each item with its answer; none while no run of the list is under way."""
    of = world.checklist(world.args["list"])
    run = world.session(of.key).run
    if run is None:
        return Page(title=of.title, blocks=(Words("none", _("No run of this list is under way.")),))
    done = sum(answer.state == RIGHT for answer in run.answers.values())
    summary = _("{done} of {all} right. Pause: {pause}.").format(
        done=done, all=len(run.order), pause=of.pause
    )
    lines = []
    for key in run.order:
        item, answer = of.item(key), run.answers.get(key)
        said = (
            item.state
            if answer is None
            else _("Skipped")
            if answer.state == ASIDE
            else answer.note or item.state
        )
        must = _("Must pass. ") if item.stop else ""
        icon = "unticked" if answer is None else ICONS[answer.state]
        lines.append(Line(key, item.action, must + said, icon=icon, act=Both((Back(), PutInFront(key)))))
    back = _("A tap opens the item and takes back what was said of it.")
    return Page(
        title=of.title,
        blocks=(
            Words("summary", summary, bold=True),
            Words("back", back, tone="second"),
            *lines,
        ),
        places=False,
    )
