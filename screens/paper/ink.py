"""Text: how wide it is and where it breaks. Needs no window."""

import re
from functools import cache, lru_cache
from typing import NamedTuple

from kivy.core.text import Label as Ruler
from kivy.metrics import dp

from logic.units import GAP, quantities

SMALLEST = 9
"""A word that is still too wide at this size in dp is left as it is; a test finds none."""


class Block(NamedTuple):
    """A text broken into lines: their size in pixels, and the room they take."""

    lines: tuple[str, ...]
    size: float
    width: float
    height: float


@lru_cache(64)
def _ruler(size: float, bold: bool, font: str) -> Ruler:  # noqa: FBT001  (the cache wants plain arguments)
    return Ruler(font_size=size, bold=bold, **({"font_name": font} if font else {}))


@lru_cache(6_000)
def width_of(text: str, size: float, bold: bool = False, font: str = "") -> float:  # noqa: FBT001, FBT002  (as above)
    """Return how wide a text is on one line, in pixels."""
    return float(_ruler(size, bold, font).get_extents(text)[0])


@lru_cache(64)
def line_of(size: float, bold: bool = False, font: str = "") -> float:  # noqa: FBT001, FBT002  (as above)
    """Return the height of a line."""
    return float(_ruler(size, bold, font).get_extents("Ay")[1])


def longest_word(text: str, size: float, bold: bool) -> float:  # noqa: FBT001  (as above)
    """Return the width of the widest word; what a hard gap joins is one."""
    return max(width_of(word, size, bold) for word in text.replace("\n", " ").split(" "))


_NUMBER = re.compile(r"\d |± \d")


@cache
def _before_a_unit() -> re.Pattern[str]:
    """Return the gaps between a number and its unit, and after its ±, where no line ends."""
    units = {unit.shown for quantity in quantities().values() for unit in quantity.units if unit.shown}
    return re.compile(rf"(?<=\d) (?=(?:{'|'.join(map(re.escape, units))})(?!\w))|(?<=±) (?=\d)")


@lru_cache(2_000)
def broken(text: str, size: float, bold: bool, room: float) -> Block:  # noqa: FBT001  (as above)
    """Return a text broken between words into lines no wider than the room; it shrinks before a word would break."""
    if "\n" not in text:
        whole = width_of(text, size, bold)
        if whole <= room:
            return Block((text,), size, whole, line_of(size, bold))
    if _NUMBER.search(text):
        text = _before_a_unit().sub(GAP, text)
    longest = longest_word(text, size, bold)
    while longest > room and size > dp(SMALLEST):
        size = max(dp(SMALLEST), size - 1)
        longest = longest_word(text, size, bold)
    space = width_of(" ", size, bold)
    lines = []
    for paragraph in text.split("\n"):
        line, wide = "", 0.0
        for word in paragraph.split(" "):
            more = width_of(word, size, bold)
            whole = wide + space + more
            if line and whole > room * 0.96:
                # Near the edge the sum of the words is not sure enough.
                whole = width_of(f"{line} {word}", size, bold)
            if line and whole > room:
                lines.append(line)
                line, wide = word, more
            else:
                line, wide = (f"{line} {word}", whole) if line else (word, more)
        lines.append(line)
    width = max(width_of(line, size, bold) for line in lines)
    return Block(tuple(lines), size, width, len(lines) * line_of(size, bold))


@lru_cache(2_000)
def shortened(text: str, size: float, bold: bool, room: float) -> str:  # noqa: FBT001  (as above)
    """Return a text on one line, its middle left out where it is wider than the room."""
    if width_of(text, size, bold) <= room:
        return text
    for kept in range(len(text) - 2, 0, -1):
        head, tail = (kept + 1) // 2, kept // 2
        short = f"{text[:head].rstrip()}…{text[len(text) - tail :].lstrip() if tail else ''}"
        if width_of(short, size, bold) <= room:
            return short
    return "…"
