"""The way to what clears something that is due."""

from logic.upkeep import Due
from screens.acts import Go


def due_act(due: Due) -> Go:
    """Return the act that opens what clears a rule: a checklist, or a page."""
    if due.opens.startswith("list:"):
        return Go("ride.run", {"list": due.opens.removeprefix("list:")})
    return Go(due.opens)


def later_act(due: Due) -> Go:
    """Return the act that opens the page where it is put off."""
    return Go("log.snooze", {"rule": due.key, "label": due.name, "stop": due.stop})
