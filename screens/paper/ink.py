"""Text: how wide it is, where it breaks, and its texture. Measuring needs no window; textures are kept up to a bound."""

from collections import OrderedDict
from functools import lru_cache
from typing import Any, NamedTuple

from kivy.core.text import Label as Ruler
from kivy.metrics import dp

from screens.paper.icons import ICON_FONT

SMALLEST = 9
"""A word that is still too wide at this size in dp is left as it is; a test finds none."""
MOST_PIXELS = 3_000_000
"""Pixels of text that are kept as textures."""


class Block(NamedTuple):
    """A text broken into lines: their size in pixels, and the room they take."""

    lines: tuple[str, ...]
    size: float
    width: float
    height: float


@lru_cache(64)
def _ruler(size: float, bold: bool, font: str) -> Ruler:  # noqa: FBT001  (the cache wants plain arguments)
    return Ruler(font_size=size, bold=bold, **({"font_name": font} if font else {}))


@lru_cache(20_000)
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


@lru_cache(8_000)
def broken(text: str, size: float, bold: bool, room: float) -> Block:  # noqa: FBT001  (as above)
    """Return a text broken between words into lines no wider than the room; it shrinks before a word would break."""
    if "\n" not in text:
        whole = width_of(text, size, bold)
        if whole <= room:
            return Block((text,), size, whole, line_of(size, bold))
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


_textures: OrderedDict[tuple[Any, ...], Any] = OrderedDict()
_pixels = 0


def texture(lines: tuple[str, ...], size: float, bold: bool, align: str, font: str = "") -> Any:  # noqa: ANN401, FBT001  (Kivy's Texture has no types)
    """Return lines as a white texture, to be coloured where it is drawn."""
    global _pixels  # noqa: PLW0603  (how much is kept)
    key = (lines, size, bold, align, font)
    found = _textures.get(key)
    if found is not None:
        _textures.move_to_end(key)
        return found
    label = Ruler(
        text="\n".join(lines),
        font_size=size,
        bold=bold,
        halign=align,
        **({"font_name": font} if font else {}),
    )
    label.refresh()
    found = label.texture
    _textures[key] = found
    _pixels += found.size[0] * found.size[1]
    while _pixels > MOST_PIXELS and len(_textures) > 1:
        _, old = _textures.popitem(last=False)
        _pixels -= old.size[0] * old.size[1]
    return found


def lost() -> bool:
    """Tell whether the graphics have let go of what was kept, as those of a phone may while another app is in front.

    Then all that Kivy keeps there itself is loaded again; the text must be written anew (`forget`, then paint).
    """
    from kivy.graphics.context import get_context  # noqa: PLC0415  (there is none before the window)
    from kivy.graphics.opengl import glIsTexture  # noqa: PLC0415  (the same)

    # One that was never shown has no number yet.
    kept = next((one for one in reversed(_textures.values()) if one.id > 0), None)
    if kept is None or glIsTexture(kept.id):
        return False
    get_context().reload()
    return True


def forget() -> None:
    """Keep no text any more."""
    global _pixels  # noqa: PLW0603  (as above)
    _textures.clear()
    _pixels = 0


def kept_pixels() -> int:
    """Return how many pixels of text are kept."""
    return _pixels


ICONS = ICON_FONT
