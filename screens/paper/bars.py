"""The bars in the foot: the main act and those beside it."""

from collections.abc import Mapping, Sequence

from kivy.metrics import dp

from logic.frozen import frozen
from screens.acts import Act
from screens.blocks import Block, Button
from screens.paper.scale import BARS, FRAME, LEAD, RADIUS, ROW, SMALL, TEXT
from screens.paper.sheet import Sheet

GREAT = (112, 88)
"""Height of a great main bar in dp: in a high window; in a low one, and where large text leaves the page little room."""
FLAT, FULL = 430, 600
"""Widths in dp of a low window from which all stand beside each other, and from which the words of a great one are large."""
NARROW = 400
"""Width in dp below which large text leaves the page little room."""


@frozen(kw_only=True)
class Bars(Block):
    """The main act and those beside it."""

    main: Button | None
    beside: tuple[Button, ...] = ()
    tall: bool = False
    great: bool = False
    note: str = ""
    reason: str = ""
    """Why several of them are dashed, said once."""

    def acts(self) -> Mapping[str, Act | None]:
        """Return the act of each."""
        return {f"bar {place}": bar.act for place, bar in enumerate(self.bars)}

    @property
    def bars(self) -> tuple[Button, ...]:
        """Return the bars in reading order, the main one last."""
        return (*self.beside, *((self.main,) if self.main else ()))

    def said(self) -> str:
        """Return what is said over them."""
        return " ".join(one for one in (self.note, self.reason) if one)


def bars(block: Bars, sheet: Sheet) -> None:
    """Draw the bars: side by side where their words have room, else the main one below in full width."""
    scarce = sheet.width < dp(NARROW) and sheet.look.scale > FRAME
    sheet.look = sheet.look.capped(BARS)
    edge, gap = dp(8), dp(8)
    room = sheet.width - 2 * edge
    tall = dp(96 if block.tall and not sheet.look.low else 64 if block.tall else 56)
    shown = block.bars
    if not shown:
        return
    # Where the window is low and wide, height is what is scarce.
    flat = sheet.look.low and sheet.width >= dp(FLAT) and _fit_beside(sheet, shown, room)
    beside = flat or (not block.great and len(shown) <= 2 and _fit_beside(sheet, shown, room))  # noqa: PLR2004
    lines = [shown] if beside else [shown[:-1], shown[-1:]]
    if len(lines[0]) == 2 and len(lines) == 2 and not _fit_beside(sheet, lines[0], room):  # noqa: PLR2004
        lines = [shown[:1], shown[1:2], shown[2:]]
    y, first = dp(6), 0
    for said, tone in ((block.note, "trial"), (block.reason, "second")):
        if said:
            y += sheet.write(said, SMALL, edge, y, room, tone=tone, bold=True).height + dp(4)
    for line in lines:
        if not line:
            continue
        # The words of a great one are longest.
        shares = [2 if block.great and bar is block.main and len(line) > 1 else 1 for bar in line]
        each = (room - gap * (len(line) - 1)) / sum(shares)
        widths = [each * share for share in shares]
        least = tall if block.main in line or block.tall else dp(48)
        large = block.great and block.main in line and not scarce and not (flat and sheet.width < dp(FULL))
        role = LEAD if large else TEXT
        if block.great:
            least = dp(GREAT[sheet.look.low or scarce] if block.main in line else ROW)
        high = max(
            least,
            *(
                sheet.fits(_said(bar), role, wide - dp(20), bold=True).height + dp(14)
                for bar, wide in zip(line, widths, strict=True)
            ),
        )
        row_of_bars(sheet, line, edge, y, widths, high, main=block.main, first=first, role=role)
        first += len(line)
        y += high + dp(6)
    sheet.y = y


def _said(bar: Button) -> str:
    return f"{bar.text}\n{bar.why}" if bar.act is None and bar.why else bar.text


def _fit_beside(sheet: Sheet, row: tuple[Button, ...], room: float) -> bool:
    wide = (room - dp(8) * (len(row) - 1)) / len(row) - dp(20)
    longest = max(sheet.longest(bar.text, TEXT, bold=True) for bar in row)
    return longest <= wide and all(len(sheet.fits(bar.text, TEXT, wide, bold=True).lines) <= 3 for bar in row)  # noqa: PLR2004


def row_of_bars(  # noqa: PLR0913  (bars and their place)
    sheet: Sheet,
    row: tuple[Button, ...],
    x: float,
    y: float,
    widths: Sequence[float],
    tall: float,
    *,
    main: Button | None,
    first: int = 0,
    role: float = TEXT,
    small: bool = False,
) -> None:
    """Draw bars of one height beside each other; the main one is filled. Their parts are counted from `first`."""
    for place, (bar, wide) in enumerate(zip(row, widths, strict=True), start=first):
        if bar.act is None:
            look, tone = {"edge": "outline", "dashed": True}, "second"
        elif bar is main:
            look, tone = {"fill": "main"}, "over_main"
        elif bar.bad:
            look, tone = {"fill": "ground", "edge": "bad", "line": dp(3)}, "bad"
        else:
            look, tone = {"fill": "ground", "edge": "text", "line": dp(1.5)}, "text"
        sheet.box(x, y, wide, tall, radius=dp(RADIUS), **look)
        said, role, pad = (bar.text, SMALL, dp(8)) if small else (_said(bar), role, dp(10))
        sheet.write(said, role, x + pad, y, wide - 2 * pad, tall=tall, tone=tone, bold=True, align="center")
        if bar.act is not None:
            sheet.touch(f"bar {place}", x, y, wide, tall, bar.text, on=tone)
        x += wide + dp(8)
