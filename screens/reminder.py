"""One note a day at most, when the app is put away with something overdue on a board that is ridden."""

from datetime import timedelta

from screens.phone.notices import notice
from screens.state import State
from screens.words.checks import due_name

RIDDEN_WITHIN = timedelta(days=14)


def remind(state: State) -> bool:
    """Show the note if the person switched it on and it is due; return whether one was shown.

    Nothing runs while the app is away: the note is given as it goes.
    """
    due = state.due
    today = f"{state.clock():%Y-%m-%d}"
    if not state.person.remind or not due or state.store.get("reminded") == today:
        return False
    last = state.last("ride") or state.last("check", base="before_ride")
    if last is None or abs(state.clock() - last.at) > RIDDEN_WITHIN:
        return False
    if not notice(f"Due on {state.saved.name}", due_name(due[0], state.saved.sides)):
        return False
    state.remember("reminded", today)
    return True
