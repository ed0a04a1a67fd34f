"""A board as one line for a camera: nothing changes its meaning, and what is no whole line is refused with its cause."""

import base64
import re
import zlib
from dataclasses import replace
from hashlib import sha256
from random import Random

import pytest

from logic.exchange import demo_boards
from logic.exchange.board_file import LARGEST, read_board_file
from logic.exchange.code import _known, code_line, unpacked
from logic.exchange.errors import Broken, Foreign, Later, NotTaken, TooLarge
from tests.every_answer import any_case

CAPITALS = re.compile(r"[0-9A-Z $%*+\-./:]*")
"""What a code holds in its closest form (ISO/IEC 18004, alphanumeric mode)."""


def test_a_board_comes_back_from_its_line() -> None:
    sizes = []
    for seed in range(50):
        board = any_case(Random(seed)).board
        line = code_line(board)
        sizes.append(len(line))
        assert CAPITALS.fullmatch(line)
        assert read_board_file(line).board == board
    # ISO/IEC 18004, table of capacities, 40-L: the largest code takes 4296 of them.
    assert max(sizes) <= 4296


def test_whoever_passes_it_on_may_break_it_and_write_it_small() -> None:
    board = demo_boards()[0]
    line = code_line(board)
    for spoiled in (
        line.lower(),
        f"\n {line}\n",
        "\r\n".join(line[n : n + 60] for n in range(0, len(line), 60)),
    ):
        assert read_board_file(spoiled).board == board


def test_what_is_kept_unread_and_every_letter_of_a_name_goes_along() -> None:
    board = replace(demo_boards()[0], name="Süd \u2028 板", kept=((("drive", "later"), '[1, {"si": 2}]'),))
    assert read_board_file(code_line(board)).board == board


def packed(body: bytes) -> str:
    packer = zlib.compressobj(9, zlib.DEFLATED, zlib.MAX_WBITS, 9, zlib.Z_DEFAULT_STRATEGY, _known())
    return "DECKHAND BOARD 1 " + base64.b32encode(packer.compress(body) + packer.flush()).decode().rstrip("=")


LINE = code_line(demo_boards()[0])


@pytest.mark.parametrize(
    ("text", "cause"),
    [
        ("DECKHAND BOARD 1 ", Broken),
        ("DECKHAND BOARD 1 A", Broken),
        ("DECKHAND BOARD 1 1189", Broken),
        ("DECKHAND BOARD 1 ä", Broken),
        (LINE[:-20], Broken),
        (LINE[:40] + LINE[60:], Broken),
        ("DECKHAND BOARD 2 AAAA", Later),
        ("DECKHAND BOARD " + "9" * 5000 + " AAAA", Later),
        ("DECKHAND BOARD AAAA", Broken),
        (packed(b"\xff"), Broken),
        (packed(b"[]"), Foreign),
        (packed(b" " * (LARGEST + 1)), TooLarge),
    ],
    ids=range(12),
)
def test_what_is_no_whole_line_is_refused(text: str, cause: type[NotTaken]) -> None:
    with pytest.raises(cause):
        read_board_file(text)


def test_one_letter_changed_is_never_another_board() -> None:
    draw = Random(7)
    for _ in range(300):
        place = draw.randrange(len("DECKHAND BOARD 1 "), len(LINE))
        spoiled = LINE[:place] + draw.choice("ABCDEFGHIJKLMNOPQRSTUVWXYZ234567") + LINE[place + 1 :]
        if spoiled != LINE:
            # The bits that fill up the last letter belong to nothing.
            try:
                found = unpacked(spoiled)
            except Broken:
                continue
            assert found == unpacked(LINE)


def test_what_both_sides_have_never_changes() -> None:
    """A line that was written by the first version: it is read for good."""
    assert sha256(_known()).hexdigest() == "791eeaeb64c2f026eda39e21336b88a3d9c394ef0d3c7596e24791dde2ab0695"
