"""A pack that is taken out of use: every page about packs says so until it is put back."""

from logic.log import Note
from screens.acts.entering import Ask
from screens.acts.keeping import PutBack, Record, TakeOut
from screens.asked import out_key
from screens.tongue import _
from screens.update import does, update
from screens.update.moving import ARRIVALS
from screens.world import World


@does(TakeOut)
def take_out(world: World, act: TakeOut) -> World:
    """Take the pack out of use; the log says why."""
    return _say(
        world,
        {"sign": act.sign, "at": world.now.isoformat()},
        _("Pack taken out of use: {sign}.").format(sign=act.sign),
    )


@does(PutBack)
def put_back(world: World, act: PutBack) -> World:
    """Put the pack into use again; the log says why."""
    return _say(world, None, _("Pack in use again: {why}.").format(why=act.why))


def _say(world: World, out: dict[str, str] | None, note: str) -> World:
    world.store.put(out_key(world), out)
    return update(world.turned(sign=None), Record(Note(note=note)))


def ask_for_energy(world: World) -> World:
    """Open the keypad for the watt-hours where no board is saved: without them nothing can be said of a flight."""
    if not world.is_scratch or world.args.get("_asked") or world.board.pack.marked_energy is not None:
        return world
    return update(world.turned(_asked=True), Ask("pack.marked_energy"))


ARRIVALS["ride.flight"] = ask_for_energy
