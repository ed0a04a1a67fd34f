"""What stands in the foot while a value is entered: what is typed, the keys for it, or the options."""

from collections.abc import Mapping

from kivy.metrics import dp

from logic.fields import Field
from logic.frozen import frozen
from screens.acts import Act
from screens.acts.entering import Put
from screens.blocks import Block, Button, Entry, Option
from screens.paper.bars import Bars, row_of_bars
from screens.paper.controls import option_key
from screens.paper.scale import LEAD, RADIUS, SMALL, TEXT, TITLE
from screens.paper.sheet import Sheet, inner
from screens.tongue import _

MINUS = "\N{MINUS SIGN}"


KEYS = ("789", "456", "123", ".0")
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
    """Draw the label, and what is typed with its unit; under it what is wrong."""
    x, room = dp(12), sheet.width - dp(24)
    sheet.box(0, 0, sheet.width, dp(2), fill="bad" if block.wrong else "main")
    y = dp(6)
    if block.beside:
        share = _beside_typed(block, sheet, room)
        room -= share + dp(8)
    if block.sentence:
        said_room = sheet.width - dp(24)
        y += sheet.write(
            block.sentence, TEXT, x, y, said_room, tone="bad" if block.wrong else "second", bold=block.wrong
        ).height + dp(2)
    shown = block.text or "–"
    # A unit of one's own, or a print, stands as it is typed.
    bare = not block.text or (
        block.text.strip()[-1:] in "0123456789.," and not any(map(str.isalpha, block.text))
    )
    unit = _(block.unit) if bare else ""
    value = f"{shown} {unit}".strip()
    roles = (LEAD, TEXT, SMALL) if block.beside else (TITLE,)
    role = next((one for one in roles if sheet.wide(value, one, bold=True) <= room), roles[0])
    wide = sheet.wide(value, role, bold=True)
    if wide > room and block.text:
        # The number is what was typed: it goes before its unit.
        value = shown
    label = sheet.wide(block.label, TEXT)
    if block.listed:
        told = sheet.fits(block.label, TEXT, room)
        low = y + max(0.0, (dp(48) - told.height) / 2 if block.beside else 0.0)
        bottom = low + sheet.write(block.label, TEXT, x, low, room).height
    elif label + wide + dp(12) <= room and not block.beside:
        tall = sheet.line(TITLE, bold=True)
        sheet.write(block.label, TEXT, x, y + (tall - sheet.line(TEXT)) * 0.62, label + 1, tone="second")
        sheet.write(
            value, role, x + label + dp(12), y, room - label - dp(12), bold=True, align="right", one=True
        )
        bottom = y + tall
    else:
        bottom = y + sheet.write(block.label, SMALL, x, y, room, tone="second", one=True).height
        bottom += sheet.write(value, role, x, bottom, room, bold=True, one=True).height
    if block.beside:
        wide = (share - dp(8) * (len(block.beside) - 1)) / len(block.beside)
        texts = [sheet.fits(bar.text, SMALL, wide - dp(16), bold=True).height for bar in block.beside]
        tall = max(dp(48), bottom - y, max(texts) + dp(8))
        widths = [wide] * len(block.beside)
        row_of_bars(sheet, block.beside, x + room + dp(8), y, widths, tall, len(widths) - 1, small=True)
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


def keys(block: Keys, sheet: Sheet) -> None:
    """Draw four rows of four keys, in a short window three of five: digits left, at the right delete, unit, minus or clear."""
    sheet.look = sheet.look.framed()
    if block.choosing:
        _cells(
            sheet,
            block,
            [
                [("unit " + unit, unit) for unit in block.units[row : row + 3]]
                for row in range(0, len(block.units), 3)
            ],
        )
        return
    inch = block.unit == "in"
    side = [DELETE, UNIT if block.unit else CLEAR, CLEAR if block.unit else "", ""]
    last: list[tuple[str, str]] = [(block.mark, block.mark), ("0", "0")]
    last += [("/", "/"), (" ", _("Space"))] if inch else [(MINUS, MINUS)] if block.signed else []
    signs = block.signs.split() if " " in block.signs else block.signs
    last += [(sign, sign) for sign in signs]
    rows = []
    if sheet.look.short and len(last) <= MOST_BELOW:
        mark, nought, *others = last
        others += [("", "")] * (2 - len(others))
        ends = ([(DELETE, DELETE), (side[1], side[1])], [mark, (side[2], side[2])], [nought, *others])
        _cells(
            sheet,
            block,
            [[*zip(digits, digits, strict=True), *end] for digits, end in zip(KEYS, ends, strict=False)],
        )
        return
    for digits, word in zip(KEYS[:3], side, strict=False):
        rows.append([*((digit, digit) for digit in digits), (word, word)])
    while len(last) < 4:  # noqa: PLR2004  (four columns)
        last.append(("", ""))
    rows.append(last)
    _cells(sheet, block, rows)


def _cells(sheet: Sheet, block: Keys, rows: list[list[tuple[str, str]]]) -> None:
    gap, edge = dp(4), dp(8)
    # Four columns of digits, whatever signs share the last row.
    columns = max(len(row) for row in rows[:-1] or rows)
    room = sheet.width - 2 * edge
    for line, row in enumerate(rows):
        live = [cell for cell in row if cell[0]]
        # The last row shares its width: the nought is wide.
        shared = line == len(rows) - 1 and (len(live) < len(row) or len(row) > columns)
        each = room / len(live) if shared else room / columns
        if columns == SHORT_ROW and len(live) <= columns:
            # Units want the room of their words; where there is none the nought or the mark is wide.
            each = room * DIGIT
        x, y = edge, line * dp(block.tall)
        for place, (part, letter) in enumerate(live):
            if place:
                x += each
            if columns == SHORT_ROW and place == len(live) - 1:
                each = edge + room - x
            # What clears stands over the empty place below it.
            below = rows[line + 1] if line + 2 < len(rows) else ()
            tall = dp(block.tall) * (
                2 if part == CLEAR and below and not below[-1][0] and columns != SHORT_ROW else 1
            )
            sheet.box(
                x + gap / 2,
                y + gap / 2,
                each - gap,
                tall - gap,
                fill="key",
                edge="outline",
                line=dp(1),
                radius=dp(RADIUS),
            )
            name = letter
            if part == DELETE:
                sheet.icon("delete", x + (each - dp(28)) / 2, y + (tall - dp(28)) / 2, dp(28))
                name = _("Delete")
            else:
                role = (
                    TITLE if part in "0123456789.,-/" + MINUS else LEAD if part.startswith("unit") else TEXT
                )
                text = _(block.unit) if part == UNIT else _("Clear") if part == CLEAR else letter
                name = _("Unit {unit}").format(unit=text) if part == UNIT else text
                fitted = sheet.fits(text, role, each - dp(12), bold=True)
                mark = dp(17) if part == UNIT and len(block.units) > 1 else 0
                pad = dp(3 if mark else 6)
                sheet.write(
                    text,
                    role,
                    x + pad,
                    y + (tall - fitted.height) / 2,
                    each - 2 * pad - mark,
                    bold=True,
                    align="center",
                )
                if mark:
                    sheet.icon("open", x + each - dp(20), y + (tall - dp(18)) / 2, dp(18))
            if part != UNIT or len(block.units) > 1:
                sheet.touch(f"key {part}", x, y, each, tall, name)
    sheet.y = len(rows) * dp(block.tall) + dp(2)


def options(block: Options, sheet: Sheet) -> None:
    """Draw the options of a choice."""
    x, room = inner(sheet)
    gap = dp(4 if sheet.look.short else 6)
    y = gap
    count = len(block.field.options)
    columns = 2 if count > 3 or sheet.look.low else 1  # noqa: PLR2004
    longest = max(sheet.longest(one.label, TEXT, bold=True) for one in block.field.options)
    if longest + dp(44) > room / 2 - gap:
        columns = 1
    wide = (room - gap * (columns - 1)) / columns
    for start in range(0, count, columns):
        row = block.field.options[start : start + columns]
        texts = [sheet.fits(one.label, TEXT, wide - dp(36), bold=True) for one in row]
        tall = max(dp(48), *(text.height + dp(12) for text in texts))
        for place, one in enumerate(row):
            option = Option(one.label, Act(), one.key == block.chosen)
            part = f"option {start + place}"
            option_key(sheet, option, part, x + place * (wide + gap), y, wide, tall)
        y += tall + gap
    sheet.y = y


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
