"""The tension gauge: its texts stand beside each other, its band is always whole."""

from itertools import combinations

import pytest

from logic.answers.tension import belt_plan, belt_reading
from logic.board import Board
from logic.exchange import demo_boards
from logic.person import Person
from screens.paper.ink import width_of
from screens.paper.picture import lay
from screens.pictures.gauge import gauge, steps
from screens.pictures.strokes import Disc, Fill, Picture
from screens.words import Style
from screens.words.tension import form_of

SLACK = 1.5
WIDTHS = (288.0, 328.0, 380.0, 608.0)


def over_each_other(drawn: Picture, width: float, scale: float) -> list[tuple[str, str]]:
    """Give the texts that meet in a picture."""
    boxes = []
    for one in lay(drawn, width, drawn.height, scale):
        if one.kind == "text":
            (x, y), wide = one.points[0], width_of(one.text, one.width, one.bold)
            boxes.append((one.text, x, y, x + wide, y + one.height))
    return [
        (one[0], other[0])
        for one, other in combinations(boxes, 2)
        if one[1] < other[3] - SLACK
        and other[1] < one[3] - SLACK
        and one[2] < other[4] - SLACK
        and other[2] < one[4] - SLACK
    ]


def under_the_band(drawn: Picture, width: float, scale: float) -> bool:
    """Tell whether the text of the edges stands clear of the band."""
    laid = lay(drawn, width, drawn.height, scale)
    band = [one for one in laid if one.kind == "fill"][1]
    text = next(one for one in laid if one.text.startswith("right from"))
    return text.points[0][1] + text.height <= min(y for _, y in band.points)


@pytest.mark.parametrize("board", demo_boards(), ids=lambda board: board.name)
@pytest.mark.parametrize("system", ["metric", "inch"])
def test_needle_and_edges_keep_their_numbers_apart(board: Board, system: str) -> None:
    plan, style = belt_plan(board, Person()), Style(system)
    aim = plan.items["pull_target"].value
    for tenth in range(3, 25, 2):
        reading = belt_reading(board, Person(), aim * tenth / 10, plan.depth)
        for last in (None, reading.tension.value + 2.0):
            drawn = gauge(plan, reading, last, style)
            assert drawn is not None
            # The band, floor to ceiling, is never cut by the frame.
            band = [one for one in drawn.strokes if isinstance(one, Fill)][1]
            assert drawn.box[0] < band.points[0][0] < band.points[1][0] < drawn.box[2]
            for width in WIDTHS:
                for scale in (1.0, 1.3, 1.6, 2.0):
                    assert over_each_other(drawn, width, scale) == [], (tenth, last, width, scale)
                    assert under_the_band(drawn, width, scale), (tenth, last, width, scale)


def test_the_aim_is_named_where_its_mark_has_no_room_for_a_word() -> None:
    board = demo_boards()[0]
    plan, style = belt_plan(board, Person()), Style()
    reading = belt_reading(board, Person(), plan.items["pull_target"].value, plan.depth)
    for width in WIDTHS:
        said = [one.text for one in lay(gauge(plan, reading, None, style), width, 96.0, 1.0)]
        assert any(text.endswith("set to 108") for text in said), said


def test_what_a_pull_tells_is_told_apart_without_words_or_colour() -> None:
    """Loose, on the edge, just right, tight, not known: by the form of the verdict and where the needle stands."""
    board = demo_boards()[0]
    plan = belt_plan(board, Person())
    seen = set()
    for pull in (None, 5.0, 7.0, 9.0, 12.0):
        reading = None if pull is None else belt_reading(board, Person(), pull, plan.depth)
        word = "" if reading is None or reading.verdict is None else reading.verdict.word
        drawn = gauge(plan, reading, None, Style())
        assert drawn is not None
        band = [one for one in drawn.strokes if isinstance(one, Fill)][1]
        needle = next((one.centre[0] for one in drawn.strokes if isinstance(one, Disc)), None)
        low, high = band.points[0][0], band.points[1][0]
        side = "" if needle is None else "left" if needle < low else "right" if needle > high else "in"
        seen.add((form_of(word), side))
    assert len(seen) == 5


@pytest.mark.parametrize("width", WIDTHS)
def test_no_number_of_the_last_readings_stands_on_an_edge_of_the_window(width: float) -> None:
    drawn = steps([112.0, 98.0, 77.0, 99.0], 75.3, 118.0, Style())
    laid = lay(drawn, width, drawn.height)
    edges = [one.points[0][1] for one in laid if one.kind == "line" and one.tone == "outline"]
    texts = [one for one in laid if one.kind == "text"]
    assert len(edges) == 2
    assert {one.text for one in texts} == {"112", "98", "77", "99"}
    assert not any(one.points[0][1] < edge < one.points[0][1] + one.height for one in texts for edge in edges)
