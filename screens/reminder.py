"""One note a day at most, when the app is put away with something overdue on a board that is ridden."""

from datetime import timedelta

from screens.acts.keeping import Remember
from screens.phone.notices import notice
from screens.tongue import _
from screens.update import update
from screens.words.checks import due_name
from screens.world import World

RIDDEN_WITHIN = timedelta(days=14)


def remind(world: World) -> bool:
    """Show the note if the person switched it on and it is due; return whether one was shown.

    Nothing runs while the app is away: the note is given as it goes.
    """
    due = world.due
    today = f"{world.clock():%Y-%m-%d}"
    if not world.person.remind or not due or world.store.get("reminded") == today:
        return False
    last = world.last("ride") or world.last("check", base="before_ride")
    if last is None or abs(world.clock() - last.at) > RIDDEN_WITHIN:
        return False
    if not notice(_("Due on {name}").format(name=world.saved.name), due_name(due[0], world.saved.sides)):
        return False
    update(world, Remember("reminded", today))
    return True
