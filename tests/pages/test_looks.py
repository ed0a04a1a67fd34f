"""How pages look, measured without a window: rows, columns, titles, verdicts in grey, names on charts, contrast."""

from collections.abc import Iterator
from itertools import combinations, pairwise
from math import inf
from pathlib import Path

import pytest
from kivy.metrics import dp

from logic.log import Tension
from screens.acts import Back, Place
from screens.acts.entering import Write
from screens.blocks import (
    PLAIN,
    RIGHT,
    UNSURE,
    WRONG,
    Button,
    Cell,
    Choice,
    Columns,
    Field,
    Figure,
    FigureRow,
    Line,
    Notice,
    Option,
    Picture,
    Stepper,
    Verdict,
)
from screens.paper.furniture import Header, Places
from screens.paper.icons import ICON_FONT
from screens.paper.ink import broken, width_of
from screens.paper.keypad import Typed
from screens.paper.measure import measure
from screens.paper.picture import height_of, lay
from screens.paper.room import foot_blocks, look_of
from screens.paper.scale import Look
from screens.paper.sheet import Box, Drawing, Ink, Laid, Sheet
from screens.pictures.asked import picture_of
from screens.pictures.chart import Curve, Mark, chart
from screens.pictures.gauge import small_gauge
from screens.pictures.strokes import Label
from screens.words.tension import SIGNS, form_of
from tests.contrast import THEMES, contrast, shade
from tests.pages.reader import Reader
from tests.pages.sight import in_sight
from tests.pages.states import names, states
from tests.pages.test_layout import SCALES, SIZES, laids, room_of

TEXT, LARGE, MARK = 7.0, 4.5, 3.0
"""Least contrast of text, of the large bold word WARNING on the standard's orange, and of a mark."""


def inks(laid: Laid, text: str = "") -> list[Ink]:
    """Return the texts of a block, or those that say so."""
    return [mark for mark in laid.marks if isinstance(mark, Ink) and (not text or mark.text == text)]


def middle(mark: Ink) -> float:
    """Return the height of the middle of a text."""
    return mark.y + mark.height / 2


def icons(laid: Laid) -> list[Ink]:
    """Return the icons of a block."""
    return [mark for mark in inks(laid) if mark.font == ICON_FONT]


@pytest.mark.parametrize(
    "detail",
    [
        "",
        "worked out",
        "One person, a spring scale, a level floor to stand on, a rule, and some time to do it slowly.",
    ],
)
def test_a_row_has_label_number_and_sign_on_one_line(detail: str) -> None:
    row = FigureRow(key="a", label="Spring scale", number="19", unit="%", detail=detail, act=Back())
    laid = measure(row, dp(360), Look())
    (number,), (sign,) = inks(laid, "19 %"), icons(laid)
    assert middle(number) == pytest.approx(middle(sign), abs=dp(1))
    if detail != "worked out":
        assert middle(inks(laid, "Spring scale")[0]) == pytest.approx(middle(number), abs=dp(1))
    if len(detail) > len("worked out"):
        # It has the width of the row, not the column that the number leaves.
        assert len(inks(laid, detail)[0].lines) == 2
        assert inks(laid, detail)[0].y >= number.y + number.height - 1


def test_a_detail_follows_its_label_and_the_line_of_a_change_comes_last() -> None:
    detail = "One person, a spring scale, a level floor to stand on, a rule, and some time to do it slowly."
    heights = []
    for change in ("", "+3 %"):
        row = FigureRow(
            key="a", label="Spring scale", number="19", unit="%", detail=detail, change=change, reserve=True
        )
        laid = measure(row, dp(360), Look())
        (number,), (told,) = inks(laid, "19 %"), inks(laid, detail)
        assert told.y == pytest.approx(number.y + number.height, abs=dp(1))
        assert [mark.y >= told.y + told.height - 1 for mark in inks(laid, "+3 %")] == [True] * bool(change)
        heights.append(laid.height)
    assert heights[0] == heights[1]


def test_numbers_of_a_column_begin_at_one_line() -> None:
    shown = [
        measure(
            Columns(key="a", label="Push", cells=(Cell("232 N", better=one), Cell("208 N"))), dp(360), Look()
        )
        for one in (True, False)
    ]
    assert len({inks(laid, "232 N")[0].x for laid in shown}) == 1
    (tick,) = icons(shown[0])
    assert tick.x >= inks(shown[0], "232 N")[0].x + inks(shown[0], "232 N")[0].width


def test_icons_have_few_sizes() -> None:
    """The graphics read the whole font of icons anew for each, and keep it: a third of a megabyte."""
    sheet = Sheet(dp(360), Look())
    sides = [dp(side) for side in range(18, 50)]
    for side in sides:
        sheet.icon("tick", 0.0, 0.0, side)
    marks = icons(sheet.done(""))
    assert len({mark.size for mark in marks}) < 8
    # Each still fills its square, and fits into it.
    assert all(0.78 < mark.size / side < 0.95 for mark, side in zip(marks, sides, strict=True))


def test_a_long_title_is_smaller_then_on_two_lines_and_never_over_its_icons() -> None:
    tools = tuple(Button(name, Back(), icon=name) for name in ("swap", "theme", "send"))
    for title, lines, cut in (
        ("Left belt", 1, False),
        ("Pack energy limits", 1, False),
        ("A known weight hung on it, LEFT", 2, False),
        ("Several pulls, fitted together by their depth, LEFT", 1, True),
    ):
        laid = measure(Header(key="header", title=title, tools=tools), dp(360), Look())
        (shown,) = inks(laid, title)
        assert (len(shown.lines), shown.cut) == (lines, cut), title
        assert shown.x + shown.width <= min(mark.x for mark in icons(laid)[1:])
        assert laid.height == dp(48)


def test_a_title_is_left_out_in_its_middle_only_where_its_smallest_size_has_no_room() -> None:
    """At 320 dp "Motor face screws" had room beside two icons, and lost its middle: it fitted the smallest size on one line."""
    tools = tuple(Button(name, Back(), icon=name) for name in ("day", "send"))
    for title in ("Motor face screws", "Wheel pulley bolts", "Gearing and speed", "Motor heat on a climb"):
        laid = measure(Header(key="header", title=title, tools=tools), dp(320), Look(2.0).framed())
        assert [mark.cut for mark in inks(laid, title)] == [False], title
    header = Header(key="header", title="A known weight, LEFT", tools=(*tools, tools[0]))
    laid = measure(header, dp(320), Look(2.0).framed())
    assert [mark.cut for mark in inks(laid, header.title)] == [False]
    assert inks(laid, header.title)[0].size >= dp(14)


@pytest.mark.parametrize("scale", SCALES)
def test_the_four_places_have_icons_and_names_of_one_size(scale: float) -> None:
    for width in (320, 360, 412):
        laid = measure(Places(key="places", here="ride"), dp(width), Look(scale, low=True).framed())
        names = [mark for mark in inks(laid) if mark.font != ICON_FONT]
        assert len(icons(laid)) == len(names) == 4
        assert len({mark.size for mark in names}) == 1
        assert laid.height <= dp(56)


@pytest.mark.parametrize("width", [320, 360])
def test_the_label_of_what_is_typed_is_whole_beside_its_key(width: int) -> None:
    for label in ("Energy marked on one pack", "Arm of your key or spanner", "Wanted centre distance"):
        block = Typed(key="typed", label=label, text="90", unit="Wh", beside=(Button("Done", Back()),))
        laid = measure(block, dp(width), Look())
        assert [mark.cut for mark in inks(laid, label)] == [False], label


def test_the_great_bar_has_room_for_its_words_and_leaves_the_page_the_rest(pages: Reader) -> None:
    pages.open("ride")
    for width, height, scale in ((640, 412, 1.3), (320, 568, 2.0), (320, 568, 1.6)):
        (block,) = foot_blocks(pages.page.foot, low=height < 500)
        laid = measure(block, dp(width), look_of(dp(height), scale))
        (great,) = (mark for mark in laid.marks if isinstance(mark, Box) and mark.fill == "main")
        (words,) = (mark for mark in inks(laid) if mark.text.startswith("BEFORE A RIDE"))
        assert len(words.lines) == 2, (width, scale)
        assert great.height <= dp(88), (width, scale)


def test_what_two_dashed_bars_wait_for_is_said_once_over_them(pages: Reader) -> None:
    """In each of them it made bars of six lines, which left the signs it asks for no room."""
    pages.open("ride.not_right", list="before_ride", item="mounts")
    (block,) = foot_blocks(pages.page.foot, low=True)
    laid = measure(block, dp(320), look_of(dp(568), 2.0))
    assert [mark.text for mark in inks(laid) if "sign" in mark.text] == ["Tap a sign."]
    assert all(len(mark.lines) <= 3 for mark in inks(laid))
    pages.tap("Screw missing")
    (block,) = foot_blocks(pages.page.foot, low=True)
    assert block.reason == ""


def test_why_a_small_bar_beside_the_keys_is_dashed_stands_over_them(pages: Reader) -> None:
    """On a low window nothing said why this ride could not be saved."""
    pages.open("log.ride")
    pages.type("5")
    pages.act(Write("ride/new/volts_before", "37"))
    pages.tap("Volts after")
    pages.type("39")
    typed, _keys = foot_blocks(pages.page.foot, low=True)
    assert typed.sentence == "More volts after than before: read both again, or leave one out."
    pages.rub()
    typed, _keys = foot_blocks(pages.page.foot, low=True)
    assert typed.sentence == ""


def test_the_largest_text_on_a_narrow_phone_leaves_three_rows_of_a_menu_in_sight(pages: Reader) -> None:
    for name in ("ride", "bench"):
        pages.open(name)
        seen = in_sight(pages.page, 320, 568, 2.0)
        assert sum(isinstance(block, Line) for block in pages.page.blocks if block.key in seen) >= 3, name


@pytest.mark.parametrize("scale", SCALES)
def test_a_number_between_its_keys_stands_on_one_line_with_its_unit(scale: float) -> None:
    for value in ("16\u00a0teeth", "15\u00a0km/h"):
        laid = measure(Stepper(key="a", label="Wheel pulley", value=value), dp(320), Look(scale))
        (number,) = inks(laid, value)
        assert len(number.lines) == 1, value
        assert not number.cut


@pytest.mark.parametrize("scale", SCALES)
def test_what_the_scale_reads_keeps_its_unit_beside_its_bars(pages: Reader, scale: float) -> None:
    pages.open("ride.tension")
    pages.type("0.92")
    assert pages.page.foot.main is not None
    for width in (320, 360):
        block = Typed(
            key="typed", label="Scale reads", text="0.92", unit="kg", beside=(pages.page.foot.main,)
        )
        assert inks(measure(block, dp(width), Look(scale)), "0.92 kg"), width


@pytest.mark.parametrize("text", ["280-5M-15", "280-5M", "1.2 in", "45 %"])
def test_what_is_typed_with_letters_of_its_own_has_no_unit_behind_it(text: str) -> None:
    """A print of a belt read "280-5M-15 teeth"."""
    laid = measure(Typed(key="typed", label="Belt print", text=text, unit="teeth"), dp(360), Look())
    assert inks(laid, text)
    assert not inks(laid, f"{text} teeth")


def test_a_number_stands_on_one_line_with_its_unit_at_its_end_or_under_it() -> None:
    for scale in SCALES:
        block = Figure(key="a", label="Range", number="21.2 to 25.9", unit="km", reserve=True)
        laid = measure(block, dp(320), Look(scale, 36))
        (unit,), number = inks(laid, "km"), next(mark for mark in inks(laid) if mark.text.startswith("21.2"))
        assert len(number.lines) == 1
        under = unit.x == number.x and unit.y >= number.y + number.height - 1
        assert under or 0 <= unit.x - number.x - number.width <= dp(12)


def test_a_label_does_not_stand_as_a_tall_column_beside_its_number() -> None:
    row = Line(key="a", title="Screw, below its head", value="not set", act=Back())
    laid = measure(row, dp(320), Look(2.0))
    (label,), (value,) = inks(laid, "Screw, below its head"), inks(laid, "not set")
    assert len(label.lines) <= 2
    assert value.y >= label.y + label.height - 1


def test_short_options_stand_in_as_few_rows_as_there_is_room_for() -> None:
    for count, rows in ((2, 1), (3, 1), (4, 1), (5, 2), (6, 2)):
        options = tuple(Option(f"M{place}", Back()) for place in range(count))
        laid = measure(Choice(key="thread", label="Thread", options=options), dp(360), Look())
        assert len({touch.y for touch in laid.touches}) == rows, count


@pytest.mark.parametrize("name", ["bench", "numbers", "ride"])
@pytest.mark.parametrize("demo", [True, False])
def test_rows_of_a_home_have_an_icon_each(name: str, tmp_path: Path, *, demo: bool) -> None:
    """Belts are alike, and so are checks; else one icon stands for one thing."""
    reader = Reader(tmp_path, demo=demo)
    reader.act(Place(name))
    icons = [block.icon for block in reader.blocks() if isinstance(block, Line) and block.icon]
    reader.close()
    twice = {icon for icon in icons if icons.count(icon) > 1}
    assert twice <= {"gauge", "checklist"}
    assert len(set(icons)) >= 4


def seen(verdict: Verdict) -> tuple[object, ...]:
    """Return what of a tile is left without words and without colour: filled or not, its frame, its sign."""
    laid = measure(verdict, dp(360), Look())
    tile = boxed(laid)
    if tile is None:
        return ()
    return (
        tile.fill in ("good", "main"),
        round(tile.line),
        tile.dashed,
        tuple(mark.lines for mark in icons(laid)),
    )


def boxed(laid: Laid) -> Box | None:
    """Return the tile of a verdict; what is no verdict has none."""
    return next((mark for mark in laid.marks if isinstance(mark, Box)), None)


WORDS = ("slack", "on the edge: may be slack", "in window", "tight", "")
"""Loose, on the edge, just right, tight, and not known."""


def tile(word: str) -> Verdict:
    """Return the tile of a tension's word."""
    return Verdict(key="verdict", word=word or "Not known", form=form_of(word), sign=SIGNS.get(word, ""))


def test_verdicts_of_a_belt_are_told_apart_without_words_and_colour() -> None:
    looks = {word: seen(tile(word)) for word in WORDS}
    assert len(set(looks.values())) == len(WORDS), looks
    assert {form_of(word) for word in WORDS} == {RIGHT, WRONG, UNSURE, PLAIN}


@pytest.mark.parametrize("theme", THEMES)
def test_the_form_of_a_verdict_is_seen_in_grey(theme: str) -> None:
    """A filled tile stands out of the panel it lies on, a frame out of its tile, a sign out of its ground."""
    for word in WORDS:
        laid = measure(tile(word), dp(360), Look())
        box = boxed(laid)
        assert (box is None) == (form_of(word) == PLAIN)
        if box is None:
            assert icons(laid) == []
            continue
        if form_of(word) == RIGHT:
            assert contrast(shade(box.fill, theme), shade("panel", theme)) >= TEXT
        else:
            for ground in ("panel", box.fill):
                assert contrast(shade(box.edge, theme), shade(ground, theme)) >= MARK
        for sign in icons(laid):
            assert contrast(shade(sign.tone, theme), shade(box.fill, theme)) >= TEXT


def test_small_gauges_of_a_belt_are_told_apart_without_words() -> None:
    places = []
    for tension in (50.0, 77.0, 96.0, 140.0):
        drawn = small_gauge(Tension(belt="left", tension=tension, error=10.0, floor=75.0, ceiling=118.0))
        assert drawn is not None
        mark = next(one for one in lay(drawn, dp(108), dp(36)) if one.width == 5.0)
        places.append(mark.points[0][0])
    assert all(b - a >= dp(8) for a, b in pairwise(places)), places


def test_warning_and_caution_differ_in_grey_too() -> None:
    assert contrast(shade("warning", "night"), shade("caution", "night")) >= 1.8
    for one, other in combinations(("danger", "warning", "caution", "notice"), 2):
        laid = [measure(Notice(key="a", word=word, text="Mind."), dp(360), Look()) for word in (one, other)]
        assert [mark.text for mark in inks(laid[0])] != [mark.text for mark in inks(laid[1])]


@pytest.mark.parametrize("scale", SCALES)
def test_what_is_printed_on_a_motor_stands_on_its_can(scale: float) -> None:
    """At 320 dp and the largest text the can was smaller than its print."""
    drawn = picture_of("motor.kv")
    assert drawn is not None
    tall = height_of(drawn, dp(288), height=drawn.height, text=scale)
    placed = lay(drawn, dp(288), tall, scale)
    can = next(one for one in placed if one.kind == "fill")
    across, up = zip(*can.points, strict=True)
    for one in placed:
        if one.kind == "text" and one.text in ("6374", "170KV"):
            (x, y), wide = one.points[0], width_of(one.text, one.width, one.bold)
            assert min(across) <= x <= max(across) - wide, one.text
            assert min(up) <= y <= max(up) - one.height, one.text


def test_lines_of_a_chart_that_lie_on_each_other_are_one_with_both_names() -> None:
    line = [(float(x), 2.0 * x) for x in range(11)]
    high = [(float(x), 3.0 * x) for x in range(11)]
    near = [(x, y + 0.01) for x, y in line]
    drawn = chart([Curve("dry", line), Curve("wet", near), Curve("loose", high)], x_title="x", y_title="y")
    names = [one.text for one in drawn.strokes if isinstance(one, Label) and one.others]
    assert names == ["dry, wet", "loose"]


@pytest.mark.parametrize("name", names())
def test_every_line_of_a_chart_is_named_on_it(name: str) -> None:
    missing = []
    for what, page in states(name):
        for block in page.blocks:
            if not isinstance(block, Picture):
                continue
            wanted = {one.text for one in block.strokes.strokes if isinstance(one, Label) and one.others}
            looks = {
                (room_of(page, width), look_of(height, scale)) for width, height in SIZES for scale in SCALES
            }
            for room, look in looks if wanted else ():
                for mark in measure(block, room, look).marks:
                    if isinstance(mark, Drawing):
                        shown = {one.text for one in lay(mark.picture, mark.width, mark.height, mark.scale)}
                        missing += [f"{what} {room} {look}: {one}" for one in wanted - shown]
    assert missing == []


def grounds(laid: Laid, ink: Ink, paper: str) -> str:
    """Return the tone of the ground that a text stands on."""
    x, y = ink.x + ink.width / 2, middle(ink)
    found = paper
    for mark in laid.marks:
        if isinstance(mark, Box) and mark.fill and mark.x <= x <= mark.x + mark.width:
            found = mark.fill if mark.y <= y <= mark.y + mark.height else found
    return found


def pale(laid: Laid, paper: str) -> Iterator[tuple[str, str, float]]:
    """Yield tone, ground and least contrast of each text and icon of a block."""
    for ink in inks(laid):
        least = MARK if ink.font == ICON_FONT else LARGE if ink.tone == "on_warning" else TEXT
        yield ink.tone, grounds(laid, ink, paper), least
    for mark in laid.marks:
        if isinstance(mark, Box) and mark.edge:
            on = mark.fill or paper
            # The frame of a signal repeats the colour of its word: the word and the panel say it.
            yield mark.edge, on, 1.0 if mark.edge in ("danger", "warning", "caution", "notice") else MARK


@pytest.mark.parametrize("name", names())
def test_each_text_is_readable_on_the_ground_it_stands_on(name: str) -> None:
    pairs: dict[tuple[str, str], float] = {}
    for _what, page in states(name):
        for part, laid in laids(page, 360, 640, 1.0):
            for tone, on, least in pale(laid, "panel" if part == "crown" else "ground"):
                pairs[tone, on] = max(pairs.get((tone, on), -inf), least)
    assert pairs
    assert [
        (theme, tone, on, round(contrast(shade(tone, theme), shade(on, theme)), 2))
        for theme in THEMES
        for (tone, on), least in pairs.items()
        if contrast(shade(tone, theme), shade(on, theme)) < least
    ] == []


@pytest.mark.parametrize("name", names())
def test_a_field_does_not_say_its_label_twice(name: str) -> None:
    said = [block for _what, page in states(name) for block in page.blocks if isinstance(block, Field)]
    assert [block.label for block in said if block.hint == block.label] == []


def test_the_number_of_a_mark_stands_off_where_curves_cross_at_it() -> None:
    across = tuple((x / 10, x / 10) for x in range(101))
    back = tuple((x / 10, 10.0 - x / 10) for x in range(101))
    level = ((0.0, 5.0), (10.0, 5.0))
    curves = (Curve("", across), Curve("", back), Curve("", level))
    drawn = chart(curves, (Mark(5.0, 5.0, "39.9"),), x_title="Speed", y_title="Push")
    placed = lay(drawn, dp(328), dp(200))
    (number,) = (one for one in placed if one.text == "39.9")
    (x, y), wide = number.points[0], width_of(number.text, number.width, number.bold)
    thick = [one for one in placed if one.kind == "line" and one.width > 2.0]
    assert len(thick) == 3
    assert not any(
        x <= px <= x + wide and y <= py <= y + number.height for one in thick for px, py in one.points
    )


@pytest.mark.parametrize("unit", ["kg", "mm", "N", "%", "°C", "km/h", "teeth", "min"])
def test_no_line_ends_between_a_number_and_its_unit(unit: str) -> None:
    """A bottle held "1" and, on the next line, "kg of water"."""
    for room in range(120, 400, 7):
        block = broken(f"Hang a bottle with 1 {unit} of water at its middle. Done.", dp(20), False, dp(room))  # noqa: FBT003  (as it is asked)
        assert any(f"1\u00a0{unit} " in f"{line} " for line in block.lines), (room, block.lines)


def test_no_line_ends_between_plus_or_minus_and_its_number() -> None:
    for room in range(120, 400, 7):
        block = broken("Your scale is good to ± 2.3 % of it. Rough.", dp(16), False, dp(room))  # noqa: FBT003  (as it is asked)
        assert any("±\u00a02.3\u00a0%" in line for line in block.lines) or len(block.lines) == 1, block.lines
