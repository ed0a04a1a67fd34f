"""What stands in for a page that failed: what is safe, the record of the fault, and the way to send it."""

from logic.store.errors import CannotStore
from screens import faults
from screens.acts.outside import Share
from screens.blocks import Button, Words
from screens.page import Foot, Page
from screens.showing import fold
from screens.tongue import _
from screens.words.storage import sentence
from screens.world import World


def lost_page(world: World, problem: Exception) -> Page:
    """Return the page in place of one that met a problem. A storage that refuses is no fault: one sentence says why."""
    title = _("This page cannot be shown")
    if isinstance(problem, CannotStore):
        return Page(title=title, blocks=(Words("lost", sentence(problem), role="lead"),), lost=True)
    record = faults.record(problem, world.clock())
    said = str(world.args.get("_said", ""))
    return Page(
        title=title,
        blocks=(
            *((Words("said", said, bold=True),) if said else ()),
            Words(
                "lost",
                _("Something in it went wrong. Nothing that was saved is lost. Go back and try another way."),
                role="lead",
            ),
            *fold(
                world,
                "fault record",
                _("Read the record of the fault"),
                lambda: (Words("record", faults.broken(record)),),
            ),
        ),
        foot=Foot(beside=(Button(_("Share the record"), Share(_("Record of a fault"), record)),)),
        lost=True,
    )
