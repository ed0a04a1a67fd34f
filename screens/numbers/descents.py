"""Long descents: volts first, then how much height this charge can take back."""

from logic.answers.braking import FROM_SPEED
from logic.answers.descents import descent
from logic.answers.first_descent import first_descent
from screens.figure_page import figure_page, figures_of
from screens.numbers.first_figures import DESCENT, near
from screens.page import Page
from screens.tongue import texts
from screens.ways import words_of
from screens.world import World


def descents_page(world: World) -> Page:
    """Return the drop this charge takes back, under the warning when the brake may cut out at once."""
    speed = world.style.number(FROM_SPEED, "speed")
    _answer, figures = figures_of(
        world, "numbers.descents", descent, world.person.rider, world.answers, speed=speed
    )
    first, _first = near(figures, DESCENT, first_descent, texts("first")["descent"])
    return figure_page(figures, near=first, advice=words_of(texts("packs")["descent_advice"]))
