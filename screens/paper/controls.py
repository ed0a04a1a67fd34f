"""How what is tried and written on a page is laid out: steppers, choices and fields of text."""

from collections.abc import Sequence
from math import ceil

from kivy.metrics import dp

from screens import blocks as b
from screens.paper.scale import LEAD, RADIUS, ROW, SMALL, TEXT
from screens.paper.sheet import Sheet, inner
from screens.tongue import _

SHORT = 12
"""Letters up to which options stand in one row."""


def _labelled(label: str, sheet: Sheet) -> tuple[float, float, float]:
    """Write what a control is called; return its left edge, where it begins under the label, and its room."""
    x, room = inner(sheet)
    return x, dp(8) + sheet.write(label, TEXT, x, dp(6), room, tone="second").height, room


def stepper(block: b.Stepper, sheet: Sheet) -> None:
    """Draw a label, and a value between two keys; the box of the value has one width."""
    x, y, room = _labelled(block.label, sheet)
    key, gap = dp(72), dp(6)
    middle = room - 2 * (key + gap)
    words = middle - dp(12)
    # A number keeps its unit beside it, in smaller letters where it must.
    roles = (LEAD, TEXT, SMALL)
    role = next((one for one in roles if sheet.wide(block.value, one, bold=True) <= words), LEAD)
    tall = max(dp(ROW), sheet.fits(block.value, role, words, bold=True).height + dp(12))
    side = sheet.look.framed().size(LEAD) * 1.3
    for part, icon, left, name, act in (
        ("less", "minus", x, _("one less"), block.less),
        ("more", "plus", x + room - key, _("one more"), block.more),
    ):
        live = act is not None
        look = {"fill": "key" if live else "", "edge": "outline", "line": dp(1), "dashed": not live}
        sheet.box(left, y, key, tall, radius=dp(RADIUS), **look)
        sheet.icon(icon, left + (key - side) / 2, y, side, "text" if live else "second", tall=tall)
        if live:
            sheet.touch(part, left, y, key, tall, f"{block.label}, {name}", holds=True)
    left = x + key + gap
    tone, edge, line = ("trial", "trial", dp(3)) if block.trial else ("text", "outline", dp(1))
    sheet.box(left, y, middle, tall, edge=edge, line=line)
    sheet.write(block.value, role, left + dp(6), y, words, tall=tall, tone=tone, bold=True, align="center")
    if block.act is not None:
        sheet.touch("act", left, y, middle, tall, block.label)
    y += tall
    y += sheet.write(block.note, SMALL, x, y, room, tone="bad", bold=True).height
    sheet.y = y + dp(6)


def choice(block: b.Choice, sheet: Sheet) -> None:
    """Draw options as keys: short ones in as few rows as there is room for, else two to a row, else each in its own."""
    _x, y, room = _labelled(block.label, sheet)
    count, gap = len(block.options), dp(6)
    role, tick = (SMALL, dp(16)) if block.small else (TEXT, dp(20))
    beside = dp(12) + tick
    longest = max(sheet.longest(one.text, role, bold=True) for one in block.options)
    least = max(longest, dp(48) - dp(16)) + beside
    short = all(len(one.text) <= SHORT for one in block.options)
    counts = range(min(count, 5 if short else 2), 1, -1)
    most = next((one for one in counts if least <= (room - gap * (one - 1)) / one), 1)
    # As many to a row as make as few rows, shared evenly.
    columns = ceil(count / ceil(count / most))
    option_keys(sheet, block.options, y, columns, gap, role=role, tick=tick, beside=beside, air=dp(14))


def option_keys(  # noqa: PLR0913  (keys and how they stand)
    sheet: Sheet,
    options: Sequence[b.Option],
    y: float,
    columns: int,
    gap: float,
    *,
    beside: float,
    air: float,
    role: int = TEXT,
    tick: float = 20.0,
) -> None:
    """Draw options in rows, those of a row of one height: `beside` and `air` are kept free round their words."""
    x, room = inner(sheet)
    wide = (room - gap * (columns - 1)) / columns
    for start in range(0, len(options), columns):
        row = options[start : start + columns]
        # Room is kept for bold words beside a tick, which may take a line more than those of an option that is not chosen.
        texts = [sheet.fits(one.text, role, wide - beside, bold=True).height for one in row]
        tall = max(dp(48), max(texts) + air)
        for place, one in enumerate(row):
            at = (x + place * (wide + gap), y, wide, tall)
            _option(sheet, one, f"option {start + place}", at, role, tick)
        y += tall + gap
    sheet.y = y


def _option(  # noqa: PLR0913  (a key with its place)
    sheet: Sheet, one: b.Option, part: str, at: tuple[float, float, float, float], role: int, tick: float
) -> None:
    """Draw one option: the chosen one has a tick, a thick frame and bold words."""
    left, y, wide, tall = at
    fill, edge, line = ("tint", "main", dp(3)) if one.chosen else ("ground", "outline", dp(1))
    sheet.box(*at, radius=dp(RADIUS), fill=fill, edge=edge, line=line, dashed=one.act is None)
    before = dp(6)
    if one.chosen:
        sheet.icon("tick", left + before, y, tick, "main", tall=tall)
        before += tick
    room = wide - dp(6) - before
    sheet.write(one.text, role, left + before, y, room, tall=tall, bold=one.chosen, align="center")
    if one.act is not None:
        sheet.touch(part, *at, one.text)


def text_field(block: b.Field, sheet: Sheet) -> None:
    """Draw a label and the text in its frame."""
    x, y, room = _labelled(block.label, sheet)
    shown = block.text or block.hint
    side = sheet.look.size(LEAD) * 1.1
    wide = room - dp(26) - side
    tall = max(dp(ROW), sheet.fits(shown or " ", LEAD, wide).height + dp(20))
    sheet.box(x, y, room, tall, fill="panel", edge="outline", line=dp(1), radius=dp(RADIUS))
    sheet.write(shown, LEAD, x + dp(10), y, wide, tall=tall, tone="text" if block.text else "second")
    sheet.icon("edit", x + room - dp(8) - side, y, side, "second", tall=tall)
    sheet.touch("field", x, y, room, tall, block.label)
    sheet.y = y + tall + dp(6)
