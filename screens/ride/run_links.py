"""Where an item of a run leads: values of the board, a joint, the tension check, another list or page."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from logic.board import Field, board_fields
from logic.checks.lists import Item
from screens.tongue import _
from screens.words import Style
from screens.words.tension import tension_text
from screens.world import World

OPENS = {
    "bench.faults": _("Fault guide"),
    "bench.spares": _("Tools and spares"),
    "bench.reach": _("Screw reach"),
    "bench.belt": _("Set a belt"),
    "bench.power": _("First power: resistor and polarity"),
    "bench.controller": _("What to set in the controller"),
    "numbers.feel": _("Wheels, bushings and trucks"),
    "ride.flight": _("Pack for a flight: Wh and rules"),
    "ride.pack_signs": _("Pack: stop signs"),
    "board": _("The board's values"),
}
"""What a page that an item leads to is called here."""


@dataclass(frozen=True)
class Link:
    """A row that opens a page: its words, and what the page is asked for."""

    page: str
    title: str
    detail: str = ""
    value: str = ""
    icon: str = ""
    args: dict[str, Any] = field(default_factory=dict)


def links(item: Item, state: World, style: Style) -> Iterator[Link]:
    """Yield the ways on from an item, on the board in use."""
    for key in item.figures:
        if key in board_fields() and state.saved.applies(board_fields()[key]):
            yield _board_link(board_fields()[key], state, style)
    from screens.register import PAGES  # noqa: PLC0415  (the register imports the pages' packages)

    if item.belt:
        yield Link("ride.tension", _("Tension check"), _belts(state, style), icon="gauge")
    if item.joint and "bench.joint" in PAGES:
        args = {"joint": item.joint}
        yield Link("bench.joint", _("Joint: torque and locker"), _("For this board"), icon="bench", args=args)
    if item.opens.startswith("list:"):
        key = item.opens.removeprefix("list:")
        record = state.last("check", list=key)
        last = _("Not run yet") if record is None else f"Last: {record.at:%Y-%m-%d %H:%M}"
        yield Link("ride.run", state.lists()[key].title, last, icon="checklist", args={"list": key})
    elif item.opens in PAGES:
        yield Link(item.opens, OPENS.get(item.opens, "Open"))


def _board_link(of: Field, state: World, style: Style) -> Link:
    value = state.saved.value(of.key)
    if value is None:
        text = "not set"
    elif of.kind == "choice":
        text = of.option(str(value.si)).label
    else:
        text = style.typed(float(value.si), of.quantity, value.typed_unit)
    known = "" if value is None else value.known
    return Link("board.value", of.label, known, text, args={"key": of.key})


def _belts(state: World, style: Style) -> str:
    lines = []
    for side in state.saved.sides:
        record = state.last("tension", belt=side)
        name = side.capitalize() if len(state.saved.sides) > 1 else "Belt"
        lines.append(f"{name}: {tension_text(record, style) if record else 'not measured yet'}")
    return ". ".join(lines)
