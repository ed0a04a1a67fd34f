"""Pictures of the build sheet: the strokes of the pages, whole and to scale in a file that is well formed."""

from xml.etree import ElementTree as ET

import pytest

from logic.answers.tension import belt_plan
from logic.board import Board
from logic.exchange import demo_boards
from logic.log import Tension
from logic.person import Person
from screens.acts.boards import Choose
from screens.pictures.drive import drive
from screens.pictures.strokes import Fill, Label, Path, Picture
from screens.pictures.svg import svg
from screens.sheet.content import sheet
from screens.sheet.pictures import history_drawing
from screens.words import Style
from tests.pages.reader import Reader

NAME = "{http://www.w3.org/2000/svg}"


def read(text: str) -> ET.Element:
    return ET.fromstring(text)  # noqa: S314  (we wrote it)


def texts(root: ET.Element) -> list[str]:
    return [one.text or "" for one in root.iter(f"{NAME}text")]


def points(element: ET.Element) -> list[tuple[float, float]]:
    pairs = (pair.split(",") for pair in element.attrib["points"].split())
    return [(float(x), float(y)) for x, y in pairs]


@pytest.mark.parametrize("board", demo_boards(), ids=lambda board: board.name)
def test_the_drive_of_the_sheet_is_the_drive_of_the_page(pages: Reader, board: Board) -> None:
    pages.act(Choose(next(one.id for one in pages.world.boards() if one.name == board.name)))
    world = pages.world
    page = drive(world.saved, belt_plan(world.saved, world.person), world.style, world.person.scale_unit)
    assert page is not None
    assert sheet(world, drawn=True).parts[0].drawn == page
    must = {one.text for one in page.strokes if isinstance(one, Label) and one.must}
    assert must <= set(texts(read(svg(page, "The drive to scale"))))


def test_a_length_is_as_long_across_as_up() -> None:
    """A square of 10 units, in a box twice as wide as high."""
    square = Path(((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)), closed=True)
    root = read(svg(Picture((square,), (0.0, 0.0, 20.0, 10.0)), "A square"))
    corners = points(root.find(f"{NAME}polyline"))
    xs, ys = {x for x, _ in corners}, {y for _, y in corners}
    assert max(xs) - min(xs) == pytest.approx(max(ys) - min(ys), abs=0.11)
    # Ours: 1.5 x 180 high, less 8 above and below, is 254 for 10 units.
    assert max(xs) - min(xs) == pytest.approx(254.0, abs=0.11)


def test_up_is_up() -> None:
    """The drawing counts up from its foot, the file down from its top."""
    low = Fill(((0.0, 0.0), (1.0, 0.0), (1.0, 1.0)))
    root = read(svg(Picture((low,), (0.0, 0.0, 4.0, 2.0)), "A corner"))
    height = float(root.attrib["viewBox"].split()[3])
    assert all(y >= height / 2 for _, y in points(root.find(f"{NAME}polygon")))


def test_what_is_written_is_escaped_and_titled() -> None:
    said = Label("a < b & c", (1.0, 1.0))
    root = read(svg(Picture((said,), (0.0, 0.0, 4.0, 2.0)), "<A title>"))
    assert texts(root) == ["a < b & c"]
    assert root.find(f"{NAME}title").text == "<A title>"
    assert root.attrib["role"] == "img"


def test_the_history_shows_every_reading_in_its_window(pages: Reader) -> None:
    forces = (100.0, 92.0, 84.0)
    for force in forces:
        pages.store.append(
            pages.world.saved.id,
            Tension(belt="left", method="scale", tension=force, error=5.0, floor=80.0, ceiling=110.0),
        )
    records = pages.world.entries("tension")[::-1]
    drawn = history_drawing(records, Style())
    assert drawn is not None
    root = read(svg(drawn, "Tension history"))
    dots = [one for one in root.iter(f"{NAME}circle") if one.attrib["r"] == "5"]
    heights = [float(one.attrib["cy"]) for one in dots]
    assert len(dots) == 3
    # A falling tension falls on the paper, in even steps.
    assert heights[1] - heights[0] == pytest.approx(heights[2] - heights[1], abs=0.11)
    assert heights[0] < heights[2]
    assert {"ceiling", "floor"} <= set(texts(root))
    assert history_drawing((), Style()) is None


@pytest.mark.parametrize("board", demo_boards(), ids=lambda board: board.name)
def test_texts_stay_on_the_sheet(board: Board) -> None:
    drawn = drive(board, belt_plan(board, Person()), Style(), "kg")
    assert drawn is not None
    root = read(svg(drawn, "The drive to scale"))
    _, _, width, height = map(float, root.attrib["viewBox"].split())
    for one in root.iter(f"{NAME}text"):
        assert 0.0 <= float(one.attrib["x"]) <= width - 10.0
        assert 10.0 <= float(one.attrib["y"]) <= height
