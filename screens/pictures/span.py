"""Where the free span and the depth of a pull are measured, by hook or by weight; the depth is drawn larger than it is."""

from math import pi

from logic.answers.reading import Result
from logic.answers.tension import BeltPlan
from screens.pictures.strokes import Arc, Arrow, Disc, Label, Path, Picture, Stroke, box, flipped, frame
from screens.tongue import _
from screens.words import Style

LEFT, MIDDLE, RIGHT = (16.0, 0.0), (50.0, 11.0), (84.0, 0.0)
"""Where the span begins and ends, and its middle when it is pulled; the drawing's."""
WHEEL, MOTOR = 15.0, 9.0
"""Radii of the pulleys; the drawing's."""
LOW, TIP = -27.0, 27.0
"""Where the span is measured, and the end of the pull; the drawing's."""


def span_picture(plan: BeltPlan, style: Style, scale_unit: str) -> Picture:
    """Return the span pulled by a hook, with the numbers of a plan where they are known."""
    pull = plan.items["pull_target"]
    hook = _("hook")
    if isinstance(pull, Result):
        hook = _("hook: {reads}").format(reads=style.shown(pull.value, "force", unit=scale_unit))
    depth = _("depth")
    if plan.depth is not None:
        depth = _("depth {depth}").format(depth=style.number(plan.depth, "length"))
    return Picture(
        _pulled(hook, depth, _span(plan, style)),
        (0.0, LOW, 100.0, TIP),
        height=170.0,
        margins=(8.0, 24.0, 8.0, 10.0),
    )


def weight_picture(plan: BeltPlan, style: Style) -> Picture:
    """Return the level span with a weight that hangs from its middle."""
    strokes = _pulled(_("weight"), _("depth"), _span(plan, style))
    bottle = box(44.0, -TIP, 56.0, -TIP - 12.0)
    return Picture(
        (*(flipped(one, upside_down=True) for one in strokes), frame(bottle, "main", 3.0)),
        (0.0, -TIP - 13.0, 100.0, -LOW),
        height=190.0,
        margins=(8.0, 6.0, 8.0, 24.0),
    )


def _span(plan: BeltPlan, style: Style) -> str:
    span = plan.items["span"]
    if not isinstance(span, Result):
        return _("free span")
    return _("free span {length}").format(length=style.number(span.value, "length"))


def _pulled(pull: str, depth: str, span: str) -> tuple[Stroke, ...]:
    middle = (LEFT[0] + RIGHT[0]) / 2
    return (
        Arc((LEFT[0], -WHEEL), WHEEL, 0.1 * pi, 1.2 * pi, width=1.5),
        Arc((RIGHT[0], -MOTOR), MOTOR, -0.3 * pi, 0.9 * pi, width=1.5),
        Disc((LEFT[0], -WHEEL), 3.0),
        Disc((RIGHT[0], -MOTOR), 3.0),
        # A straight edge over both pulleys shows where the belt lies at rest.
        Path(((2.0, 0.0), (98.0, 0.0)), "second", 1.5, (7.0, 4.0)),
        Path((LEFT, MIDDLE, RIGHT), width=4.0),
        Arrow(MIDDLE, (MIDDLE[0], TIP), "main", 3.0),
        Arrow((62.0, 0.0), (62.0, MIDDLE[1]), "main", 1.5, both=True),
        Path((MIDDLE, (65.0, MIDDLE[1])), "main", 1.0),
        *(Path(((x, -2.0), (x, LOW)), "outline", 1.0) for x in (LEFT[0], RIGHT[0])),
        Arrow((LEFT[0], LOW), (RIGHT[0], LOW), "second", 1.2, both=True),
        Label(pull, (MIDDLE[0], TIP - 2.0), ("l", "r"), tone="main", bold=True, must=True, gap=10.0),
        Label(depth, (64.0, 7.0), ("r", "rt"), tone="main", bold=True, must=True),
        Label(span, (middle, LOW), ("b",), must=True),
        Label(_("straight edge"), (2.0, 0.0), ("rt",), tone="second", gap=4.0),
    )
