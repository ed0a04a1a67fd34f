"""update(world, act) is the one place where anything changes. It writes to the store first, then returns the next World.

Each kind of act has one function, in the module of its subject, marked `@does(TheAct)`.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Any, TypeVar

from screens.acts import Act, Both
from screens.acts.outside import Wanted
from screens.world import World

Do = TypeVar("Do", bound=Callable[[World, Any], World])

_DOES: dict[type[Act], Callable[[World, Any], World]] = {}


def does(kind: type[Act]) -> Callable[[Do], Do]:
    """Mark the function that carries an act out."""

    def mark(function: Do) -> Do:
        _DOES[kind] = function
        return function

    return mark


@cache
def _load() -> None:
    """Load every module here, which marks its functions: at the first act, since the first page is shown without any."""
    for module in iter_modules(__path__):
        import_module(f"screens.update.{module.name}")


def update(world: World, act: Act) -> World:
    """Return the world after an act; what had to be stored is stored when this returns.

    Raises InputError for a value that cannot be used, and whatever the store raises when it cannot write: nothing has changed
    then.
    """
    _load()
    if isinstance(act, Both):
        for one in act.acts:
            world = update(world, one)
        return world
    if isinstance(act, Wanted):
        return replace(world, out=(*world.out, act))
    return _DOES[type(act)](world, act)
