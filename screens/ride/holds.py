"""What keeps a board from being ridden whatever the items of a list say."""

from screens.asked import out_of_use
from screens.state import State


def pack_held(state: State) -> str:
    """Return what is wrong with the pack of the board in use while it is out of use, else ""."""
    out = None if state.is_scratch else out_of_use(state)
    return f"pack {out['sign']}" if out is not None else ""
