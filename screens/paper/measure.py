"""How each kind of block is laid out at a width. A new kind of block has one function here, in KINDS."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from kivy.metrics import dp

from logic.units import GAP
from screens import blocks as b
from screens.paper.picture import height_of
from screens.paper.scale import EDGE, LEAD, NUMBERS, SMALL, TEXT, TITLE, TOUCH, Look
from screens.paper.sheet import Drawing, Laid, Sheet, touchable

ROW = 56
TILE = 72
HELD = (80, 132)
"""Least and most size of a number that is held up: a digit is 0.71 of it, so 80 dp make 57 dp or 9 mm."""
SMALL_DRAWING = 108
"""Width of the drawing at the end of a row, in dp; it is a third as high."""
SHORT = 12
"""Letters up to which options stand in one row."""


def measure(block: b.Block, width: float, look: Look) -> Laid:
    """Return a block laid out at a width in pixels."""
    sheet = Sheet(width, look)
    KINDS[type(block)](block, sheet)
    return sheet.done(block.said())


def inner(sheet: Sheet) -> tuple[float, float]:
    """Return the left edge of what stands on a page, and its room."""
    return dp(EDGE), sheet.width - 2 * dp(EDGE)


FORMS: dict[str, tuple[str, str, dict[str, Any]]] = {
    b.RIGHT: ("tick", "ground", {"fill": "good"}),
    b.WRONG: ("cross", "text", {"fill": "ground", "edge": "bad", "line": 4.0}),
    b.UNSURE: ("question", "text", {"fill": "ground", "edge": "trial", "line": 3.0, "dashed": True}),
    b.PLAIN: ("", "text", {"fill": "panel", "edge": "outline", "line": 1.0}),
}


def verdict(block: b.Verdict, sheet: Sheet) -> None:
    """Draw a tile with sign and word; told apart by its form, not by its colour."""
    icon, tone, look = FORMS[b.PLAIN if block.grey else block.form]
    icon = block.sign if icon and block.sign else icon
    edge = dp(8)
    side = sheet.look.size(TITLE) * 1.25 if icon else 0.0
    x = edge + dp(12) + (side + dp(10) if icon else 0.0)
    room = sheet.width - x - edge - dp(10)
    place = len(sheet.marks)
    y = edge + dp(10)
    word = sheet.write(block.word, TITLE, x, y, room, tone=tone, bold=True)
    text = sheet.write(block.text, TEXT, x, y + word.height, room, tone=tone)
    told = max(text.height, block.lines * sheet.line(TEXT))
    tall = max(dp(TILE), word.height + told + 2 * dp(10))
    if word.height + text.height + dp(20) < tall:
        # What is less than the tile stands in its middle.
        shift = (tall - dp(20) - word.height - text.height) / 2
        sheet.marks[place:] = [_moved(mark, shift) for mark in sheet.marks[place:]]
    box = {"radius": dp(6), **look}
    sheet.marks.insert(place, _box(edge, edge, sheet.width - 2 * edge, tall, box))
    if icon:
        sheet.icon(icon, edge + dp(12), edge + (tall - side) / 2, side, tone)
    sheet.y = tall + 2 * edge
    if block.act is not None:
        sheet.touch("act", edge, edge, sheet.width - 2 * edge, tall, block.said())


def _box(x: float, y: float, width: float, height: float, look: dict[str, Any]) -> Any:  # noqa: ANN401
    drawn = Sheet(width, Look())
    drawn.box(x, y, width, height, **{**look, "line": dp(look.get("line", 1.0))})
    return drawn.marks[0]


def _moved(mark: Any, down: float) -> Any:  # noqa: ANN401  (any mark)
    return replace(mark, y=mark.y + down)


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
    size = next((one for one in sizes if sheet.wide(block.number, one, bold=True) + unit <= room), sizes[-1])
    number = sheet.write(block.number, size, x, y, room - unit, tone=tone, bold=True)
    if block.unit:
        low = y + number.height - number.size * 0.24 - sheet.line(LEAD) * 0.79
        sheet.write(block.unit, LEAD, x + number.width + dp(6), low, max(unit, dp(20)), tone=tone)
    after = number.width + unit + dp(20)
    beside = room - after
    told = sheet.fits(block.change or f"+88.8 {block.unit}", TEXT, room, bold=True)
    fits = told.width <= beside and len(told.lines) == 1
    under = y + number.height
    if block.change and fits:
        sheet.write(
            block.change,
            TEXT,
            x + after,
            y + (number.height - told.height) / 2,
            beside,
            tone="trial",
            bold=True,
        )
    elif block.change or (block.reserve and not fits):
        under += (
            sheet.write(block.change, TEXT, x, under, room, tone="trial", bold=True).height or told.height
        )
    if block.detail:
        under += sheet.write(block.detail, SMALL, x, under, room, tone="second").height
    sheet.y = under + dp(8)
    if block.act is not None:
        sheet.touch("act", 0, 0, sheet.width, touchable(sheet.y), block.said())


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
) -> None:
    """Draw a row: words left, a value right where there is room for both, else under each other."""
    x, room = inner(sheet)
    # A row that is bad as a whole has no detail to say so.
    tone = "second" if grey else "bad" if bad and not under else "text"
    mark = sheet.look.framed().size(LEAD) * 1.1
    start, pad = x + (mark + dp(10) if icon else 0.0), dp(8)
    end = x + room - (mark if opens else 0.0)
    role = LEAD if big else TEXT
    wide = max(sheet.wide(right, LEAD, bold=True), sheet.wide(change, SMALL, bold=True))
    beside = end - start - wide - (dp(12) if right else 0.0)
    longest = sheet.longest(left, role)
    y, middle = pad, 0.0
    changed = sheet.line(SMALL, bold=True) if change or reserve else 0.0
    said: dict[str, Any] = {"tone": "bad" if bad else "second", "bold": bad}
    if not right or beside >= max(longest, (end - start) * 0.34):
        # A detail that would be squeezed into a column beside the value stands under both.
        squeezed = len(sheet.fits(under, SMALL, beside, bold=bad).lines) > len(
            sheet.fits(under, SMALL, end - start, bold=bad).lines
        )
        head = sheet.fits(left, role, beside).height
        words = head + (0.0 if squeezed or not under else sheet.fits(under, SMALL, beside, bold=bad).height)
        number = sheet.line(LEAD, bold=True) if right else 0.0
        side = number + (0.0 if squeezed else changed)
        tall = max(words, side)
        # A single line stands beside the number, more of them round it; the line of a change keeps its place.
        beside_it = (number - sheet.line(role)) / 2 if number else 0.0
        low = y + ((tall - words) / 2 if words > side else max(0.0, min(beside_it, tall - words)))
        sheet.write(left, role, start, low, beside, tone=tone)
        if under and not squeezed:
            sheet.write(under, SMALL, start, low + head, beside, **said)
        low = y + min((tall - number) / 2, tall - side) if words > side else y
        middle = low + number / 2 if right else 0.0
        sheet.write(
            right, LEAD, end - wide, low, wide + 1, tone="trial" if trial else tone, bold=True, align="right"
        )
        y += tall
        low += number
        if squeezed:
            low = y + sheet.write(under, SMALL, start, y, end - start, **said).height
            y = low + changed
        sheet.write(change, SMALL, end - wide, low, wide + 1, tone="trial", bold=True, align="right")
    else:
        lines = (
            (left, role, {"tone": tone}),
            (right, LEAD, {"tone": "trial" if trial else tone, "bold": True}),
            (under, SMALL, said),
            (change, SMALL, {"tone": "trial", "bold": True}),
        )
        for text, size, ink in lines:
            y += sheet.write(text, size, start, y, end - start, **ink).height
        y += changed if not change else 0.0
    sheet.y = max(dp(ROW), y + pad)
    spare = (sheet.y - (y + pad)) / 2
    if spare > 0:
        middle += spare if middle else 0.0
        sheet.marks[:] = [_moved(mark_, spare) for mark_ in sheet.marks]
    # Its signs stand beside the value, and where that has no line of its own in the middle of the row.
    top = (middle or sheet.y / 2) - mark / 2
    if icon:
        sheet.icon(icon, x, top, mark, tone="bad" if tone == "bad" else "main")
    if opens:
        sheet.icon(opens, end + dp(2), top, mark, tone="second")
    sheet.box(x, sheet.y - dp(1), room, dp(1), fill="hair")


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
        sheet.icon("next", x + room - mark + dp(2), (sheet.y - mark) / 2, mark, tone="second")
    sheet.box(x, sheet.y - dp(1), room, dp(1), fill="hair")


def line(block: b.Line, sheet: Sheet) -> None:
    """Draw a row that opens something, or a value that can be changed."""
    if block.strokes is not None:
        drawn_line(block, sheet)
        if block.act is not None:
            sheet.touch("act", 0, 0, sheet.width, sheet.y, block.said())
        return
    # A row with a picture leads somewhere; one without it shows a value that is changed.
    opens = "" if block.act is None else "edit" if block.value and not block.icon else "next"
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
    )
    if block.chosen:
        edge = dp(4)
        sheet.box(
            edge, edge, sheet.width - 2 * edge, sheet.y - 2 * edge, edge="main", line=dp(3), radius=dp(6)
        )
    if block.act is not None:
        sheet.touch("act", 0, 0, sheet.width, sheet.y, block.said())


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
    tall = max(
        sheet.fits(cell.text, role, wide - tick - gap - dp(8), bold=block.head or cell.better).height
        for cell in block.cells
    )
    tall = max(tall, 0.0 if block.head else dp(TOUCH) - dp(8))
    for place, cell in enumerate(block.cells):
        left = x + place * each if beside else x
        bold = block.head or cell.better
        text = sheet.fits(cell.text, role, wide - tick - gap - dp(8), bold=bold)
        sheet.write(
            cell.text,
            role,
            left,
            y + (tall - text.height) / 2,
            wide - tick - gap - dp(8),
            tone=tone,
            bold=bold,
        )
        if cell.better:
            # Behind the number, so that all numbers of a column begin at one line.
            sheet.icon("tick", left + text.width + gap, y + (tall - tick) / 2, tick, tone="good")
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
    word = block.word.upper()
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


def stepper(block: b.Stepper, sheet: Sheet) -> None:
    """Draw a label, and a value between two keys; the box of the value has one width."""
    x, room = inner(sheet)
    y = dp(6)
    y += sheet.write(block.label, TEXT, x, y, room, tone="second").height + dp(2)
    key, gap = dp(72), dp(6)
    middle = room - 2 * (key + gap)
    value = sheet.fits(block.value, LEAD, middle - dp(12), bold=True)
    tall = max(dp(ROW), value.height + dp(12))
    for part, icon, left, name, act in (
        ("less", "minus", x, "one less", block.less),
        ("more", "plus", x + room - key, "one more", block.more),
    ):
        live = act is not None
        fill = "key" if live else ""
        sheet.box(left, y, key, tall, radius=dp(6), line=dp(1.5), fill=fill, edge="outline", dashed=not live)
        side = sheet.look.framed().size(LEAD) * 1.3
        sheet.icon(icon, left + (key - side) / 2, y + (tall - side) / 2, side, "text" if live else "second")
        if live:
            sheet.touch(part, left, y, key, tall, f"{block.label}, {name}", holds=True)
    left = x + key + gap
    sheet.box(
        left, y, middle, tall, edge="trial" if block.trial else "outline", line=dp(3 if block.trial else 1)
    )
    sheet.write(
        block.value,
        LEAD,
        left + dp(6),
        y + (tall - value.height) / 2,
        middle - dp(12),
        bold=True,
        align="center",
        tone="trial" if block.trial else "text",
    )
    if block.act is not None:
        sheet.touch("act", left, y, middle, tall, block.label)
    y += tall
    y += sheet.write(block.note, SMALL, x, y, room, tone="bad", bold=True).height
    sheet.y = y + dp(6)


def choice(block: b.Choice, sheet: Sheet) -> None:
    """Draw options as keys: short ones in one row, else two to a row, else each in its own."""
    x, room = inner(sheet)
    y = dp(6)
    y += sheet.write(block.label, TEXT, x, y, room, tone="second").height + dp(2)
    count, gap = len(block.options), dp(6)
    role, tick = (SMALL, dp(16)) if block.small else (TEXT, dp(20))
    beside = dp(16 if block.small else 18) + tick
    longest = max(sheet.longest(one.text, role, bold=True) for one in block.options)

    def fits(columns: int) -> bool:
        wide: float = (room - gap * (columns - 1)) / columns
        return max(longest, dp(48) - dp(16)) + beside <= wide

    one_row = all(len(one.text) <= SHORT for one in block.options) and count <= 5  # noqa: PLR2004
    columns = count if one_row and fits(count) else 2 if fits(2) and count > 1 else 1
    wide = (room - gap * (columns - 1)) / columns
    for start in range(0, count, columns):
        row = block.options[start : start + columns]
        texts = [sheet.fits(one.text, role, wide - beside, bold=True) for one in row]
        tall = max(dp(48), *(text.height + dp(14) for text in texts))
        for place, one in enumerate(row):
            left = x + place * (wide + gap)
            option_key(sheet, one, f"option {start + place}", left, y, wide, tall, role=role, tick=tick)
        y += tall + gap
    sheet.y = y


def option_key(  # noqa: PLR0913  (a key with its place)
    sheet: Sheet,
    one: b.Option,
    part: str,
    left: float,
    y: float,
    wide: float,
    tall: float,
    *,
    role: int = TEXT,
    tick: float = 20.0,
) -> None:
    """Draw one option: the chosen one has a tick, a thick frame and bold words."""
    look = {"edge": "main", "line": dp(3)} if one.chosen else {"edge": "outline", "line": dp(1.5)}
    if one.act is None:
        look["dashed"] = True
    sheet.box(left, y, wide, tall, fill="key", radius=dp(6), **look)
    if one.chosen:
        sheet.icon("tick", left + dp(6), y + (tall - tick) / 2, tick, "main")
    before = dp(8) + (tick if one.chosen else 0.0)
    room = wide - dp(8) - before
    # Room is kept for bold words beside a tick, which may take a line more than these.
    height = sheet.fits(one.text, role, room, bold=one.chosen).height
    sheet.write(one.text, role, left + before, y + (tall - height) / 2, room, bold=one.chosen, align="center")
    if one.act is not None:
        sheet.touch(part, left, y, wide, tall, one.text)


def text_field(block: b.Field, sheet: Sheet) -> None:
    """Draw a label and the text in its frame."""
    x, room = inner(sheet)
    y = dp(6)
    y += sheet.write(block.label, TEXT, x, y, room, tone="second").height + dp(2)
    shown = block.text or block.hint
    side = sheet.look.size(LEAD) * 1.1
    wide = room - dp(26) - side
    tall = max(dp(ROW), sheet.fits(shown or " ", LEAD, wide).height + dp(20))
    sheet.box(x, y, room, tall, fill="panel", edge="outline", line=dp(1.5), radius=dp(6))
    sheet.write(shown, LEAD, x + dp(10), y + dp(10), wide, tone="text" if block.text else "second")
    sheet.icon("edit", x + room - dp(8) - side, y + (tall - side) / 2, side, "second")
    sheet.touch("field", x, y, room, tall, block.label)
    sheet.y = y + tall + dp(6)


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


def fold(block: b.Fold, sheet: Sheet) -> None:
    """Draw a heading with the sign that opens it."""
    _pair(sheet, block.title, "", block.note, "", big=True, opens="shut" if block.open else "open")
    sheet.touch("act", 0, 0, sheet.width, sheet.y, block.title)


KINDS: dict[type[b.Block], Callable[[Any, Sheet], None]] = {
    b.Verdict: verdict,
    b.Figure: figure,
    b.FigureRow: figure_row,
    b.Columns: columns,
    b.Line: line,
    b.Words: words,
    b.Notice: notice,
    b.Stepper: stepper,
    b.Choice: choice,
    b.Field: text_field,
    b.Picture: picture,
    b.Progress: progress,
    b.Section: section,
    b.Fold: fold,
}
