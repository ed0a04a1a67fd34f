"""Bench: what the hands are doing to the board. The build stands first, at the stage where it was left."""

from screens.bench.build import build_of
from screens.page import Page
from screens.ride.lists import list_state
from screens.search_tool import search_tools
from screens.tongue import _
from screens.ways import leads_to, signs_line
from screens.world import World

TASKS = (
    ("bench.belt", "gauge", _("Set a belt"), _("By scale, weight, motor or sound; history and wear.")),
    ("bench.joints", "driver", _("Screws"), _("Torque, threadlocker, tool and reach of each.")),
    ("bench.faults", "fault", _("Fault guide"), _("From what you see or feel to the cause.")),
    ("bench.spares", "bench", _("Tools and spares"), _("What this board needs, to pack or share.")),
)
"""Page, icon, title and detail of each task."""


def bench_page(world: World) -> Page:
    """Return the tasks of the bench."""
    build = build_of(world)
    of = world.checklist(build.onward)
    begun = build.states[build.onward] == "front"
    detail = f"{of.title}. {list_state(world, of)}" if begun else f"{build.text}."
    return Page(
        title=_("Bench"),
        blocks=(
            leads_to("bench.build", "bench.build", _("Build, stage by stage"), detail, icon="checklist"),
            *(leads_to(page, page, title, detail, icon=icon) for page, icon, title, detail in TASKS),
            signs_line(),
        ),
        chip=True,
        tools=search_tools(),
    )
