"""How what is tried and written on a page is laid out: steppers, choices and fields of text."""

from math import ceil

from kivy.metrics import dp

from screens import blocks as b
from screens.paper.scale import LEAD, RADIUS, ROW, SMALL, TEXT
from screens.paper.sheet import Sheet, inner
from screens.tongue import _

SHORT = 12
"""Letters up to which options stand in one row."""


def stepper(block: b.Stepper, sheet: Sheet) -> None:
    """Draw a label, and a value between two keys; the box of the value has one width."""
    x, room = inner(sheet)
    y = dp(6)
    y += sheet.write(block.label, TEXT, x, y, room, tone="second").height + dp(2)
    key, gap = dp(72), dp(6)
    middle = room - 2 * (key + gap)
    # A number keeps its unit beside it, in smaller letters where it must.
    roles = (LEAD, TEXT, SMALL)
    role = next((one for one in roles if sheet.wide(block.value, one, bold=True) <= middle - dp(12)), LEAD)
    value = sheet.fits(block.value, role, middle - dp(12), bold=True)
    tall = max(dp(ROW), value.height + dp(12))
    for part, icon, left, name, act in (
        ("less", "minus", x, _("one less"), block.less),
        ("more", "plus", x + room - key, _("one more"), block.more),
    ):
        live = act is not None
        fill = "key" if live else ""
        sheet.box(
            left, y, key, tall, radius=dp(RADIUS), line=dp(1), fill=fill, edge="outline", dashed=not live
        )
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
        role,
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
    """Draw options as keys: short ones in as few rows as there is room for, else two to a row, else each in its own."""
    x, room = inner(sheet)
    y = dp(6)
    y += sheet.write(block.label, TEXT, x, y, room, tone="second").height + dp(2)
    count, gap = len(block.options), dp(6)
    role, tick = (SMALL, dp(16)) if block.small else (TEXT, dp(20))
    beside = dp(12) + tick
    longest = max(sheet.longest(one.text, role, bold=True) for one in block.options)

    def fits(columns: int) -> bool:
        wide: float = (room - gap * (columns - 1)) / columns
        return max(longest, dp(48) - dp(16)) + beside <= wide

    short = all(len(one.text) <= SHORT for one in block.options)
    most = next((one for one in range(min(count, 5 if short else 2), 1, -1) if fits(one)), 1)
    # As many to a row as make as few rows, shared evenly.
    columns = ceil(count / ceil(count / most))
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
    look = (
        {"fill": "tint", "edge": "main", "line": dp(3)}
        if one.chosen
        else {"fill": "ground", "edge": "outline", "line": dp(1)}
    )
    if one.act is None:
        look["dashed"] = True
    sheet.box(left, y, wide, tall, radius=dp(RADIUS), **look)
    if one.chosen:
        sheet.icon("tick", left + dp(6), y + (tall - tick) / 2, tick, "main")
    before = dp(6) + (tick if one.chosen else 0.0)
    room = wide - dp(6) - before
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
    high = sheet.fits(shown or " ", LEAD, wide).height
    tall = max(dp(ROW), high + dp(20))
    sheet.box(x, y, room, tall, fill="panel", edge="outline", line=dp(1), radius=dp(RADIUS))
    low = y + (tall - high) / 2
    sheet.write(shown, LEAD, x + dp(10), low, wide, tone="text" if block.text else "second")
    sheet.icon("edit", x + room - dp(8) - side, y + (tall - side) / 2, side, "second")
    sheet.touch("field", x, y, room, tall, block.label)
    sheet.y = y + tall + dp(6)
