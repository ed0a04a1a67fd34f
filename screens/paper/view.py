"""One light widget for a block: a canvas and nothing else. Its marks are painted once and moved with it."""

from typing import Any

from kivy.graphics import Canvas, Color, Line, PopMatrix, PushMatrix, Rectangle, Translate
from kivy.metrics import dp
from kivy.uix.widget import Widget

from screens.paper.paint import Painted
from screens.paper.sheet import Laid, Touch
from screens.theme import theme

PRESSED = 0.24
"""Share of ink over what is pressed."""
RING = 3
"""Width in dp of the frame around what the keyboard is on; it stands inside the area, in the tone of its words."""


class BlockView(Widget):
    """Shows one laid-out block; `index` is its place in the data, `key` the block's."""

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Make the canvas; nothing is painted yet."""
        super().__init__(**kwargs)
        self.size_hint = (None, None)
        self.index, self.key = -1, ""
        self.laid: Laid | None = None
        with self.canvas.before:
            PushMatrix()
            self._move = Translate(0, 0, 0)
        marks = Canvas()
        self.canvas.add(marks)
        self._painted = Painted(marks)
        self._press = Canvas()
        self.canvas.add(self._press)
        self._ring: Canvas | None = None
        with self.canvas.after:
            PopMatrix()
        self.fbind("pos", self._moved)

    def _moved(self, *_: object) -> None:
        self._move.x, self._move.y = (round(side) for side in self.pos)

    def take(self, index: int, shown: dict[str, Any], pos: tuple[float, float]) -> None:
        """Show what the list has at a place."""
        self.index, self.key = index, shown["key"]
        self.show(shown["laid"])
        self.pos = pos

    def show(self, laid: Laid, *, again: bool = False) -> None:
        """Paint a block, unless it is the one that is painted already; `again` after a change of colours."""
        if laid is self.laid and not again:
            return
        again, self.laid = again or self.laid is None, laid
        self.size = (laid.width, laid.height)
        self._painted.show(laid, again=again)

    def press(self, touch: Touch | None) -> None:
        """Show that an area is pressed, or that none is."""
        self._press.clear()
        if touch is not None:
            red, green, blue, _ = theme.colour(touch.on)
            self._press.add(Color(red, green, blue, PRESSED))
            low = self.height - touch.y - touch.height
            self._press.add(Rectangle(pos=(touch.x, low), size=(touch.width, touch.height)))

    def ring(self, touch: Touch | None) -> None:
        """Frame the area that the keyboard is on, or none."""
        if self._ring is None:
            if touch is None:
                return
            # Most people never press Tab.
            self._ring = Canvas()
            self.canvas.add(self._ring)
        self._ring.clear()
        if touch is not None:
            wide = dp(RING)
            low = self.height - touch.y - touch.height
            frame = (touch.x + wide, low + wide, touch.width - 2 * wide, touch.height - 2 * wide)
            self._ring.add(Color(*theme.colour(touch.on)))
            self._ring.add(Line(rectangle=frame, width=wide / 2, joint="miter"))

    @property
    def pressed(self) -> bool:
        """Tell whether a press is shown."""
        return bool(self._press.children)

    @property
    def ringed(self) -> bool:
        """Tell whether the keyboard is on an area of it."""
        return self._ring is not None and bool(self._ring.children)

    def hit(self, x: float, y: float) -> Touch | None:
        """Return the area at a place of the view, in pixels from its lower left corner; the last one is on top."""
        if self.laid is None:
            return None
        down = self.height - y
        return next(
            (
                touch
                for touch in reversed(self.laid.touches)
                if touch.x <= x <= touch.x + touch.width and touch.y <= down <= touch.y + touch.height
            ),
            None,
        )
