"""A scrolled column of blocks: Kivy's RecycleView with one light widget for each block in sight."""

from typing import Any

from kivy.graphics import Color, Rectangle
from kivy.metrics import dp
from kivy.uix.recycleboxlayout import RecycleBoxLayout
from kivy.uix.recycleview import RecycleView
from kivy.uix.recycleview.views import RecycleDataAdapter

from screens.blocks import Block
from screens.paper.colours import colour
from screens.paper.sheet import Laid, Touch
from screens.paper.view import BlockView


class Views(RecycleDataAdapter):
    """Gives each block the view that has painted it already, wherever it stood: what did not change is not painted again."""

    SPARE = 16
    """Views that are kept although nothing of theirs is in sight."""

    views: dict[int, BlockView]

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Begin without any."""
        self._spare: list[BlockView] = []
        super().__init__(**kwargs)

    def invalidate(self) -> None:
        """Keep the views when the blocks changed: many will be the same."""
        self._spare += self.views.values()
        self._take_dirty()
        self.views = {}

    def get_view(self, index: int, data_item: dict[str, Any], viewclass: Any) -> Any:  # noqa: ANN401  (Kivy's own signature)
        """Return the view of a block: the one that shows it, else one whose block has gone, else a new one."""
        self._take_dirty()
        laid, spare = data_item["laid"], self._spare
        place = next((at for at, view in enumerate(spare) if view.laid is laid), None)
        if place is None:
            wanted = {id(one) for one in self.recycleview.laids}
            place = next((at for at, view in enumerate(spare) if id(view.laid) not in wanted), None)
        if place is None and len(spare) > self.SPARE:
            place = 0
        if place is None:
            return self.create_view(index, data_item, viewclass)
        view = spare.pop(place)
        self.refresh_view_attrs(index, data_item, view)
        return view

    def _take_dirty(self) -> None:
        for views in self.dirty_views.values():
            self._spare += views.values()
            views.clear()


class Pane(RecycleView):
    """Holds blocks and their laid-out forms. `offset` is how far it is scrolled, in pixels from the top."""

    data: list[dict[str, Any]]
    scroll_y: float

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Begin empty."""
        kwargs.setdefault("size_hint", (None, None))
        super().__init__(**kwargs)
        self.view_adapter = Views()
        self.bar_width = dp(3)
        self.bar_margin = dp(1)
        self.scroll_distance = dp(24)
        self.scroll_type = ["content"]
        self.always_overscroll = False
        self.effect_cls = "ScrollEffect"
        self.blocks: tuple[Block, ...] = ()
        self.laids: tuple[Laid, ...] = ()
        self._spare = 0.0
        column = RecycleBoxLayout(
            orientation="vertical",
            size_hint=(1, None),
            default_size_hint=(None, None),
            key_size="box",
        )
        column.bind(minimum_height=column.setter("height"))
        self.add_widget(column)
        self.viewclass = BlockView

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
            for place, view in self.view_adapter.views.items():
                if place < len(laids):
                    view.show(laids[place])
        else:
            data = [{"laid": laid, "box": (laid.width, laid.height)} for laid in laids]
            if spare:
                empty = Laid(self.width, spare)
                data.append({"laid": empty, "box": (self.width, spare)})
            self.data = data
        self.to(offset)

    def to(self, offset: float) -> None:
        """Scroll to so many pixels from the top."""
        room = self.total - self.height
        wanted = 1.0 if room <= 0 else 1.0 - min(max(0.0, offset), room) / room
        if abs(wanted - self.scroll_y) > 1e-9:  # noqa: PLR2004  (rounding)
            self.scroll_y = wanted

    def repaint(self) -> None:
        """Paint what is in sight anew: the colours changed."""
        for view in self.view_adapter.views.values():
            if view.laid is not None:
                view.show(view.laid, again=True)

    def at(self, x: float, y: float) -> tuple[BlockView, Touch] | None:
        """Return the view and the area at a place of the window."""
        if not self.collide_point(x, y):
            return None
        inside_x, inside_y = self.to_local(x, y)
        for view in self.view_adapter.views.values():
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
        with self.canvas.before:
            self._colour = Color()
            self._ground = Rectangle()

    def show(self, laid: Laid, *, again: bool = False) -> None:
        """Paint the ground as well."""
        super().show(laid, again=again)
        self._colour.rgba = colour(self.tone)
        start, width = self.bleed or (0.0, self.width)
        self._ground.pos, self._ground.size = (start, 0.0), (width, self.height)
