"""Storage and care of packs. The stop signs have a page of their own."""

from logic.answers.care import advice
from screens.blocks import Section, Words
from screens.page import Page
from screens.tongue import _
from screens.ways import signs_line
from screens.world import World


def care_page(_world: World) -> Page:
    """Return at what charge a pack is stored, then how, and what to mind while it charges."""
    first, *rest = advice("storage")
    return Page(
        title=_("Storage and care"),
        crown=Words(key="head", text=first.text, role="lead", bold=True),
        blocks=(
            *(Words(key=f"storage {row.key}", text=row.text) for row in rest),
            Section(key="charging", title=_("Charging")),
            *(Words(key=f"charge {row.key}", text=row.text) for row in advice("charge")),
            signs_line(),
        ),
    )
