"""The card for the counter: watt-hours to be read at arm's length, and the same as a text to send."""

from screens.acts.outside import Share
from screens.asked import out_of_use
from screens.blocks import Button, Figure, Words
from screens.page import Foot, Page
from screens.ride.flight import may_fly
from screens.saved_board import untried
from screens.tongue import _
from screens.words.flight import as_text, counted, large_energy, lines, watt_hours
from screens.world import World


def flight_card(world: World) -> Page:
    """Return the figure that counts, its arithmetic and how the packs are protected; nothing where there is no card to show."""
    title = _("Lithium-ion packs")
    board, style, today = untried(world).board, world.style, world.now.date().isoformat()
    found = world.kept(may_fly, board, world.answers, out_of_use(world) is not None)
    if not found.cards:
        none = _("There is no card to show for these packs.")
        return Page(title=title, blocks=(Words(key="none", text=none, role="title"),), places=False)
    chemistry = "" if board.pack.chemistry is None else str(board.pack.chemistry.si)
    said = world.args.get("_said", "")
    text = as_text(found, "" if world.is_scratch else board.name, chemistry, style, today)
    number = watt_hours(large_energy(found), style)
    return Page(
        title=title,
        crown=Figure(key="energy", label=counted(found), number=number, unit="Wh", held_up=True),
        blocks=(
            *(
                Words(key=f"line {place}", text=line, role="lead", bold=True)
                for place, line in enumerate(lines(found, chemistry, style, today))
                if line
            ),
            *((Words(key="said", text=said, tone="second"),) if said else ()),
        ),
        foot=Foot(beside=(Button(_("Send as a text"), Share(_("Packs for a flight"), text), icon="send"),)),
        places=False,
    )
