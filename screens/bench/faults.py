"""The fault guide, from what one sees or feels to the cause; what the wear of a belt tells."""

from collections.abc import Iterator

from logic.checks.faults import Cause, GuideFault, find_faults
from logic.checks.faults import fault as fault_named
from logic.tables import rows
from screens.acts import Go
from screens.blocks import Block, Field, Line, Notice, Section, Words
from screens.page import Page
from screens.register import PAGES
from screens.told.tools import words_line
from screens.tongue import _, texts
from screens.ways import leads_to, page_title, signs_line, way_from
from screens.words import STANDING
from screens.words.workings import source_text
from screens.world import World

SEARCH = "faults"
"""Key under which the words of the search are typed."""


def faults_page(world: World) -> Page:
    """Return what fits the words, the best first; all of it for no words. A hot or swollen pack stays in sight."""
    return Page(title=_("Fault guide"), crown=signs_line(), blocks=tuple(_found(world.typed.get(SEARCH, ""))))


def _causes(count: int) -> str:
    return _("1 likely cause") if count == 1 else _("{count} likely causes").format(count=count)


def _found(wanted: str) -> Iterator[Block]:
    """Yield the search and what it found; the wear of a belt has a guide of its own."""
    label, hint = _("What do you see or feel?"), _("noise, belt, brake, hot")
    yield Field(SEARCH, label, wanted, hint=hint)
    found = find_faults(wanted)
    if not found:
        yield Words("none", _("Nothing fits these words. Try fewer: belt, brake, hot, link."))
    for fault in found:
        yield leads_to(
            fault.key,
            "bench.fault",
            fault.title,
            _causes(len(fault.causes)),
            fault=fault.key,
        )
    yield way_from("bench.faults", "wear")


def fault_page(world: World) -> Page:
    """Return the hazard of a fault, which stays in sight, then its causes one after the other."""
    found = fault_named(world.args["fault"])
    hazard = Notice("hazard", found.word, found.hazard) if found.hazard else None
    return Page(title=found.title, crown=hazard, blocks=tuple(_all_causes(world, found)))


def _all_causes(world: World, found: GuideFault) -> Iterator[Block]:
    """Yield each cause, then where all of it comes from."""
    yield Words("order", _("The easiest check first, from the top."), tone="second")
    for place, cause in enumerate(found.causes):
        yield from _cause(world, f"cause {place}", cause)
    first = found.causes[0]
    source = f"{STANDING[first.standing].capitalize()}: {first.where}."
    yield Words("source", source, role="small", tone="second")
    yield words_line()


def _cause(world: World, key: str, cause: Cause) -> Iterator[Block]:
    yield Section(key, cause.name, texts("faults")["effort"][str(cause.effort)])
    yield Words(f"{key} check", cause.check)
    yield Words(f"{key} remedy", cause.remedy, bold=True)
    if cause.danger:
        yield Words(f"{key} danger", _("Do not ride until this is cleared."), tone="bad")
    yield from _link(world, f"link {key}", cause.opens)


def _link(world: World, key: str, opens: str) -> Iterator[Line]:
    kind, _colon, name = opens.partition(":")
    if kind == "list":
        yield leads_to(key, "ride.run", world.lists()[name].title, icon="checklist", list=name)
    elif kind == "joint":
        yield Line(key, _("Joint: torque and locker"), icon="driver", act=Go("bench.joint", {"joint": name}))
    elif opens in PAGES:
        yield leads_to(key, opens, page_title(opens))


def wear_page(_world: World) -> Page:
    """Return the signs; a tap shows one."""
    return Page(
        title=_("Wear of a belt"),
        blocks=(
            Words("question", _("What do you see, hear or feel?"), bold=True),
            *(
                leads_to(
                    f"sign {number}", "bench.wear_sign", line.text("sign"), line.text("look"), number=number
                )
                for number, line in enumerate(rows("belt_wear"))
            ),
        ),
    )


def sign_page(world: World) -> Page:
    """Return one sign of the table by its `number`, what to do first."""
    line = rows("belt_wear")[world.args["number"]]
    return Page(
        title=_("Wear of a belt"),
        blocks=(
            Words("sign", line.text("sign"), role="title", bold=True),
            Words("look", line.text("look")),
            Section("do head", _("What to do")),
            Words("do", line.text("do"), role="lead", bold=True),
            Section("causes head", _("Usual causes")),
            Words("causes", line.text("causes")),
            Words("source", source_text(line.source, line.where), role="small", tone="second"),
        ),
    )
