"""A text as a code that a camera reads: dark squares on a light ground with a light edge in every theme (ISO/IEC 18004)."""

from collections.abc import Iterator

from screens.pictures.strokes import Fill, Picture, box

QUIET = 4
"""Squares that stay light all round."""
MOST = 4296
"""Capitals and digits that the largest code holds at the lowest grade of repair: version 40-L."""


def code(text: str) -> Picture | None:
    """Return the code of a text of capitals and digits, as small as it can be; None where it is too long for one."""
    if len(text) > MOST:
        return None
    import segno  # noqa: PLC0415  (loaded when somebody wants a code)

    rows = segno.make_qr(text, error="l", boost_error=False).matrix
    side = len(rows)
    squares = [one for up, row in enumerate(reversed(rows)) for one in _dark(row, up)]
    low, high = -QUIET, side + QUIET
    ground = Fill(box(low, low, high, high), "code_ground")
    return Picture((ground, *squares), (low, low, high, high), height=400.0, margins=(0.0, 0.0, 0.0, 0.0))


def _dark(row: bytearray, up: int) -> Iterator[Fill]:
    """Yield the dark pieces of a row, each as long as it goes."""
    place = 0
    while place < len(row):
        end = place
        while end < len(row) and row[end]:
            end += 1
        if end > place:
            yield Fill(box(place, up, end, up + 1), "code")
        place = end + 1
