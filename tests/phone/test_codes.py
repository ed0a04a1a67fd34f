"""The code of a board as a camera sees it: read back from the pixels by another library than the one that wrote it."""

import pytest
import zxingcpp
from PIL import Image, ImageDraw

from logic.exchange import demo_boards
from logic.exchange.board_file import read_board_file
from logic.exchange.code import code_line
from screens.pictures.code import code
from tests.alone import NEEDS_GRAPHICS, alone
from tests.contrast import COLOURS


def seen(picture: Image.Image) -> str:
    """Return the text of the one code in a picture."""
    (found,) = zxingcpp.read_barcodes(picture, formats=zxingcpp.BarcodeFormat.QRCode)
    assert found.format == zxingcpp.BarcodeFormat.QRCode
    return found.text


@pytest.mark.parametrize("theme", ["day", "night", "sun"])
@pytest.mark.parametrize("place", range(4))
def test_the_strokes_are_a_code_that_gives_the_board_back(theme, place):
    board = demo_boards()[place]
    drawn = code(code_line(board))
    left, low, right, top = drawn.box
    # On the ground of the theme, with nothing around but the light edge of its own.
    picture = Image.new(
        "RGB", (round(right - left) * 4 + 80, round(top - low) * 4 + 80), COLOURS[theme]["ground"]
    )
    pen = ImageDraw.Draw(picture)
    for fill in drawn.strokes:
        (x0, y0), _, (x1, y1), _ = fill.points
        corners = ((x0 - left) * 4 + 40, (top - y1) * 4 + 40, (x1 - left) * 4 + 39, (top - y0) * 4 + 39)
        pen.rectangle(corners, COLOURS[theme][fill.tone])
    assert read_board_file(seen(picture)).board == board


def test_every_version_of_the_standard_is_drawn_whole():
    """ISO/IEC 18004: a code of version v has 17 + 4 v squares a side; 4296 capitals and digits is the most, at 40-L."""
    assert code("A" * 4296).box == (-4, -4, 181, 181)
    assert code("A" * 25).box == (-4, -4, 25, 25)
    assert code("A" * 4297) is None


@NEEDS_GRAPHICS
def test_the_page_on_the_screen_is_read_in_every_theme_and_on_the_smallest_phone(tmp_path):
    done = alone(tmp_path, "-m", "tests.phone.codes", str(tmp_path))
    assert done.returncode == 0, done.stderr
    pictures = sorted(tmp_path.glob("*.png"))
    assert len(pictures) == 6
    for path in pictures:
        board = read_board_file(seen(Image.open(path).convert("RGB"))).board
        assert board.name == "Towpath 36", path.name
