"""What pages share of showing answers: figures with their standing and their change, and what is folded away."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Any

from logic.answers.reading import Item, Open, Result
from logic.units import Shown
from screens.acts import Act, Go, Turn
from screens.acts.entering import Ask
from screens.blocks import Block, Figure, FigureRow, Fold, Words
from screens.tongue import _
from screens.words import Style, offer, refusal, sureness
from screens.words.figures import OUTCOMES
from screens.world import World


def working(item: Item, label: str) -> Act | None:
    """Return the act that opens the working of a result; of an open one, to the first value it lacks."""
    if isinstance(item, Result):
        return Go("working", {"item": item, "label": label})
    return Ask(item.missing[0]) if item.missing else None


def why(item: Open, style: Style) -> str:
    """Return what stands in the way of a number."""
    if item.outcome:
        return OUTCOMES[item.outcome]
    if item.problem is not None:
        return refusal(item.problem, style)
    return offer(item.missing) if item.missing else ""


LONG = 120.0
"""Seconds from which a time is told in minutes."""


def told_in(item: Item) -> str:
    """Return the unit of a result where it is not the one its quantity is read in."""
    return "min" if isinstance(item, Result) and item.quantity == "time" and item.value >= LONG else ""


def spanned(item: Result, style: Style, unit: str = "") -> Shown:
    """Return what is shown of a result: both ends of its band, where it has one."""
    shown = style.shown(item.value, item.quantity, unit=unit)
    if not item.band:
        return shown
    low, high = (style.shown(end, item.quantity, unit=unit).number for end in item.band)
    number = low if low == high else _("{low} to {high}").format(low=low, high=high)
    return replace(shown, number=number)


def lead(item: Item | None, style: Style) -> str:
    """Return what a page leads with as one text for a row that opens it; empty for what cannot be given."""
    return str(spanned(item, style, told_in(item))) if isinstance(item, Result) else ""


def figure(  # noqa: PLR0913  (what can be said of one number)
    world: World,
    item: Item,
    label: str,
    *,
    before: Item | None = None,
    detail: str = "",
    unit: str = "",
    grey: bool = False,
    row: bool = True,
    reserve: bool = False,
) -> Figure | FigureRow:
    """Return a result as a row, or large for the crown.

    `before` is the same result of the saved board while there is a trial: the change against it is told.
    """
    kind = FigureRow if row else Figure
    parts = {"key": item.name, "label": label, "act": working(item, label), "grey": grey, "reserve": reserve}
    if isinstance(item, Open):
        return kind(number="–", detail=why(item, world.style) or detail, **parts)  # type: ignore[arg-type]
    shown = spanned(item, world.style, unit)
    change = ""
    if isinstance(before, Result) and before.value != item.value:
        change = world.style.change(item.value, before.value, item.quantity, shown.unit)
    return kind(
        number=shown.number,
        unit=shown.said,
        change=change,
        detail=detail,
        **parts,  # type: ignore[arg-type]
    )


def shared_sureness(items: Mapping[str, Item]) -> str:
    """Return what the most results of a group have in common, said once at its top; "" for nothing."""
    said = [sureness(item) for item in items.values() if isinstance(item, Result)]
    most = max(set(said), key=said.count, default="")
    return most if said.count(most) * 2 > len(said) else ""


def once_each(items: Mapping[str, Item]) -> tuple[str, ...]:
    """Return the names of results to show: of those that lack the same values only the first, which says so for all."""
    lacking: set[tuple[str, ...]] = set()
    names = []
    for name, item in items.items():
        lacks = item.missing if isinstance(item, Open) else ()
        if not lacks or lacks not in lacking:
            names.append(name)
        if lacks:
            lacking.add(lacks)
    return tuple(names)


def sentences(key: str, texts: Iterable[str], **look: Any) -> Iterator[Words]:  # noqa: ANN401  (what Words takes)
    """Yield sentences one under the other, all in one look."""
    return (Words(key=f"{key} {place}", text=text, **look) for place, text in enumerate(texts))


def fold(
    world: World,
    key: str,
    title: str,
    inside: Callable[[], Iterator[Block] | tuple[Block, ...]],
    note: str = "",
) -> tuple[Block, ...]:
    """Return a heading that opens and shuts; what is inside is made only while it is open."""
    name = f"open_{key}"
    opened = bool(world.args.get(name))
    head = Fold(key=key, title=title, note=note, open=opened, act=Turn({name: None if opened else True}))
    return (head, *inside()) if opened else (head,)


def once(block: Block, key: str) -> Block:
    """Return a block under another key, for a page that shows the same thing twice."""
    return replace(block, key=key)
