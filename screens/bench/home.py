"""Bench: what the hands are doing to the board. The build stands first, at the stage where it was left."""

from screens.acts import Go
from screens.bench.build import build_of
from screens.blocks import Line
from screens.figure_page import signs_line
from screens.page import Page
from screens.ride.lists import list_state
from screens.search_tool import search_tools
from screens.tongue import _
from screens.world import World

TASKS = (
    ("bench.belt", "gauge", _("Set a belt"), _("By scale, weight, motor or sound; history and wear.")),
    ("bench.joints", "driver", _("Screws"), _("Torque, threadlocker, tool and reach of each.")),
    ("bench.faults", "search", _("Fault guide"), _("From what you see or feel to the cause.")),
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
            Line(
                key="bench.build",
                title=_("Build, stage by stage"),
                detail=detail,
                icon="checklist",
                act=Go("bench.build"),
            ),
            *(
                Line(key=page, title=title, detail=detail, icon=icon, act=Go(page))
                for page, icon, title, detail in TASKS
            ),
            signs_line(),
        ),
        chip=True,
        tools=search_tools(),
    )
