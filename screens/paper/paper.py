"""The paper: one widget that shows the page in front, hears touches and keys, and sends acts."""

import logging
from collections.abc import Callable, Iterator
from math import copysign
from typing import Any

from kivy.clock import Clock
from kivy.graphics import Color, Rectangle
from kivy.metrics import dp
from kivy.properties import ObjectProperty, StringProperty
from kivy.uix.widget import Widget

from logic.errors import InputError
from logic.store import NotSaved
from screens.acts import Act, Back, Go
from screens.acts.entering import Done, Write
from screens.blocks import Block, Entry, Field
from screens.page import Page
from screens.paper.arranging import Area, Arranging, Way
from screens.paper.entering import Entering
from screens.paper.focus import Focus
from screens.paper.parts import Parts
from screens.paper.sheet import Touch
from screens.paper.spots import Spot
from screens.paper.touches import TREMBLE, Touches
from screens.phone import haptics
from screens.phone.bars import NONE, Sides
from screens.theme import theme

QUIET = 0.05
"""Seconds until a page goes on by itself, one step after the other."""
LEAST = 100
"""Width and height in dp under which nothing is laid out."""


class Paper(Widget):
    """Shows a Page. `perform` is given each act; `show` is called with the page that came of it.

    `frame` tells what stands around the page: whether there is a way back, the place one is in, the board, and the list of
    the place for a window that has room for it.
    """

    title = StringProperty()
    writing = ObjectProperty(None, allownone=True)

    def __init__(self, perform: Callable[[Act], None], **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Make the parts that every page has."""
        super().__init__(**kwargs)
        self.perform = perform
        self.page = Page(title="")
        self.frame: dict[str, Any] = {
            "back": True,
            "place": "ride",
            "board": "",
            "note": "",
            "bar": None,
            "list": (),
        }
        with self.canvas.before:
            self._colour = Color()
            self._ground = Rectangle()
            self._edge_colour, self._edge = Color(), Rectangle()
        self.free, self.keyboard = NONE, 0.0
        self.where: object = None
        self._offsets: dict[object, tuple[float, ...]] = {}
        self.parts = Parts(self.add_widget)
        self.touches = Touches(self.parts, self.do, self.block)
        self.entering = Entering(self.act, self.arrange)
        self.focused = Focus(self.parts, self.act)
        self._arranging = Arranging(self.parts)
        self._soon = Clock.create_trigger(lambda *_: self.arrange(), -1)
        self._then = Clock.create_trigger(self._go_on, QUIET)
        self.bind(size=self._soon, pos=self._soon)
        # Held weakly: the theme outlives every paper.
        theme.bind(name=self._dressed, scale=self._dressed)

    # What is shown

    def show(self, page: Page, where: object, **frame: Any) -> None:  # noqa: ANN401  (see `frame`)
        """Show a page. `where` is its place on the way: another one begins at the top, one that was seen where it was left."""
        moved = where != self.where
        if moved:
            if self.where is not None:
                self.parts.deafen("page")
            self._leave(where)
        before = self.page
        self.page, self.title = page, page.title
        self.frame.update(frame)
        if page.card != before.card and not moved:
            self.parts.deafen("foot")
            self._offsets[where] = (0.0, 0.0)
            moved = True
        self.entering.take(page.foot.entry)
        self.arrange(moved=moved)
        self._then.cancel()
        if page.then is not None:
            self._then()

    def _go_on(self, *_: object) -> None:
        """Do what the page leaves for a quiet moment."""
        if self.parent is None or self.page.then is None:
            return
        if self.pressed:
            self._then()
        else:
            self.perform(self.page.then)

    def _leave(self, where: object) -> None:
        """Keep how far the page was scrolled for the way back, and forget the pages that were deeper on the way."""
        depth = len(where) if isinstance(where, tuple) else 0
        if self.where is not None:
            self._offsets[self.where] = tuple(pane.offset for pane in self.parts.panes)
        self._offsets = {
            key: value
            for key, value in self._offsets.items()
            if not isinstance(key, tuple) or len(key) <= depth
        }
        self.where = where
        for part in (self.entering, self.focused, self._arranging):
            part.leave()
        self.close_writing()

    def arrange(self, *, moved: bool = False) -> None:
        """Lay the page out for the size there is."""
        if self.width < dp(LEAST) or self.height < dp(LEAST):
            return
        self._colour.rgba = theme.colour("ground")
        self._ground.pos, self._ground.size = self.pos, self.size
        free = self.free
        whole = Area(
            left=self.x + free.left,
            right=self.right - free.right,
            bottom=self.y + max(free.bottom, self.keyboard),
            top=self.top - free.top,
            keyboard=max(0.0, self.keyboard - free.bottom),
        )
        offsets = self._offsets.get(self.where, (0.0, 0.0)) if moved else None
        entering = self.entering
        way = Way(whole, entering.sentence, entering.choosing, self.touches.press, offsets)
        self._arranging.arrange(self.page, self.frame, way)
        self._edge_colour.rgba = theme.colour("hair")
        rows = self.parts.panes[2]
        self._edge.pos, self._edge.size = (
            (rows.right - dp(1), rows.y),
            (dp(1) if rows.opacity else 0.0, rows.height),
        )
        self.touches.show()
        self.focused.show()
        if self.writing is not None:
            self.writing.place()

    def keep_free(self, sides: Sides, keyboard: float = 0.0) -> None:
        """Lay the page out beside what the system's bars cover, and above its keyboard; in pixels."""
        if (sides, keyboard) != (self.free, self.keyboard):
            self.free, self.keyboard = sides, keyboard
            self.arrange()

    def repaint(self) -> None:
        """Paint everything anew: what the graphics held has gone."""
        self._dressed()
        self.arrange()

    def _dressed(self, *_: object) -> None:
        self.parts.forget()
        if self.writing is not None:
            self.writing.dress()
        self._soon()

    @property
    def lost(self) -> bool:
        """Tell whether another page stands in for one that failed."""
        return self.page.lost

    @property
    def pressed(self) -> bool:
        """Tell whether a finger is down on something."""
        return self.touches.press is not None

    @property
    def entry(self) -> Entry | None:
        """Return what is being entered."""
        return self.page.foot.entry

    def spots(self) -> Iterator[Spot]:
        """Yield every text and every area to touch, also those that are scrolled out of sight."""
        return self.parts.spots()

    def key(self, name: str) -> Spot:
        """Return a key of the keypad. Raises LookupError where it is not shown."""
        for spot in self.spots():
            if spot.touch is not None and spot.touch.part == f"key {name}":
                return spot
        raise LookupError(name)

    # Touches and keys

    def on_touch_down(self, touch: Any) -> bool:  # noqa: ANN401  (Kivy's touch)
        """Take a finger; a wheel scrolls what is under it."""
        if not self.collide_point(*touch.pos) or (
            "button" in touch.profile and touch.button.startswith("scroll")
        ):
            return bool(super().on_touch_down(touch))
        if self.writing is not None and self.writing.on_touch_down(touch):
            return True
        self.close_writing()
        self.focused.leave()
        self.touches.down(touch)
        touch.grab(self)
        for pane in self.parts.panes:
            if pane.opacity and pane.collide_point(*touch.pos):
                pane.on_touch_down(touch)
        crown = self.parts.crown
        if crown.opacity and crown.collide_point(*touch.pos):
            under = next(
                (one for one in self.parts.panes if one.width and one.x <= touch.x <= one.right), None
            )
            touch.ud["crown"] = under and (under, touch.y, under.offset)
        return True

    def on_touch_move(self, touch: Any) -> bool:  # noqa: ANN401
        """Follow the finger."""
        if touch.grab_current is not self:
            return bool(super().on_touch_move(touch))
        self.touches.move(touch)
        if touch.ud.get("crown"):
            # Half of a small window may be crown: a finger that slides on it moves what is under it.
            pane, began, offset = touch.ud["crown"]
            slid = touch.y - began
            if abs(slid) > dp(TREMBLE):
                pane.to(offset + slid - copysign(dp(TREMBLE), slid))
        return True

    def on_touch_up(self, touch: Any) -> bool:  # noqa: ANN401
        """Let the finger go."""
        if touch.grab_current is not self:
            return bool(super().on_touch_up(touch))
        touch.ungrab(self)
        self.touches.up(touch)
        return True

    def block(self, key: str) -> Block | None:
        """Return the block of a key on the page as it is."""
        return next((block for block in self.page.blocks if block.key == key), None)

    def do(self, block: Block, touch: Touch) -> None:
        """Do what an area stands for."""
        part = touch.part
        if part.startswith("key "):
            self.entering.key(part.removeprefix("key "))
            return
        haptics.tick()
        act = block.acts().get(part)
        if part == "field" and isinstance(block, Field):
            self.open_writing(block)
        elif act is not None:
            self.act(act)

    def act(self, act: Act) -> None:
        """Have an act done. A value that is refused changes nothing; that it could not be saved is said by the app."""
        if isinstance(act, (Done, Back, Go)):
            self.entering.over()
        try:
            self.perform(act)
        except NotSaved:
            raise
        except InputError as problem:
            logging.getLogger(__name__).warning("refused: %s", problem)

    # Free text

    def open_writing(self, block: Field) -> Any:  # noqa: ANN401  (Kivy's text field)
        """Open a text field over a Field block, and return it."""
        # Kivy's text field is not wanted for the first frame.
        from screens.paper.writing import Writing  # noqa: PLC0415

        self.close_writing()
        self.writing = Writing(self, block, lambda text: self.act(Write(block.key, text)))
        self.add_widget(self.writing)
        self.writing.place()
        self.writing.focus = True
        return self.writing

    def close_writing(self) -> None:
        """Close the text field; what was written is kept at each letter."""
        if self.writing is not None:
            self.writing.focus = False
            self.remove_widget(self.writing)
            self.writing = None
