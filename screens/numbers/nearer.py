"""What brings an answer nearer while a board lacks values: round after round, each with how many values it asks for."""

from collections.abc import Iterable, Mapping, Sequence

from logic.answers.reading import Item, Open
from screens.acts.entering import Ask
from screens.asking import value_line, value_of
from screens.blocks import Block, Figure, Line
from screens.showing import fold, once
from screens.tongue import _
from screens.world import World

Rounds = Mapping[tuple[str, ...], str]
"""What is asked for, one round after the other, and what each is called."""


def lacks_values(full: Item) -> bool:
    """Tell whether the full answer only lacks values."""
    return isinstance(full, Open) and bool(full.missing)


def not_yet(item: Open, label: str, one: str, more: str, *, grey: bool) -> Figure:
    """Return a headline before there is a number: how many values give one, `more` with {count} in it."""
    count = len(item.missing)
    text = one if count == 1 else more.format(count=count)
    return Figure(
        key=item.name, label=label, number="–", detail=text, act=Ask(item.missing[0]), grey=grey, reserve=True
    )


def nearer(world: World, rounds: Rounds) -> tuple[Line, ...]:
    """Return the first round that lacks values, nothing when none does."""
    for keys, title in rounds.items():
        lacks = [key for key in keys if value_of(world, key) is None]
        if lacks:
            count = _("1 value") if len(lacks) == 1 else _("{count} values").format(count=len(lacks))
            return (Line(key=f"nearer {keys[0]}", title=title, value=count, act=Ask(lacks[0])),)
    return ()


def taken(world: World, keys: Sequence[str]) -> tuple[Block, ...]:
    """Return which values are taken as usual, folded: each can be entered there."""
    if not keys:
        return ()
    note = _("By size of motor and kind of cell, with both ends of what is usual.")
    title = _("{count} values are taken as usual").format(count=len(keys))
    return fold(
        world, "usual", title, lambda: (once(value_line(world, key), f"usual {key}") for key in keys), note
    )


def following(world: World, rounds: Iterable[tuple[str, ...]]) -> str:
    """Return the value that follows the one being entered in its round, "" for none."""
    now = "" if world.asking is None else world.asking.key
    keys = next((keys for keys in rounds if now in keys), ())
    place = keys.index(now) if now in keys else 0
    rest = (*keys[place + 1 :], *keys[:place])
    return next((key for key in rest if value_of(world, key) is None), "")
