"""Drawings that explain a belt: its print, where span and depth are measured, the weight, the pull on the motor."""

import pytest
from kivy.metrics import dp

from logic.answers.tension import belt_plan
from logic.board import Board
from logic.exchange import demo_boards
from logic.person import Person
from screens.blocks import Picture
from screens.paper.measure import measure
from screens.paper.picture import height_of, lay
from screens.paper.room import look_of
from screens.pictures import strokes as s
from screens.pictures.belts import belt_print, motor_pulled
from screens.pictures.drive import drive
from screens.pictures.span import LEFT, MIDDLE, RIGHT, span_picture, weight_picture
from screens.words import Style
from tests.pages.reader import Reader
from tests.pages.test_layout import SCALES, SIZES, faults

PLAN = belt_plan(demo_boards()[0], Person())
STYLE = Style()


def drawings() -> dict[str, s.Picture]:
    """Give each drawing with the numbers of Towpath 36."""
    return {
        "print": belt_print(),
        "motor": motor_pulled("21 kg"),
        "span": span_picture(PLAN, STYLE, "kg"),
        "weight": weight_picture(PLAN, STYLE),
    }


def texts(drawn: s.Picture) -> set[str]:
    """Give what stands in a drawing."""
    return {one.text.replace("\u00a0", " ") for one in drawn.strokes if isinstance(one, s.Label)}


@pytest.mark.parametrize("name", ["print", "motor", "span", "weight"])
def test_nothing_in_a_drawing_is_cut_or_covered(name: str) -> None:
    block = Picture(key=name, strokes=drawings()[name], text="")
    for width, height in SIZES:
        for scale in SCALES:
            assert [*faults(measure(block, min(width, 640), look_of(height, scale)))] == [], (width, scale)


def test_span_and_depth_are_those_of_the_board() -> None:
    assert {"free span 64.5 mm", "depth 1.1 mm", "hook: 0.959 kg"} <= texts(drawings()["span"])


def test_the_pull_is_square_to_the_span_at_its_middle() -> None:
    pull = next(one for one in drawings()["span"].strokes if isinstance(one, s.Arrow) and one.tone == "main")
    assert pull.start == MIDDLE
    assert pull.start[0] == pull.end[0] == (LEFT[0] + RIGHT[0]) / 2
    assert LEFT[1] == RIGHT[1]


def test_the_weight_hangs_below_a_level_span() -> None:
    drawn = drawings()["weight"]
    pull = next(one for one in drawn.strokes if isinstance(one, s.Arrow) and one.tone == "main")
    bottle = next(one for one in drawn.strokes if isinstance(one, s.Path) and one.closed)
    assert pull.end[1] < pull.start[1] < 0.0
    assert max(y for _, y in bottle.points) == pull.end[1]


def test_the_motor_is_pulled_on_the_line_of_centres() -> None:
    strokes = motor_pulled("").strokes
    axle, shaft = (one.centre for one in strokes if isinstance(one, s.Disc))
    pull = next(one for one in strokes if isinstance(one, s.Arrow))
    assert axle[1] == shaft[1] == pull.start[1] == pull.end[1]
    assert axle[0] < shaft[0] < pull.start[0] < pull.end[0]


def test_without_a_belt_it_is_drawn_without_numbers() -> None:
    plan = belt_plan(Board("x", "X"), Person())
    assert texts(span_picture(plan, STYLE, "kg")) == {"hook", "depth", "free span", "straight edge"}


@pytest.mark.parametrize(("item", "drawing"), [("belt_on", "belt print"), ("again", "span")])
def test_the_build_shows_it_at_its_step(pages: Reader, item: str, drawing: str) -> None:
    pages.open("ride.run", list="build.belt")
    while pages.world.session("build.belt").under_way.at != item:
        pages.enter()
    assert drawing in pages


@pytest.mark.parametrize("scale", SCALES)
def test_the_teeth_of_the_motor_pulley_stand_clear_of_the_belt(scale: float) -> None:
    """They were written over the belt where text was larger than normal."""
    drawn = drive(demo_boards()[0], PLAN, STYLE)
    assert drawn is not None
    for width in (288.0, 328.0, 380.0):
        placed = lay(drawn, dp(width), height_of(drawn, dp(width), height=drawn.height, text=scale), scale)
        belt = next(one for one in placed if one.kind == "line" and one.width == 4.0 and len(one.points) > 9)
        teeth = next(one for one in placed if one.kind == "text" and one.text == "16")
        assert teeth.points[0][0] >= max(x for x, _y in belt.points) + dp(2)
