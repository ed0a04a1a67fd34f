"""Range and Wh/km: from the log or by the drive, and how cold, speed and hills take them."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.first_range import first_range
from logic.answers.range import RangeAnswer, range_answer
from logic.answers.reading import Result
from logic.answers.riding import FREEZING
from logic.answers.run import Points
from screens.asking import asked, value_text
from screens.blocks import Block, Picture, Section, Words
from screens.figure_page import figure_page, figures_of
from screens.numbers.first_figures import RANGE, near
from screens.numbers.over_speed import not_drawn, over_speed
from screens.page import Page
from screens.showing import fold
from screens.tongue import _, texts
from screens.ways import ways_from, words_of
from screens.words import Style
from screens.world import World

SPEED = "ask.range_speed"


def range_page(world: World) -> Page:
    """Return a range with its band first, then temperature, speed and climb."""
    answer, figures = figures_of(
        world,
        "numbers.range",
        range_answer,
        world.person.rider,
        world.answers,
        world.rides,
        cold=world.style.number(FREEZING, "temperature"),
    )
    labels = figures.labels
    if answer.learnt:
        labels = {**labels, "range": _("Range, learnt from the log")}
    figures = replace(figures, labels=labels, details=_details(world, answer))
    packs = _("One pack.") if world.board.pack.packs is None else ""
    first, _first = near(
        figures, RANGE, first_range, texts("first")["range"], label=_("Range, about"), before=packs
    )
    return figure_page(
        figures,
        near=first,
        picture=tuple(_picture(world, answer)),
        advice=(
            *fold(world, "spent", _("Energy over speed"), lambda: _spent(world, answer)),
            *words_of(texts("packs")["range_advice"], tone="second"),
            *_drag(world),
        ),
    )


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
        blocks.append(Words("rides", f"{told} {left}".strip(), tone="second"))
    title = Section("chart head", _("Range over speed"))
    if not answer.drawn:
        return [*blocks, title, not_drawn()]
    far = answer.modelled
    marks = (
        [((asked(world, SPEED), far.value), style.number(far.value, "distance"))]
        if isinstance(far, Result)
        else []
    )
    picture = over_speed(style, answer, _lines(style, answer), "distance", _("As modelled, {unit}"), marks)
    return [*blocks, title, Picture("chart", picture, _("Range over speed, by climb."))]


def _lines(style: Style, answer: RangeAnswer) -> Iterator[tuple[str, Points]]:
    """Yield the range over speed on each climb, by its name."""
    for grade, points in answer.curves:
        yield _("{grade} climb").format(grade=style.number(grade, "share")) if grade else _("level"), points


def _spent(world: World, answer: RangeAnswer) -> tuple[Block, ...]:
    """Return what a way takes over speed, on the level."""
    if not answer.spent:
        return (not_drawn("spent chart"),)
    lines = [(_("held steady"), answer.spent)]
    picture = over_speed(world.style, answer, lines, "energy_per_distance", "{unit}")
    return (Picture("spent chart", picture, _("Energy over speed, on the level.")),)


def _drag(world: World) -> tuple[Block, ...]:
    """Return what rolling and air rest on, and the ways to measure them."""
    said = {key: value_text(world, f"load.{key}")[0] for key in ("rolling", "drag_area")}
    load = world.board.load
    words = texts("drag")["load"]
    known = words["assumed" if load.rolling is None and load.drag_area is None else "entered"]
    text = words["rests on"].format(rolling=said["rolling"], area=said["drag_area"], known=known)
    return (
        Words("rests on", text, tone="second"),
        *ways_from("numbers.range"),
    )
