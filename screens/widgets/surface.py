"""Flat ground with a thin outline, and the same as something to tap."""

from itertools import pairwise
from typing import Any

from kivy.graphics import Color, Line, Mesh, RoundedRectangle
from kivy.metrics import dp
from kivy.properties import (
    BooleanProperty,
    ColorProperty,
    NumericProperty,
    OptionProperty,
    StringProperty,
)
from kivy.uix.behaviors import ButtonBehavior

from screens.theme import theme
from screens.widgets.dress import Dressed, mix

RADIUS = 6
NOTHING = [0.0, 0.0, 0.0, 0.0]


class Surface(Dressed):
    """A filled frame behind a layout. To be mixed in before the layout class."""

    canvas: Any
    fbind: Any
    pos: list[float]
    size: list[float]
    x: float
    y: float
    width: float
    height: float

    fill = ColorProperty(NOTHING)
    edge = ColorProperty(NOTHING)
    edge_width = NumericProperty(1.0)
    dashed = BooleanProperty(defaultvalue=False)
    inset = NumericProperty(0)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Lay the drawing under the children."""
        super().__init__(**kwargs)
        with self.canvas.before:
            self._fill_colour = Color(*self.fill)
            self._ground = RoundedRectangle(radius=[dp(RADIUS)])
            self._edge_colour = Color(*self.edge)
            self._frame = Line()
            self._dashes = Mesh(mode="triangles")
        for name in ("pos", "size", "fill", "edge", "edge_width", "dashed", "inset"):
            self.fbind(name, self.draw)
        self.draw()

    def draw(self, *_: object) -> None:
        """Fit the drawing to the widget."""
        self._fill_colour.rgba = self.fill
        inset = self.inset
        self._ground.pos = (self.x + inset, self.y + inset)
        self._ground.size = (self.width - 2 * inset, self.height - 2 * inset)
        self._edge_colour.rgba = self.edge
        thick = dp(self.edge_width)
        back = inset + thick / 2
        x, y, width, height = self.x + back, self.y + back, self.width - 2 * back, self.height - 2 * back
        drawn = width > thick and height > thick and self.edge[3] > 0
        if drawn and self.dashed:
            self._dashes.vertices, self._dashes.indices = dashes(x, y, width, height, thick)
        else:
            self._dashes.vertices, self._dashes.indices = [], []
        # A width of exactly 1 makes Kivy draw a hairline of one pixel.
        self._frame.width = thick / 2 if thick <= 1 else max(thick / 2, 1.01)
        if drawn and not self.dashed:
            self._frame.rounded_rectangle = (x, y, width, height, dp(RADIUS))
        else:
            self._frame.points = []


def dashes(x: float, y: float, width: float, height: float, thick: float) -> tuple[list[float], list[int]]:
    """Return the triangles of a dashed frame: Kivy dashes lines of one pixel only, too thin on a phone."""
    half = thick / 2
    boxes = []
    for low, high, across, upright in (
        (x, x + width, y, False),
        (x, x + width, y + height, False),
        (y, y + height, x, True),
        (y, y + height, x + width, True),
    ):
        count = 2 * max(1, round((high - low) / dp(12))) + 1
        stops = [low + (high - low) * step / count for step in range(count + 1)]
        for start, end in list(pairwise(stops))[::2]:
            along, cross = (start, end), (across - half, across + half)
            boxes.append((cross, along) if upright else (along, cross))
    vertices: list[float] = []
    indices: list[int] = []
    for (left, right), (bottom, top) in boxes:
        first = len(vertices) // 4
        for corner in ((left, bottom), (right, bottom), (right, top), (left, top)):
            vertices += [*corner, 0, 0]
        indices += [first, first + 1, first + 2, first, first + 2, first + 3]
    return vertices, indices


class Tap(ButtonBehavior, Surface):
    """A surface to tap. It acts on release; sliding off cancels.

    `ink` is the tone for words and pictures on it.
    """

    look = OptionProperty("plain", options=("plain", "main", "bad", "bare"))
    selected = BooleanProperty(defaultvalue=False)
    ink = StringProperty("text")
    a11y_label = StringProperty()

    def dress(self, *_: object) -> None:
        """Take fill, frame and ink for the look and the state."""
        down = self.state == "down"
        fill, edge, width, ink = {
            "plain": (theme.key, theme.outline, 1.0, "text"),
            "main": (theme.main, theme.main, 1.0, "on_main"),
            "bad": (theme.ground, theme.bad, 2.0, "bad"),
            "bare": (NOTHING, NOTHING, 1.0, "text"),
        }[self.look]
        if self.disabled:
            fill, edge, ink = (NOTHING if self.look == "bare" else theme.panel), NOTHING, "second"
        elif down:
            base = theme.key if self.look == "bare" else fill
            away = [0.0, 0.0, 0.0, 1.0] if self.look == "main" else theme.text
            fill, edge, width = mix(base, away, 0.2), theme.text, 3.0
        elif self.selected:
            edge, width = theme.main, 3.0
        self.fill, self.edge, self.edge_width, self.ink = fill, edge, width, ink

    on_state = on_disabled = on_look = on_selected = dress

    def on_touch_move(self, touch: Any) -> bool:  # noqa: ANN401 - Kivy's touches have no public type.
        """Show that sliding off cancels."""
        if touch.grab_current is self:
            self.state = "down" if self.collide_point(*touch.pos) else "normal"
        return bool(super().on_touch_move(touch))
