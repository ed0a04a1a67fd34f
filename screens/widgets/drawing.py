"""The ground the drawn widgets stand on: one canvas group, one redraw a frame, labels open to audit."""

from collections.abc import Iterable, Sequence
from math import cos, hypot, pi, sin
from typing import Any, ClassVar

from kivy.clock import Clock
from kivy.core.text import Label as Lettering
from kivy.graphics import Color, InstructionGroup, Line, Mesh, PopMatrix, PushMatrix, Rectangle, Translate
from kivy.metrics import dp
from kivy.properties import BooleanProperty, NumericProperty, Property, StringProperty
from kivy.uix.widget import Widget

from screens.theme import theme
from screens.widgets.plane import Box, Point, Segment

Cut = tuple[str, float, bool, float]
"""What a lettering is made from: text, size, bold, width to wrap at."""


class Drawing(Widget):
    """A widget that draws itself anew, at most once a frame, when its properties, size or theme change.

    A subclass writes `draw` in coordinates that start at its own lower left corner. Moving redraws nothing.
    """

    a11y_label = StringProperty()
    empty_text = StringProperty()
    on_panel = BooleanProperty(defaultvalue=False)
    wanted_height = NumericProperty()
    """The height at which everything has room at the present text size; pages may bind height to it."""

    align: ClassVar[str] = "center"
    """How wrapped texts stand."""
    also: ClassVar[tuple[str, ...]] = ("size", "empty_text", "on_panel")

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - the names are those of the properties
        """Bind every property that the subclasses declare to the redraw."""
        self._letterings: dict[Cut, Lettering] = {}
        self._used: dict[Cut, Lettering] = {}
        self._boxes: list[Box] = []
        self._ask = Clock.create_trigger(self._redraw, -1)
        super().__init__(**kwargs)
        self._shift = Translate()
        self._group = InstructionGroup()
        for instruction in (PushMatrix(), self._shift, self._group, PopMatrix()):
            self.canvas.add(instruction)
        kinds = type(self).__mro__
        own = [
            name
            for kind in kinds[: kinds.index(Drawing)]
            for name, value in vars(kind).items()
            if isinstance(value, Property)
        ]
        for name in (*own, *self.also):
            self.fbind(name, self._ask)
        self.fbind("pos", self._move)
        # Held weakly by the theme. The redraw comes when the theme has set everything that goes with the two.
        theme.bind(name=self._due, scale=self._due)
        self._move()
        self._due()

    def height_wanted(self) -> float:
        """Return the height at which everything has room."""
        return dp(180)

    def drawn_boxes(self) -> list[Box]:
        """Return the rectangles of the labels as drawn, in widget coordinates, with their texts."""
        self.draw_now()
        return list(self._boxes)

    def draw_now(self) -> None:
        """Redraw at once if a redraw is due."""
        if self._ask.is_triggered:
            self._ask.cancel()
            self._redraw()

    def draw(self) -> None:
        """Draw everything; the subclass's part."""
        raise NotImplementedError

    def _due(self, *_: object) -> None:
        self._ask()

    def _move(self, *_: object) -> None:
        self._shift.xy = (round(self.x), round(self.y))

    def _redraw(self, *_: object) -> None:
        self._group.clear()
        self._boxes = []
        self._used = {}
        self.wanted_height = self.height_wanted()
        self.draw()
        self._letterings = self._used

    # What draw() draws with.

    @property
    def ground(self) -> list[float]:
        """Return the colour behind the drawing."""
        return theme.panel if self.on_panel else theme.ground

    def add(self, *instructions: object) -> None:
        """Put instructions on the canvas."""
        for instruction in instructions:
            self._group.add(instruction)

    def ink(self, colour: Sequence[float], alpha: float = 1.0) -> None:
        """Set the colour of what follows."""
        self._group.add(Color(*colour[:3], alpha))

    def bar(self, x: float, y: float, width: float, height: float) -> None:
        """Fill a rectangle on whole pixels, so that thin lines stay sharp."""
        self._group.add(
            Rectangle(
                pos=(round(x), round(y)), size=(max(1, round(width)) if width else 0, max(1, round(height)))
            )
        )

    def frame(self, x: float, y: float, width: float, height: float, thick: float) -> None:
        """Outline a rectangle inside its edges."""
        self.bar(x, y, width, thick)
        self.bar(x, y + height - thick, width, thick)
        self.bar(x, y, thick, height)
        self.bar(x + width - thick, y, thick, height)

    def strokes(self, segments: Iterable[Segment], half: float) -> None:
        """Draw many short straight strokes in one instruction; half is half their thickness."""
        vertices: list[float] = []
        for x0, y0, x1, y1 in segments:
            length = hypot(x1 - x0, y1 - y0) or 1.0
            across, up = (y1 - y0) / length * half, (x1 - x0) / length * half
            vertices += (
                x0 - across, y0 + up, 0, 0, x0 + across, y0 - up, 0, 0,
                x1 + across, y1 - up, 0, 0, x1 - across, y1 + up, 0, 0,
            )  # fmt: skip
        corners = range(0, len(vertices) // 4, 4)
        indices = [at + step for at in corners for step in (0, 1, 2, 0, 2, 3)]
        if indices:
            self._group.add(Mesh(vertices=vertices, indices=indices, mode="triangles"))

    def ring(self, x: float, y: float, radius: float, half: float) -> None:
        """Draw a circle; half is half its line's thickness."""
        count = max(24, min(120, int(radius)))
        turns = [2 * pi * step / count for step in range(count)]
        points = [part for turn in turns for part in (x + radius * cos(turn), y + radius * sin(turn))]
        self._group.add(Line(points=points, width=half, close=True, joint="none"))

    def polygon(self, *points: Point) -> None:
        """Fill a convex polygon."""
        vertices = [part for x, y in points for part in (x, y, 0, 0)]
        self._group.add(Mesh(vertices=vertices, indices=list(range(len(points))), mode="triangle_fan"))

    def lettering(self, text: str, size: float, *, bold: bool = False, width: float = 0.0) -> Lettering:
        """Return the text ready to draw, wrapped at the width if there is one; made once while in use."""
        key = (text, size, bold, width)
        made = self._used.get(key) or self._letterings.get(key)
        if made is None:
            wrap = (width, None) if width else (None, None)
            made = Lettering(text=text, font_size=size, bold=bold, text_size=wrap, halign=self.align)
            made.refresh()
        self._used[key] = made
        return made

    def measure(
        self, text: str, size: float, *, bold: bool = False, width: float = 0.0
    ) -> tuple[float, float]:
        """Return width and height of a text; nothing for no text."""
        return self.lettering(text, size, bold=bold, width=width).texture.size if text else (0.0, 0.0)

    def write(  # noqa: PLR0913 - a label has that many sides
        self,
        text: str,
        x: float,
        y: float,
        size: float,
        colour: Sequence[float],
        *,
        bold: bool = False,
        width: float = 0.0,
        plate: bool = False,
    ) -> None:
        """Draw a text with its lower left corner at x, y; a plate hides the lines behind it."""
        if not text:
            return
        texture = self.lettering(text, size, bold=bold, width=width).texture
        box = Box(text, round(x), round(y), *texture.size)
        if plate:
            self.ink(self.ground)
            self.bar(*box[1:])
        self.ink(colour)
        self._group.add(Rectangle(texture=texture, pos=(box.x, box.y), size=texture.size))
        self._boxes.append(box)

    def write_empty(self) -> None:
        """Draw the empty text in the middle, wrapped."""
        if self.empty_text:
            width = max(dp(40), self.width - dp(16))
            across, up = self.measure(self.empty_text, theme.small, width=width)
            left, bottom = (self.width - across) / 2, (self.height - up) / 2
            self.write(self.empty_text, left, bottom, theme.small, theme.second, width=width)
