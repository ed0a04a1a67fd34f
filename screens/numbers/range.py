"""Range and Wh/km: from the log or by the drive, and how cold, speed and hills take them."""

from logic.answers.first_range import first_range
from logic.answers.range import RangeAnswer, range_answer
from logic.answers.reading import Result
from logic.answers.riding import FREEZING
from screens.asking import asked, value_text
from screens.blocks import Block, Picture, Section, Words
from screens.figure_page import Figures, answered, figure_page
from screens.numbers.first_range import ROUNDS, nearer_range, range_crown
from screens.numbers.nearer import following, lacks_values
from screens.numbers.over_speed import not_drawn, over_speed
from screens.page import Page
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
        crown=figures.crown() if first is None else range_crown(world, first),
        note=() if first is None else nearer_range(world, first),
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


def _labels(world: World, answer: RangeAnswer) -> dict[str, str]:
    """Put speed and temperature into the labels."""
    style = world.style
    speed, cold = style.number(asked(world, SPEED), "speed"), style.number(FREEZING, "temperature")
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
        return [*blocks, title, not_drawn()]
    lines = [
        (_("{grade} climb").format(grade=style.number(grade, "share")) if grade else _("level"), points)
        for grade, points in answer.curves
    ]
    far = answer.modelled
    marks = (
        [((asked(world, SPEED), far.value), style.number(far.value, "distance"))]
        if isinstance(far, Result)
        else []
    )
    picture = over_speed(style, lines, "distance", _("As modelled, {unit}"), marks)
    return [*blocks, title, Picture(key="chart", strokes=picture, text=_("Range over speed, by climb."))]


def _spent(world: World, answer: RangeAnswer) -> tuple[Block, ...]:
    """Return what a way takes over speed, on the level."""
    if not answer.spent:
        return (not_drawn("spent chart"),)
    lines = [(_("held steady"), answer.spent)]
    picture = over_speed(world.style, lines, "energy_per_distance", "{unit}")
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
