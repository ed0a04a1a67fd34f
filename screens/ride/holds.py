"""What keeps a board from being ridden whatever the items of a list say."""

from logic.checks.lists import Checklist
from logic.checks.open_faults import OpenFault
from logic.checks.verdict import BEFORE_RIDE
from logic.upkeep import Due, upkeep
from screens.asked import out_of_use
from screens.state import State
from screens.words.checks import due_name


def pack_held(state: State) -> str:
    """Return what is wrong with the pack of the board in use while it is out of use, else ""."""
    out = None if state.is_scratch else out_of_use(state)
    return f"pack {out['sign']}" if out is not None else ""


def forbids(state: State, of: Checklist) -> str:
    """Return what forbids riding whatever a list finds: a pack out of use, or a fault that another list left open."""
    stops = [] if of.base != BEFORE_RIDE else [one.text for one in _elsewhere(state, of) if one.stops]
    return pack_held(state) or "; ".join(stops)


def open_elsewhere(state: State, of: Checklist) -> tuple[str, ...]:
    """Return what other lists noted and none has found right since."""
    return tuple(one.text for one in _elsewhere(state, of) if not one.stops)


def _elsewhere(state: State, of: Checklist) -> list[OpenFault]:
    return [] if state.is_scratch else [one for one in state.history().faults if one.base != of.base]


def due_stops(state: State, of: Checklist) -> tuple[Due, ...]:
    """Return the checks that are due and stop the ride that a list is for, looked up this moment."""
    return tuple(one for one in _stops(state, of) if one.due)


def put_off(state: State, of: Checklist) -> tuple[tuple[str, str], ...]:
    """Return the checks that would stop the ride and were put off, each with the reason in the log."""
    found = []
    for one in _stops(state, of):
        record = state.last("snooze", rule=one.key) if one.snoozed else None
        if record is not None:
            found.append((due_name(one, state.saved.sides), record.body.reason))
    return tuple(found)


def _stops(state: State, of: Checklist) -> list[Due]:
    if state.is_scratch or of.base != BEFORE_RIDE:
        return []
    found = upkeep(state.history(), state.saved.sides, state.clock())
    return [one for one in found if one.stop and one.share >= 1.0]
