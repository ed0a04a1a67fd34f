"""One pair of pulleys: every figure with its working, and the way to try it on the board."""

from logic.answers.pair import pair_board, pair_details
from logic.board import Value
from screens.acts import Both
from screens.acts.entering import Put
from screens.blocks import Button, Words
from screens.figure_page import Figures, figure_page, filled
from screens.page import Page
from screens.tongue import _, texts
from screens.world import World

KEYS = {"motor": "drive.motor_teeth", "wheel": "drive.wheel_teeth", "belt": "drive.belt_teeth"}


def pair_page(world: World) -> Page:
    """Return the top speed of the pair named by `motor`, `wheel` and `belt` teeth, then its figures."""
    motor, wheel, belt = (world.args.get(name) for name in KEYS)
    board = world.kept(pair_board, world.board, motor, wheel, belt)
    items = world.kept(pair_details, board, world.person.rider, world.answers)
    labels, details = (filled(world, texts("pairs")["labels"]), texts("pairs")["details"])
    figures = Figures(world, items, labels, "numbers.pair", details=details, head="top_loaded")
    told = _("{motor} teeth on the motor, {wheel} on the wheel. {belt}")
    said = _("Belt of {teeth} teeth.").format(teeth=belt) if belt else _("No belt in stock fits the mount.")
    return figure_page(
        figures,
        title=_("Pair {motor}:{wheel}").format(motor=motor, wheel=wheel),
        controls=(Words("told", told.format(motor=motor, wheel=wheel, belt=said)),),
        offer=_try(world),
    )


def _try(world: World) -> Button | None:
    """Return the bar that lays the pair and its belt over the board as a trial, unless they are on it now."""
    wanted = {key: float(world.args[name]) for name, key in KEYS.items() if world.args.get(name)}
    present = {key: world.board.value(key) for key in wanted}
    if all(value is not None and value.si == wanted[key] for key, value in present.items()):
        return None
    acts = tuple(Put(key, Value(count)) for key, count in wanted.items())
    return Button(_("Try this pair on the board"), Both(acts))
