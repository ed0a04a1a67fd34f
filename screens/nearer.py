"""What brings an answer nearer while a board lacks values: round after round, each with how many values it asks for."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import field

from logic.answers.reading import Item, Open
from logic.frozen import frozen
from screens.acts.entering import Ask
from screens.asking import field_of, value_line, value_of
from screens.blocks import Block, Figure, Line
from screens.showing import figure, fold, once
from screens.tongue import _
from screens.world import World

Rounds = Mapping[tuple[str, ...], str]
"""What is asked for, one round after the other, and what each is called."""

SHOWN = 3
"""Values that a headline names of those it waits for."""


def lacks_values(full: Item) -> bool:
    """Tell whether the full answer only lacks values."""
    return isinstance(full, Open) and bool(full.missing)


def not_yet(item: Open, label: str, *, grey: bool) -> Figure:
    """Return a headline before there is a number: how many values give one, and which; a touch begins."""
    names = [field_of(key).label for key in item.missing]
    more = len(names) - SHOWN
    listed = ", ".join((names[0], *(f"{name[0].lower()}{name[1:]}" for name in names[1:SHOWN])))
    said = _("{names} and {more} more.").format(names=listed, more=more) if more > 0 else f"{listed}."
    return Figure(
        item.name,
        label,
        str(len(names)),
        unit=_("value to give") if len(names) == 1 else _("values to give"),
        detail=_("Tap to begin: {names}").format(names=said),
        act=Ask(item.missing[0]),
        grey=grey,
        reserve=True,
    )


def so_far(world: World, item: Item, label: str, detail: str, *, grey: bool = False) -> Figure:
    """Return the best figure so far as a headline; before there is one, how many values give it."""
    if isinstance(item, Open) and item.missing:
        return not_yet(item, label, grey=grey)
    shown = figure(world, item, label, detail=detail, grey=grey, row=False, reserve=True)
    assert isinstance(shown, Figure)  # noqa: S101  (row=False makes one)
    return shown


def nearer(world: World, rounds: Rounds) -> tuple[Line, ...]:
    """Return the first round that lacks values, nothing when none does."""
    for keys, title in rounds.items():
        lacks = [key for key in keys if value_of(world, key) is None]
        if lacks:
            count = _("1 value") if len(lacks) == 1 else _("{count} values").format(count=len(lacks))
            return (Line(f"nearer {keys[0]}", title, value=count, act=Ask(lacks[0])),)
    return ()


def taken(world: World, keys: Sequence[str]) -> tuple[Block, ...]:
    """Return which values are taken as usual, folded: each can be entered there."""
    if not keys:
        return ()
    note = _("They make it a band. Each one that you enter makes it more exact.")
    one, more = _("1 usual value stands in"), _("{count} usual values stand in")
    title = one if len(keys) == 1 else more.format(count=len(keys))
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


@frozen
class Near:
    """The first figure of a page while its board lacks values, and what is asked for, one round after the other."""

    rounds: Rounds = field(default_factory=dict)
    crown: Figure | None = None
    assumed: tuple[str, ...] = ()

    def more(self, world: World) -> tuple[Block, ...]:
        """Return what makes the figure more exact, and what stands in; nothing where the answer is whole."""
        return () if self.crown is None else (*nearer(world, self.rounds), *taken(world, self.assumed))

    def following(self, world: World) -> str:
        """Return the value that follows the one being entered."""
        return following(world, self.rounds)
