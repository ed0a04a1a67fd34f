"""Strokes on the paper: laid out in pixels, with the paper's own text."""

from kivy.metrics import dp

from screens.paper.ink import line_of, width_of
from screens.paper.scale import grown
from screens.pictures import laid
from screens.pictures.laid import Pen, Placed
from screens.pictures.strokes import Drawing

PEN = Pen(dp, grown, width_of, line_of)


def lay(picture: Drawing, width: float, height: float, text: float = 1.0) -> list[Placed]:
    """Return the strokes in pixels, for a room and a text scale."""
    return laid.lay(picture, width, height, PEN, text)


def height_of(picture: Drawing, width: float, *, height: float, text: float) -> float:
    """Return the height in pixels that a drawing takes at a width."""
    return laid.height_of(picture, width, PEN, height=height, text=text)
