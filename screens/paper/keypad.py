"""What stands in the foot while a value is entered: what is typed, the keys for it, or the options."""

from collections.abc import Mapping

from kivy.metrics import dp

from logic.fields import Field
from logic.frozen import frozen
from logic.units import MINUS
from screens.acts import Act
from screens.acts.entering import Put
from screens.blocks import Block, Button, Entry, Option
from screens.paper.bars import Bars, row_of_bars
from screens.paper.controls import option_keys
from screens.paper.scale import LEAD, RADIUS, SMALL, TEXT, TITLE
from screens.paper.sheet import Sheet, inner
from screens.tongue import _

DIGITS = ("789", "456", "123")
DELETE, CLEAR, UNIT = "delete", "clear", "unit"
SHORT_ROW, DIGIT = 5, 0.178
"""Keys in a row of a short window, and the share of its width that a digit has."""
MOST_BELOW = 4
"""Keys beside the digits 1 to 3 and below: where there are more of them the keypad keeps its four rows."""


@frozen(kw_only=True)
class Typed(Block):
    """What is typed, with its unit, and what is wrong with it; the main act beside it where the window is low."""

    label: str
    text: str
    unit: str
    sentence: str = ""
    wrong: bool = False
    beside: tuple[Button, ...] = ()
    listed: bool = False
    """Whether what is chosen is shown with its tick below: then the label has the room."""

    def acts(self) -> Mapping[str, Act | None]:
        """Return the acts of the bars beside it."""
        return {f"bar {place}": bar.act for place, bar in enumerate(self.beside)}

    def said(self) -> str:
        """Return what is typed."""
        return f"{self.label}, {self.text} {_(self.unit)}, {self.sentence}"


@frozen(kw_only=True)
class Keys(Block):
    """The keypad, or the units while one is chosen. What a key does is the paper's to know."""

    mark: str = "."
    unit: str = ""
    units: tuple[str, ...] = ()
    signed: bool = False
    signs: str = ""
    choosing: bool = False
    tall: float = 56.0


@frozen(kw_only=True)
class Options(Block):
    """The options of a choice that is asked for."""

    of: str
    field: Field
    chosen: str = ""
    keeps: str = "trial"

    def acts(self) -> Mapping[str, Act | None]:
        """Return an act for each."""
        from logic.board import Value  # noqa: PLC0415

        return {
            f"option {place}": Put(self.of, Value(one.key), self.keeps)
            for place, one in enumerate(self.field.options)
        }


def typed(block: Typed, sheet: Sheet) -> None:
    """Draw what is wrong, then the label and what is typed with its unit, the bars beside them."""
    x, room = dp(12), sheet.width - dp(24)
    tone = "bad" if block.wrong else "second"
    sheet.box(0, 0, sheet.width, dp(2), fill="bad" if block.wrong else "main")
    y = dp(6)
    if block.sentence:
        y += sheet.write(block.sentence, TEXT, x, y, room, tone=tone, bold=block.wrong).height + dp(2)
    bars = _beside_typed(block, sheet, room) if block.beside else 0.0
    room -= bars + dp(8) if bars else 0.0
    bottom = _value(block, sheet, x, y, room)
    if bars:
        count = len(block.beside)
        wide = (bars - dp(8) * (count - 1)) / count
        texts = [sheet.fits(bar.text, SMALL, wide - dp(16), bold=True).height for bar in block.beside]
        tall = max(dp(48), bottom - y, max(texts) + dp(8))
        left, main = x + room + dp(8), block.beside[-1]
        row_of_bars(sheet, block.beside, left, y, [wide] * count, tall, main=main, small=True)
        bottom = max(bottom, y + tall)
    sheet.y = bottom + dp(4)


def _beside_typed(block: Typed, sheet: Sheet, room: float) -> float:
    """Return the room of the bars beside what is typed.

    One or two take half of it, more only where their words need it. They give way, down to their longest word, to a label whose
    middle would be left out.
    """
    words = [sheet.wide(bar.text, SMALL, bold=True) + dp(24) for bar in block.beside]
    least = sum(max(sheet.longest(bar.text, SMALL, bold=True) + dp(24), dp(72)) for bar in block.beside)
    share = min(max(room * 0.5, min(sum(words), room * 0.68)), dp(340))
    return max(min(share, room - dp(8) - sheet.wide(block.label, SMALL)), min(least, share))


def _value(block: Typed, sheet: Sheet, x: float, y: float, room: float) -> float:
    """Write the label and what is typed, beside each other where there is room; return how far down they reach."""
    if block.listed:
        tall = sheet.fits(block.label, TEXT, room).height
        low = y + max(0.0, (dp(48) - tall) / 2 if block.beside else 0.0)
        return low + sheet.write(block.label, TEXT, x, low, room).height
    shown = block.text or "–"
    # A unit of one's own, or a print, stands as it is typed.
    bare = not any(map(str.isalpha, block.text)) and shown.strip()[-1:] in "–0123456789.,"
    value = f"{shown} {_(block.unit) if bare else ''}".strip()
    roles = (LEAD, TEXT, SMALL) if block.beside else (TITLE,)
    role = next((one for one in roles if sheet.wide(value, one, bold=True) <= room), roles[0])
    wide = sheet.wide(value, role, bold=True)
    if wide > room and block.text:
        # The number is what was typed: it goes before its unit.
        value = shown
    label = sheet.wide(block.label, TEXT)
    left = x + label + dp(12)
    if not block.beside and left + wide <= x + room:
        tall = sheet.line(TITLE, bold=True)
        sheet.write(block.label, TEXT, x, y + (tall - sheet.line(TEXT)) * 0.62, label + 1, tone="second")
        sheet.write(value, role, left, y, x + room - left, bold=True, align="right", one=True)
        return y + tall
    y += sheet.write(block.label, SMALL, x, y, room, tone="second", one=True).height
    return y + sheet.write(value, role, x, y, room, bold=True, one=True).height


def keys(block: Keys, sheet: Sheet) -> None:
    """Draw four rows of four keys, in a short window three of five: digits left, at the right delete, unit, minus or clear."""
    sheet.look = sheet.look.framed()
    rows = _rows(block, short=sheet.look.short)
    edge, tall = dp(8), dp(block.tall)
    for line, row in enumerate(rows):
        x = edge
        widths = _widths(rows, line, sheet.width - 2 * edge, choosing=block.choosing)
        for part, wide in zip(filter(None, row), widths, strict=True):
            # What clears stands over the empty place below it.
            high = 2 if part == CLEAR and not block.unit and len(row) < SHORT_ROW else 1
            _key(part, block, sheet, (x, line * tall, wide, high * tall))
            x += wide
    sheet.y = len(rows) * tall + dp(2)


def _rows(block: Keys, *, short: bool) -> list[list[str]]:
    """Return the keys row by row, "" where none is."""
    if block.choosing:
        units = [f"{UNIT} {unit}" for unit in block.units]
        return [units[first : first + 3] for first in range(0, len(units), 3)]
    right = [DELETE, UNIT, CLEAR] if block.unit else [DELETE, CLEAR, ""]
    inch = ["/", " "] if block.unit == "in" else [MINUS] if block.signed else []
    last = [block.mark, "0", *inch, *(block.signs.split() if " " in block.signs else block.signs)]
    if short and len(last) <= MOST_BELOW:
        mark, *others = last
        ends = ([DELETE, right[1]], [mark, right[2]], others)
        return [[*digits, *end] for digits, end in zip(DIGITS, ends, strict=True)]
    return [*([*digits, key] for digits, key in zip(DIGITS, right, strict=True)), last]


def _widths(rows: list[list[str]], line: int, room: float, *, choosing: bool) -> list[float]:
    """Return how wide the keys of a row are."""
    count, columns = len([part for part in rows[line] if part]), len(rows[0])
    if columns == SHORT_ROW and count <= columns:
        # Units want the room of their words; where there is none the nought or the mark is wide.
        return [*[room * DIGIT] * (count - 1), room * (1.0 - DIGIT * (count - 1))]
    # The last row shares its width: the nought is wide, and signs may make it one of more keys.
    shared = line == len(rows) - 1 and not choosing
    return [room / (count if shared else columns)] * count


def _key(part: str, block: Keys, sheet: Sheet, at: tuple[float, float, float, float]) -> None:
    """Draw a key, and what it is called."""
    x, y, wide, tall = at
    gap = dp(4)
    look = {"fill": "key", "edge": "outline", "line": dp(1), "radius": dp(RADIUS)}
    sheet.box(x + gap / 2, y + gap / 2, wide - gap, tall - gap, **look)
    words = {DELETE: _("Delete"), CLEAR: _("Clear"), UNIT: _(block.unit), " ": _("Space")}
    name = words.get(part, part.removeprefix(f"{UNIT} "))
    opens = part == UNIT and len(block.units) > 1
    if part == DELETE:
        sheet.icon("delete", x + (wide - dp(28)) / 2, y, dp(28), tall=tall)
    else:
        role = TITLE if part in f"0123456789.,-/{MINUS}" else LEAD if part.startswith(UNIT) else TEXT
        pad, sign = (dp(3), dp(17)) if opens else (dp(6), 0.0)
        room = wide - 2 * pad - sign
        sheet.write(name, role, x + pad, y, room, tall=tall, bold=True, align="center")
    if opens:
        sheet.icon("open", x + wide - dp(20), y, dp(18), tall=tall)
    if part != UNIT or opens:
        sheet.touch(f"key {part}", *at, _("Unit {unit}").format(unit=name) if part == UNIT else name)


def options(block: Options, sheet: Sheet) -> None:
    """Draw the options of a choice."""
    _x, room = inner(sheet)
    gap = dp(4 if sheet.look.short else 6)
    asked = [Option(one.label, Act(), one.key == block.chosen) for one in block.field.options]
    longest = max(sheet.longest(one.text, TEXT, bold=True) for one in asked)
    two = (len(asked) > 3 or sheet.look.low) and longest + dp(44) <= room / 2 - gap  # noqa: PLR2004
    option_keys(sheet, asked, gap, 2 if two else 1, gap, beside=dp(36), air=dp(12))


def entry_blocks(
    entry: Entry, *, low: bool, sentence: str, beside: tuple[Button, ...], choosing: bool
) -> tuple[Block, ...]:
    """Return the blocks that enter a value: what is typed, and the keys for it or the options."""
    if entry.field.kind == "choice":
        return (
            Typed(key="typed", label=entry.label, text=_label(entry), unit="", beside=beside, listed=True),
            Options(key="options", of=entry.key, field=entry.field, chosen=entry.chosen, keeps=entry.keeps),
        )
    wrong = bool(entry.sentence) and sentence == entry.sentence
    return (
        Typed(
            key="typed",
            label=entry.label,
            text=entry.text,
            unit=entry.unit,
            sentence=sentence or entry.read_back,
            wrong=wrong,
            beside=beside,
        ),
        *((Bars(key="offer", main=None, beside=(Button(entry.offer, entry.take),)),) if entry.offer else ()),
        Keys(
            key="keys",
            mark=entry.mark,
            unit=entry.unit,
            units=entry.units,
            signed=entry.signed,
            signs=entry.field.signs,
            choosing=choosing,
            tall=48 if low else 56,
        ),
    )


def _label(entry: Entry) -> str:
    return entry.field.option(entry.chosen).label if entry.chosen else ""
