"""How what is only read is laid out: sentences, warnings, pictures, progress and headings."""

from kivy.metrics import dp

from screens import blocks as b
from screens.paper.picture import height_of
from screens.paper.scale import LEAD, SMALL, TEXT, TITLE
from screens.paper.sheet import Drawing, Sheet, inner

ROLES = {"title": TITLE, "lead": LEAD, "text": TEXT, "small": SMALL, "number": 36}


def words(block: b.Words, sheet: Sheet) -> None:
    """Write sentences."""
    x, room = inner(sheet)
    role = ROLES[block.role]
    told = sheet.write(
        block.text, role, x, dp(6), room, tone=block.tone, bold=block.bold or block.role == "title"
    )
    tall = max(told.height, block.reserve * sheet.line(role))
    sheet.y = tall + 2 * dp(6) if tall else 0.0


def notice(block: b.Notice, sheet: Sheet) -> None:
    """Draw the signal word on its colour, the sentence on the panel beside or under it."""
    x, room = inner(sheet)
    word = block.head
    pad = dp(10)
    size = sheet.fits(word, LEAD, room - 2 * pad, bold=True)
    head = size.height + 2 * dp(6)
    text = sheet.fits(block.text, TEXT, room - 2 * pad)
    sheet.box(x, dp(8), room, head + text.height + 2 * pad, fill="panel", edge=block.word, line=dp(2))
    sheet.box(x, dp(8), room, head, fill=block.word)
    side = size.size * 1.1
    sheet.icon("warning", x + pad, dp(8) + (head - side) / 2, side, f"on_{block.word}")
    sheet.write(
        word, LEAD, x + pad + side + dp(8), dp(14), room - 2 * pad - side, tone=f"on_{block.word}", bold=True
    )
    sheet.write(block.text, TEXT, x + pad, dp(8) + head + pad, room - 2 * pad)
    sheet.y = head + text.height + 2 * pad + dp(16)


def picture(block: b.Picture, sheet: Sheet) -> None:
    """Leave room for a drawing: at most half as high as wide, unless its shape asks for more."""
    x, room = inner(sheet)
    tall = height_of(block.strokes, room, height=block.height, text=sheet.look.scale)
    sheet.marks.append(Drawing(x, dp(6), room, tall, block.strokes, sheet.look.scale))
    sheet.y = tall + dp(12)


def progress(block: b.Progress, sheet: Sheet) -> None:
    """Draw a mark for each step, the place behind them; the words are for who hears the page."""
    x, room = inner(sheet)
    count, gap, bar = len(block.states), dp(3), dp(12)
    if block.place:
        wide, bar = sheet.wide(block.place, SMALL, bold=True), sheet.line(SMALL, bold=True)
        sheet.write(block.place, SMALL, x + room - wide, dp(6), wide + 1, bold=True)
        room -= wide + dp(8)
    each = (room - gap * (count - 1)) / count
    looks = {
        "right": {"fill": "good"},
        "noted": {"edge": "bad", "line": dp(2.5)},
        "front": {"edge": "text", "line": dp(3)},
        "open": {"edge": "outline", "line": dp(1)},
    }
    for place, state in enumerate(block.states):
        sheet.box(x + place * (each + gap), dp(6) + (bar - dp(12)) / 2, each, dp(12), **looks[state])
    sheet.y = bar + dp(12)


def section(block: b.Section, sheet: Sheet) -> None:
    """Write a heading with the tooth that marks it, and what all below it share."""
    x, room = inner(sheet)
    tall = sheet.line(LEAD, bold=True)
    sheet.box(x, dp(18) + tall * 0.12, dp(5), tall * 0.76, fill="main")
    y = dp(18)
    y += sheet.write(block.title, LEAD, x + dp(13), y, room - dp(13), bold=True).height
    y += sheet.write(block.note, SMALL, x + dp(13), y, room - dp(13), tone="second").height
    sheet.y = y + dp(6)
