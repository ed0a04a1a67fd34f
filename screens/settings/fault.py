"""What went wrong the last time, with the way to send it."""

from screens.acts import Back
from screens.acts.outside import Share
from screens.blocks import Button, Words
from screens.faults import broken
from screens.page import Foot, Page
from screens.showing import fold
from screens.tongue import _
from screens.ways import words_if
from screens.world import World


def fault_page(world: World) -> Page:
    """Return the record; nothing of it is sent by itself."""
    record = str(world.args.get("_record", ""))
    return Page(
        title=_("Last time"),
        blocks=(
            *words_if("said", world.args.get("_said"), bold=True),
            Words("what", _("Deckhand stopped on a fault of its own."), role="lead", bold=True),
            Words("saved", _("What you saved is there. Nothing is sent by itself.")),
            Words("send", _("Share the record to have the fault mended. Read it first if you like.")),
            *fold(world, "record", _("Read the record"), lambda: (Words("text", broken(record)),)),
        ),
        foot=Foot(
            main=Button(
                _("Share the record"),
                Share(_("Record of a fault"), record) if record else None,
                _("There is none."),
            ),
            beside=(Button(_("Go on"), Back()),),
        ),
        places=False,
    )
