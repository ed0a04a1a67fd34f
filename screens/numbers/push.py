"""Speed and push in full: the curves, a step along them, a grade, a wind, and which limit rules where."""

from logic.answers.push import Pushing, pushing
from logic.answers.reading import RIDER, Result
from screens.asking import stepper, value_of
from screens.blocks import Block, Picture, Words
from screens.figure_page import Figures, answered, figure_page
from screens.page import Page
from screens.pictures.chart import Curve, Mark, chart
from screens.tongue import _
from screens.words import Style
from screens.words.push import CHARGE, LABELS, LIMITS
from screens.world import World

HEAD = "top_loaded"
FIRST = ("top_loaded_full", "top_loaded_empty", "time_20", "push_at", "load", "climb_at")
VALUES = (
    "controller.motor_current",
    "controller.battery_current",
    "controller.duty",
    "controller.erpm_limit",
    "motor.kv",
    "motor.resistance",
    "drive.motor_teeth",
    "drive.wheel_teeth",
    "drive.wheel_diameter",
    "load.board_mass",
    RIDER.key,
    "load.rolling",
    "load.drag_area",
    "load.efficiency",
    "ask.axle",
)


def push_page(world: World) -> Page:
    """Return the top speed on this road, its curves, then what happens along them."""
    rider, style = world.person.rider, world.style
    answer, before = answered(world, lambda board: world.kept(pushing, board, rider, world.answers))
    speed = style.number(float(value_of(world, "ask.speed").si), "speed")  # type: ignore[union-attr]  (it begins with one)
    figures = Figures(
        world=world,
        items=answer.items,
        labels=_labels(style, speed),
        before=before,
        details={
            name: _("{value} as entered.").format(value=style.number(item.value, item.quantity))
            for name, item in answer.items.items()
            if isinstance(item, Result) and item.band
        },
        grey=bool(answer.faults),
    )
    return figure_page(
        world,
        title=_("Speed and push"),
        crown=figures.crown(HEAD),
        faults=answer.faults,
        controls=(stepper(world, "ask.speed", _("Along the curve")), "ask.grade", "ask.wind"),
        picture=(*_chart(answer, style, speed), *_rules(answer, style)),
        figures=lambda: figures.rows(FIRST, head=HEAD),
        values=VALUES,
        values_title=_("Tap one to try another value"),
    )


def _labels(style: Style, speed: str) -> dict[str, str]:
    """Put the speeds into the labels, in the person's unit."""
    said = {"{speed}": speed} | {f"{{{kmh}}}": style.number(kmh / 3.6, "speed") for kmh in (20, 30)}
    found = {}
    for name, text in LABELS.items():
        for mark, number in said.items():
            text = text.replace(mark, number)  # noqa: PLW2901  (one mark after the other)
        found[name] = text
    return found


def _rules(answer: Pushing, style: Style) -> tuple[Block, ...]:
    """Return which limit rules where."""
    parts = [
        _("{limit} up to {speed}").format(limit=LIMITS[part.limit], speed=style.number(part.high, "speed"))
        for part in answer.stretches
    ]
    if not parts:
        return ()
    said = _("What rules at full remote: {parts}.").format(parts=_(", then ").join(parts))
    return (Words(key="rules", text=said),)


def _chart(answer: Pushing, style: Style, speed: str) -> tuple[Block, ...]:
    """Draw push by charge against the road load, and where one stands on it."""
    if answer.curves is None:
        text = _("The chart needs the values that are missing above.")
        return (Words(key="chart", text=text, tone="second"),)

    def scaled(points: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
        return [(style.scale(x, "speed"), style.scale(y, "force")) for x, y in points]

    curves, cursor = answer.curves, answer.curves.cursor
    met = {charge: scaled((point,))[0] for charge, point in curves.meetings.items() if point is not None}
    picture = chart(
        [
            *(Curve(CHARGE[charge], scaled(points)) for charge, points in curves.push.items()),
            Curve(_("load"), scaled(curves.load)),
        ],
        # Three numbers would stand over each other: those of a full and an empty pack are in the rows.
        tuple(Mark(x, y, style.plain(x) if charge == "nominal" else "") for charge, (x, y) in met.items()),
        x_title=_("Speed, {unit}").format(unit=style.unit("speed")),
        y_title=_("Push, {unit}").format(unit=style.unit("force")),
        cursor=None if cursor is None else style.scale(cursor[0], "speed"),
    )
    at = ""
    if cursor is not None:
        push, load = (style.number(force, "force") for force in cursor[1:])
        at = _("At {speed}: push {push}, load {load}.").format(speed=speed, push=push, load=load)
    return (
        Picture(key="chart", strokes=picture, text=_("Push by charge and road load over speed.")),
        Words(key="at", text=at, bold=True, reserve=1),
    )
