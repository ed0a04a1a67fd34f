"""What every page that tries values has: the foot that says what is tried, and keeps or drops it."""

import tomllib
from collections.abc import Sequence
from functools import cache
from typing import Any

from logic.board import Value, board_fields
from logic.errors import InputError
from screens.acts import Go
from screens.acts.entering import Ask, Done, Put
from screens.acts.keeping import Drop, Keep
from screens.asking import entry_of
from screens.blocks import Button, Words
from screens.page import Foot
from screens.tongue import ASSETS, _
from screens.words import label_of, refusal
from screens.world import World

KEEP_THIS_BOARD = Go("board.name", {"purpose": "keep"})
"""Gives what was typed without any board a name."""


def trying(world: World) -> str:
    """Return which values are on trial: it stands over the bars that keep or drop it, where nothing moves when it comes."""
    if world.is_scratch or not world.trial:
        return ""
    return _("Trying: {values}").format(values=", ".join(label_of(key) for key in world.trial))


def values_heading(world: World, title: str = "") -> str:
    """Return what stands over the values: where no board is saved they are from none."""
    if world.is_scratch:
        return _("Values: tap one to change it")
    return title or _("From the board: tap one to try another value")


def values_of(page: str) -> tuple[str, ...]:
    """Return the values that a page of figures rests on, in the order in which assets/page_values.toml has them."""
    return tuple(page_rows()[page]["values"])


SAID = frozenset({"title", "stop", "first_title", "values_title"})
"""What of a row is in words; the rest is names."""


@cache
def page_rows() -> dict[str, dict[str, Any]]:
    """Return what assets/page_values.toml says of each page of figures."""
    rows = tomllib.loads((ASSETS / "page_values.toml").read_text(encoding="utf-8"))
    return {
        page: {name: _(told) if name in SAID else told for name, told in row.items()}
        for page, row in rows.items()
    }


def faults_said(world: World, faults: Sequence[InputError]) -> tuple[Words, ...]:
    """Return what does not fit together on the board."""
    return tuple(
        Words(f"fault {place}", refusal(fault, world.style), tone="bad", bold=True)
        for place, fault in enumerate(faults)
    )


def try_measured(
    world: World, key: str, found: float, shown: str, note: str = ""
) -> tuple[Button | None, tuple[Words, ...]]:
    """Return the bar that tries what was measured, unless the board has it; or why the board cannot have it."""
    present = world.board.value(key)
    if present is not None and present.si == found:
        return None, ()
    try:
        board_fields()[key].check(found)
    except InputError as problem:
        return None, (Words("refused", refusal(problem, world.style), tone="bad", bold=True),)
    text = _("Try {value} on the board").format(value=shown)
    return Button(text, Put(key, Value(float(found), "measured", note=note))), ()


def trial_foot(world: World, *, fits: bool = True, offer: Button | None = None, then: str = "") -> Foot:
    """Return what is being entered, else the bars that keep or drop the trial, else nothing.

    `offer` is what can be laid over the board: it comes before the trial that there is. `then` is the value that is asked for
    after the one being entered.
    """
    entry = entry_of(world)
    if entry is not None and then:
        return Foot(main=Button(_("Next"), Ask(then)), beside=(Button(_("Done"), Done()),), entry=entry)
    if entry is not None:
        return Foot(main=Button(_("Done"), Done()), entry=entry)
    if not world.trial:
        return Foot(main=offer)
    if world.is_scratch:
        drop, kept = Button(_("Clear all values"), Drop()), Button(_("Keep this board"), KEEP_THIS_BOARD)
    else:
        drop, kept = Button(_("Drop the trial"), Drop()), Button(_("Keep on board"), Keep())
    # What does not fit together can be kept, but it is not what is offered first.
    if offer is not None or not fits:
        return Foot(main=offer, beside=(drop, kept), note=trying(world))
    return Foot(main=kept, beside=(drop,), note=trying(world))
