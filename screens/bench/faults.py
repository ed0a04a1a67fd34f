"""The fault guide: what one sees or feels, with a search over the words one would use."""

from collections.abc import Iterator

from logic.checks.faults import find_faults
from screens.blocks import Block, Field, Words
from screens.page import Page
from screens.tongue import _
from screens.ways import leads_to, signs_line
from screens.world import World

SEARCH = "faults"
"""Key under which the words of the search are typed."""


def faults_page(world: World) -> Page:
    """Return what fits the words, the best first; all of it for no words. A hot or swollen pack stays in sight."""
    found = tuple(blocks(world.typed.get(SEARCH, "")))
    return Page(title=_("Fault guide"), crown=signs_line(), blocks=found)


def _causes(count: int) -> str:
    return _("1 likely cause") if count == 1 else _("{count} likely causes").format(count=count)


def blocks(wanted: str) -> Iterator[Block]:
    """Yield the search and what it found; the wear of a belt has a guide of its own."""
    label, hint = _("What do you see or feel?"), _("noise, belt, brake, hot")
    yield Field(key=SEARCH, label=label, text=wanted, hint=hint)
    found = find_faults(wanted)
    if not found:
        yield Words(key="none", text=_("Nothing fits these words. Try fewer: belt, brake, hot, link."))
    for fault in found:
        yield leads_to(
            fault.key,
            "bench.fault",
            fault.title,
            _causes(len(fault.causes)),
            fault=fault.key,
        )
    yield leads_to(
        "wear", "bench.wear", _("Wear of a belt"), _("What its teeth and edges tell."), icon="drive"
    )
