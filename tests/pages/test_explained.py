"""Drawings that explain a joint: the order round a pattern, a pull square to the arm, a set screw on its flat, a stack."""

from math import hypot

import pytest

from logic.answers.joint_guide import find_joints
from logic.board import Board, Value
from logic.checks.lists import build_stages, checklist
from screens.acts.entering import Write
from screens.bench.explained import explained, pattern
from screens.blocks import Picture
from screens.paper.measure import measure
from screens.paper.room import look_of
from screens.pictures.hanger import hanger
from screens.pictures.power import LESS, PLUS, polarity
from screens.pictures.strokes import Arrow, Disc, Fill, Label, Path
from screens.pictures.tightening import (
    BEARING,
    BORE,
    OUTER,
    bearing_order,
    cross_pattern,
    order_of,
    pull_on_key,
    set_screw_on_flat,
)
from tests.pages.reader import Reader
from tests.pages.test_layout import SCALES, SIZES, faults


def numbered(count: int) -> dict[str, tuple[float, float]]:
    return {one.text: one.at for one in cross_pattern(count).strokes if isinstance(one, Label)}


@pytest.mark.parametrize("count", [3, 4, 5, 6])
def test_every_screw_has_its_turn(count: int) -> None:
    assert sorted(order_of(count)) == list(range(count))
    assert len(set(numbered(count).values())) == count
    strokes = cross_pattern(count).strokes
    assert sum(isinstance(one, Disc) for one in strokes) == count
    assert sum(isinstance(one, Arrow) for one in strokes) == count - 1


@pytest.mark.parametrize("count", [4, 6])
def test_the_second_screw_is_opposite_the_first(count: int) -> None:
    """Common practice, no source: opposite screws follow each other."""
    at = numbered(count)
    for first in range(1, count, 2):
        one, other = at[str(first)], at[str(first + 1)]
        assert (one[0], one[1]) == pytest.approx((-other[0], -other[1]))


def test_no_screw_follows_its_neighbour_where_five_stand_round() -> None:
    at = numbered(5)
    side = 2 * 0.5877852522924731  # Chord of a fifth of a circle of radius 1: 2 sin 36 degrees.
    for number in range(1, 5):
        one, other = at[str(number)], at[str(number + 1)]
        assert hypot(one[0] - other[0], one[1] - other[1]) > side + 0.1


def test_the_pattern_is_that_of_this_board(pages: Reader) -> None:
    board = pages.world.saved
    # 8 motor screws are 4 on each of two motors, 10 bolts 5 on each wheel.
    assert pattern(board, "motor_face") == 4
    assert pattern(board, "wheel_pulley") == 5
    assert pattern(board.with_value("joints.enclosure.count", Value(14.0)), "enclosure") == 4
    assert pattern(Board("x", "X"), "motor_face") == 4
    assert pattern(board, "") == 4


def test_the_pull_is_square_to_the_arm_at_its_end() -> None:
    strokes = pull_on_key("80 mm", "1.66 kg", spanner=False).strokes
    pull = next(one for one in strokes if isinstance(one, Arrow) and one.tone == "main")
    arm = next(one for one in strokes if isinstance(one, Arrow) and one.both)
    along = (arm.end[0] - arm.start[0], arm.end[1] - arm.start[1])
    force = (pull.end[0] - pull.start[0], pull.end[1] - pull.start[1])
    assert along[0] * force[0] + along[1] * force[1] == pytest.approx(0.0)
    # The arm runs from the middle of the screw to where it is pulled.
    assert (arm.start[0], arm.end[0]) == (0.0, pull.start[0])
    assert {one.text for one in strokes if isinstance(one, Label)} == {"80 mm", "1.66 kg"}


def test_the_first_set_screw_presses_on_the_flat() -> None:
    strokes = set_screw_on_flat().strokes
    flat = next(one for one in strokes if isinstance(one, Path) and one.tone == "main")
    (x, low), (same, high) = flat.points
    assert (x, low) == (same, -high)
    # The ends of the flat lie on the shaft.
    assert hypot(x, low) == pytest.approx(1.0)
    first, second = (one for one in strokes if isinstance(one, Fill) and one.tone == "text")
    assert min(point[0] for point in first.points) == x
    assert max(abs(point[1]) for point in first.points) < high
    assert min(point[1] for point in second.points) == pytest.approx(1.0)


def test_the_stack_lies_in_order_without_a_gap() -> None:
    """Common practice, no source: washer, bearing, spacer, bearing, washer, nut."""
    at = {one.text: one.at[0] for one in bearing_order().strokes if isinstance(one, Label)}
    assert [at[str(number)] for number in range(1, 7)] == sorted(at.values())
    # A 608 bearing, from memory: 8 mm bore, 22 mm outside, 7 mm wide.
    assert (2 * BORE, 2 * OUTER, BEARING) == (8.0, 22.0, 7.0)
    assert at["4"] - at["2"] == pytest.approx(BEARING + 10.0)


@pytest.mark.parametrize(
    ("stage", "item", "drawing"),
    [
        ("build.trucks", "snug", "cross"),
        ("build.wheels", "bearings", "bearings"),
        ("build.wheels", "wheel_pulley", "cross"),
        ("build.motor", "lock", "set screw"),
        ("build.belt", "motor_lock", "cross"),
        ("build.motor", "side", "hanger"),
        ("build.motor", "mount", "hanger"),
        ("build.wiring", "polarity", "polarity"),
        ("first_power", "polarity", "polarity"),
        ("first_power", "precharge", "precharge"),
    ],
)
def test_the_steps_that_need_one_have_one(stage: str, item: str, drawing: str) -> None:
    assert checklist(stage).item(item).picture == drawing


def test_every_name_that_is_asked_for_is_drawn(bare: Reader) -> None:
    board = Board("x", "X")
    names = {row.text("picture") for row in find_joints("").kinds if "picture" in row}
    lists = (*build_stages(), "first_power")
    names |= {item.picture for stage in lists for item in checklist(stage).items} - {"", "drive"}
    assert names == {
        *("cross", "bearings", "set screw", "hanger", "polarity", "precharge"),
        *("belt print", "span"),
    }
    for name in names:
        drawn = explained(bare.world, board, name)[0]
        assert isinstance(drawn, Picture)
        assert drawn.text
    assert explained(bare.world, board, "") == ()


def words_of(drawn: Picture) -> set[str]:
    return {one.text for one in drawn.strokes.strokes if isinstance(one, Label)}


def test_first_power_is_drawn_with_the_boards_volts_and_time(pages: Reader) -> None:
    pages.open("bench.power")
    keys = [block.key for block in pages.page.blocks]
    assert keys.index("step 2") + 1 == keys.index("polarity")
    assert keys.index("step 4") + 1 == keys.index("precharge")
    # Towpath 36: 10 cells in series, 42 V full.
    assert any("42" in text for text in words_of(pages["polarity"]))
    assert {"1: resistor, 2\u00a0s", "2: the plug"} <= words_of(pages["precharge"])


def test_red_goes_to_plus_and_black_to_minus() -> None:
    strokes = polarity("").strokes
    at = {one.text: one.at for one in strokes if isinstance(one, Label)}
    red, black = (
        next(
            one
            for one in strokes
            if isinstance(one, Path) and one.tone == tone and len(one.points) in (3, 4) and not one.closed
        )
        for tone in ("bad", "text")
    )
    assert red.points[-1][1] == at[PLUS][1]
    assert black.points[-1][1] == at[LESS][1]
    assert at[PLUS][1] > at[LESS][1]


@pytest.mark.parametrize(("sides", "motors", "rooms"), [(("left", "right"), 2, 5), (("right",), 1, 2)])
def test_the_hanger_shows_this_boards_motors(sides: tuple[str, ...], motors: int, rooms: int) -> None:
    strokes = hanger(sides).strokes
    assert sum(isinstance(one, Label) and one.text == "motor" for one in strokes) == motors
    # To the deck and to the ground for each, and between two.
    assert sum(isinstance(one, Arrow) for one in strokes) == rooms
    if sides == ("right",):
        assert all(one.start[0] > 0 for one in strokes if isinstance(one, Arrow))


@pytest.mark.parametrize(
    ("joint", "drawing"),
    [("motor_face", "cross"), ("motor_set_screw", "set screw"), ("bearings", "bearings")],
)
def test_tool_and_order_of_a_joint_is_drawn(pages: Reader, joint: str, drawing: str) -> None:
    pages.open("bench.joint", joint=joint)
    assert drawing not in pages
    pages.tap("Tool and order")
    assert drawing in pages


def test_the_pull_is_drawn_with_the_persons_arm(pages: Reader) -> None:
    pages.open("bench.joints")
    pages.act(Write("lookup", "motor face"))
    pages.tap("Motor face screws")
    pages.tap("5 mm")
    pages.tap("Without a torque wrench")
    said = {one.text for one in pages["key"].strokes.strokes if isinstance(one, Label)}
    # Ours: 1.3 N m over 80 mm is 16.25 N, 1.66 kg.
    assert said == {"80\u00a0mm", "1.66\u00a0kg"}


@pytest.mark.parametrize("name", ["cross", "bearings", "set screw", "hanger", "polarity", "precharge"])
def test_texts_of_a_drawing_stand_inside_and_apart(pages: Reader, name: str) -> None:
    block = explained(pages.world, pages.world.saved, name, "wheel_pulley")[0]
    found = [
        f"{width}x{height} {scale}: {fault}"
        for width, height in SIZES
        for scale in SCALES
        for fault in faults(measure(block, min(width, 640), look_of(height, scale)))
    ]
    assert found == []
