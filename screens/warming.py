"""What the first frame did not need is loaded once it stands, so that the first page opens as fast as any."""

from collections.abc import Iterator
from contextlib import suppress
from typing import TYPE_CHECKING

from logic.store.errors import CannotStore
from screens.acts import Both
from screens.acts.keeping import Remember
from screens.paper.ink import width_of
from screens.paper.scale import LEAD, NUMBERS, SMALL, TEXT, TITLE, grown
from screens.register import page_function
from screens.theme import theme
from screens.tongue import _
from screens.update import update

if TYPE_CHECKING:
    from screens.front import Front

PAGES = ("ride.tension", "numbers.gearing", "ride.run", "bench.joints", "bench.belt")
"""Pages that are loaded before they are asked for."""

UNREAD = _("Something saved could not be read. It is kept: see Files and copies.")


def warm(front: "Front") -> Iterator[None]:
    """Load one piece for each frame: a touch that comes meanwhile is heard between them."""
    _tell_unread(front)
    # From now on a file that is dropped on the window is opened.
    assert front.outside  # noqa: S101  (made when it is first asked for)
    yield
    for size in (SMALL, TEXT, LEAD, TITLE, *NUMBERS):
        for bold in (False, True):
            width_of("0", grown(size, theme.scale), bold)
    yield
    update(front.world, Both(()))
    for name in PAGES:
        yield
        page_function(name)


def _tell_unread(front: "Front") -> None:
    """Say once what could not be read, or was saved from a damaged file: where it is found."""
    from logic.read_back import unread  # noqa: PLC0415  (not before the first frame)

    world = front.world
    with suppress(CannotStore):
        count = len(unread(world.store, entries=0)) + bool(world.store.get("salvaged", {}))
        if count > world.store.get("unread told", 0) and world.undo is None:
            update(world, Remember("unread told", count))
            front.tell(UNREAD)
