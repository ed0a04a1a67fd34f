"""Written texts as the graphics hold them: short ones side by side on few large textures, kept up to a bound.

From one text to the next the graphics then need no other texture: that is most of what a text costs at each frame.
"""

from collections import OrderedDict
from functools import lru_cache
from typing import Any, NamedTuple

from kivy.core.text import Label as Ruler
from kivy.graphics.texture import Texture
from kivy.metrics import dp

WIDE, TALL = 1024, 256
"""Size of a sheet in pixels, twice as large where a dp is two pixels or more."""
MOST_SHEETS = 4
"""Sheets that are kept; the oldest makes room for the next."""
MOST_PIXELS = 1_000_000
"""Pixels that are kept of texts too large for a sheet."""
GAP = 1
"""Empty pixels round each text, so that none shows its neighbour."""

Key = tuple[tuple[str, ...], float, bool, str, str]
"""Lines, size, whether they are bold, how they are aligned, and the font."""


FORM = "luminance_alpha"
"""Texts are white, and coloured where they are drawn: two bytes a pixel hold them, and "rgba" would take four."""


class Pixels(NamedTuple):
    """A written text: its size, and two bytes for each pixel."""

    width: int
    height: int
    data: bytes


class Shelf(NamedTuple):
    """A row of a sheet: where it begins, how high it is, and how far it is filled."""

    y: int
    height: int
    x: int


class Sheet:
    """One large texture, filled row by row."""

    def __init__(self) -> None:
        """Begin empty."""
        times = 1 if dp(1) < 2 else 2  # noqa: PLR2004  (pixels of a dp)
        self.width, self.height = times * WIDE, times * TALL
        self.texture = Texture.create(size=(self.width, self.height), colorfmt=FORM)
        self._shelves: list[Shelf] = []

    def takes(self, width: int, height: int) -> bool:
        """Tell whether a text is small enough to share a sheet."""
        return width + GAP <= self.width and height <= self.height / 4

    def put(self, pixels: Pixels) -> Any:  # noqa: ANN401  (Kivy's texture has no type)
        """Return the place of a text on the sheet; None where it has no room left."""
        wide, tall = pixels.width + GAP, pixels.height + GAP
        # The lowest row that is high enough and not half empty above it, else a new one.
        row = min(
            (one for one in self._shelves if one.x + wide <= self.width and tall <= one.height < 2 * tall),
            key=lambda one: one.height,
            default=None,
        )
        if row is None:
            top = sum(one.height for one in self._shelves)
            if top + tall > self.height:
                return None
            row = Shelf(top, tall, 0)
            self._shelves.append(row)
            self.texture.blit_buffer(bytes(2 * self.width * tall), (self.width, tall), FORM, pos=(0, top))
        self._shelves[self._shelves.index(row)] = row._replace(x=row.x + wide)
        self.texture.blit_buffer(pixels.data, (pixels.width, pixels.height), FORM, pos=(row.x, row.y))
        place = self.texture.get_region(row.x, row.y, pixels.width, pixels.height)
        place.flip_vertical()
        return place


class _Hand(Ruler):
    """Writes a text and hands its pixels over, in place of a texture of its own."""

    pixels: Pixels | None = None

    def write(self, lines: tuple[str, ...]) -> Pixels | None:
        """Return the pixels of a text; None where there is nothing to see."""
        self.text, self.texture, self.pixels = "\n".join(lines), self, None
        self._size = self.render()
        if min(self._size) > 1:
            self.render(real=True)
        return self.pixels

    def blit_data(self, image: Any) -> None:  # noqa: ANN401  (Kivy's image)
        """Take the pixels, as a texture would, and keep of each how much of it is covered."""
        data = bytearray(b"\xff") * (2 * image.width * image.height)
        data[1::2] = image.data[3::4]
        self.pixels = Pixels(image.width, image.height, bytes(data))


@lru_cache(64)
def _hand(size: float, bold: bool, align: str, font: str) -> _Hand:  # noqa: FBT001  (the cache wants plain arguments)
    hand = _Hand(font_size=size, bold=bold, halign=align, **({"font_name": font} if font else {}))
    hand.resolve_font_name()
    return hand


class Written:
    """What is kept: each text by its lines and its look, colour left out."""

    def __init__(self) -> None:
        """Begin without any."""
        self._sheets: list[Sheet] = []
        self._on_sheets: dict[Key, tuple[Sheet, Any]] = {}
        self._large: OrderedDict[Key, Any] = OrderedDict()

    def __call__(self, lines: tuple[str, ...], size: float, bold: bool, align: str, font: str = "") -> Any:  # noqa: ANN401, FBT001  (Kivy's texture; a key)
        """Return lines as a white texture, to be coloured where it is drawn."""
        key = (lines, size, bold, align, font)
        kept = self._on_sheets.get(key)
        if kept is not None:
            return kept[1]
        if key in self._large:
            self._large.move_to_end(key)
            return self._large[key]
        pixels = _hand(size, bold, align, font).write(lines)
        return Ruler(text="").texture_1px if pixels is None else self._keep(key, pixels)

    @property
    def sheet(self) -> Sheet:
        """Return the sheet that is being filled."""
        if not self._sheets:
            self._sheets.append(Sheet())
        return self._sheets[-1]

    def _keep(self, key: Key, pixels: Pixels) -> Any:  # noqa: ANN401
        if not self.sheet.takes(pixels.width, pixels.height):
            return self._keep_large(key, pixels)
        place = self.sheet.put(pixels)
        if place is None:
            self._sheets.append(Sheet())
            place = self.sheet.put(pixels)
            if len(self._sheets) > MOST_SHEETS:
                old = self._sheets.pop(0)
                self._on_sheets = {one: kept for one, kept in self._on_sheets.items() if kept[0] is not old}
        self._on_sheets[key] = self.sheet, place
        return place

    def _keep_large(self, key: Key, pixels: Pixels) -> Any:  # noqa: ANN401
        size = pixels.width, pixels.height
        found = Texture.create(size=size, colorfmt=FORM)
        found.flip_vertical()
        found.blit_buffer(pixels.data, size, FORM)
        self._large[key] = found
        while self.large_pixels > MOST_PIXELS and len(self._large) > 1:
            self._large.popitem(last=False)
        return found

    @property
    def large_pixels(self) -> int:
        """Return how many pixels of large texts are kept."""
        return sum(one.width * one.height for one in self._large.values())

    @property
    def sheets(self) -> int:
        """Return how many sheets are kept."""
        return len(self._sheets)

    def lost(self) -> bool:
        """Tell whether the graphics have let go of what was kept, as those of a phone may while another app is in front.

        Then all that Kivy keeps there itself is loaded again; the text must be written anew (`forget`, then paint).
        """
        from kivy.graphics.context import get_context  # noqa: PLC0415  (there is none before the window)
        from kivy.graphics.opengl import glIsTexture  # noqa: PLC0415  (the same)

        kept = next((one.texture for one in self._sheets), None) or next(iter(self._large.values()), None)
        if kept is None or glIsTexture(kept.id):
            return False
        get_context().reload()
        return True

    def forget(self) -> None:
        """Keep no text any more."""
        self._sheets.clear()
        self._on_sheets.clear()
        self._large.clear()


written = Written()
