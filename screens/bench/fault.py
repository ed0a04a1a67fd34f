"""One fault: its hazard, then the likely causes, the easiest to look at first, each with its check."""

from collections.abc import Iterator

from logic.checks.faults import Cause, GuideFault, fault
from screens.acts import Go
from screens.blocks import Block, Line, Notice, Section, Words
from screens.page import Page
from screens.register import PAGES as BUILT
from screens.told.tools import words_line
from screens.tongue import _
from screens.ways import leads_to
from screens.words import STANDING
from screens.world import World

EFFORT = {
    1: _("To check: look and feel"),
    2: _("To check: by hand"),
    3: _("To check: with tools"),
    4: _("To check: take it apart"),
}
PAGES = {
    "ride.tension": _("Tension check"),
    "numbers.gearing": _("Gearing and speed"),
    "board": _("The board's values"),
    "bench.spares": _("Tools and spares"),
    "log": _("The log"),
    "numbers.hold": _("Motor heat on a climb"),
    "ride.pack_signs": _("Pack: stop signs"),
    "bench.power": _("First power: resistor and polarity"),
}


def fault_page(world: World) -> Page:
    """Return the hazard of a fault, which stays in sight, then its causes one after the other."""
    found = fault(world.args["fault"])
    hazard = Notice(key="hazard", word=found.word, text=found.hazard) if found.hazard else None
    return Page(title=found.title, crown=hazard, blocks=tuple(blocks(world, found)))


def blocks(world: World, found: GuideFault) -> Iterator[Block]:
    """Yield each cause, then where all of it comes from."""
    yield Words(key="order", text=_("The easiest check first, from the top."), tone="second")
    for place, cause in enumerate(found.causes):
        yield from _cause(world, f"cause {place}", cause)
    first = found.causes[0]
    source = f"{STANDING[first.standing].capitalize()}: {first.where}."
    yield Words(key="source", text=source, role="small", tone="second")
    yield words_line()


def _cause(world: World, key: str, cause: Cause) -> Iterator[Block]:
    yield Section(key=key, title=cause.name, note=EFFORT[cause.effort])
    yield Words(key=f"{key} check", text=cause.check)
    yield Words(key=f"{key} remedy", text=cause.remedy, bold=True)
    if cause.danger:
        yield Words(key=f"{key} danger", text=_("Do not ride until this is cleared."), tone="bad")
    yield from _link(world, f"{key} link", cause.opens)


def _link(world: World, key: str, opens: str) -> Iterator[Line]:
    kind, _colon, name = opens.partition(":")
    if kind == "list":
        title = world.lists()[name].title
        yield leads_to(key, "ride.run", title, icon="checklist", list=name)
    elif kind == "joint":
        act = Go("bench.joint", {"joint": name})
        yield Line(key=key, title=_("Joint: torque and locker"), icon="driver", act=act)
    elif opens in BUILT:
        yield leads_to(key, opens, PAGES.get(opens, ""))
