"""Every checklist of the kerb, with when it was last run; the build's stages are on Bench."""

from logic.checks.lists import Checklist
from logic.checks.run import fit, pause_of
from logic.checks.session import run_under_way
from screens.acts import Go
from screens.blocks import Line
from screens.page import Page
from screens.tongue import _
from screens.ways import leads_to
from screens.words.checks import broke_off, check_text, items_text
from screens.words.tension import ago
from screens.world import World

FIRST = ("before_ride", "after_ride", "first_recheck", "after_crash", "after_water", "travel", "storage")


def lists_page(world: World) -> Page:
    """Return the lists, ours first in the order of use, then one's own."""
    lists = world.lists()
    order = [key for key in FIRST if key in lists]
    order += [key for key, of in lists.items() if of.place == "ride" and key not in order]
    return Page(
        title=_("All checks"),
        blocks=(
            *(_line(world, key, lists[key]) for key in order),
            leads_to(
                "own", "settings.lists", _("My own lists"), _("Copy one of these and change it"), icon="edit"
            ),
        ),
    )


def _line(world: World, key: str, of: Checklist) -> Line:
    act = Go("ride.run", {"list": key})
    return Line(key=key, title=of.title, detail=list_state(world, of), icon="checklist", act=act)


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
