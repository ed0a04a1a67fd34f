"""What stands around a page's blocks: header, places, and the bar that offers the way back."""

from collections.abc import Mapping
from dataclasses import replace

from kivy.metrics import dp

from logic.frozen import frozen
from screens.acts import Act, Back, Dismiss, Go, Place, Undo
from screens.blocks import Block, Button
from screens.paper.scale import LEAD, RADIUS, SMALL, TEXT
from screens.paper.sheet import Sheet, touchable
from screens.tongue import _

PLACES = (("ride", _("Ride")), ("bench", _("Bench")), ("numbers", _("Numbers")), ("log", _("Log")))
EDGE_BACK = 16
CHIP = 36
"""Height of the board's chip in dp; it is touched over the height of the header."""


@frozen(kw_only=True)
class Header(Block):
    """Back and title, the board on the homes, and tools of the page as icons."""

    title: str
    back: bool = True
    board: str = ""
    note: str = ""
    tools: tuple[Button, ...] = ()

    def acts(self) -> Mapping[str, Act | None]:
        """Return what each icon does."""
        tools = {f"tool {place}": tool.act for place, tool in enumerate(self.tools)}
        return {"back": Back(), "board": Go("board"), **tools}


@frozen(kw_only=True)
class Places(Block):
    """The four places, in a row or, where the window is low and wide, in a column."""

    here: str
    upright: bool = False

    def acts(self) -> Mapping[str, Act | None]:
        """Return the way to each."""
        return {name: Place(name) for name, _text in PLACES}


@frozen(kw_only=True)
class WayBack(Block):
    """What was done, and the way back."""

    text: str
    word: str

    def acts(self) -> Mapping[str, Act | None]:
        """Return the way back and the way on."""
        return {"undo": Undo(), "dismiss": Dismiss()}


def header(block: Header, sheet: Sheet) -> None:
    """Draw back, one line of title, and icons at the right."""
    tall = max(dp(48), sheet.line(LEAD, bold=True) + dp(8))
    x, end = dp(EDGE_BACK), sheet.width - dp(4)
    if block.back:
        sheet.icon("back", dp(12), 0, dp(26), tall=tall)
        sheet.touch("back", 0, 0, dp(52), tall, _("Back"))
        x = dp(52)
    for place, tool in reversed(list(enumerate(block.tools))):
        end -= dp(52)
        sheet.icon(tool.icon, end + dp(13), 0, dp(26), "main" if tool.act else "second", tall=tall)
        if tool.act is not None:
            sheet.touch(f"tool {place}", end, 0, dp(52), tall, tool.text)
    if block.board:
        end = chip(block, sheet, x, end, tall)
    room = end - x - dp(6)
    # A long title is smaller, then on two lines, before its middle is left out.
    roles = (role for role in (LEAD, TEXT, SMALL) if sheet.wide(block.title, role, bold=True) <= room)
    role, two = next(roles, 0), sheet.fits(block.title, SMALL, room, bold=True)
    while not role and len(two.lines) > 2 and sheet.look.scale > 1.0:  # noqa: PLR2004
        sheet.look = sheet.look.capped(max(1.0, sheet.look.scale - 0.1))
        two = sheet.fits(block.title, SMALL, room, bold=True)
    if not role and len(two.lines) == 2 and two.height <= tall:  # noqa: PLR2004
        sheet.write(block.title, SMALL, x, 0, room, tall=tall, bold=True)
    else:
        sheet.write(block.title, role or SMALL, x, 0, room, tall=tall, bold=True, one=True)
    sheet.y = tall


def chip(block: Header, sheet: Sheet, x: float, end: float, tall: float) -> float:
    """Draw the board's name as a key that opens the boards, its note where there is room; return its left edge."""
    room, sign = (end - x) * 0.66, dp(20)
    ends = dp(14) + sign + dp(8)
    whole = ", ".join(part for part in (block.board, block.note) if part)
    said = whole if sheet.wide(whole, TEXT, bold=True) + ends <= room else block.board
    wide = min(sheet.wide(said, TEXT, bold=True) + ends, room)
    high = max(dp(CHIP), sheet.line(TEXT, bold=True) + dp(8))
    left = end - wide
    sheet.box(left, (tall - high) / 2, wide, high, fill="panel", edge="outline", line=dp(1), radius=high / 2)
    sheet.write(said, TEXT, left + dp(14), 0, wide - ends, tall=tall, bold=True, one=True)
    sheet.icon("open", end - sign - dp(8), 0, sign, tall=tall)
    sheet.touch("board", left, 0, wide, tall, _("Board {name}").format(name=block.board))
    return left


def places(block: Places, sheet: Sheet) -> None:
    """Draw the places as cells of one size, their names in one size; the one that one is in is filled and bold."""
    count, icon = len(PLACES), dp(24)
    wide = sheet.width if block.upright else sheet.width / count
    room = wide - dp(8)
    while sheet.look.scale > 1.0 and any(sheet.wide(name, SMALL, bold=True) > room for _key, name in PLACES):
        sheet.look = replace(sheet.look, scale=max(1.0, sheet.look.scale - 0.05))
    text = sheet.line(SMALL, bold=True)
    tall = max(dp(52), icon + text + dp(8))
    for place, (name, title) in enumerate(PLACES):
        x, y = (0.0, place * (tall + dp(4))) if block.upright else (place * wide, 0.0)
        here = name == block.here
        tone = "over_main" if here else "text"
        if here:
            sheet.box(x + dp(3), y + dp(3), wide - dp(6), tall - dp(6), fill="main", radius=dp(RADIUS))
        top = y + (tall - icon - text) / 2
        sheet.icon(name, x + (wide - icon) / 2, top, icon, tone)
        sheet.write(title, SMALL, x + dp(4), top + icon, room, tone=tone, bold=True, align="center")
        sheet.touch(name, x, y, wide, tall, title, on=tone)
    sheet.y = count * (tall + dp(4)) if block.upright else tall
    if not block.upright:
        sheet.box(0, 0, sheet.width, dp(1), fill="hair")


def way_back(block: WayBack, sheet: Sheet) -> None:
    """Draw what was done and the way back, on the ink of the page turned round."""
    word = sheet.wide(block.word, TEXT, bold=True) + dp(24)
    close = dp(52)
    right = sheet.width - close
    left = right - word
    room = left - dp(20)
    tall = touchable(sheet.fits(block.text, TEXT, room).height + dp(16))
    sheet.box(0, 0, sheet.width, tall, fill="text")
    sheet.write(block.text, TEXT, dp(12), 0, room, tall=tall, tone="ground")
    sheet.box(left, dp(5), word, tall - dp(10), edge="ground", line=dp(1.5), radius=dp(RADIUS))
    sheet.write(block.word, TEXT, left, 0, word, tall=tall, tone="ground", bold=True, align="center")
    sheet.touch("undo", left, 0, word, tall, block.word, on="ground")
    sheet.icon("cross", right + dp(14), 0, dp(24), "ground", tall=tall)
    sheet.touch("dismiss", right, 0, close, tall, _("Close this"), on="ground")
    sheet.y = tall
