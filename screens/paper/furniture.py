"""What stands around a page's blocks: header, places, and the bar that offers the way back."""

from collections.abc import Mapping

from kivy.metrics import dp

from logic.frozen import frozen
from screens.acts import Act, Back, Dismiss, Go, Place, Undo
from screens.blocks import Block, Button
from screens.paper.scale import LEAD, SMALL, TEXT
from screens.paper.sheet import Sheet, touchable
from screens.tongue import _

PLACES = (("ride", _("Ride")), ("bench", _("Bench")), ("numbers", _("Numbers")), ("log", _("Log")))
EDGE_BACK = 16


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
        sheet.icon("back", dp(12), (tall - dp(26)) / 2, dp(26))
        sheet.touch("back", 0, 0, dp(52), tall, _("Back"))
        x = dp(52)
    for place, tool in reversed(list(enumerate(block.tools))):
        end -= dp(52)
        sheet.icon(tool.icon, end + dp(13), (tall - dp(26)) / 2, dp(26), "main" if tool.act else "second")
        if tool.act is not None:
            sheet.touch(f"tool {place}", end, 0, dp(52), tall, tool.text)
    if block.board:
        said = ", ".join(part for part in (block.board, block.note) if part)
        room = (end - x) * 0.62
        wide = min(sheet.wide(said, TEXT, bold=True) + dp(28), room)
        end -= wide
        sheet.box(end, dp(3), wide, tall - dp(6), fill="key", edge="outline", line=dp(1.5), radius=dp(6))
        sheet.write(
            said,
            TEXT,
            end + dp(8),
            (tall - sheet.line(TEXT, bold=True)) / 2,
            wide - dp(16),
            bold=True,
            one=True,
        )
        sheet.touch("board", end, 0, wide, tall, _("Board {name}").format(name=block.board))
    room = end - x - dp(6)
    # A long title is smaller, then on two lines, before its middle is left out.
    role = LEAD if sheet.wide(block.title, LEAD, bold=True) <= room else TEXT
    two = sheet.fits(block.title, SMALL, room, bold=True)
    if sheet.wide(block.title, role, bold=True) > room and len(two.lines) == 2 and two.height <= tall:  # noqa: PLR2004
        sheet.write(block.title, SMALL, x, (tall - two.height) / 2, room, bold=True)
    else:
        high = sheet.line(role, bold=True)
        sheet.write(block.title, role, x, (tall - high) / 2, room, bold=True, one=True)
    sheet.y = tall


def places(block: Places, sheet: Sheet) -> None:
    """Draw the places as cells of one size; the one that one is in is filled and bold."""
    count = len(PLACES)
    icon = dp(24)
    low = sheet.look.low and not block.upright
    text = sheet.line(SMALL, bold=True)
    tall = max(dp(52), (0 if low else icon) + text + dp(8))
    for place, (name, title) in enumerate(PLACES):
        wide = sheet.width if block.upright else sheet.width / count
        x, y = (0.0, place * (tall + dp(4))) if block.upright else (place * wide, 0.0)
        here = name == block.here
        tone = "over_main" if here else "text"
        if here:
            sheet.box(x + dp(3), y + dp(3), wide - dp(6), tall - dp(6), fill="main", radius=dp(8))
        if not low:
            sheet.icon(name, x + (wide - icon) / 2, y + (tall - icon - text) / 2, icon, tone)
        foot = y + (tall - icon - text) / 2 + icon if not low else y + (tall - text) / 2
        sheet.write(title, SMALL, x + dp(8), foot, wide - dp(16), tone=tone, bold=True, align="center")
        sheet.touch(name, x, y, wide, tall, title, on=tone)
    sheet.y = count * (tall + dp(4)) if block.upright else tall
    if not block.upright:
        sheet.box(0, 0, sheet.width, dp(1), fill="hair")


def way_back(block: WayBack, sheet: Sheet) -> None:
    """Draw what was done and the way back, on the ink of the page turned round."""
    word = sheet.wide(block.word, TEXT, bold=True) + dp(24)
    close = dp(52)
    room = sheet.width - word - close - dp(12)
    said = sheet.fits(block.text, TEXT, room - dp(8))
    tall = touchable(said.height + dp(16))
    sheet.box(0, 0, sheet.width, tall, fill="text")
    sheet.write(block.text, TEXT, dp(12), (tall - said.height) / 2, room - dp(8), tone="ground")
    sheet.box(dp(12) + room, dp(5), word, tall - dp(10), edge="ground", line=dp(1.5), radius=dp(6))
    sheet.write(
        block.word,
        TEXT,
        dp(12) + room,
        (tall - sheet.line(TEXT, bold=True)) / 2,
        word,
        tone="ground",
        bold=True,
        align="center",
    )
    sheet.touch("undo", dp(12) + room, 0, word, tall, block.word, on="ground")
    sheet.icon("cross", sheet.width - close + dp(14), (tall - dp(24)) / 2, dp(24), "ground")
    sheet.touch("dismiss", sheet.width - close, 0, close, tall, _("Close this"), on="ground")
    sheet.y = tall
