"""Putting something off until the next ride; a stop item only with a reason."""

from logic.log import Snooze
from screens.acts import Back
from screens.acts.entering import Write
from screens.acts.keeping import Record
from screens.blocks import Button, Field, Verdict, Words
from screens.page import Foot, Page
from screens.tongue import _
from screens.world import World


def snooze_page(world: World) -> Page:
    """Return the page that asks why `rule` is put off."""
    rule, name, stop = world.args["rule"], str(world.args["label"]), bool(world.args["stop"])
    key = f"snooze/{rule}"
    reason = world.typed.get(key, "").strip()
    asks = (
        _("This one stops a ride. Say why it can wait; the log keeps the reason.")
        if stop
        else _("It comes back after the next ride. A reason is optional.")
    )
    record = Record(
        Snooze(rule=rule, name=name, reason=reason, stop=stop),
        (Write(key, ""), Back()),
        undo=_("Put off until the next ride"),
    )
    wanted = stop and not reason
    why = _("A reason is wanted: this one stops a ride.") if wanted else ""
    return Page(
        title=_("Put off"),
        crown=Verdict(key="name", word=name),
        blocks=(
            Words(key="asks", text=asks, role="lead"),
            Field(key=key, label=_("Why it can wait"), text=world.typed.get(key, "")),
        ),
        foot=Foot(main=Button(_("Put off until the next ride"), None if wanted else record, why)),
        places=False,
    )
