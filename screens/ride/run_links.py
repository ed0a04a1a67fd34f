"""Where an item of a run leads: values of the board, a joint, the tension check, another list or page."""

from collections.abc import Iterator
from dataclasses import replace

from logic.board import Field, board_fields
from logic.checks.lists import Item
from screens.blocks import Line
from screens.tongue import _, texts
from screens.ways import leads_to
from screens.words.tension import tension_text
from screens.words.typed import value_words
from screens.world import World

OPENS = {
    "bench.power": _("First power: resistor and polarity"),
    "bench.controller": _("What to set in the controller"),
    "ride.flight": _("Pack for a flight: Wh and rules"),
    "board": _("The board's values"),
}
"""What a page that an item leads to is called here, where it is not as the search has it."""


def links(item: Item, world: World) -> Iterator[Line]:
    """Yield the ways on from an item, on the board in use."""
    return (replace(one, key=f"link {place}") for place, one in enumerate(_links(item, world)))


def _links(item: Item, world: World) -> Iterator[Line]:
    for key in item.figures:
        if key in board_fields() and world.saved.applies(board_fields()[key]):
            yield _board_link(board_fields()[key], world)
    from screens.register import PAGES  # noqa: PLC0415  (the register imports the pages' packages)

    if item.belt:
        yield leads_to("", "ride.tension", _("Tension check"), _belts(world), icon="gauge")
    if item.joint and "bench.joint" in PAGES:
        title = _("Joint: torque and locker")
        yield leads_to("", "bench.joint", title, _("For this board"), icon="bench", joint=item.joint)
    if item.opens.startswith("list:"):
        key = item.opens.removeprefix("list:")
        record = world.last("check", list=key)
        last = _("Not run yet") if record is None else f"Last: {record.at:%Y-%m-%d %H:%M}"
        yield leads_to("", "ride.run", world.lists()[key].title, last, icon="checklist", list=key)
    elif item.opens in PAGES:
        yield leads_to("", item.opens, OPENS.get(item.opens) or texts("pages")["titles"][item.opens])


def _board_link(of: Field, world: World) -> Line:
    value = world.saved.value(of.key)
    shown = "not set" if value is None else value_words(of, value, world.style)
    known = "" if value is None else value.known
    return replace(leads_to("", "board.value", of.label, known, key=of.key), value=shown)


def _belts(world: World) -> str:
    lines = []
    for side in world.saved.sides:
        record = world.last("tension", belt=side)
        name = side.capitalize() if len(world.saved.sides) > 1 else "Belt"
        lines.append(f"{name}: {tension_text(record, world.style) if record else 'not measured yet'}")
    return ". ".join(lines)
