"""Lays a page out on the parts of the paper for the room there is."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise
from typing import Any

from kivy.metrics import dp
from kivy.uix.widget import Widget

from screens.blocks import Block
from screens.page import Foot, Page
from screens.paper.bars import Bars
from screens.paper.furniture import Header, Places, WayBack
from screens.paper.pane import Pane
from screens.paper.parts import Parts
from screens.paper.room import (
    HIGH,
    KEYS_BESIDE,
    LOW,
    RAIL,
    TIGHT,
    beside_width,
    foot_blocks,
    foot_look,
    foot_room,
    list_width,
    look_of,
    roomy_look,
    whole_look,
)
from screens.paper.scale import LINE, TWO_PANES
from screens.paper.sheet import Laid
from screens.paper.touches import Press
from screens.theme import theme

CROWN, CROWN_FLAT = 0.6, 0.45
"""Most of the height between header and foot that the crown may take: upright, and where it stands over two panes."""


@dataclass
class Area:
    """The room that is left, in pixels of the window: each part that is put takes its share off."""

    left: float
    right: float
    bottom: float
    top: float
    keyboard: float = 0.0
    """How much of the window the keyboard covers under it."""

    @property
    def width(self) -> float:
        """Return the width that is left."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Return the height that is left."""
        return self.top - self.bottom


@dataclass
class Way:
    """How a page is laid out: the window, and what is said and held on it at the moment."""

    whole: Area
    sentence: str
    """What is said under an entry."""
    choosing: bool
    """Whether units stand in place of the keys."""
    press: Press | None
    """The finger that is down: what it is on stays where it is."""
    offsets: tuple[float, ...] | None
    """How far the panes are scrolled on a page that has just come; None for the page that stands."""

    def __post_init__(self) -> None:
        """Tell from the window how large things are; text keeps its size while the keyboard stands."""
        self.tall = self.whole.height + self.whole.keyboard
        self.low = self.tall < dp(LOW)
        self.flat = self.low and self.whole.width > self.tall
        self.tight = self.tall < dp(TIGHT)
        self.look = look_of(self.tall, theme.scale)


class Arranging:
    """Puts header, places, foot, way back and crown at their edges, and the blocks into what is left."""

    def __init__(self, parts: Parts) -> None:
        """Begin with a foot that nobody has seen."""
        self.parts = parts
        self._foot_shape: object = None

    def leave(self) -> None:
        """Forget the foot: another page comes, and its foot is not one that changed."""
        self._foot_shape = None

    def arrange(self, page: Page, frame: Mapping[str, Any], way: Way) -> None:
        """Lay a page out; `frame` is what stands around it."""
        left = replace(way.whole)
        nav = page.places and page.foot.entry is None and not way.whole.keyboard
        if nav and way.flat:
            left.left += dp(RAIL)
        rows = frame["list"]
        wide = list_width(way.whole.width, way.tall, theme.scale) if rows else 0.0
        left.left += wide
        keys = left
        if page.foot.entry is not None and (way.flat or left.width >= max(dp(KEYS_BESIDE), way.tall)):
            keys = replace(left, left=left.right - beside_width(page.foot.entry, left.width))
            if way.tight:
                left.right = keys.left
        self._header(page, frame, left, way)
        if nav:
            self._places(frame["place"], left, way)
        else:
            self.parts.hide(self.parts.places)
        if keys is not left:
            keys.top = way.whole.top if way.tight else left.top
            left.right = keys.left
        self._list(rows, replace(way.whole, right=way.whole.left + wide, bottom=left.bottom), way)
        self._foot(page.foot, keys, way, beside=keys is not left)
        self._way_back(frame["bar"], left, way)
        self._crown(page, left, way)
        self._panes(page, left, way)
        self.parts.keep((*page.blocks, *rows))

    def _header(self, page: Page, frame: Mapping[str, Any], left: Area, way: Way) -> None:
        block = Header(
            key="header",
            title=page.title,
            back=frame["back"],
            board=frame["board"] if page.chip else "",
            note=frame["note"] if page.chip else "",
            tools=page.tools,
        )
        look = way.look.framed()
        left.top -= self.parts.put(self.parts.header, block, left.width, left.left, left.top, look)

    def _places(self, here: str, left: Area, way: Way) -> None:
        block = Places(key="places", here=here, upright=way.flat)
        whole, look = way.whole, way.look.framed()
        if way.flat:
            self.parts.put(self.parts.places, block, dp(RAIL), whole.left, whole.top, look)
            return
        left.bottom += self.parts.lay(block, whole.width, look).height
        self.parts.put(self.parts.places, block, whole.width, whole.left, left.bottom, look)

    def _foot(self, foot: Foot, left: Area, way: Way, *, beside: bool) -> None:
        """Put the foot at the bottom of the room; `beside` the page it has all of it."""
        blocks = foot_blocks(foot, low=way.low, sentence=way.sentence, choosing=way.choosing)
        shape = _shape(foot, blocks)
        if self._foot_shape is not None and shape != self._foot_shape and blocks:
            self.parts.deafen("foot")
        self._foot_shape = shape
        strips = self.parts.feet(len(blocks))
        if not blocks:
            return
        wide = min(left.width, dp(LINE))
        x = left.left + (left.width - wide) / 2
        whole = way.whole
        most = (
            foot_room(whole.width, whole.height, left.width)
            - (whole.top - left.top)
            - (left.bottom - whole.bottom)
        )
        look = foot_look(blocks, wide, way.look, left.height if beside else most)
        y = left.bottom
        for block, strip in reversed(list(zip(blocks, strips, strict=True))):
            y += self.parts.lay(block, wide, look).height
            self.parts.put(strip, block, wide, x, y, look)
        if not beside:
            left.bottom = y

    def _way_back(self, step: Any, left: Area, way: Way) -> None:  # noqa: ANN401  (what was done, of the World)
        bar = self.parts.bar
        if step is None:
            self.parts.hide(bar)
            return
        block = WayBack(key="way back", text=step.text, word=step.word)
        if bar.block != block:
            self.parts.deafen("bar")
        look = way.look.framed()
        left.bottom += self.parts.lay(block, left.width, look).height
        self.parts.put(bar, block, left.width, left.left, left.bottom, look)

    def _crown(self, page: Page, left: Area, way: Way) -> None:
        crown = self.parts.crown
        if page.crown is None:
            self.parts.hide(crown)
            return
        # It begins where what is under it begins.
        wide = min(left.width, dp(LINE))
        start = 0.0 if _in_two(page, left) else (left.width - wide) / 2
        crown.bleed = (-start, left.width)
        # The crown leaves room for what is under it: its text shrinks to normal at the least.
        look = foot_look((page.crown,), wide, way.look, left.height * (CROWN_FLAT if way.flat else CROWN))
        left.top -= self.parts.put(crown, page.crown, wide, left.left + start, left.top, look)

    def _panes(self, page: Page, left: Area, way: Way) -> None:
        two, entry = _in_two(page, left), page.foot.entry
        first = tuple(one for one in page.blocks if not two or one.key not in page.aside)
        second = tuple(one for one in page.blocks if two and one.key in page.aside)
        room = left.width / 2 if two else left.width
        width = min(room, dp(LINE))
        look = whole_look(first, page.whole, width, way.look, left.height)
        # A task, or the state of the board, is read from farther off where a tablet has the room.
        if two and way.tall >= dp(HIGH) and (page.whole or page.foot.great) and entry is None:
            look = roomy_look(first, width, look, left.height)
        for place, (pane, blocks) in enumerate(zip(self.parts.panes, (first, second), strict=False)):
            if place and not two:
                pane.hide()
                continue
            laids = tuple(self.parts.lay(one, width, look, f"pane {place}") for one in blocks)
            stands = _stands(blocks, laids)
            offset = way.offsets[place] if way.offsets is not None else pane.offset
            if way.offsets is None and pane.width != width:
                offset = _same_place(_stands(pane.blocks, pane.laids), stands, offset)
            pane.opacity = 1
            pane.size = (width, max(0.0, left.height))
            pane.pos = (left.left + place * room + (room - width) / 2, left.bottom)
            whole = sum(laid.height for laid in laids)
            if way.offsets is not None or entry is not None or offset >= whole:
                # Nothing on it is touched, or nothing of it is left: what lies below its end is not shown.
                offset = min(offset, max(0.0, whole - pane.height))
            if way.offsets is None and way.press is not None:
                offset = _anchored(pane, stands, way.press, offset)
                if entry is not None and way.press.block.key == entry.key:
                    offset = _in_sight(pane, stands, entry.key, offset)
            pane.fill(blocks, laids, offset)

    def _list(self, rows: tuple[Block, ...], room: Area, way: Way) -> None:
        """Put the list of the place at the left, scrolled as it was."""
        pane = self.parts.panes[2]
        if not room.width:
            pane.hide()
            return
        pane.opacity, pane.size, pane.pos = 1, (room.width, room.height), (room.left, room.bottom)
        laids = tuple(self.parts.lay(one, room.width, way.look, "pane 2") for one in rows)
        pane.fill(rows, laids, min(pane.offset, max(0.0, sum(laid.height for laid in laids) - pane.height)))


def _in_two(page: Page, left: Area) -> bool:
    return left.width >= dp(TWO_PANES) and bool(page.aside)


def _shape(foot: Foot, blocks: tuple[Block, ...]) -> object:
    """Return what makes touches mean what they do: the areas of a foot, and the words of its bars where they stand alone."""
    areas = tuple((type(block), tuple(block.acts())) for block in blocks if not isinstance(block, Bars))
    bars = [bar for block in blocks if isinstance(block, Bars) for bar in block.bars]
    return areas + tuple("" if foot.entry else bar.text for bar in bars)


Stands = dict[str, tuple[float, float]]
"""Where each block of a pane begins and ends, from the top, by its key."""


def _stands(blocks: tuple[Block, ...], laids: tuple[Laid, ...]) -> Stands:
    edges = accumulate((laid.height for laid in laids), initial=0.0)
    return {block.key: ends for block, ends in zip(blocks, pairwise(edges), strict=True)}


def _same_place(before: Stands, now: Stands, offset: float) -> float:
    """Return the offset with which a pane of another width begins at the same place of the same block."""
    for key, (top, end) in before.items():
        if offset < end:
            first, last = now.get(key, (top, end))
            return first + (offset - top) / (end - top) * (last - first)
    return offset


def _in_sight(pane: Pane, stands: Stands, key: str, offset: float) -> float:
    """Return the offset with which the block of a key is whole over what has risen under it."""
    top, end = stands.get(key, (offset, offset))
    return min(max(offset, end - pane.height), top)


def _anchored(pane: Pane, stands: Stands, press: Press, offset: float) -> float:
    """Return the offset with which the block under the finger stays where it is."""
    key, over = press.block.key, press.view.parent
    inside = isinstance(over, Widget) and over.parent is pane and key in {one.key for one in pane.blocks}
    return stands[key][0] - (pane.top - press.top) if inside and key in stands else offset
