"""A scrolled column of blocks: Kivy's RecycleView with one light widget for each block in sight."""

from bisect import bisect_left, bisect_right
from itertools import accumulate
from typing import Any

from kivy.graphics import Color, Rectangle, StencilPop, StencilPush, StencilUnUse, StencilUse
from kivy.metrics import dp
from kivy.uix.recycleview import RecycleView
from kivy.uix.recycleview.layout import RecycleLayoutManagerBehavior
from kivy.uix.widget import Widget

from screens.blocks import Block
from screens.paper.sheet import Laid, Touch
from screens.paper.view import BlockView
from screens.theme import theme


class Column(RecycleLayoutManagerBehavior, Widget):
    """Stands the blocks in sight under one another. Their heights are known: only where each begins is left to work out.

    A block keeps the view that has painted it, wherever it stands: what did not change is not painted again.
    """

    SPARE = 16
    """Views that are kept although nothing of theirs is in sight."""

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Begin without any."""
        super().__init__(**kwargs)
        self.views: dict[int, BlockView] = {}
        self._spare: list[BlockView] = []
        self._tops: list[float] = [0.0]

    def compute_layout(self, data: list[dict[str, Any]], _flags: object) -> None:
        """Work out where each block begins, from the top."""
        self._tops = list(accumulate((one["laid"].height for one in data), initial=0.0))
        self.height = self._tops[-1]

    def compute_visible_views(self, data: list[dict[str, Any]], viewport: tuple[float, ...]) -> range:
        """Return the places of what is in sight."""
        _, low, _, tall = viewport
        first = bisect_right(self._tops, self.height - low - tall) - 1
        return range(max(0, first), min(len(data), bisect_left(self._tops, self.height - low)))

    def set_visible_views(self, indices: range, data: list[dict[str, Any]], _viewport: object) -> None:
        """Give each block in sight its view, and put it where it stands."""
        shown = {place: data[place]["laid"] for place in indices}
        wanted = {id(laid): place for place, laid in shown.items()}
        views: dict[int, BlockView] = {}
        free: list[BlockView] = []
        for view in (*self._spare, *self.views.values()):
            place = wanted.pop(id(view.laid), None)
            if place is None:
                free.append(view)
            else:
                views[place] = view
        for place in wanted.values():
            views[place] = _taken(free, data[place]["key"])
        self._spare = free[-self.SPARE :]
        for view in free:
            if view.parent is self:
                self.remove_widget(view)
        for place, view in views.items():
            view.take(place, data[place], (self.x, self.top - self._tops[place + 1]))
            if view.parent is None:
                self.add_widget(view)
        self.views = views


def _taken(free: list[BlockView], key: str) -> BlockView:
    """Take the view that showed the same block, which has most of it painted already; else another one, else a new one."""
    if not free:
        return BlockView()
    return free.pop(next((place for place, view in enumerate(free) if view.key == key), -1))


class Pane(RecycleView):
    """Holds blocks and their laid-out forms. `offset` is how far it is scrolled, in pixels from the top."""

    data: list[dict[str, Any]]
    scroll_y: float
    opacity: float
    size: tuple[float, float]

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Begin empty."""
        kwargs.setdefault("size_hint", (None, None))
        super().__init__(**kwargs)
        self.bar_width = dp(3)
        self.bar_margin = dp(1)
        self.scroll_distance = dp(24)
        self.scroll_type = ["content"]
        self.always_overscroll = False
        self.effect_cls = "ScrollEffect"
        self.blocks: tuple[Block, ...] = ()
        self.laids: tuple[Laid, ...] = ()
        self._spare = 0.0
        self.column = Column(size_hint=(1, None))
        self.add_widget(self.column)

    def apply_class_lang_rules(self, *_: object, **__: object) -> None:
        """Cut off what is scrolled out of sight, and draw the bar: Kivy's rules for it cost more at each change of size."""
        with self.canvas.before:
            StencilPush()
            self._inside = Rectangle()
            StencilUse()
        with self.canvas.after:
            StencilUnUse()
            self._outside = Rectangle()
            StencilPop()
            self._bar_ink, self._bar = Color(), Rectangle()
        for name in ("pos", "size", "vbar", "_bar_color"):
            self.fbind(name, self._framed)

    def _framed(self, *_: object) -> None:
        for edge in (self._inside, self._outside):
            edge.pos, edge.size = self.pos, self.size
        start, share = self.vbar
        self._bar_ink.rgba = self._bar_color if share < 1.0 else (0.0, 0.0, 0.0, 0.0)
        self._bar.pos = (self.right - self.bar_width - self.bar_margin, self.y + self.height * start)
        self._bar.size = (self.bar_width, self.height * share)

    @property
    def views(self) -> dict[int, BlockView]:
        """Return the views in sight by the places of their blocks."""
        return self.column.views

    @property
    def total(self) -> float:
        """Return the height of all blocks."""
        return sum(laid.height for laid in self.laids) + self._spare

    @property
    def offset(self) -> float:
        """Return how far it is scrolled."""
        return (1.0 - self.scroll_y) * max(0.0, self.total - self.height)

    def fill(self, blocks: tuple[Block, ...], laids: tuple[Laid, ...], offset: float) -> None:
        """Show blocks, scrolled so far. Views of blocks that did not change are left alone."""
        alike = len(laids) == len(self.laids) and all(
            one.height == two.height for one, two in zip(laids, self.laids, strict=True)
        )
        self.blocks, self.laids = blocks, laids
        bare = sum(laid.height for laid in laids)
        # Room at the end, so that the touched block can stay where it is when what is below it shrinks.
        spare = max(0.0, offset + self.height - bare) if offset > 0 else 0.0
        alike = alike and spare == self._spare
        self._spare = spare
        if alike:
            for place, laid in enumerate(laids):
                if self.data[place]["laid"] is not laid:
                    self.data[place]["laid"] = laid
            for place, view in self.views.items():
                if place < len(laids):
                    view.show(laids[place])
        else:
            data = [{"laid": laid, "key": block.key} for block, laid in zip(blocks, laids, strict=True)]
            self.data = [*data, {"laid": Laid(self.width, spare), "key": ""}] if spare else data
        self.to(offset)

    def hide(self) -> None:
        """Show nothing."""
        if self.opacity:
            self.size, self.opacity = (0.0, 0.0), 0
            self.fill((), (), 0.0)

    def to(self, offset: float) -> None:
        """Scroll to so many pixels from the top."""
        room = self.total - self.height
        wanted = 1.0 if room <= 0 else 1.0 - min(max(0.0, offset), room) / room
        if abs(wanted - self.scroll_y) > 1e-9:  # noqa: PLR2004  (rounding)
            self.scroll_y = wanted

    def repaint(self) -> None:
        """Paint what is in sight anew: the colours changed."""
        for view in self.views.values():
            if view.laid is not None:
                view.show(view.laid, again=True)

    def at(self, x: float, y: float) -> tuple[BlockView, Touch] | None:
        """Return the view and the area at a place of the window."""
        if not self.collide_point(x, y):
            return None
        inside_x, inside_y = self.to_local(x, y)
        for view in self.views.values():
            if view.collide_point(inside_x, inside_y):
                touch = view.hit(inside_x - view.x, inside_y - view.y)
                return None if touch is None else (view, touch)
        return None


class Strip(BlockView):
    """A block that does not scroll, on a ground of its own."""

    def __init__(self, tone: str = "ground", **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Begin empty; `tone` is the colour behind it, which may `bleed` past its sides (where it starts, how wide)."""
        super().__init__(**kwargs)
        self.tone = tone
        self.bleed: tuple[float, float] | None = None
        self.block: Block | None = None
        self._shown: object = None
        with self.canvas.before:
            self._colour = Color()
            self._ground = Rectangle()
            if tone == "panel":
                # In the Sun theme its ground is the page's: a line says where it ends.
                self._hair = Color()
                self._edge = Rectangle()

    def show(self, laid: Laid, *, again: bool = False) -> None:
        """Paint the ground as well."""
        again = again or self.laid is None
        super().show(laid, again=again)
        start, width = self.bleed or (0.0, self.width)
        ground = (theme.colour(self.tone), start, width, self.height)
        if again or ground != self._shown:
            self._shown = ground
            self._colour.rgba = ground[0]
            self._ground.pos, self._ground.size = (start, 0.0), (width, self.height)
            if self.tone == "panel":
                self._hair.rgba = theme.colour("hair")
                self._edge.pos, self._edge.size = (start, 0.0), (width, dp(1))
