"""How the first answer of a page is laid out: a verdict with its sign, or a number as large as there is room."""

from typing import Any

from kivy.metrics import dp

from logic.units import GAP
from screens import blocks as b
from screens.paper.scale import EDGE, LEAD, NUMBERS, RADIUS, SMALL, TEXT, TITLE
from screens.paper.sheet import Sheet, inner, touchable

TILE = 72
HELD = (80, 132)
"""Least and most size of a number that is held up: a digit is 0.71 of it, so 80 dp make 57 dp or 9 mm."""
FORMS: dict[str, tuple[str, str, dict[str, Any]]] = {
    b.RIGHT: ("tick", "ground", {"fill": "good"}),
    b.WRONG: ("cross", "text", {"fill": "ground", "edge": "bad", "line": 4.0}),
    b.UNSURE: ("question", "text", {"fill": "ground", "edge": "trial", "line": 3.0, "dashed": True}),
    b.PLAIN: ("", "text", {}),
}


def verdict(block: b.Verdict, sheet: Sheet) -> None:
    """Draw a tile with sign and word; told apart by its form, not by its colour. What is no verdict has no frame."""
    icon, tone, look = FORMS[b.PLAIN if block.grey else block.form]
    icon = block.sign if icon and block.sign else icon
    edge = dp(8)
    side = sheet.look.size(TITLE) * 1.25 if icon else 0.0
    x = edge + dp(12) + (side + dp(10) if icon else 0.0) if look else dp(EDGE)
    room = sheet.width - x - (edge + dp(10) if look else dp(EDGE))
    word = sheet.fits(block.word, TITLE, room, bold=True).height
    text = sheet.fits(block.text, TEXT, room).height if block.text else 0.0
    tall = max(dp(TILE), word + max(text, block.lines * sheet.line(TEXT)) + dp(20))
    if look:
        line = dp(look.get("line", 1))
        sheet.box(edge, edge, sheet.width - 2 * edge, tall, radius=dp(RADIUS), **{**look, "line": line})
    # What is less than the tile stands in its middle.
    y = edge + (tall - word - text) / 2
    sheet.write(block.word, TITLE, x, y, room, tone=tone, bold=True)
    sheet.write(block.text, TEXT, x, y + word, room, tone=tone)
    if icon:
        sheet.icon(icon, edge + dp(12), edge, side, tone, tall=tall)
    sheet.y = tall + 2 * edge
    if block.act is not None:
        sheet.touch("act", edge, edge, sheet.width - 2 * edge, tall, block.said(), on=tone)


def held_up(block: b.Figure, sheet: Sheet) -> None:
    """Draw label, number and unit as large as the width lets them be; the unit goes under a number it would make small."""
    x, room = inner(sheet)
    y = dp(8) + sheet.write(block.label, LEAD, x, dp(8), room, bold=True).height
    whole = f"{block.number}{GAP}{block.unit}"
    if sheet.fits(whole, HELD[1], room, bold=True).size >= dp(HELD[0]):
        y += sheet.write(whole, HELD[1], x, y, room, bold=True).height
    else:
        y += sheet.write(block.number, HELD[1], x, y, room, bold=True).height
        y += sheet.write(block.unit, NUMBERS[0], x, y, room, bold=True).height
    sheet.y = y + dp(8)


def figure(block: b.Figure, sheet: Sheet) -> None:
    """Draw label, then the number as large as there is room, the change beside it."""
    if block.held_up:
        held_up(block, sheet)
        return
    x, room = inner(sheet)
    tone = "second" if block.grey else "text"
    y = dp(8)
    y += sheet.write(block.label, TEXT, x, y, room, tone="second").height
    unit = sheet.wide(" " + block.unit, LEAD) if block.unit else 0.0
    sizes = [size for size in NUMBERS if size <= sheet.look.number]
    # A number never stands on two lines: at the largest text it is smaller, or its unit goes under it.
    said = block.number.replace(" ", GAP)
    size = next((one for one in sizes if sheet.wide(said, one, bold=True) + unit <= room), sizes[-1])
    alone = sheet.fits(said, size, room - unit - dp(6), bold=True).size < sheet.look.size(TITLE)
    number = sheet.write(said, size, x, y, room - (0.0 if alone else unit + dp(6)), tone=tone, bold=True)
    under = y + number.height
    if alone:
        under += sheet.write(block.unit, LEAD, x, under, room, tone=tone).height
    else:
        low = under - number.size * 0.24 - sheet.line(LEAD) * 0.79
        sheet.write(block.unit, LEAD, x + number.width + dp(6), low, max(unit, dp(20)), tone=tone)
    after = number.width + unit + dp(20)
    beside = room - after
    told = sheet.fits(block.change or f"+88.8 {block.unit}", TEXT, room, bold=True)
    fits = told.width <= beside and len(told.lines) == 1 and not alone
    if block.change and fits:
        sheet.write(block.change, TEXT, x + after, y, beside, tall=number.height, tone="trial", bold=True)
    if block.detail:
        under += sheet.write(block.detail, SMALL, x, under, room, tone="second").height
    if not fits and (block.change or block.reserve):
        # The line of a change comes last, as in a row: without one there is no gap between number and detail.
        under += (
            sheet.write(block.change, TEXT, x, under, room, tone="trial", bold=True).height or told.height
        )
    sheet.y = under + dp(8)
    if block.act is not None:
        sheet.touch("act", 0, 0, sheet.width, touchable(sheet.y), block.said())
