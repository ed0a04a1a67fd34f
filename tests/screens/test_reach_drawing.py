"""The cut through a screw and its hole: to scale, words inside and apart, the part past the end in its own colour."""

from collections.abc import Iterator
from itertools import combinations
from typing import Any

import pytest
from kivy.core.window import Window
from kivy.graphics import Rectangle

from screens.theme import theme
from screens.widgets.reach_drawing import ReachDrawing

assert Window is not None  # Graphics instructions need the window's context, mocked or not.

LOOKS = [
    pytest.param(width, scale, id=f"{width} dp, text {scale}")
    for width in (296, 388, 768)
    for scale in (1.0, 1.3, 1.6, 2.0)
]


@pytest.fixture(autouse=True)
def _plain_theme() -> Iterator[None]:
    theme.apply(name="day", scale=1.0)
    yield
    theme.apply(name="day", scale=1.0)


def example(width: float = 388, **more: Any) -> ReachDrawing:
    drawing = ReachDrawing(
        size_hint=(None, None),
        width=width,
        height=100,
        **{
            "diameter": 0.004,
            "screw_length": 0.014,
            "plate": 0.007,
            "washers": 0.001,
            "thread_depth": 0.0065,
            "hole_depth": 0.007,
            "plate_text": "Plate and washers 8 mm",
            "engaged_text": "Engaged 6 mm",
            "room_text": "Room 1 mm",
            "behind_text": "Windings",
            **more,
        },
    )
    drawing.draw_now()
    drawing.height = drawing.wanted_height
    drawing.draw_now()
    return drawing


def rectangles(drawing: ReachDrawing) -> list[Rectangle]:
    group = drawing._group  # noqa: SLF001 - what is drawn has no other name.
    return [one for one in group.children if isinstance(one, Rectangle)]


@pytest.mark.parametrize(("width", "scale"), LOOKS)
@pytest.mark.parametrize("screw", [0.010, 0.014, 0.018, 0.030])
def test_words_stay_inside_and_apart(width: float, scale: float, screw: float) -> None:
    theme.apply(name="day", scale=scale)
    drawing = example(width, screw_length=screw)
    boxes = drawing.drawn_boxes()
    assert len(boxes) == 4
    for box in boxes:
        assert box.x >= 0, box
        assert box.right <= width, box
        assert box.y >= 0, box
        assert box.top <= drawing.height, box
    for one, other in combinations(boxes, 2):
        assert not one.meets(other), (one, other)


@pytest.mark.parametrize("screw", [0.010, 0.014, 0.018])
def test_lengths_are_to_scale(screw: float) -> None:
    """One scale for all: shank and plate are as long on the screen as their lengths say."""
    drawing = example(screw_length=screw, washers=0.0)
    scale = drawing.scale()
    widths = [one.size[0] for one in rectangles(drawing)]
    shank = min(screw, 0.014) * scale
    assert any(abs(wide - shank) <= 1.5 for wide in widths), (shank, widths)
    assert any(abs(wide - 0.007 * scale) <= 1.5 for wide in widths)
    past = (screw - 0.014) * scale
    assert past <= 0 or any(abs(wide - past) <= 1.5 for wide in widths)


def test_the_scale_follows_the_width_and_keeps_the_cut_low() -> None:
    assert example(388, screw_length=0.03).scale() > example(296, screw_length=0.03).scale()
    assert example(2000).scale() * 2.6 * 0.004 <= 150.5


def test_without_all_lengths_the_words_stand_in() -> None:
    drawing = example(plate=0.0, empty_text="The drawing comes when all five lengths are there.")
    assert [box.text for box in drawing.drawn_boxes()] == [
        "The drawing comes when all five lengths are there."
    ]


def test_a_short_screw_has_no_thread_to_mark() -> None:
    texts = [box.text for box in example(screw_length=0.0075).drawn_boxes()]
    assert texts == ["Plate and washers 8 mm", "Windings"]
