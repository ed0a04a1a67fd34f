"""What belongs to an item of a run: its numbers, as rows and said aloud, and where it leads."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.checks import figures
from logic.answers.reading import Result
from logic.board import Field, board_fields
from logic.checks.lists import Item
from screens.blocks import FigureRow, Line
from screens.register import PAGES
from screens.showing import figure
from screens.tongue import _
from screens.ways import leads_to, page_title
from screens.words import KNOWN
from screens.words.checks import FIGURES
from screens.words.tension import tension_text
from screens.words.typed import value_words
from screens.world import World


def figure_rows(item: Item, world: World) -> Iterator[FigureRow]:
    """Yield a row for each figure of an item."""
    for name, found in figures(item.figures, world.saved, world.person).items():
        yield figure(world, found, FIGURES[name], unit=_unit(name, world))  # type: ignore[misc]


def said_of(item: Item, world: World) -> str:
    """Return what is said aloud of an item: first its hazard, then the item, its figures and its tool."""
    parts = [
        f"{item.care_word}. {item.care}" if item.care else "",
        item.spoken or f"{item.action}. {item.state}.",
    ]
    for name, found in figures(item.figures, world.saved, world.person).items():
        if isinstance(found, Result):
            shown = world.style.shown(found.value, found.quantity, unit=_unit(name, world))
            parts.append(f"{FIGURES[name]}: {shown}.")
    parts.append(_("{tool}.").format(tool=item.tool) if item.tool else "")
    return " ".join(part for part in parts if part)


def _unit(name: str, world: World) -> str:
    return world.person.scale_unit if name.startswith("pull") else ""


def links(item: Item, world: World) -> Iterator[Line]:
    """Yield the ways on from an item, on the board in use."""
    return (replace(one, key=f"link {place}") for place, one in enumerate(_links(item, world)))


def _links(item: Item, world: World) -> Iterator[Line]:
    for key in item.figures:
        if key in board_fields() and world.saved.applies(board_fields()[key]):
            yield _board_link(board_fields()[key], world)
    if item.belt:
        yield leads_to("", "ride.tension", _("Tension check"), _belts(world), icon="gauge")
    if item.joint and "bench.joint" in PAGES:
        title = _("Joint: torque and locker")
        yield leads_to("", "bench.joint", title, _("For this board"), icon="bench", joint=item.joint)
    if item.opens.startswith("list:"):
        key = item.opens.removeprefix("list:")
        record = world.last("check", list=key)
        last = (
            _("Not run yet")
            if record is None
            else _("Last: {time}").format(time=f"{record.at:%Y-%m-%d %H:%M}")
        )
        yield leads_to("", "ride.run", world.lists()[key].title, last, icon="checklist", list=key)
    elif item.opens in PAGES:
        yield leads_to("", item.opens, page_title(item.opens))


def _board_link(of: Field, world: World) -> Line:
    value = world.saved.value(of.key)
    shown = _("not set") if value is None else value_words(of, value, world.style)
    known = "" if value is None else KNOWN[value.known]
    return replace(leads_to("", "board.value", of.label, known, key=of.key), value=shown)


def _belts(world: World) -> str:
    lines = []
    for side in world.saved.sides:
        record = world.last("tension", belt=side)
        name = side.capitalize() if len(world.saved.sides) > 1 else "Belt"
        lines.append(f"{name}: {tension_text(record, world.style) if record else 'not measured yet'}")
    return ". ".join(lines)
