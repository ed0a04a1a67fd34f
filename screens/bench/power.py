"""First power: polarity by meter, then the capacitors through a resistor; and what to set in the controller."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.braking import FROM_SPEED
from logic.answers.controller_card import ControllerCard, controller_card
from logic.answers.reading import Open, Result
from logic.answers.wiring import FirstPower, first_power
from logic.tables import Row, rows
from screens.acts import Go
from screens.bench.explained import BY_HAND, explained
from screens.blocks import Block, Section, Verdict, Words
from screens.figure_page import figure_page, figures_of
from screens.page import Page
from screens.showing import why
from screens.tongue import _, texts
from screens.trying import board_ask, board_line, trial_note, untried
from screens.world import World

WIRING = texts("packs")["wiring"]
HOLD = "precharge_time"


def power_page(world: World) -> Page:
    """Return how long the resistor is held on, the steps in order, then the figures. It is about the saved board."""
    note, world = trial_note(world), untried(world)
    answer, figures = figures_of(world, "bench.power", first_power, world.answers)
    labels = {name: figures.labels[name] for name in (HOLD, "full", "empty", *figures.labels)}
    return figure_page(
        replace(figures, labels=labels, ask=board_ask),
        crown=_verdict(world, answer),
        note=note,
        picture=(
            Section("steps", _("Step by step")),
            *(
                block
                for number, row in enumerate(rows("power_up"), start=1)
                for block in _step(world, number, row)
            ),
        ),
        line=board_line,
    )


def _step(world: World, number: int, row: Row) -> tuple[Block, ...]:
    """Return a step, and the drawing of the same name where there is one."""
    text = f"{number}. {row.text('text')}"
    return (Words(f"step {number}", text), *explained(world, world.board, row.text("key")))


def _verdict(world: World, answer: FirstPower) -> Verdict:
    """Return how long the resistor is held on, and what the meter must show before."""
    style, hold, low, high = world.style, answer.items[HOLD], answer.items["empty"], answer.items["full"]
    meter = ""
    if isinstance(low, Result) and isinstance(high, Result):
        ends = {"low": style.number(low.value, "voltage"), "high": style.number(high.value, "voltage")}
        meter = texts("packs")["said"]["meter"].format(**ends)
    if isinstance(hold, Open):
        word = _("Meter first, then the resistor")
        act = board_ask(hold.missing[0]) if hold.missing else None
        return Verdict(word, meter or why(hold, style), act=act)
    time = style.number(max(hold.value, BY_HAND), hold.quantity)
    word = _("Resistor first, {time}").format(time=time)
    act = Go("working", {"item": hold, "label": WIRING[HOLD]})
    return Verdict(word, meter, act=act)


def controller_page(world: World) -> Page:
    """Return what each controller is set to first, then volts, temperatures and settings in words."""
    still = untried(world)
    speed = world.style.number(FROM_SPEED, "speed")
    card, figures = figures_of(
        still, "bench.controller", controller_card, world.person.rider, world.answers, speed=speed
    )
    return figure_page(
        replace(figures, details={**figures.details, **_held_by(card)}, ask=board_ask),
        note=trial_note(world),
        advice=tuple(_rest(world, card)),
        line=board_line,
    )


def _held_by(card: ControllerCard) -> dict[str, str]:
    """Say which part holds a current down."""
    braking = texts("packs")["braking"]
    found = {"slows_for_long": braking["slows_as_set"], "stop_for_long": braking["stop_as_set"]}
    for name in card.items:
        part = card.held_by.get(name.removesuffix("_each"), "")
        if part:
            found[name] = _("Held by {part}.").format(part=texts("packs")["parts"][part])
    return found


def _rest(world: World, card: ControllerCard) -> Iterator[Block]:
    """Yield temperatures and settings."""
    yield Section("temperatures", _("Temperatures"))
    for row in card.temperatures:
        start, end = (world.style.number(float(row.cells[name]), "temperature") for name in ("start", "end"))
        text = _("{part}: hold back from {start}, stop at {end}.").format(
            part=texts("packs")["temperatures"][row.text("name")], start=start, end=end
        )
        yield Words(f"temperature {row.text('name')}", text)
    yield Section("settings", _("Settings"))
    for row in card.words:
        yield Words(f"setting {row.text('name')}", row.text("text"))
