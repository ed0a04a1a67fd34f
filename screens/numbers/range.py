"""Range and Wh/km: from the log or by the drive, and how cold, speed and hills take them."""

from logic.answers.first_range import first_range
from logic.answers.range import RangeAnswer, range_answer
from logic.answers.reading import Open, Result
from logic.answers.riding import FREEZING
from screens.asking import asked, value_text
from screens.blocks import Block, Picture, Section, Words
from screens.figure_page import Figures, answered, figure_page
from screens.numbers.first_range import ROUNDS, nearer_range, range_crown
from screens.numbers.nearer import following, lacks_values
from screens.page import Page
from screens.pictures.chart import Curve, Mark, chart
from screens.showing import fold
from screens.tongue import _, texts
from screens.ways import leads_to
from screens.world import World

SPEED = "ask.range_speed"


def range_page(world: World) -> Page:
    """Return a range with its band first, then temperature, speed and climb."""
    rider = world.person.rider
    answer, before = answered(world, range_answer, rider, world.answers, world.rides)
    labels, details = _labels(world, answer), _details(world, answer)
    figures = Figures(world, answer.items, labels, before, details, texts("packs")["outcomes"], head="range")
    first = (
        world.kept(first_range, world.board, rider, world.answers)
        if lacks_values(answer.items["range"]) and not answer.faults
        else None
    )
    return figure_page(
        world,
        "numbers.range",
        crown=figures.crown() if first is None else range_crown(world, first, grey=False),
        note=() if first is None else tuple(nearer_range(world, first)),
        faults=answer.faults,
        controls=("ask.cells_at", SPEED, "ask.range_grade"),
        picture=tuple(_picture(world, answer)),
        figures=figures,
        advice=(
            *fold(world, "spent", _("Energy over speed"), lambda: _spent(world, answer)),
            Words(
                key="modelled",
                text=_(
                    "Modelled: steady speed, no wind, no stops. Starts, stops, wind and rough ground take more."
                    " A flat pack is no way home: turn round at half the range."
                ),
                tone="second",
            ),
            *_drag(world),
        ),
        then=following(world, ROUNDS),
    )


def _speed(world: World) -> float:
    """Return the speed asked about; the question begins with one."""
    return asked(world, SPEED)


def _labels(world: World, answer: RangeAnswer) -> dict[str, str]:
    """Put speed and temperature into the labels."""
    style = world.style
    speed, cold = style.number(_speed(world), "speed"), style.number(FREEZING, "temperature")
    found = {name: text.format(speed=speed, cold=cold) for name, text in texts("packs")["range"].items()}
    head = _("Range, learnt from the log") if answer.learnt else _("Range, modelled at {speed}")
    return found | {"range": head.format(speed=speed)}


def _details(world: World, answer: RangeAnswer) -> dict[str, str]:
    """Return what the bands hold."""
    found = {}
    for name in ("range", "range_modelled"):
        item = answer.items.get(name)
        if not isinstance(item, Result):
            continue
        middle = world.style.number(item.value, "distance")
        if name == "range" and item.band and answer.learnt:
            said = _("{middle} in the middle. Nearly all rides of this kind end within the band.")
        elif item.band:
            said = _(
                "{middle} as assumed. The band is what rolling and drag leave open. Steady speed, no wind, no stops."
            )
        else:
            said = _("{middle} as assumed. Steady speed, no wind, no stops.")
        found[name] = said.format(middle=middle)
    return found


def _picture(world: World, answer: RangeAnswer) -> list[Block]:
    """Return how many rides tell it, and range over speed on the level and on climbs."""
    style, blocks = world.style, []
    left = _("{count} tell no energy.").format(count=answer.left_out) if answer.left_out else ""
    if answer.counted or left:
        told = _("{count} rides of the log tell it.").format(count=answer.counted)
        blocks.append(Words(key="rides", text=f"{told} {left}".strip(), tone="second"))
    title = Section(key="chart head", title=_("Range over speed"))
    if not answer.curves:
        empty = _("The chart needs the values that are missing above.")
        return [*blocks, title, Words(key="chart", text=empty, tone="second")]
    modelled, speed = answer.modelled, _speed(world)
    marks = (
        ()
        if isinstance(modelled, Open)
        else (
            Mark(
                style.scale(speed, "speed"),
                style.scale(modelled.value, "distance"),
                style.number(modelled.value, "distance"),
            ),
        )
    )
    picture = chart(
        [
            Curve(
                _("{grade} climb").format(grade=style.number(grade, "share")) if grade else _("level"),
                [(style.scale(x, "speed"), style.scale(y, "distance")) for x, y in points],
            )
            for grade, points in answer.curves
        ],
        marks,
        x_title=_("Speed, {unit}").format(unit=style.unit("speed")),
        y_title=_("As modelled, {unit}").format(unit=style.unit("distance")),
    )
    return [*blocks, title, Picture(key="chart", strokes=picture, text=_("Range over speed, by climb."))]


def _spent(world: World, answer: RangeAnswer) -> tuple[Block, ...]:
    """Return what a way takes over speed, on the level."""
    style = world.style
    if not answer.spent:
        text = _("The chart needs the values that are missing above.")
        return (Words(key="spent chart", text=text, tone="second"),)
    picture = chart(
        [
            Curve(
                _("held steady"),
                [(style.scale(x, "speed"), style.scale(y, "energy_per_distance")) for x, y in answer.spent],
            )
        ],
        x_title=_("Speed, {unit}").format(unit=style.unit("speed")),
        y_title=style.unit("energy_per_distance"),
    )
    return (Picture(key="spent chart", strokes=picture, text=_("Energy over speed, on the level.")),)


def _drag(world: World) -> tuple[Block, ...]:
    """Return what rolling and air rest on, and the ways to measure them."""
    said = {key: value_text(world, f"load.{key}")[0] for key in ("rolling", "drag_area")}
    load = world.board.load
    words = texts("drag")["load"]
    known = words["assumed" if load.rolling is None and load.drag_area is None else "entered"]
    text = words["rests on"].format(rolling=said["rolling"], area=said["drag_area"], known=known)
    return (
        Words(key="rests on", text=text, tone="second"),
        leads_to(
            "from rides",
            "numbers.rides",
            _("From logged rides"),
            _("Rolling and air by least squares, with their spread."),
        ),
        leads_to(
            "from a coast",
            "numbers.coast",
            _("From a coast"),
            _("Speed against distance or time to standstill."),
        ),
    )
