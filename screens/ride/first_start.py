"""Ride without a board: what do you want now. Each row leads to an answer that needs no saved board."""

from screens.acts import Go
from screens.acts.boards import Examples
from screens.blocks import Block, Button, Line
from screens.page import Foot, Page
from screens.search_tool import search_tools
from screens.tongue import _
from screens.ways import signs_line
from screens.world import World

WANTED = (
    ("screw", "driver", _("A screw"), _("Torque and threadlocker"), Go("bench.joints")),
    ("belt", "gauge", _("A belt"), _("Loose, right or tight"), Go("ride.tension")),
    ("before", "checklist", _("Before a ride"), "", Go("ride.run", {"list": "before_ride"})),
    (
        "speed",
        "speed",
        _("Speed and range"),
        _("From Kv, cells, teeth, wheel"),
        Go("numbers.gearing"),
    ),
    ("wrong", "fault", _("Something is wrong"), _("Hot motor, noise, weak brake"), Go("bench.faults")),
    ("fly", "flight", _("May it fly?"), _("From the Wh on the pack"), Go("ride.flight")),
)
"""Key, picture, title, detail and way of each row."""


def first_start(world: World, pinned: Block | None) -> Page:
    """Return the rows; the red line for a pack, or what forbids riding, stays in sight above them."""
    of = world.checklist("before_ride")
    size = _("{count} items to check").format(count=len(of.items))
    red = signs_line()
    rows = tuple(
        Line(key, title, detail or size, icon=icon, act=act) for key, icon, title, detail, act in WANTED
    )
    return Page(
        title=_("What do you want now?"),
        crown=pinned or red,
        whole=WANTED[-1][0],
        aside=frozenset(row.key for row in rows[len(rows) // 2 :]),
        blocks=rows if pinned is None else (red, *rows),
        tools=search_tools(),
        foot=Foot(
            beside=(
                Button(_("My board"), Go("board.name", {"purpose": "new"})),
                Button(_("An example"), Examples()),
            )
        ),
    )
