"""Motor heat on a climb: the time until a motor is too hot on a climb, with its band, and the climb without end."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.first_hold import first_hold
from logic.answers.hold import Holding, holding
from logic.answers.reading import Item, Open
from screens.acts.outside import Tilt
from screens.blocks import Block, Figure, Line, Picture, Section
from screens.figure_page import figure_page, figures_of
from screens.numbers.first_figures import HOLD, near, told_outcome
from screens.numbers.over_speed import not_drawn
from screens.page import Page
from screens.pictures.chart import Curve, chart, chart_later
from screens.pictures.strokes import Picture as Strokes
from screens.showing import sentences
from screens.tongue import _, texts
from screens.words import Style
from screens.world import World

WORDS = texts("hold")
HOTTEST = 1.6
"""Of the limit: what the chart shows."""
HEAD = "hold_time"
MINUTE = 60.0
Ends = tuple[float | None, float | None]
"""How long it takes when it cools badly, and when it cools well."""


def hold_page(world: World) -> Page:
    """Return the time first, then the climb without end, the temperature over time and the figures."""
    answer, figures = figures_of(world, "numbers.hold", holding, world.person.rider, world.answers)
    first, found = near(figures, HOLD, first_hold)
    if found is not None and first.crown is not None:
        said = _("By a usual motor. {badly} at worst, {well} at best.")
        first = replace(first, crown=_with_ends(world.style, found.item, found.times, first.crown, said))
    said = _("{badly} if it cools badly, {well} if it cools well.")
    return figure_page(
        figures,
        crown=_with_ends(world.style, answer.items[HEAD], answer.times, figures.crown(), said),
        near=first,
        controls=("ask.hold_grade", _tilt(world), "ask.hold_speed"),
        picture=(Section("chart head", _("Temperature over time")), *_chart(world, answer)),
        advice=tuple(sentences("model", WORDS["model"].values(), tone="second")),
    )


def _tilt(world: World) -> Line:
    """Return the way to the grade of the hill one stands on."""
    return Line(
        "tilt",
        _("Measure this hill"),
        world.args.get("_tilt") or _("Phone flat on the deck, long edge along the road"),
        act=Tilt("ask.hold_grade"),
    )


def _with_ends(style: Style, item: Item, times: Ends, crown: Figure, said: str) -> Figure:
    """Tell both ends of the band of a time; an end that never comes is said in words."""
    if isinstance(item, Open):
        return told_outcome(crown, item)
    badly, well = (_told(style, time) for time in times)
    shown = style.shown(item.value, "time", 2, _unit(item.value))
    return replace(crown, number=shown.number, unit=shown.said, detail=said.format(badly=badly, well=well))


def _unit(time: float) -> str:
    """Return the unit in which a time is told: seconds up to two minutes."""
    return "min" if time >= 2.0 * MINUTE else "s"


def _told(style: Style, time: float | None) -> str:
    """Write a time as one reads it, None for one that never comes."""
    return _("never") if time is None else str(style.shown(time, "time", 2, _unit(time)))


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

    def drawn() -> Strokes:
        return chart(
            [*lines, Curve(_("limit"), [(0.0, limit), (end, limit)])],
            x_title=_("Time, min"),
            y_title=_("Motor, {unit}").format(unit=style.unit("temperature")),
            mark=style.mark,
        )

    return (Picture("chart", chart_later(drawn, answer, style), _("Temperature of the motor over time.")),)


def _scaled(answer: Holding, style: Style) -> Iterator[tuple[str, list[tuple[float, float]]]]:
    for name, points in answer.curves.items():
        yield name, [(time / MINUTE, style.scale(hot, "temperature")) for time, hot in points]
