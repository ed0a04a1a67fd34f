"""How rows are laid out: figures, values that can be changed, what opens something, columns and folds."""

from typing import Any

from kivy.metrics import dp

from screens import blocks as b
from screens.paper.scale import FRAME, LEAD, RADIUS, ROW, SMALL, TEXT, TOUCH
from screens.paper.sheet import Drawing, Sheet, inner
from screens.pictures.strokes import Point

SMALL_DRAWING = 108
"""Width of the drawing at the end of a row, in dp; it is a third as high."""
STATES = ("tick", "cross", "ticked", "unticked", "too little", "too much")
"""Icons that say how it stands; the others say where a row leads, each on its tile."""
Piece = tuple[str, float, dict[str, Any]]
"""A text of a row, its size, and its tone and weight."""
NARROW, SCARCE = 400, 1.5
"""Width in dp below which, and text scale above which, titles of rows give way to more rows."""


def _stands_beside(sheet: Sheet, label: str, role: float, beside: float, room: float) -> bool:
    """Tell whether a label has room beside its number. As a tall column there it stands over it: that is hardly higher."""
    if beside < max(sheet.longest(label, role), room * 0.34):
        return False
    lines = len(sheet.fits(label, role, beside).lines)
    return lines <= 2 or lines == len(sheet.fits(label, role, room).lines)  # noqa: PLR2004


def _pair(  # noqa: PLR0913  (what stands in a row, beside or under each other)
    sheet: Sheet,
    left: str,
    right: str,
    under: str,
    change: str,
    *,
    icon: str = "",
    grey: bool = False,
    opens: str = "",
    bad: bool = False,
    reserve: bool = False,
    big: bool = False,
    trial: bool = False,
    least: float = 0.0,
) -> None:
    """Draw a row: words left, a value right where there is room for both, else under each other."""
    x, room = inner(sheet)
    # The largest text on a narrow phone: more rows are in sight in smaller titles without the sign of where they lead.
    scarce = big and sheet.width < dp(NARROW) and sheet.look.scale > SCARCE
    icon = "" if scarce and not bad and icon not in STATES else icon
    role = LEAD if big and not scarce else TEXT
    # A row that is bad as a whole has no detail to say so.
    tone = "second" if grey else "bad" if bad and not under else "text"
    mark = sheet.look.framed().size(LEAD) * 1.1
    # With large text the words need the room of the tile.
    tile = mark + (dp(14) if sheet.look.scale <= FRAME else 0.0)
    start, pad = x + (tile + dp(12) if icon else 0.0), dp(8)
    end = x + room - (mark if opens else 0.0)
    pieces: tuple[Piece, ...] = (
        (left, role, {"tone": tone}),
        (right, LEAD, {"tone": "trial" if trial else tone, "bold": True}),
        (under, SMALL, {"tone": "bad" if bad else "second", "bold": bad}),
        (change, SMALL, {"tone": "trial", "bold": True}),
    )
    wide = max(sheet.wide(right, LEAD, bold=True), sheet.wide(change, SMALL, bold=True))
    beside = end - start - wide - (dp(12) if right else 0.0)
    y, middle = pad, 0.0
    changed = sheet.line(SMALL, bold=True) if change or reserve else 0.0
    if not right or _stands_beside(sheet, left, role, beside, end - start):
        y, middle = _beside(sheet, pieces, (start, end), (beside, wide), y, changed)
    else:
        for text, size, look in pieces:
            y += sheet.write(text, size, start, y, end - start, **look).height
        y += changed if not change else 0.0
    sheet.y = max(dp(ROW), y + pad, least)
    spare = (sheet.y - (y + pad)) / 2
    if spare > 0:
        middle += spare if middle else 0.0
        sheet.shift(spare)
    # Its signs stand beside the value, and where that has no line of its own in the middle of the row.
    top = (middle or sheet.y / 2) - mark / 2
    if icon:
        row_icon(sheet, icon, x, top, mark, tile, tone)
    if opens:
        sheet.icon(opens, end + dp(2), top, mark, tone="second")
    sheet.box(x, sheet.y - dp(1), room, dp(1), fill="hair")


def _beside(  # noqa: PLR0913  (pieces and their place)
    sheet: Sheet, pieces: tuple[Piece, ...], ends: Point, rooms: Point, y: float, changed: float
) -> tuple[float, float]:
    """Write title and detail at the left, value and change at the right; return where they end, and the value's middle.

    `rooms` are the widths of the two sides; the height `changed` is kept for a change.
    """
    (left, role, plain), (right, _lead, counted), (under, _small, said), (change, *_, tried) = pieces
    (start, end), (beside, wide) = ends, rooms
    whole, bad = end - start, said["bold"]
    detail = sheet.fits(under, SMALL, beside, bold=bad)
    # A detail that would be squeezed into a column beside the value stands under both.
    squeezed = len(detail.lines) > len(sheet.fits(under, SMALL, whole, bold=bad).lines)
    head = sheet.fits(left, role, beside).height
    words = head + (0.0 if squeezed or not under else detail.height)
    number = sheet.line(LEAD, bold=True) if right else 0.0
    side = number + (0.0 if squeezed else changed)
    tall = max(words, side)
    # A single line stands beside the number, more of them round it; the line of a change keeps its place.
    beside_it = (number - sheet.line(role)) / 2 if number else 0.0
    low = y + ((tall - words) / 2 if words > side else max(0.0, min(beside_it, tall - words)))
    sheet.write(left, role, start, low, beside, **plain)
    if not squeezed:
        sheet.write(under, SMALL, start, low + head, beside, **said)
    low = y + min((tall - number) / 2, tall - side) if words > side else y
    middle = low + number / 2 if right else 0.0
    sheet.write(right, LEAD, end - wide, low, wide + 1, **counted, align="right")
    y += tall
    low += number
    if squeezed:
        low = y + sheet.write(under, SMALL, start, y, whole, **said).height
        y = low + changed
    sheet.write(change, SMALL, end - wide, low, wide + 1, **tried, align="right")
    return y, middle


def row_icon(  # noqa: PLR0913  (an icon with its place)
    sheet: Sheet, icon: str, x: float, top: float, mark: float, tile: float, tone: str
) -> None:
    """Draw the icon at the left of a row, on a tile where there is room for one."""
    bad, pad = tone == "bad", (tile - mark) / 2
    if pad > 0 and icon not in STATES:
        sheet.box(x, top - pad, tile, tile, fill="bad" if bad else "tint", radius=dp(RADIUS))
        sheet.icon(icon, x + pad, top, mark, tone="ground" if bad else "main")
    else:
        sheet.icon(icon, x + pad, top, mark, tone="bad" if bad else "main")


def figure_row(block: b.FigureRow, sheet: Sheet) -> None:
    """Draw a number in its row."""
    number = f"{block.number} {block.unit}".strip()
    opens = "next" if block.act is not None else ""
    _pair(
        sheet,
        block.label,
        number,
        block.detail,
        block.change,
        grey=block.grey,
        opens=opens,
        reserve=block.reserve,
    )
    _touched(block, sheet)


def _touched(block: b.FigureRow | b.Line, sheet: Sheet) -> None:
    """Make all of a row an area to touch, where it does something."""
    if block.act is not None:
        sheet.touch("act", 0, 0, sheet.width, sheet.y, block.said())


def drawn_line(block: b.Line, sheet: Sheet) -> None:
    """Draw title and detail at the left, the small drawing at the right where it leaves the words room."""
    x, room = inner(sheet)
    mark = sheet.look.framed().size(LEAD) * 1.1 if block.act is not None else 0.0
    wide, tall = dp(SMALL_DRAWING), dp(SMALL_DRAWING) / 3
    left = room - mark - wide - dp(8)
    longest = max(sheet.longest(block.title, LEAD), sheet.longest(block.detail, SMALL))
    # The title may take two lines beside it, not three.
    fits = left >= max(longest, sheet.wide(block.title, LEAD) * 0.6)
    if not fits:
        left = room - mark
    y = dp(8)
    y += sheet.write(block.title, LEAD, x, y, left).height
    y += sheet.write(
        block.detail, SMALL, x, y, left, tone="bad" if block.bad else "second", bold=block.bad
    ).height
    sheet.y = max(dp(ROW), y + dp(8))
    if fits and block.strokes is not None:
        at = x + room - mark - wide
        sheet.marks.append(Drawing(at, (sheet.y - tall) / 2, wide, tall, block.strokes, sheet.look.scale))
    if mark:
        sheet.icon("next", x + room - mark + dp(2), 0, mark, tone="second", tall=sheet.y)
    sheet.box(x, sheet.y - dp(1), room, dp(1), fill="hair")


def line(block: b.Line, sheet: Sheet) -> None:
    """Draw a row that opens something, or a value that can be changed."""
    if block.strokes is not None:
        drawn_line(block, sheet)
        _touched(block, sheet)
        return
    # A row with a picture leads somewhere; one without it mostly shows a value that is changed.
    leads = block.leads or block.icon or not block.value
    opens = "" if block.act is None else "next" if leads else "edit"
    room = Sheet(sheet.width, sheet.look)
    if block.room is not None:
        line(block.room, room)
    _pair(
        sheet,
        block.title,
        block.value,
        block.detail,
        "",
        icon=block.icon,
        opens=opens,
        bad=block.bad,
        big=not block.value or bool(block.icon),
        trial=block.trial,
        least=room.y,
    )
    if block.chosen:
        edge = dp(4)
        sheet.box(
            edge, edge, sheet.width - 2 * edge, sheet.y - 2 * edge, edge="main", line=dp(3), radius=dp(RADIUS)
        )
    _touched(block, sheet)


def columns(block: b.Columns, sheet: Sheet) -> None:
    """Draw numbers in columns under their label, under each other where their words have no room beside each other."""
    x, room = inner(sheet)
    role = TEXT if block.head else LEAD
    tone = "second" if block.grey else "text"
    y = dp(8)
    y += sheet.write(block.label, TEXT, x, y, room, tone="second").height
    count, tick = len(block.cells), 0.0 if block.head else sheet.look.size(TEXT) * 1.2
    each = room / count
    longest = max(sheet.longest(cell.text, role, bold=True) for cell in block.cells)
    gap = dp(6)
    beside = longest + gap + tick <= each - dp(8)
    wide = each if beside else room
    words = wide - tick - gap - dp(8)
    tall = max(
        sheet.fits(cell.text, role, words, bold=block.head or cell.better).height for cell in block.cells
    )
    tall = max(tall, 0.0 if block.head else dp(TOUCH) - dp(8))
    for place, cell in enumerate(block.cells):
        left = x + place * each if beside else x
        bold = block.head or cell.better
        text = sheet.write(cell.text, role, left, y, words, tall=tall, tone=tone, bold=bold)
        if cell.better:
            # Behind the number, so that all numbers of a column begin at one line.
            sheet.icon("tick", left + text.width + gap, y, tick, tone="good", tall=tall)
        if cell.act is not None:
            name = ", ".join(part for part in (block.label, cell.text) if part)
            sheet.touch(f"cell {place}", left, y - dp(4), wide, tall + dp(8), name)
        if not beside:
            y += tall + dp(8)
    y += tall if beside else 0.0
    # What is said of the last against the others stands under it.
    y += sheet.write(block.detail, SMALL, left, y, wide, tone="trial", bold=True).height
    sheet.y = y + dp(8)
    sheet.box(x, sheet.y - dp(1), room, dp(2 if block.head else 1), fill="text" if block.head else "hair")


def fold(block: b.Fold, sheet: Sheet) -> None:
    """Draw a heading with the sign that opens it."""
    _pair(sheet, block.title, "", block.note, "", big=True, opens="shut" if block.open else "open")
    sheet.touch("act", 0, 0, sheet.width, sheet.y, block.title)
