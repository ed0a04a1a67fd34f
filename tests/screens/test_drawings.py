"""The drawn widgets: labels stay apart and inside, drawings keep their scale, redraws are few and cheap."""

from collections.abc import Iterator
from itertools import combinations, pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from kivy.clock import Clock
from kivy.core.window import Window
from kivy.graphics import Color, Line, Mesh, Rectangle
from kivy.properties import Property

from screens.pictures.axis import cut, plain_number, round_ticks
from screens.theme import NAMES, theme
from screens.widgets.chart import Chart, Curve, Mark
from screens.widgets.drawing import Drawing
from screens.widgets.labelling import cross
from screens.widgets.plane import Box, dashes, spread

assert Window is not None  # Graphics instructions need the window's context, mocked or not.

WIDTHS = (296, 320, 412, 800)
SCALES = (1.0, 1.3, 1.6, 2.0)
LOOKS = [pytest.param(width, scale, id=f"{width} dp, text {scale}") for width in WIDTHS for scale in SCALES]

few = settings(max_examples=10, derandomize=True, deadline=None)


@pytest.fixture(autouse=True)
def _plain_theme() -> Iterator[None]:
    theme.apply(name="day", scale=1.0)
    yield
    theme.apply(name="day", scale=1.0)


def push(speed: float) -> float:
    """Example of our own: flat to 26 km/h, nothing at 38."""
    return 95.0 if speed <= 26 else 95.0 * (38.0 - speed) / 12.0


def example_chart(**more: Any) -> Chart:
    speeds = [at * 38 / 59 for at in range(60)]
    return Chart(
        lines=(
            Curve("push", [(v, push(v)) for v in speeds]),
            Curve("road load", [(v, 14 + 0.0283 * v * v) for v in speeds]),
            Curve("5 % up", [(v, 58 + 0.0283 * v * v) for v in speeds]),
        ),
        **{
            "marks": (Mark(32.5, push(32.5), "32.5 km/h"),),
            "x_title": "Speed, km/h",
            "y_title": "Push, N",
            "cursor": 20.0,
            "cursor_text": "20 km/h: push 95 N, road 25 N",
            **more,
        },
    )


def drawn(widget: Drawing, width: float, height: float | None = None) -> Drawing:
    """Return the widget drawn at a size, or at the height it wants."""
    widget.width = width
    widget.height = height or widget.height_wanted()
    widget.drawn_boxes()
    return widget


def instructions(widget: Drawing) -> list[Any]:
    """Return everything the widget put on its canvas."""
    group = next(item for item in widget.canvas.children if type(item).__name__ == "InstructionGroup")
    return list(group.children)


def inked_points(widget: Drawing) -> list[tuple[float, float]]:
    """Return the corners of everything drawn."""
    points: list[tuple[float, float]] = []
    for item in instructions(widget):
        if isinstance(item, Mesh):
            points += list(zip(item.vertices[::4], item.vertices[1::4], strict=True))
        elif isinstance(item, Line):
            points += list(zip(item.points[::2], item.points[1::2], strict=True))
        elif isinstance(item, Rectangle):
            (x, y), (wide, tall) = item.pos, item.size
            points += [(x, y), (x + wide, y + tall)]
    return points


def check(widget: Drawing) -> None:
    """Labels lie inside and apart, and nothing else leaves the widget."""
    width, height = widget.size
    boxes = widget.drawn_boxes()
    for box in boxes:
        assert box.x >= 0, box
        assert box.y >= 0, box
        assert box.right <= width, (box, width)
        assert box.top <= height, (box, height)
    for one, two in combinations(boxes, 2):
        assert not one.meets(two, -1.0), (one, two)
    for x, y in inked_points(widget):
        assert -1.5 <= x <= width + 1.5, (x, width)
        assert -1.5 <= y <= height + 1.5, (y, height)


def texts(widget: Drawing) -> list[str]:
    return [box.text for box in widget.drawn_boxes()]


number = st.floats(-1e3, 1e3)
positive = st.floats(0.01, 1.0)


@pytest.mark.parametrize(("width", "scale"), LOOKS)
class TestRoom:
    @few
    @given(
        lines=st.lists(st.lists(st.tuples(number, number), min_size=1, max_size=30), min_size=1, max_size=4),
        marks=st.lists(st.tuples(number, number), max_size=3),
        share=st.floats(0.0, 1.0),
        stretch=st.sampled_from((1e-4, 1.0, 1e5)),
    )
    def test_chart(  # noqa: PLR0913 - an argument for each thing drawn
        self, width: int, scale: float, lines: Any, marks: Any, share: float, stretch: float
    ) -> None:
        curves = tuple(
            Curve(f"line {at}", [(x, y * stretch) for x, y in points]) for at, points in enumerate(lines)
        )
        xs = [x for points in lines for x, _ in points] + [x for x, _ in marks]
        for name in NAMES:
            theme.apply(name=name, scale=scale)
            chart = Chart(
                lines=curves,
                marks=tuple(Mark(x, y * stretch, f"mark {at}") for at, (x, y) in enumerate(marks)),
                x_title="Distance since fitted, km",
                y_title="Tension of each span, N",
                cursor=min(xs) + share * (max(xs) - min(xs)),
                cursor_text="at 123 km: left 48 N, right 52 N",
            )
            check(drawn(chart, width))

    def test_examples_say_all_that_matters(self, width: int, scale: float) -> None:
        for name in NAMES:
            theme.apply(name=name, scale=scale)
            chart = drawn(example_chart(), width)
            check(chart)
            assert {"push", "road load", "5 % up", "32.5 km/h", "Speed, km/h", "Push, N"} <= set(texts(chart))

    def test_empty_text(self, width: int, scale: float) -> None:
        theme.apply(scale=scale)
        for kind in (Chart,):
            widget = drawn(kind(empty_text="Wheel pulley teeth are missing."), width)
            check(widget)
            assert texts(widget) == ["Wheel pulley teeth are missing."]
            assert not [item for item in instructions(widget) if isinstance(item, Line | Mesh)]


class TestChart:
    @pytest.mark.parametrize(
        ("low", "high", "most", "ticks"),
        [
            (0.0, 38.0, 5, [0, 10, 20, 30]),
            (0.0, 38.0, 8, [0, 5, 10, 15, 20, 25, 30, 35]),
            (-0.3, 0.3, 4, [-0.2, 0.0, 0.2]),
            (0.0, 1.0, 3, [0.0, 0.5, 1.0]),
            (1200.0, 5100.0, 5, [2000, 3000, 4000, 5000]),
        ],
    )
    def test_round_ticks(self, low: float, high: float, most: int, ticks: list[float]) -> None:
        assert round_ticks(low, high, most) == pytest.approx(ticks)

    def test_ticks_have_a_real_minus_and_no_tail(self) -> None:
        assert plain_number(-2.50) == "\N{MINUS SIGN}2.5"
        assert plain_number(20.0) == "20"

    def test_a_line_is_cut_at_the_edges_of_its_plot(self) -> None:
        assert cut([(-10.0, 5.0), (20.0, 5.0)], 10.0, 10.0) == [[(0.0, 5.0), (10.0, 5.0)]]
        over = cut([(0.0, 0.0), (5.0, 20.0), (10.0, 0.0)], 10.0, 10.0)
        assert over == [[(0.0, 0.0), (2.5, 10.0)], [(7.5, 10.0), (10.0, 0.0)]]
        assert cut([(0.0, 11.0), (10.0, 11.0)], 10.0, 10.0) == []

    def test_points_lie_where_the_axes_say(self) -> None:
        chart = drawn(example_chart(x_range=(0.0, 40.0), y_range=(0.0, 100.0)), 412)
        full = next(item for item in instructions(chart) if isinstance(item, Line) and len(item.points) > 100)
        low = (chart.place_x(0.0), chart.place_y(0.0))
        high = (chart.place_x(40.0), chart.place_y(100.0))
        # 95 N at 0 km/h, and 0 N at 38 km/h.
        assert full.points[:2] == pytest.approx([low[0], low[1] + 0.95 * (high[1] - low[1])], abs=1e-3)
        assert full.points[-2:] == pytest.approx([low[0] + 0.95 * (high[0] - low[0]), low[1]], abs=1e-3)

    def test_lines_differ_by_dashes_in_every_theme(self) -> None:
        for name in NAMES:
            theme.apply(name=name)
            chart = drawn(example_chart(marks=(), cursor=None), 412)
            strokes = [len(item.vertices) for item in instructions(chart) if isinstance(item, Mesh)]
            # One full line, two of dashes that differ in length.
            assert len([item for item in instructions(chart) if isinstance(item, Line)]) == 1
            assert len(set(strokes)) == 2

    def test_dashes_keep_ink_and_gap_across_corners(self) -> None:
        found = list(dashes([(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)], (6.0, 3.0)))
        assert found == [(0, 0, 6, 0), (9, 0, 10, 0), (10, 0, 10, 5), (10, 8, 10, 10)]

    def test_a_gap_of_unknown_values_is_not_bridged_by_nonsense(self) -> None:
        check(drawn(Chart(lines=(Curve("a", [(0.0, 1.0), (1.0, float("nan")), (2.0, 3.0)]),)), 320))

    def test_a_fifth_line_is_refused(self) -> None:
        with pytest.raises(ValueError, match="at most 4 lines"):
            Chart(lines=tuple(Curve(f"{at}", [(0.0, 0.0)]) for at in range(5)))

    def test_given_ticks_are_thinned_until_they_stand_apart(self) -> None:
        days = tuple((float(day), f"{day} November") for day in range(1, 31))
        chart = drawn(Chart(lines=(Curve("left", [(1.0, 50.0), (30.0, 45.0)]),), x_ticks=days), 320)
        check(chart)
        shown = [text for text in texts(chart) if text.endswith("November")]
        assert 2 <= len(shown) <= 4

    @pytest.mark.parametrize("scale", SCALES)
    def test_leaders_of_close_marks_do_not_cross(self, scale: float) -> None:
        theme.apply("day", scale)
        near = tuple(Mark(at, push(at), f"{at} km/h") for at in (18.2, 20.6, 23.6, 26.6))
        chart = drawn(example_chart(marks=near), 412)
        assert not any(cross(*two) for two in combinations(chart.leaders, 2))


class TestRedraw:
    def test_many_changes_are_one_redraw_in_the_next_frame(self, monkeypatch: pytest.MonkeyPatch) -> None:
        drawings: list[int] = []
        chart = example_chart()
        plain = chart.draw
        monkeypatch.setattr(chart, "draw", lambda: (drawings.append(1), plain()))
        Clock.tick_draw()
        drawings.clear()
        chart.cursor, chart.cursor_text, chart.size = 30.0, "30 km/h", (500, 240)
        theme.apply(name="night", scale=1.6)
        assert drawings == []
        Clock.tick_draw()
        assert drawings == [1]
        chart.pos = (40, 60)
        Clock.tick_draw()
        assert drawings == [1]

    def test_every_property_asks_for_a_redraw(self) -> None:
        for widget in (example_chart(),):
            own = [name for name, value in vars(type(widget)).items() if isinstance(value, Property)]
            assert len(own) > 10
            for name in own:
                drawn(widget, 320)
                widget.property(name).dispatch(widget)
                assert widget._ask.is_triggered, name  # noqa: SLF001 - whether one is due shows nowhere else.

    def test_the_theme_reaches_the_ink(self) -> None:
        chart = example_chart()
        drawn(chart, 320)
        theme.apply(name="night")
        Clock.tick_draw()
        colours = [tuple(item.rgb) for item in instructions(chart) if isinstance(item, Color)]
        assert tuple(theme.chart_a[:3]) in colours

    def test_moving_moves_the_drawing_only(self) -> None:
        chart = example_chart()
        before = drawn(chart, 320).drawn_boxes()
        chart.pos = (40, 60)
        assert chart.drawn_boxes() == before


class TestSpread:
    @few
    @given(
        labels=st.lists(st.tuples(st.floats(1.0, 90.0), st.floats(0.0, 400.0)), min_size=1, max_size=6),
        room=st.floats(50.0, 500.0),
    )
    def test_labels_of_a_row_stay_apart_and_inside(
        self, labels: list[tuple[float, float]], room: float
    ) -> None:
        labels.sort(key=lambda label: label[1])
        widths = [width for width, _ in labels]
        lefts = spread(widths, [centre for _, centre in labels], 0.0, room, 8.0)
        if lefts is None:
            assert sum(widths) + 8.0 * (len(widths) - 1) > room
            return
        boxes = [Box("", left, 0, width, 1) for left, width in zip(lefts, widths, strict=True)]
        assert boxes[0].x >= -1e-6
        assert boxes[-1].right <= room + 1e-6
        for one, two in pairwise(boxes):
            assert two.x - one.right >= 8.0 - 1e-6

    def test_two_that_crowd_share_the_shift(self) -> None:
        assert spread([20.0, 20.0], [100.0, 110.0], 0.0, 300.0, 4.0) == pytest.approx([83.0, 107.0])

    def test_one_with_room_stays_where_it_belongs(self) -> None:
        assert spread([20.0], [100.0], 0.0, 300.0, 4.0) == pytest.approx([90.0])


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("token", ["chart_a", "chart_b", "chart_c", "main"])
def test_colours_that_letter_a_line_are_as_readable_as_text(name: str, token: str) -> None:
    theme.apply(name=name)

    def light(colour: list[float]) -> float:
        parts = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in colour[:3]]
        return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2]

    high, low = sorted((light(getattr(theme, token)), light(theme.ground)), reverse=True)
    assert (high + 0.05) / (low + 0.05) >= 7.0
