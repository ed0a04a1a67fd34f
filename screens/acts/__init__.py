"""Acts: what a person can do on a page, as frozen data. `screens.update` is the one place that carries them out.

A block names its act; the paper hands it to `update(world, act)` when the block is touched. Nothing happens while a page is
made, so a page can be made as often as one likes. Here is what moves from page to page and takes a step back; the others
stand beside it by subject.
"""

from collections.abc import Mapping
from dataclasses import field
from typing import Any, dataclass_transform

from logic.frozen import frozen


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
@frozen
class Act:
    """Something a person does. Each kind of act is frozen as it is defined."""

    def __init_subclass__(cls) -> None:
        """Freeze it."""
        frozen(cls)


class Go(Act):
    """Open a page on top of this one, with its parameters."""

    page: str
    args: Mapping[str, Any] = field(default_factory=dict)


class Swap(Act):
    """Open a page in place of this one. `gather` makes a parameter of the next page out of several of this one, as a list."""

    page: str
    args: Mapping[str, Any] = field(default_factory=dict)
    gather: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


class Back(Act):
    """Go one level back: close what is being entered, else leave the page."""


class Place(Act):
    """Open one of the four places; what was open in another is left."""

    page: str


class Home(Act):
    """Go back to where the way began, as it stands there."""


class Explain(Act):
    """Open the words of the trade that stand on the page in front."""


class Turn(Act):
    """Change parameters of this page; None takes one away. A name that begins with "_" does not outlive a restart."""

    changes: Mapping[str, Any]


class Arrive(Act):
    """A page came in front: sent by whoever shows it, for what must be done before it can be read."""


class Both(Act):
    """Several acts, one after the other."""

    acts: tuple[Act, ...]


class Undo(Act):
    """Take back the step that the bar at the foot names, on the board it was done to."""


class Dismiss(Act):
    """Close the bar at the foot."""
