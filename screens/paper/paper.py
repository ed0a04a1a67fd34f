"""The paper: one widget that shows the page in front, hears touches and keys, and sends acts."""

import logging
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from kivy.clock import Clock
from kivy.graphics import Color, Rectangle
from kivy.metrics import dp
from kivy.properties import ObjectProperty, StringProperty
from kivy.uix.widget import Widget

from logic.entries import LONGEST
from logic.errors import InputError
from logic.store import NotSaved
from screens.acts import Act, Back, Done, Go, Type, Write, asks
from screens.blocks import Block, Button, Entry, Field
from screens.page import Page
from screens.paper import hand
from screens.paper.colours import colour
from screens.paper.furniture import Bars, Header, Places, WayBack
from screens.paper.measure import measure
from screens.paper.pane import Pane, Strip
from screens.paper.room import LOW, SHARE, foot_blocks, foot_look, look_of, whole_look
from screens.paper.scale import LINE, TWO_PANES, Look
from screens.paper.sheet import Laid, Touch
from screens.paper.spots import Spot
from screens.phone.bars import NONE, Sides
from screens.theme import theme

PATIENCE = 0.8
"""Seconds without a key after which it is said what is wrong."""
BRIEF = 0.8
"""Seconds for which it is said why a key was not taken."""
DEAF = 0.35
"""Seconds for which a bar that has just appeared hears nothing."""
SHOWN = 0.12
"""Seconds for which a press is shown at least."""
HOLD, AGAIN = 0.45, 0.12
"""Seconds until a held key repeats, and between repeats."""
CROWN = 0.6
"""Most of the height between header and foot that the crown may take."""
QUIET = 0.05
"""Seconds until a page goes on by itself, one step after the other."""
TREMBLE = 24
"""How far a finger may tremble, in dp."""
WHOLE = 2 * LONGEST
"""Characters that are taken from a keyboard: far more than any that is read, so none is cut to a right one."""


@dataclass
class Press:
    """A finger that is down on an area."""

    view: Any
    touch: Touch
    block: Block
    x: float
    y: float
    began: float
    top: float
    """Where the block's upper edge was in the window: it stays there."""
    repeated: int = 0


class Paper(Widget):
    """Shows a Page. `perform` is given each act; `show` is called with the page that came of it.

    `home` tells what the frame shows beside the page: whether there is a way back, the place one is in, the board.
    """

    title = StringProperty()
    writing = ObjectProperty(None, allownone=True)

    def __init__(self, perform: Callable[[Act], None], **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Make the parts that every page has."""
        super().__init__(**kwargs)
        self.perform = perform
        self.page = Page(title="")
        self.frame: dict[str, Any] = {"back": True, "place": "ride", "board": "", "note": "", "bar": None}
        with self.canvas.before:
            self._colour = Color()
            self._ground = Rectangle()
        self.header, self.crown = Strip(), Strip("panel")
        self.panes = (Pane(), Pane())
        self.foot: list[Strip] = []
        self.places, self.bar = Strip(), Strip()
        for part in (*self.panes, self.crown, self.header, self.places, self.bar):
            self.add_widget(part)
        self.free, self.keyboard = NONE, 0.0
        self.choosing = False
        self._press: Press | None = None
        self._laid: dict[tuple[str, str], tuple[Block, float, Look, Laid]] = {}
        self._where: object = None
        self._offsets: dict[object, tuple[float, ...]] = {}
        self._told = ""
        self._refused = ""
        self._deaf: dict[str, float] = {}
        self._foot_shape: object = None
        self._focus = -1
        self._bounce = hand.Bounce()
        self._tell = Clock.create_trigger(self._say_wrong, PATIENCE)
        self._brief = Clock.create_trigger(self._brief_over, BRIEF)
        self._repeat = Clock.create_trigger(self._held, HOLD)
        self._soon = Clock.create_trigger(lambda *_: self.arrange(), -1)
        self._then = Clock.create_trigger(self._go_on, QUIET)
        self.bind(size=self._soon, pos=self._soon)
        # Held weakly: the theme outlives every paper.
        theme.bind(name=self._dressed, scale=self._dressed)

    # What is shown

    def show(self, page: Page, where: object, **frame: Any) -> None:  # noqa: ANN401  (see `frame`)
        """Show a page. `where` is its place on the way: another one begins at the top, one that was seen where it was left."""
        moved = where != self._where
        if moved:
            self._leave(where)
        before = self.page
        self.page, self.title = page, page.title
        self.frame.update(frame)
        if page.card != before.card and not moved:
            self.deafen("foot")
            self._offsets[where] = (0.0, 0.0)
            moved = True
        entry = page.foot.entry
        if entry is None or not entry.sentence:
            self._tell.cancel()
            self._told = ""
        self.arrange(moved=moved)
        self._then.cancel()
        if page.then is not None:
            self._then()

    def _go_on(self, *_: object) -> None:
        """Do what the page leaves for a quiet moment."""
        if self.parent is None or self.page.then is None:
            return
        if self._press is None:
            self.perform(self.page.then)
        else:
            self._then()

    def _leave(self, where: object) -> None:
        depth = len(where) if isinstance(where, tuple) else 0
        if self._where is not None:
            self._offsets[self._where] = tuple(pane.offset for pane in self.panes)
        self._offsets = {
            key: value
            for key, value in self._offsets.items()
            if not isinstance(key, tuple) or len(key) <= depth
        }
        self._where = where
        self._told = self._refused = ""
        self.choosing = False
        self._focus = -1
        self._foot_shape = None
        self.close_writing()

    def _dressed(self, *_: object) -> None:
        self._laid.clear()
        for part in self._strips():
            part.laid = None
        for pane in self.panes:
            pane.repaint()
        self._soon()

    def _strips(self) -> list[Strip]:
        return [self.header, self.crown, *self.foot, self.places, self.bar]

    # Laying out

    def arrange(self, *, moved: bool = False) -> None:
        """Lay the page out for the size there is."""
        if self.width < dp(100) or self.height < dp(100):
            return
        self._colour.rgba = colour("ground")
        self._ground.pos, self._ground.size = self.pos, self.size
        free = self.free
        low_end = self.y + max(free.bottom, self.keyboard)
        first, last, high_end = self.x + free.left, self.right - free.right, self.top - free.top
        # Text keeps its size while the keyboard stands.
        wide, tall = last - first, high_end - self.y - free.bottom
        low = tall < dp(LOW)
        flat = low and wide > tall
        look = look_of(tall, theme.scale)
        page, entry = self.page, self.page.foot.entry
        nav = page.places and entry is None and not self.keyboard
        rail = dp(80) if flat and nav else 0.0
        left, right, top, bottom = first + rail, last, high_end, low_end
        top -= self._put(self.header, self._header(), right - left, left, top, look.framed())
        if nav:
            block = Places(key="places", here=self.frame["place"], upright=flat)
            height = self._height(block, rail or wide, look.framed())
            self._put(
                self.places, block, rail or wide, first, high_end if flat else bottom + height, look.framed()
            )
            if not flat:
                bottom += height
        else:
            self._hide(self.places)
        top, bottom, right = self._arrange_foot(look, left, right, top, bottom, flat=flat, low=low)
        bottom = self._arrange_bar(look, left, right, bottom)
        if page.crown is not None:
            # It begins where what is under it begins.
            block_wide = min(right - left, dp(LINE))
            two = page.aside and right - left >= dp(TWO_PANES)
            start = 0.0 if two else (right - left - block_wide) / 2
            self.crown.bleed = (-start, right - left)
            # The crown leaves room for what is under it: its text shrinks to normal at the least.
            chosen = foot_look((page.crown,), block_wide, look, (top - bottom) * CROWN)
            top -= self._put(self.crown, page.crown, block_wide, left + start, top, chosen)
        else:
            self._hide(self.crown)
        self._arrange_panes(look, left, right, top, bottom, moved=moved)
        self._after()

    def keep_free(self, sides: Sides, keyboard: float = 0.0) -> None:
        """Lay the page out beside what the system's bars cover, and above its keyboard; in pixels."""
        if (sides, keyboard) != (self.free, self.keyboard):
            self.free, self.keyboard = sides, keyboard
            self.arrange()

    def repaint(self) -> None:
        """Paint everything anew: what the graphics held has gone."""
        self._dressed()
        self.arrange()

    def _header(self) -> Header:
        frame = self.frame
        chip = self.page.chip
        return Header(
            key="header",
            title=self.page.title,
            back=frame["back"],
            board=frame["board"] if chip else "",
            note=frame["note"] if chip else "",
            tools=self.page.tools,
        )

    def _arrange_foot(  # noqa: PLR0913  (the room that is left)
        self, look: Look, left: float, right: float, top: float, bottom: float, *, flat: bool, low: bool
    ) -> tuple[float, float, float]:
        """Put the foot at the bottom, in a low and wide window at the right; return what is left above or beside it."""
        entry = self.page.foot.entry
        sentence = self._refused or (entry.sentence if self._told and entry is not None else "")
        blocks = foot_blocks(self.page.foot, low=low, sentence=sentence, choosing=self.choosing)
        shape = tuple(
            (type(block), tuple(block.acts())) for block in blocks if not isinstance(block, Bars)
        ) + tuple(
            bar.text if not self.page.foot.entry else ""
            for block in blocks
            if isinstance(block, Bars)
            for bar in block.bars
        )
        if self._foot_shape is not None and shape != self._foot_shape and blocks:
            self.deafen("foot")
        self._foot_shape = shape
        while len(self.foot) < len(blocks):
            self.foot.append(Strip())
            self.add_widget(self.foot[-1])
        for strip in self.foot[len(blocks) :]:
            self._hide(strip)
        if not blocks:
            return top, bottom, right
        room = right - left
        wide = room * 0.46 if flat and self.page.foot.entry else min(room, dp(LINE))
        x = right - wide if flat and self.page.foot.entry else left + (room - wide) / 2
        free = self.free
        ends = self.top - free.top, self.y + max(free.bottom, self.keyboard)
        most = (ends[0] - ends[1]) * SHARE - (ends[0] - top) - (bottom - ends[1])
        chosen = look if flat else foot_look(blocks, wide, look, most)
        y = bottom
        for block, strip in reversed(list(zip(blocks, self.foot, strict=False))):
            y += self._height(block, wide, chosen)
            self._put(strip, block, wide, x, y, chosen)
        if flat and self.page.foot.entry:
            return top, bottom, x
        return top, y, right

    def _arrange_bar(self, look: Look, left: float, right: float, bottom: float) -> float:
        step = self.frame["bar"]
        if step is None:
            self._hide(self.bar)
            return bottom
        block = WayBack(key="way back", text=step.text, word=step.word)
        if self.bar.block != block:
            self.deafen("bar")
        height = self._height(block, right - left, look.framed())
        self._put(self.bar, block, right - left, left, bottom + height, look.framed())
        return bottom + height

    def _arrange_panes(  # noqa: PLR0913  (the room that is left)
        self, look: Look, left: float, right: float, top: float, bottom: float, *, moved: bool
    ) -> None:
        blocks, aside = self.page.blocks, self.page.aside
        two = right - left >= dp(TWO_PANES) and bool(aside)
        parts = (
            (
                tuple(one for one in blocks if one.key not in aside),
                tuple(one for one in blocks if one.key in aside),
            )
            if two
            else (blocks, ())
        )
        room = (right - left) / 2 if two else right - left
        offsets = (
            self._offsets.get(self._where, (0.0, 0.0)) if moved else tuple(pane.offset for pane in self.panes)
        )
        for place, (pane, shown) in enumerate(zip(self.panes, parts, strict=True)):
            if place and not two:
                pane.size, pane.opacity = (0, 0), 0
                pane.fill((), (), 0.0)
                continue
            pane.opacity = 1
            width = min(room, dp(LINE))
            pane.size = (width, max(0.0, top - bottom))
            pane.pos = (left + place * room + (room - width) / 2, bottom)
            if not place:
                look = whole_look(shown, self.page.whole, width, look, top - bottom)
            before = {} if moved else {one.key for one in pane.blocks}
            laids = tuple(self._lay(one, width, look, f"pane {place}") for one in shown)
            offset = offsets[place]
            whole = sum(laid.height for laid in laids)
            if moved or self.page.foot.entry is not None or offset >= whole:
                # Nothing on it is touched, or nothing of it is left: what lies below its end is not shown.
                offset = min(offset, max(0.0, whole - pane.height))
            press = self._press
            if (
                press is not None
                and not moved
                and press.block.key in before
                and isinstance(press.view.parent, Widget)
            ):
                at = self._place_in(shown, laids, press.block.key)
                if at is not None and press.view.parent.parent is pane:
                    offset = at - (pane.top - press.top)
            pane.fill(shown, laids, offset)
        keep = {("pane 0", one.key) for one in blocks} | {("pane 1", one.key) for one in blocks}
        self._laid = {
            key: laid for key, laid in self._laid.items() if key in keep or not key[0].startswith("pane")
        }

    @staticmethod
    def _place_in(blocks: tuple[Block, ...], laids: tuple[Laid, ...], key: str) -> float | None:
        top = 0.0
        for block, laid in zip(blocks, laids, strict=True):
            if block.key == key:
                return top
            top += laid.height
        return None

    def _lay(self, block: Block, width: float, look: Look, part: str) -> Laid:
        """Return a block laid out; the one that is kept where it would look the same."""
        key = (part, block.key)
        kept = self._laid.get(key)
        if (
            kept is not None
            and kept[1] == width
            and kept[2] == look
            and type(kept[0]) is type(block)
            and kept[0].looks_like(block)
        ):
            return kept[3]
        laid = measure(block, width, look)
        self._laid[key] = (block, width, look, laid)
        return laid

    def _height(self, block: Block, width: float, look: Look) -> float:
        return self._lay(block, width, look, "frame").height

    def _put(self, strip: Strip, block: Block, width: float, x: float, top: float, look: Look) -> float:  # noqa: PLR0913
        laid = self._lay(block, width, look, "frame")
        strip.block, strip.opacity = block, 1
        strip.show(laid)
        strip.pos = (x, top - laid.height)
        return laid.height

    @staticmethod
    def _hide(strip: Strip) -> None:
        if strip.opacity:
            strip.block, strip.opacity, strip.size = None, 0, (0, 0)
            strip.laid = None

    def _after(self) -> None:
        """Show the press and the focus on what is painted now."""
        press = self._press
        if press is not None and press.view.laid is not None:
            press.view.press(press.touch)
        if self._focus >= 0:
            self._show_focus()
        if self.writing is not None:
            self.writing.place()

    @property
    def lost(self) -> bool:
        """Tell whether another page stands in for one that failed."""
        return self.page.lost

    # Where things are

    @property
    def where(self) -> object:
        """Return the place of the page on the way."""
        return self._where

    @property
    def pressed(self) -> bool:
        """Tell whether a finger is down on something."""
        return self._press is not None

    @property
    def matter(self) -> float:
        """Return the share of the window that is left for crown and blocks."""
        height = self.panes[0].height + (self.crown.height if self.crown.opacity else 0.0)
        width = self.panes[0].width + self.panes[1].width
        return (
            height / self.height if width >= self.width * 0.6 else height * width / (self.height * self.width)
        )

    def spots(self) -> Iterator[Spot]:
        """Yield every text and every area to touch, also those that are scrolled out of sight."""
        for strip in self._strips():
            if strip.opacity and strip.block is not None and strip.laid is not None:
                yield from Spot.all_of(self, strip, strip.laid, 0.0)
        for pane in self.panes:
            top = 0.0
            for laid in pane.laids:
                yield from Spot.all_of(self, pane, laid, top)
                top += laid.height

    def key(self, name: str) -> Spot:
        """Return a key of the keypad. Raises LookupError where it is not shown."""
        for spot in self.spots():
            if spot.touch is not None and spot.touch.part == f"key {name}":
                return spot
        raise LookupError(name)

    def deafen(self, part: str) -> None:
        """Let the foot or the bar over it hear nothing for a moment."""
        self._deaf[part] = Clock.get_time() + DEAF

    def deaf_for(self, view: Any) -> float:  # noqa: ANN401  (a view)
        """Return for how many seconds a part will hear nothing."""
        part = "foot" if view in self.foot else "bar" if view is self.bar else ""
        return max(0.0, self._deaf.get(part, 0.0) - Clock.get_time())

    # Touches

    def find_at(self, x: float, y: float) -> tuple[Any, Touch, Block] | None:
        """Return the view, the area and the block at a place of the window."""
        for strip in (self.bar, *self.foot, self.places, self.header, self.crown):
            if strip.opacity and strip.block is not None and strip.collide_point(x, y):
                touch = strip.hit(x - strip.x, y - strip.y)
                return None if touch is None else (strip, touch, strip.block)
        for pane in self.panes:
            found = pane.at(x, y)
            if found is not None and found[0].index < len(pane.blocks):
                return (*found, pane.blocks[found[0].index])
        return None

    def on_touch_down(self, touch: Any) -> bool:  # noqa: ANN401  (Kivy's touch)
        """Show the press at once; whether it counts is known when the finger lifts."""
        if not self.collide_point(*touch.pos) or (
            "button" in touch.profile and touch.button.startswith("scroll")
        ):
            return bool(super().on_touch_down(touch))
        if self.writing is not None and self.writing.on_touch_down(touch):
            return True
        self.close_writing()
        found = self.find_at(*touch.pos)
        if found is not None and self._press is None and not self.deaf_for(found[0]):
            view, area, block = found
            top = view.to_window(view.x, view.top)[1] if isinstance(view.parent, Widget) else view.top
            self._press = Press(view, area, block, touch.x, touch.y, Clock.get_time(), top)
            view.press(area)
            touch.ud["paper"] = self._press
            if area.holds:
                self._repeat.timeout = HOLD
                self._repeat()
        touch.grab(self)
        for pane in self.panes:
            if pane.opacity and pane.collide_point(*touch.pos):
                pane.on_touch_down(touch)
        return True

    def on_touch_move(self, touch: Any) -> bool:  # noqa: ANN401
        """Let go of what is pressed once the finger has left it."""
        if touch.grab_current is not self:
            return bool(super().on_touch_move(touch))
        press = self._press
        if press is not None and touch.ud.get("paper") is press:
            far = max(abs(touch.x - press.x), abs(touch.y - press.y)) > dp(TREMBLE)
            if far:
                self._let_go()
        return True

    def on_touch_up(self, touch: Any) -> bool:  # noqa: ANN401
        """Do what was pressed."""
        if touch.grab_current is not self:
            return bool(super().on_touch_up(touch))
        touch.ungrab(self)
        press = self._press
        if press is not None and touch.ud.get("paper") is press:
            self._repeat.cancel()
            if not press.repeated:
                self._do(press.block, press.touch)
            view, began = press.view, press.began
            self._press = None
            left = SHOWN - (Clock.get_time() - began)
            if left <= 0:
                view.press(None)
            else:
                Clock.schedule_once(lambda *_: view.press(None), left)
        return True

    def _let_go(self) -> None:
        self._repeat.cancel()
        if self._press is not None:
            self._press.view.press(None)
            self._press = None

    def _held(self, *_: object) -> None:
        press = self._press
        if press is None:
            return
        press.repeated += 1
        block = self._now(press.block.key) or press.block
        press.block = block
        if block.acts().get(press.touch.part) is None:
            return
        self._do(block, press.touch)
        self._repeat.timeout = AGAIN
        self._repeat()

    def _now(self, key: str) -> Block | None:
        return next((block for block in self.page.blocks if block.key == key), None)

    def _do(self, block: Block, touch: Touch) -> None:
        """Do what an area stands for."""
        part = touch.part
        if part.startswith("key "):
            self._key(part.removeprefix("key "))
            return
        hand.tick()
        if part == "field" and isinstance(block, Field):
            self.open_writing(block)
            return
        act = block.acts().get(part)
        if act is not None:
            self.act(act)

    def act(self, act: Act) -> None:
        """Have an act done. A value that is refused changes nothing; that it could not be saved is said by the app."""
        if isinstance(act, (Done, Back, Go)):
            self._told = ""
            self.choosing = False
        try:
            self.perform(act)
        except NotSaved:
            raise
        except InputError as problem:
            logging.getLogger(__name__).warning("refused: %s", problem)

    # Entering

    @property
    def entry(self) -> Entry | None:
        """Return what is being entered."""
        return self.page.foot.entry

    def _key(self, name: str) -> None:
        if not self._bounce(name, Clock.get_time()):
            return
        hand.tick()
        if name == "delete":
            self.press("backspace")
        elif name == "clear":
            self._type("")
        elif name == "unit":
            self.choosing = not self.choosing
            self.arrange()
        elif name.startswith("unit "):
            self.choosing = False
            entry = self.entry
            if entry is not None:
                self._type(entry.text, name.removeprefix("unit "))
        else:
            self._tap_key(name)

    def _type(self, text: str, unit: str = "") -> None:
        entry = self.entry
        if entry is None or entry.field.kind == "choice":
            return
        self._refused = self._told = ""
        self._tell.cancel()
        self.act(Type(entry.key, entry.field, text, unit or entry.unit, entry.keeps))
        now = self.entry
        if now is not None and now.sentence:
            self._tell()
        if self.page is not None and unit:
            self.arrange()

    def feed(self, characters: str) -> bool:
        """Take what a hardware keyboard types or what is pasted, whole: reading it refuses what is wrong."""
        entry = self.entry
        if self.writing is not None or entry is None or entry.field.kind == "choice":
            return False
        if not characters.isprintable():
            return False
        if len(entry.text) + len(characters) > WHOLE:
            self._refuse(hand.REFUSED["too long"])
            return False
        self._type(entry.text + characters)
        return True

    def _tap_key(self, character: str) -> None:
        """Type a character by a key of ours, unless no number could have it there."""
        entry = self.entry
        if entry is None:
            return
        sign = character in entry.field.signs
        reason = "" if sign else hand.refused(character, entry.text, signed=entry.signed)
        if reason:
            self._refuse(reason)
        else:
            self._type(entry.text + character)

    def _refuse(self, sentence: str) -> None:
        self._refused = sentence
        self._brief()
        self.arrange()

    def press(self, name: str) -> bool:
        """Obey a named key of a hardware keyboard; return whether it meant anything here."""
        if self.writing is not None:
            return False
        entry = self.entry
        if name in ("next", "previous"):
            return self._tab(1 if name == "next" else -1)
        if name == "enter":
            return self._enter()
        if name == "backspace" and entry is not None:
            self._type(entry.text[:-1])
            return True
        if name == "escape" and self.choosing:
            self.choosing = False
            self.arrange()
            return True
        return False

    def _enter(self) -> bool:
        if self._focus >= 0:
            block, touch = self._focusable()[self._focus]
            self._do(block, touch)
            return True
        main = self.page.foot.main
        if main is None or main.act is None:
            self._say_wrong()
            return self.entry is not None
        self.act(main.act)
        return True

    def _say_wrong(self, *_: object) -> None:
        entry = self.entry
        if entry is not None and entry.sentence:
            self._told = entry.sentence
            self.arrange()

    def _brief_over(self, *_: object) -> None:
        self._refused = ""
        self.arrange()

    # Focus

    def _askable(self) -> dict[str, Act]:
        """Return what can be asked for on this page, from top to bottom, with the first act that asks for it."""
        found: dict[str, Act] = {}
        for block in self.page.blocks:
            for act in block.acts().values():
                if act is not None and asks(act):
                    found.setdefault(asks(act), act)
        return found

    def _tab(self, step: int) -> bool:
        """Go to the next value that can be entered; on a page without any, to the next thing that can be touched."""
        askable = self._askable()
        keys = list(askable)
        if keys:
            now = self.entry.key if self.entry is not None else ""
            place = keys.index(now) + step if now in keys else 0
            self.act(askable[keys[place % len(keys)]])
            return True
        count = len(self._focusable())
        if not count:
            return False
        self._focus = (self._focus + step) % count if self._focus >= 0 else 0 if step > 0 else count - 1
        self._show_focus()
        return True

    def _focusable(self) -> list[tuple[Block, Touch]]:
        found = []
        for strip in (self.header, self.crown):
            if strip.block is not None and strip.laid is not None:
                found += [(strip.block, touch) for touch in strip.laid.touches]
        for pane in self.panes:
            for block, laid in zip(pane.blocks, pane.laids, strict=True):
                found += [(block, touch) for touch in laid.touches]
        for strip in (*self.foot, self.bar, self.places):
            if strip.block is not None and strip.laid is not None:
                found += [(strip.block, touch) for touch in strip.laid.touches]
        return found

    def _show_focus(self) -> None:
        spots = self._focusable()
        if not 0 <= self._focus < len(spots):
            self._focus = -1
            return
        block, touch = spots[self._focus]
        for spot in self.spots():
            if spot.touch is touch:
                spot.bring()
        for view in (
            *self._strips(),
            *(one for pane in self.panes for one in pane.view_adapter.views.values()),
        ):
            shown = getattr(view, "block", None)
            if shown is None and view.laid is not None:
                pane = view.parent.parent
                shown = pane.blocks[view.index] if 0 <= view.index < len(pane.blocks) else None
            view.press(touch if shown is block else None)

    # Free text

    def open_writing(self, block: Field) -> None:
        """Open a text field over a Field block."""
        # Kivy's text field is not wanted for the first frame.
        from screens.paper.writing import Writing  # noqa: PLC0415

        self.close_writing()
        self.writing = Writing(self, block, lambda text: self.act(Write(block.key, text)))
        self.add_widget(self.writing)
        self.writing.place()
        self.writing.focus = True

    def close_writing(self) -> None:
        """Close the text field; what was written is kept at each letter."""
        if self.writing is not None:
            self.writing.focus = False
            self.remove_widget(self.writing)
            self.writing = None


__all__ = ["Button", "Paper"]
