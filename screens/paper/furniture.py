"""What stands around a page's blocks: header, places, the bar that offers the way back, what is typed, keys, and the foot."""

from collections.abc import Mapping
from dataclasses import field

from kivy.metrics import dp

from logic.fields import Field
from logic.frozen import frozen
from screens.acts import Act, Back, Dismiss, Go, Place, Put, Undo
from screens.blocks import Block, Button, Entry, Option
from screens.paper.measure import KINDS, ROW, inner, option_key
from screens.paper.scale import LEAD, SMALL, TEXT, TITLE
from screens.paper.sheet import Sheet, touchable
from screens.tongue import _

PLACES = (("ride", _("Ride")), ("bench", _("Bench")), ("numbers", _("Numbers")), ("log", _("Log")))
MINUS = "\N{MINUS SIGN}"


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


@frozen(kw_only=True)
class Typed(Block):
    """What is typed, with its unit, and what is wrong with it; the main act beside it where the window is low."""

    label: str
    text: str
    unit: str
    sentence: str = ""
    wrong: bool = False
    beside: tuple[Button, ...] = ()

    def acts(self) -> Mapping[str, Act | None]:
        """Return the acts of the bars beside it."""
        return {f"bar {place}": bar.act for place, bar in enumerate(self.beside)}

    def said(self) -> str:
        """Return what is typed."""
        return f"{self.label}, {self.text} {self.unit}, {self.sentence}"


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


@frozen(kw_only=True)
class Bars(Block):
    """The main act and those beside it."""

    main: Button | None
    beside: tuple[Button, ...] = ()
    tall: bool = False
    great: bool = False
    first: int = field(default=0)

    def acts(self) -> Mapping[str, Act | None]:
        """Return the act of each."""
        return {f"bar {place}": bar.act for place, bar in enumerate(self.bars)}

    @property
    def bars(self) -> tuple[Button, ...]:
        """Return the bars in reading order, the main one last."""
        return (*self.beside, *((self.main,) if self.main else ()))


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


EDGE_BACK = 16


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


def typed(block: Typed, sheet: Sheet) -> None:
    """Draw the label, and what is typed with its unit; under it what is wrong."""
    x, room = dp(12), sheet.width - dp(24)
    sheet.box(0, 0, sheet.width, dp(2), fill="bad" if block.wrong else "main")
    y = dp(6)
    if block.beside:
        # Two bars take half the room as one does, more only where their words need it: what is asked is read beside them.
        wanted = sum(sheet.wide(bar.text, SMALL, bold=True) + dp(24) for bar in block.beside)
        share = min(max(room * 0.5, min(wanted, room * 0.68)), dp(340))
        room -= share + dp(8)
    if block.sentence:
        said_room = sheet.width - dp(24)
        y += sheet.write(
            block.sentence, TEXT, x, y, said_room, tone="bad" if block.wrong else "second", bold=block.wrong
        ).height + dp(2)
    shown = block.text or "–"
    unit = block.unit if not block.text or block.text.strip()[-1:] in "0123456789.," else ""
    value = f"{shown} {unit}".strip()
    wide = sheet.wide(value, TITLE, bold=True)
    if wide > room and block.text:
        # The number is what was typed: it goes before its unit.
        value = shown
    label = sheet.wide(block.label, TEXT)
    if label + wide + dp(12) <= room and not block.beside:
        tall = sheet.line(TITLE, bold=True)
        sheet.write(block.label, TEXT, x, y + (tall - sheet.line(TEXT)) * 0.62, label + 1, tone="second")
        sheet.write(
            value, TITLE, x + label + dp(12), y, room - label - dp(12), bold=True, align="right", one=True
        )
        bottom = y + tall
    else:
        bottom = y + sheet.write(block.label, SMALL, x, y, room, tone="second", one=True).height
        bottom += sheet.write(
            value, TITLE if not block.beside else LEAD, x, bottom, room, bold=True, one=True
        ).height
    if block.beside:
        wide = (share - dp(8) * (len(block.beside) - 1)) / len(block.beside) - dp(16)
        texts = [sheet.fits(bar.text, SMALL, wide, bold=True).height for bar in block.beside]
        tall = max(dp(48), bottom - y, max(texts) + dp(8))
        _row_of_bars(sheet, block.beside, x + room + dp(8), y, share, tall, len(block.beside) - 1, small=True)
        bottom = max(bottom, y + tall)
    sheet.y = bottom + dp(4)


KEYS = ("789", "456", "123", ".0")
DELETE, CLEAR, UNIT = "delete", "clear", "unit"


def keys(block: Keys, sheet: Sheet) -> None:
    """Draw four columns of four keys: digits left, at the right delete, unit, minus or clear."""
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
    wide, tall = room / columns, dp(block.tall)
    for line, row in enumerate(rows):
        live = [cell for cell in row if cell[0]]
        # The last row shares its width: the nought is wide.
        shared = line == len(rows) - 1 and (len(live) < len(row) or len(row) > columns)
        each = room / len(live) if shared else wide
        for place, (part, letter) in enumerate(live):
            x, y = edge + place * each, line * tall
            sheet.box(
                x + gap / 2,
                y + gap / 2,
                each - gap,
                tall - gap,
                fill="key",
                edge="outline",
                line=dp(1),
                radius=dp(8),
            )
            name = letter
            if part == DELETE:
                sheet.icon("delete", x + (each - dp(28)) / 2, y + (tall - dp(28)) / 2, dp(28))
                name = _("Delete")
            else:
                role = (
                    TITLE
                    if part in "0123456789.," + MINUS + "/"
                    else LEAD
                    if part.startswith("unit")
                    else TEXT
                )
                text = block.unit if part == UNIT else _("Clear") if part == CLEAR else letter
                name = _("Unit {unit}").format(unit=text) if part == UNIT else text
                fitted = sheet.fits(text, role, each - dp(12), bold=True)
                mark = dp(16) if part == UNIT and len(block.units) > 1 else 0
                sheet.write(
                    text,
                    role,
                    x + dp(6),
                    y + (tall - fitted.height) / 2,
                    each - dp(12) - mark,
                    bold=True,
                    align="center",
                )
                if mark:
                    sheet.icon("open", x + each - dp(24), y + (tall - dp(18)) / 2, dp(18))
            if part != UNIT or len(block.units) > 1:
                sheet.touch(f"key {part}", x, y, each, tall, name)
    sheet.y = len(rows) * tall + dp(2)


def options(block: Options, sheet: Sheet) -> None:
    """Draw the options of a choice."""
    x, room = inner(sheet)
    y = dp(6)
    count = len(block.field.options)
    columns = 2 if count > 3 or sheet.look.low else 1  # noqa: PLR2004
    longest = max(sheet.longest(one.label, TEXT, bold=True) for one in block.field.options)
    if longest + dp(44) > room / 2 - dp(6):
        columns = 1
    wide = (room - dp(6) * (columns - 1)) / columns
    for start in range(0, count, columns):
        row = block.field.options[start : start + columns]
        texts = [sheet.fits(one.label, TEXT, wide - dp(36), bold=True) for one in row]
        tall = max(dp(48), *(text.height + dp(12) for text in texts))
        for place, one in enumerate(row):
            option = Option(one.label, Act(), one.key == block.chosen)
            part = f"option {start + place}"
            option_key(sheet, option, part, x + place * (wide + dp(6)), y, wide, tall)
        y += tall + dp(6)
    sheet.y = y


GREAT = (112, 88)
"""Height of a great main bar in dp: in a high window and in a low one."""
FLAT = 600
"""Width in dp from which it stands beside the others in a low window."""


def bars(block: Bars, sheet: Sheet) -> None:
    """Draw the bars: side by side where their words have room, else the main one below in full width."""
    edge, gap = dp(8), dp(8)
    room = sheet.width - 2 * edge
    tall = dp(96 if block.tall and not sheet.look.low else 64 if block.tall else 56)
    shown = block.bars
    if not shown:
        return
    # Where the window is low and wide, height is what is scarce.
    flat = block.great and sheet.look.low and sheet.width >= dp(FLAT) and _fit_beside(sheet, shown, room)
    beside = flat or (not block.great and len(shown) <= 2 and _fit_beside(sheet, shown, room))  # noqa: PLR2004
    lines = [shown] if beside else [shown[:-1], shown[-1:]]
    if len(lines[0]) == 2 and len(lines) == 2 and not _fit_beside(sheet, lines[0], room):  # noqa: PLR2004
        lines = [shown[:1], shown[1:2], shown[2:]]
    y, first = dp(6), 0
    for line in lines:
        if not line:
            continue
        wide = (room - gap * (len(line) - 1)) / len(line)
        least = tall if block.main in line or block.tall else dp(48)
        role = LEAD if block.great and block.main in line else TEXT
        if block.great:
            least = dp(GREAT[sheet.look.low] if block.main in line else ROW)
        high = max(
            least, *(sheet.fits(_said(bar), role, wide - dp(20), bold=True).height + dp(14) for bar in line)
        )
        main = shown.index(block.main) if block.main else -1
        _row_of_bars(sheet, line, edge, y, room, high, main, first, role=role)
        first += len(line)
        y += high + dp(6)
    sheet.y = y


def _said(bar: Button) -> str:
    return f"{bar.text}\n{bar.why}" if bar.act is None and bar.why else bar.text


def _fit_beside(sheet: Sheet, row: tuple[Button, ...], room: float) -> bool:
    wide = (room - dp(8) * (len(row) - 1)) / len(row) - dp(20)
    longest = max(sheet.longest(bar.text, TEXT, bold=True) for bar in row)
    return longest <= wide and all(len(sheet.fits(bar.text, TEXT, wide, bold=True).lines) <= 3 for bar in row)  # noqa: PLR2004


def _row_of_bars(  # noqa: PLR0913  (bars and their place)
    sheet: Sheet,
    row: tuple[Button, ...],
    x: float,
    y: float,
    room: float,
    tall: float,
    main: int,
    first: int = 0,
    *,
    role: float = TEXT,
    small: bool = False,
) -> None:
    gap = dp(8)
    wide = (room - gap * (len(row) - 1)) / len(row)
    for place, bar in enumerate(row):
        left = x + place * (wide + gap)
        if bar.act is None:
            look, tone = {"edge": "outline", "dashed": True}, "second"
        elif first + place == main:
            look, tone = {"fill": "main"}, "over_main"
        elif bar.bad:
            look, tone = {"fill": "ground", "edge": "bad", "line": dp(3)}, "bad"
        else:
            look, tone = {"fill": "ground", "edge": "text", "line": dp(1.5)}, "text"
        sheet.box(left, y, wide, tall, radius=dp(8), **look)
        said, role, pad = (bar.text, SMALL, dp(8)) if small else (_said(bar), role, dp(10))
        fitted = sheet.fits(said, role, wide - 2 * pad, bold=True)
        sheet.write(
            said,
            role,
            left + pad,
            y + (tall - fitted.height) / 2,
            wide - 2 * pad,
            tone=tone,
            bold=True,
            align="center",
        )
        if bar.act is not None:
            sheet.touch(f"bar {first + place}", left, y, wide, tall, bar.text, on=tone)


KINDS |= {
    Header: header,
    Places: places,
    WayBack: way_back,
    Typed: typed,
    Keys: keys,
    Options: options,
    Bars: bars,
}


def entry_blocks(
    entry: Entry, *, low: bool, sentence: str, beside: tuple[Button, ...], choosing: bool
) -> tuple[Block, ...]:
    """Return the blocks that enter a value: what is typed, and the keys for it or the options."""
    if entry.field.kind == "choice":
        return (
            Typed(key="typed", label=entry.label, text=_label(entry), unit="", beside=beside),
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
