"""Packs: energy, volts, sag and heat, which part limits first, and what of a long descent they take back."""

from dataclasses import replace

from logic.answers.braking import FROM_SPEED
from logic.answers.descents import descent
from logic.answers.energy import PackFigures, pack_figures
from logic.answers.first_descent import first_descent
from screens.asking import value_of
from screens.figure_page import figure_page, figures_of
from screens.numbers.first_figures import DESCENT, near
from screens.page import Page
from screens.tongue import _, texts
from screens.ways import ways_from, words_of
from screens.world import World

WAYS = {"limit_drive": "drive", "limit_brake": "brake", "limit_burst": "burst"}


def packs_page(world: World) -> Page:
    """Return watt-hours first, then what the parts allow; braking amps never without what they do to the board."""
    style = world.style
    value = value_of(world, "ask.current") or world.board.controller.battery_current
    answer, figures = figures_of(
        world,
        "numbers.packs",
        pack_figures,
        world.person.rider,
        world.answers,
        current=_("the battery limit") if value is None else style.number(float(value.si), "current"),
        speed=style.number(FROM_SPEED, "speed"),
    )
    return figure_page(
        replace(figures, details={**figures.details, **_held_by(answer)}),
        advice=(*ways_from("numbers.packs"),),
    )


def _held_by(answer: PackFigures) -> dict[str, str]:
    """Say which part limits first."""
    parts = texts("packs")["parts"]
    return {
        name: _("Whole board. Held by {part}.").format(part=parts[answer.weakest[way]])
        for name, way in WAYS.items()
        if way in answer.weakest
    }


def descents_page(world: World) -> Page:
    """Return the drop this charge takes back, under the warning when the brake may cut out at once."""
    speed = world.style.number(FROM_SPEED, "speed")
    _answer, figures = figures_of(
        world, "numbers.descents", descent, world.person.rider, world.answers, speed=speed
    )
    first, _first = near(figures, DESCENT, first_descent, texts("first")["descent"])
    return figure_page(figures, near=first, advice=words_of(texts("packs")["descent_advice"]))
