"""Which belt, and does it fit: belts in stock, a wanted centre, ratings with their working, gaps that close."""

from itertools import pairwise
from math import dist, pi

import pytest

from logic.answers.belt_choice import belt_choice
from logic.board import Value
from logic.units import GAP
from screens.acts import Go
from screens.blocks import PLAIN, RIGHT, UNSURE, WRONG, Line
from screens.pictures.drive import drive
from screens.pictures.strokes import Arc, Path
from screens.words import Style
from tests.pages.reader import Reader


def stock(pages: Reader) -> list[str]:
    """Return the belts in stock on the page."""
    return [
        block.title for block in pages.blocks() if isinstance(block, Line) and block.key.startswith("stock ")
    ]


def test_a_belt_in_stock_is_tried_and_kept(pages: Reader) -> None:
    pages.open("numbers.belt")
    assert pages.page.crown.number == "67.3"
    pages.tap(f"55{GAP}teeth, 275")
    # Ours: a tooth of 5 mm less is about 2.6 mm of centre distance less.
    assert (pages.page.crown.number, pages.page.crown.change) == ("64.7", f"\N{MINUS SIGN}2.6{GAP}mm")
    assert pages.world.saved.drive.belt_teeth.si == 56.0
    pages.tap("Keep on board")
    assert pages.world.saved.drive.belt_teeth.si == 55.0
    assert next(title for title in stock(pages) if "on the board" in title).startswith(f"55{GAP}teeth")


def test_a_wanted_centre_moves_the_list_and_stays(pages: Reader) -> None:
    pages.open("numbers.belt")
    pages.tap("Wanted centre distance")
    pages.type("90")
    assert pages["stock"].title == f"In stock near 90{GAP}mm"
    assert any(title.startswith(f"66{GAP}teeth, 330") for title in stock(pages))
    pages.tap("Done")
    pages.restart()
    assert pages["stock"].title == f"In stock near 90{GAP}mm"


def test_each_figure_of_the_belt_opens_its_working(pages: Reader) -> None:
    pages.open("numbers.belt").tap("All figures")
    for name in ("rated_top", "used_start", "slot_outer", "angular_speed_loaded"):
        assert isinstance(pages[name].act, Go)
        assert pages[name].act.page == "working"


def test_the_belts_drawing_carries_no_pull(pages: Reader) -> None:
    picture = pages.open("numbers.belt")["drawing"].strokes
    texts = [stroke.text for stroke in picture.strokes if hasattr(stroke, "text")]
    assert f"centres 67.3{GAP}mm" in texts
    assert not any("pull" in text for text in texts)


def test_a_board_without_belt_is_told_what_the_page_needs(bare: Reader) -> None:
    bare.open("numbers.belt")
    assert (bare.page.crown.number, bare.page.crown.unit) == ("4", "values to give")
    assert bare["stock"].text.startswith("In stock: the list needs profile")
    assert bare["drawing"].text == "The drawing needs both pulleys and the belt."


# Does it fit


def test_the_verdict_tells_the_narrowest_gap_and_how_many_are_not_known(pages: Reader) -> None:
    pages.open("numbers.fit")
    assert (pages.page.crown.word, pages.page.crown.form) == (f"Fits: 12{GAP}mm at the narrowest", RIGHT)
    assert pages.page.crown.text == "Between the two motors"
    pages.store.put("board", next(board.id for board in pages.world.boards() if board.name == "Weir"))
    pages.restart()
    assert "gaps not known" in pages.page.crown.word
    assert pages.page.crown.form == UNSURE


def test_without_any_measure_the_first_one_is_asked_for(bare: Reader) -> None:
    bare.open("numbers.fit")
    assert (bare.page.crown.word, bare.page.crown.form) == ("Not known yet", PLAIN)
    bare.act(bare.page.crown.act)
    assert bare.world.asking is not None


def test_cans_too_long_do_not_fit(pages: Reader) -> None:
    pages.open("numbers.fit")
    pages.tap("Motor can, length")
    pages.type("92")
    assert pages.page.crown.form == WRONG
    assert pages.page.crown.word.startswith("Does not fit: \N{MINUS SIGN}")
    assert pages.page.crown.text.startswith("The two motors do not fit side by side")
    pages.tap("Done")
    pages.tap("Drop the trial")
    assert pages.page.crown.form == RIGHT


@pytest.mark.parametrize("name", ["numbers.belt", "numbers.fit"])
def test_a_value_is_tried_against_the_saved_board(pages: Reader, name: str) -> None:
    pages.open(name)
    pages.tap("Belt length" if name == "numbers.fit" else "Wheel pulley, one more")
    if name == "numbers.fit":
        pages.type("60")
        pages.tap("Done")
    assert pages.page.foot.note.startswith("Trying: ")
    changed = [block.change for block in pages.blocks() if getattr(block, "change", "")]
    assert changed
    pages.tap("Drop the trial")
    assert not pages.page.foot.note


# The drawing


@pytest.mark.parametrize("mirrored", [False, True])
@pytest.mark.parametrize(("motor", "wheel"), [(16, 40), (18, 44), (30, 20)])
def test_the_drive_is_drawn_to_scale(pages: Reader, motor: int, wheel: int, mirrored: bool) -> None:  # noqa: FBT001
    board = pages.world.board
    for key, teeth in (("drive.motor_teeth", motor), ("drive.wheel_teeth", wheel)):
        board = board.with_value(key, Value(float(teeth)))
    answer = belt_choice(board, None)
    centre, pitch = answer.items["centre"].value, 0.005
    strokes = drive(board, answer, Style(), mirrored=mirrored).strokes
    # The two longest strokes of the belt are its spans: as long as the triangle of centres and radii says.
    radii = wheel * pitch / (2 * pi), motor * pitch / (2 * pi)
    points = next(one.points for one in strokes if isinstance(one, Path) and one.closed)
    spans = sorted((dist(one, other) for one, other in pairwise((*points, points[0]))), reverse=True)[:2]
    assert spans == pytest.approx([(centre**2 - (radii[0] - radii[1]) ** 2) ** 0.5] * 2)
    # The pulleys stand apart by the centre distance, and inside the belt by its thickness.
    arcs = [one for one in strokes if isinstance(one, Arc)][-2:]
    assert dist(arcs[0].centre, arcs[1].centre) == pytest.approx(centre)
    assert [arc.radius + 0.0016 for arc in arcs] == pytest.approx(radii)
    assert (arcs[1].centre[0] < arcs[0].centre[0]) == mirrored
