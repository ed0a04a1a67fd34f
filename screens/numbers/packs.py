"""Packs: energy, volts, sag and heat, and which part limits first."""

from logic.answers.braking import FROM_SPEED
from logic.answers.energy import PackFigures, pack_figures
from screens.asking import value_of
from screens.figure_page import Figures, answered, figure_page
from screens.page import Page
from screens.tongue import _, texts
from screens.ways import leads_to
from screens.world import World

WAYS = {"limit_drive": "drive", "limit_brake": "brake", "limit_burst": "burst"}


def packs_page(world: World) -> Page:
    """Return watt-hours first, then what the parts allow; braking amps never without what they do to the board."""
    answer, before = answered(world, pack_figures, world.person.rider, world.answers)
    outcomes = texts("packs")["outcomes"]
    figures = Figures(world, answer.items, _labels(world), before, _details(answer), outcomes, head="energy")
    return figure_page(
        world,
        "numbers.packs",
        crown=figures.crown(),
        hazards=answer.hazards,
        controls=("pack.series", "pack.parallel", "pack.packs"),
        figures=figures,
        advice=(
            leads_to("controller", "bench.controller", _("What to set in the controller"), icon="controller"),
        ),
    )


def _labels(world: World) -> dict[str, str]:
    """Put the current and the speed into the labels."""
    style = world.style
    value = value_of(world, "ask.current") or world.board.controller.battery_current
    current = _("the battery limit") if value is None else style.number(float(value.si), "current")
    speed = style.number(FROM_SPEED, "speed")
    return {
        name: text.format(current=current, speed=speed) for name, text in texts("packs")["energy"].items()
    }


def _details(answer: PackFigures) -> dict[str, str]:
    """Return what each figure holds for, and which part limits first."""
    braking = texts("packs")["braking"]
    found = texts("packs")["energy_details"] | {
        "slows_as_set": braking["at worst"],
        "stop_as_set": braking["after reaction"],
    }
    for name, way in WAYS.items():
        if way in answer.weakest:
            found[name] = _("Whole board. Held by {part}.").format(
                part=texts("packs")["parts"][answer.weakest[way]]
            )
    return found
