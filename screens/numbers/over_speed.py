"""Charts of a quantity over speed, in the reader's units, and what stands where there is nothing to draw yet."""

from collections.abc import Iterable, Sequence

from logic.answers.reading import Item, Result
from screens.blocks import Words
from screens.pictures.chart import Curve, Mark, chart, chart_later
from screens.pictures.strokes import Later, Picture, Point
from screens.tongue import _
from screens.words import Style


def over_speed(  # noqa: PLR0913  (what a chart is made of)
    style: Style,
    of: object,
    curves: Iterable[tuple[str, Sequence[Point]]],
    quantity: str,
    title: str,
    marks: Iterable[tuple[Point, str]] = (),
    cursor: float | None = None,
) -> Later:
    """Return named lines of a quantity over speed, both in SI; `title` of its axis has a place for the unit.

    Curves and marks are read when it is first painted. They follow from the answer it is a chart `of`.
    """

    def scaled(point: Point) -> Point:
        return style.scale(point[0], "speed"), style.scale(point[1], quantity)

    def drawn() -> Picture:
        return chart(
            [Curve(name, [scaled(point) for point in points]) for name, points in curves],
            [Mark(*scaled(point), text) for point, text in marks],
            x_title=_("Speed, {unit}").format(unit=style.unit("speed")),
            y_title=title.format(unit=style.unit(quantity)),
            mark=style.mark,
            cursor=None if cursor is None else style.scale(cursor, "speed"),
        )

    return chart_later(drawn, style, of)


def middle_of(item: Item, style: Style, text: str) -> str:
    """Say what a band rests on, by the `value` in its middle; "" for a number without one."""
    if not isinstance(item, Result) or not item.band:
        return ""
    return text.format(value=style.number(item.value, item.quantity))


def not_drawn(key: str = "chart") -> Words:
    """Return what stands in place of a chart whose values are missing."""
    return Words(key, _("The chart needs the values that are missing above."), tone="second")
