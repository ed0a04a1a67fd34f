"""Long descents: volts first, then how much height this charge can take back."""

from logic.answers.braking import FROM_SPEED
from logic.answers.descents import descent
from logic.answers.first_descent import first_descent
from screens.blocks import Words
from screens.figure_page import Figures, answered, figure_page
from screens.numbers.first_figures import DESCENT_ROUNDS, descent_crown, more_exact
from screens.numbers.nearer import following, lacks_values
from screens.page import Page
from screens.tongue import _, texts
from screens.world import World

HEAD = "drop_back"
BRAKING = texts("packs")["braking"]
DETAILS = texts("packs")["descent_details"] | {
    "slows_as_set": BRAKING["at worst"],
    "stop_as_set": BRAKING["after reaction"],
}


def descents_page(world: World) -> Page:
    """Return the drop this charge takes back, under the warning when the brake may cut out at once."""
    rider, speed = world.person.rider, world.style.number(FROM_SPEED, "speed")
    answer, before = answered(world, descent, rider, world.answers)
    labels = {name: text.format(speed=speed) for name, text in texts("packs")["descent"].items()}
    figures = Figures(world, answer.items, labels, before, DETAILS, head=HEAD)
    lacks = lacks_values(answer.items[HEAD])
    first = world.kept(first_descent, world.board, rider, world.answers) if lacks else None
    return figure_page(
        world,
        "numbers.descents",
        crown=figures.crown() if first is None else descent_crown(world, first, figures.labels[HEAD]),
        note=() if first is None else more_exact(world, DESCENT_ROUNDS, first),
        hazards=answer.hazards,
        controls=("ask.start_charge", "ask.drop"),
        figures=figures,
        advice=(
            Words(key="try", text=_("Try the brake on the flat before the hill. Cold packs accept less.")),
            Words(
                key="foot",
                text=_(
                    "A snapped belt or an open fuse takes the motor brake away: know how to brake by foot."
                ),
            ),
        ),
        then=following(world, DESCENT_ROUNDS),
    )
