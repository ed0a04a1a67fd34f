"""Upkeep: every rule on this board, the most urgent first, with its reason and where it is said."""

from collections.abc import Iterator

from logic.upkeep import Due
from screens.blocks import Block, Line, Section, Verdict, Words
from screens.page import Page
from screens.showing import fold
from screens.tongue import _
from screens.ways import due_act, later_act
from screens.words import begun, founded_on, within
from screens.words.checks import due_name, due_when
from screens.world import World

OPEN = 3
"""Rules not yet due that stand open, the nearest first."""


def due_page(world: World) -> Page:
    """Return what is due, then what comes next."""
    return Page(title=_("Upkeep"), crown=due_tile(world), blocks=tuple(_blocks(world)))


def due_tile(world: World) -> Verdict:
    """Return what is most urgent; a touch opens what clears it."""
    due, upcoming = world.due, world.upcoming
    if not upcoming:
        text = _("Rules begin with the first tension, build or ride in the log.")
        return Verdict(_("Nothing is due"), text, key="due", form="plain")
    first = upcoming[0]
    name = due_name(first, world.saved.sides)
    if not due:
        # What is put off stands first: it is the one that was forgotten most easily.
        text = _("Next: {name}, {when}.").format(name=within(name), when=due_when(first, world.style))
        return Verdict(_("Nothing is due"), text, key="due", form="right", act=due_act(first))
    when = due_when(first, world.style)
    text = f"{begun(when)}."
    if len(due) > 1:
        text += " " + _("{count} more due.").format(count=len(due) - 1)
    return Verdict(name, text, key="due", form="wrong" if first.stop else "unsure", act=due_act(first))


def _blocks(world: World) -> Iterator[Block]:
    due, rest = world.due, [one for one in world.upcoming if not one.due]
    for place, one in enumerate(due):
        yield from _card(world, one, named=place > 0)
    if rest:
        yield Section("next", _("Next"))
    yield from (_line(world, one) for one in rest[:OPEN])
    if rest[OPEN:]:
        yield from fold(
            world, "rest", _("All rules"), lambda: tuple(_line(world, one) for one in rest[OPEN:])
        )


def _card(world: World, one: Due, *, named: bool) -> Iterator[Block]:
    """Yield what is due, why, and the two ways on; the crown names the first."""
    name, when = due_name(one, world.saved.sides), due_when(one, world.style)
    key = f"{one.key} {one.subject}"
    if named:
        yield Section(key, name, begun(when))
    yield Words(f"{key} why", f"{one.why} {founded_on(one.row)}.", tone="second")
    yield Line(f"{key} check", _("Check now"), name, icon="due", act=due_act(one))
    yield Line(f"{key} later", _("Not now"), name, icon="clock", act=later_act(one))


def _line(world: World, one: Due) -> Line:
    return Line(
        f"{one.key} {one.subject}",
        due_name(one, world.saved.sides),
        f"{one.why} {founded_on(one.row)}.",
        value=due_when(one, world.style),
        icon="clock",
        act=due_act(one),
    )
