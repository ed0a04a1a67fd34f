"""Motor heat on a climb: the time until a motor is too hot on a climb, with its band, and the climb without end."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.first_hold import first_hold
from logic.answers.hold import Holding, holding
from logic.answers.reading import Open
from screens.acts.outside import Tilt
from screens.asking import asked
from screens.blocks import Block, Figure, Line, Picture, Section
from screens.figure_page import Figures, answered, figure_page
from screens.numbers.first_figures import (
    HOLD_ROUNDS,
    MINUTE,
    hold_crown,
    more_exact,
    time_text,
    time_unit,
    told_outcome,
)
from screens.numbers.nearer import following, lacks_values
from screens.numbers.over_speed import not_drawn
from screens.page import Page
from screens.pictures.chart import Curve, chart
from screens.showing import sentences
from screens.tongue import _, texts
from screens.words import Style
from screens.world import World

WORDS = texts("hold")
HOTTEST = 1.6
"""Of the limit: what the chart shows."""
HEAD = "hold_time"


def hold_page(world: World) -> Page:
    """Return the time first, then the climb without end, the temperature over time and the figures."""
    rider = world.person.rider
    answer, before = answered(world, holding, rider, world.answers)
    figures = Figures(world, answer.items, _labels(world), before, grey=bool(answer.faults), head=HEAD)
    lacks = lacks_values(answer.items[HEAD]) and not answer.faults
    first = world.kept(first_hold, world.board, rider, world.answers) if lacks else None
    return figure_page(
        world,
        "numbers.hold",
        crown=(
            _crown(world.style, answer, figures.crown())
            if first is None
            else hold_crown(world, first, figures.labels[HEAD])
        ),
        faults=answer.faults,
        note=() if first is None else more_exact(world, HOLD_ROUNDS, first),
        controls=("ask.hold_grade", _tilt(world), "ask.hold_speed"),
        picture=(Section(key="chart head", title=_("Temperature over time")), *_chart(world, answer)),
        figures=figures,
        advice=tuple(sentences("model", WORDS["model"].values(), tone="second")),
        then=following(world, HOLD_ROUNDS),
    )


def _tilt(world: World) -> Line:
    """Return the way to the grade of the hill one stands on."""
    return Line(
        key="tilt",
        title=_("Measure this hill"),
        detail=world.args.get("_tilt") or _("Phone flat on the deck, long edge along the road"),
        act=Tilt("ask.hold_grade"),
    )


def _labels(world: World) -> dict[str, str]:
    """Put the limit, the speed and the climb asked about into the labels."""
    said = {
        name: world.style.number(asked(world, f"ask.{key}"), quantity)
        for name, key, quantity in (
            ("limit", "limit_temperature", "temperature"),
            ("speed", "hold_speed", "speed"),
            ("grade", "hold_grade", "share"),
        )
    }
    return {name: text.format(**said) for name, text in WORDS["labels"].items()}


def _crown(style: Style, answer: Holding, crown: Figure) -> Figure:
    """Tell both ends of the band; an end that never comes is said in words."""
    item = answer.items[HEAD]
    if isinstance(item, Open):
        return told_outcome(crown, item)
    badly, well = (time_text(style, time) for time in answer.times)
    shown = style.shown(item.value, "time", 2, time_unit(item.value))
    detail = _("{badly} if it cools badly, {well} if it cools well.").format(badly=badly, well=well)
    return replace(crown, number=shown.number, unit=shown.unit, detail=detail)


def _chart(world: World, answer: Holding) -> tuple[Block, ...]:
    """Draw the temperature over time against the limit."""
    style = world.style
    limit = style.scale(answer.limit, "temperature")
    # A motor that cools badly runs off the page: what counts is where the lines meet the limit.
    lines = [
        Curve(WORDS["curves"][name], [(time, hot) for time, hot in points if hot <= HOTTEST * limit])
        for name, points in _scaled(answer, style)
    ]
    lines = [line for line in lines if len(line.points) > 1]
    if not lines:
        return (not_drawn(),)
    end = max(x for line in lines for x, _y in line.points)
    picture = chart(
        [*lines, Curve(_("limit"), [(0.0, limit), (end, limit)])],
        x_title=_("Time, min"),
        y_title=_("Motor, {unit}").format(unit=style.unit("temperature")),
    )
    return (Picture(key="chart", strokes=picture, text=_("Temperature of the motor over time.")),)


def _scaled(answer: Holding, style: Style) -> Iterator[tuple[str, list[tuple[float, float]]]]:
    for name, points in answer.curves.items():
        yield name, [(time / MINUTE, style.scale(hot, "temperature")) for time, hot in points]
