"""The best top speed so far, while a board lacks what the full answer needs; and what would bring it nearer."""

from collections.abc import Sequence

from logic.answers.first_speed import FIRST, LIMITS, WEIGHT, FirstSpeed
from logic.answers.reading import Item, Open, Result
from screens.acts import Ask
from screens.asking import figure, value_of, working
from screens.blocks import Block, Figure, Line, Words
from screens.tongue import _
from screens.words import label_of
from screens.world import World

ROUNDS = (FIRST, WEIGHT, LIMITS)
"""What is asked for, one round after the other: each brings the speed nearer."""
NEARER = {
    FIRST: _("Give them one by one"),
    WEIGHT: _("Nearer with the weights"),
    LIMITS: _("Nearer with the limits of controller and pack"),
}
LABELS = {
    "nothing": _("Top speed"),
    "without load": _("Top speed without load, about"),
    "with weight": _("Top speed, loaded, about"),
    "with limits": _("Top speed, loaded, about"),
}


def lacks_values(full: Item) -> bool:
    """Tell whether the full answer only lacks values."""
    return isinstance(full, Open) and bool(full.missing)


def speed_crown(world: World, first: FirstSpeed, *, grey: bool) -> Figure:
    """Return the best speed so far; before there is one, how many values give it."""
    label, item = LABELS[first.level], first.item
    shown = figure(world, item, label, detail=_detail(world, first), grey=grey, row=False, reserve=True)
    assert isinstance(shown, Figure)  # noqa: S101  (row=False makes one)
    if isinstance(item, Open) and item.missing:
        count = len(item.missing)
        text = (
            _("{count} values give a first speed.") if count > 1 else _("One value more gives a first speed.")
        )
        return Figure(
            key=shown.key,
            label=label,
            number="–",
            detail=text.format(count=count),
            act=Ask(item.missing[0]),
            grey=grey,
            reserve=True,
        )
    return shown


def _detail(world: World, first: FirstSpeed) -> str:
    """Return what the speed holds for."""
    road = first.road
    if first.level == "without load" and isinstance(road, Result) and road.band:
        low, high = (world.style.number(end, road.quantity) for end in road.band)
        return _("On the road 80 to 95 % of it: {low} to {high}.").format(low=low, high=high)
    if first.level == "with weight":
        return _("Level road, no wind. No limit is entered yet.")
    return _("Level road, no wind.")


def nearer(world: World, first: FirstSpeed) -> tuple[Block, ...]:
    """Return what would bring the speed nearer, and what is taken as usual."""
    blocks: list[Block] = []
    if first.level == "without load":
        blocks.append(
            Line(
                key="on road",
                title=_("On the road"),
                value=_road(world, first.road),
                act=working(first.road, _("On the road")),
            )
        )
    for keys, title in NEARER.items():
        lacks = [key for key in keys if value_of(world, key) is None]
        if lacks:
            count = _("1 value") if len(lacks) == 1 else _("{count} values").format(count=len(lacks))
            blocks.append(Line(key=f"nearer {keys[0]}", title=title, value=count, act=Ask(lacks[0])))
            break
    if first.assumed:
        names = ", ".join(label_of(key).lower() for key in first.assumed)
        text = _("Taken as usual, with both ends of what is usual: {names}.").format(names=names)
        blocks.append(Words(key="usual", text=text, tone="second"))
    return tuple(blocks)


def _road(world: World, road: Item) -> str:
    if not isinstance(road, Result) or not road.band:
        return ""
    low, high = (world.style.shown(end, road.quantity) for end in road.band)
    return _("{low} to {high}").format(low=low.number, high=high)


def round_of(world: World, rounds: Sequence[Sequence[str]] = ROUNDS) -> str:
    """Return the value that follows the one being entered in its round, "" for none."""
    now = "" if world.asking is None else world.asking.key
    keys = next((keys for keys in rounds if now in keys), ())
    place = keys.index(now) if now in keys else 0
    rest = (*keys[place + 1 :], *keys[:place])
    return next((key for key in rest if value_of(world, key) is None), "")
