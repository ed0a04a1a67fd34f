"""One pair of pulleys: every figure with its working, and the way to try it on the board."""

from logic.answers.pair import pair_board, pair_details
from logic.answers.reading import RIDER, Item
from logic.board import Value
from screens.acts import Both
from screens.acts.entering import Put
from screens.asking import asked
from screens.blocks import Button, Words
from screens.figure_page import Figures, figure_page
from screens.page import Page
from screens.tongue import _, texts
from screens.world import World

KEYS = {"motor": "drive.motor_teeth", "wheel": "drive.wheel_teeth", "belt": "drive.belt_teeth"}
FIRST = ("climb_start", "push_start", "stop", "belt_load", "climb_heat")


def pair_page(world: World) -> Page:
    """Return the top speed of the pair named by `motor`, `wheel` and `belt` teeth, then its figures."""
    motor, wheel, belt = (world.args.get(name) for name in KEYS)
    board = world.kept(pair_board, world.board, motor, wheel, belt)
    items: dict[str, Item] = world.kept(pair_details, board, world.person.rider, world.answers)
    climb = {
        name: world.style.number(asked(world, f"ask.climb_{name}"), quantity)
        for name, quantity in (("grade", "share"), ("speed", "speed"))
    }
    figures = Figures(
        world=world,
        items=items,
        labels={name: label.format(**climb) for name, label in texts("pairs")["labels"].items()},
        details={
            "top_loaded": _("Nominal pack, level road, no wind."),
            "stop": _("Motors alone, as the controller is set, dry, after you react."),
        },
    )
    said = _("Belt of {teeth} teeth.").format(teeth=belt) if belt else _("No belt in stock fits the mount.")
    return figure_page(
        world,
        title=_("Pair {motor}:{wheel}").format(motor=motor, wheel=wheel),
        crown=figures.crown("top_loaded"),
        controls=(
            Words(
                key="told",
                text=_("{motor} teeth on the motor, {wheel} on the wheel. {belt}").format(
                    motor=motor, wheel=wheel, belt=said
                ),
            ),
        ),
        figures=lambda: figures.rows(FIRST, head="top_loaded"),
        values=("ask.climb_grade", "ask.climb_speed", RIDER.key),
        values_title=_("Reference climb and rider"),
        offer=None if _is_on(world) else _try(world),
    )


def _wanted(world: World) -> dict[str, float]:
    return {key: float(world.args[name]) for name, key in KEYS.items() if world.args.get(name)}


def _is_on(world: World) -> bool:
    """Tell whether the pair and its belt are what is on the board now."""
    present = {key: world.board.value(key) for key in _wanted(world)}
    return all(value is not None and value.si == _wanted(world)[key] for key, value in present.items())


def _try(world: World) -> Button:
    """Return the bar that lays the pair over the board as a trial."""
    acts = tuple(Put(key, Value(count)) for key, count in _wanted(world).items())
    return Button(_("Try this pair on the board"), Both(acts))
