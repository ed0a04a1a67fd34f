"""A board as one short line of capitals and digits, for a code that a camera reads; described in assets/formats/board-file.md.

It is the file of the board without its log, packed against a page that both sides have, and written in the letters of RFC 4648.
"""

import base64
import json
import re
import zlib
from functools import cache
from typing import Final

from logic.board import Board
from logic.board_saved import to_dict
from logic.exchange.errors import Broken, Later, TooLarge
from logic.tables import ASSETS

HEAD: Final = "DECKHAND BOARD"
VERSION: Final = 1
LARGEST: Final = 64 * 2**20
"""Bytes that a line is unpacked to at most, as many as of a file."""
_LINE: Final = re.compile(rf"\s*{HEAD} (\d+)\s+(.*)", re.DOTALL | re.IGNORECASE)


@cache
def _known() -> bytes:
    """Return what both sides have: it never changes, or what was written before could not be read."""
    return (ASSETS / "formats" / "board-code.json").read_bytes()


def code_line(board: Board) -> str:
    """Return the line of a board. Its log is left out."""
    page = {"format": "deckhand board", "version": 1, "board": to_dict(board)}
    body = json.dumps(page, ensure_ascii=False, allow_nan=False, separators=(",", ":")).encode()
    packer = zlib.compressobj(9, zlib.DEFLATED, zlib.MAX_WBITS, 9, zlib.Z_DEFAULT_STRATEGY, _known())
    letters = base64.b32encode(packer.compress(body) + packer.flush()).decode().rstrip("=")
    return f"{HEAD} {VERSION} {letters}"


def unpacked(text: str) -> str:
    """Return the file that a line holds, or the text as it is where it is no such line. Raises Broken, Later, TooLarge."""
    line = _LINE.fullmatch(text)
    if not line:
        return text
    if int(line[1][:9]) != VERSION:
        raise Later(f"a line of version {line[1][:9]}")
    # Whoever passed it on may have broken it into lines.
    letters = "".join(line[2].split())
    unpacker = zlib.decompressobj(zlib.MAX_WBITS, _known())
    try:
        packed = base64.b32decode(letters + "=" * (-len(letters) % 8), casefold=True)
        body = unpacker.decompress(packed, LARGEST + 1)
        found = body.decode()
    except (ValueError, zlib.error) as problem:
        raise Broken(str(problem)) from problem
    if len(body) > LARGEST:
        raise TooLarge("unpacked")
    if not unpacker.eof:
        raise Broken("cut short")
    return found
