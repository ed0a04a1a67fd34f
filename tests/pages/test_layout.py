"""Every page of data, measured without a window at sizes and text scales: nothing cut, nothing too small to touch."""

from collections.abc import Iterator
from itertools import combinations

import pytest
from kivy.metrics import dp

from screens.acts import Back
from screens.blocks import Choice, Option
from screens.page import Page
from screens.paper.furniture import Header, Places
from screens.paper.ink import width_of
from screens.paper.keypad import MOST_BELOW
from screens.paper.measure import measure
from screens.paper.picture import lay
from screens.paper.room import (
    FOOT_BESIDE,
    SHARE,
    TIGHT,
    beside_width,
    foot_blocks,
    foot_look,
    look_of,
)
from screens.paper.scale import LINE, SMALL, TWO_PANES, Look
from screens.paper.sheet import Drawing, Ink, Laid, Sheet, Touch
from tests.pages.matter import matter
from tests.pages.sentences import faults_of
from tests.pages.states import names, states

SIZES = ((320, 568), (360, 640), (360, 740), (412, 915), (915, 412), (800, 1280))
UPRIGHT, LYING = (0, 24, 0, 48), (0, 0, 48, 0)
"""What the bars of the system cover at the left, top, right and bottom, in dp: three buttons, upright and on its side."""
BESIDE = (
    (412 - UPRIGHT[0] - UPRIGHT[2], 915 - UPRIGHT[1] - UPRIGHT[3]),
    (320 - UPRIGHT[0] - UPRIGHT[2], 568 - UPRIGHT[1] - UPRIGHT[3]),
    (915 - LYING[0] - LYING[2], 412 - LYING[1] - LYING[3]),
)
"""What they leave of a usual phone, of the smallest one, and of one on its side: the paper lays a page out for that."""
LIES = ((740, 360), (568, 320))
"""Smaller phones on their side."""
SCALES = (1.0, 1.3, 1.6, 2.0)
SLACK = 1.5
LEAST = 48


def room_of(page: Page, width: float) -> float:
    """Return how wide the blocks of a page are laid out in a window."""
    return min(width / 2 if width >= TWO_PANES and page.aside else width, LINE)


def laids(page: Page, width: float, height: float, scale: float) -> Iterator[tuple[str, Laid]]:
    """Yield each part of a page laid out for a window."""
    look, room = look_of(height, scale), room_of(page, width)
    for block in page.blocks:
        yield block.key, measure(block, room, look)
    if page.crown is not None:
        yield "crown", measure(page.crown, min(width, LINE), look)
    yield "header", measure(Header(key="header", title=page.title, tools=page.tools), width, look.framed())
    yield "places", measure(Places(key="places", here="ride"), width, look.framed())
    blocks = foot_blocks(
        page.foot, low=look.low, sentence=page.foot.entry.sentence if page.foot.entry else ""
    )
    beside = page.foot.entry is not None and look.low and width > height
    wide, most = (
        (beside_width(page.foot.entry, width), height) if beside else (min(width, LINE), height * SHARE)
    )
    chosen = foot_look(blocks, wide, look, most)
    for block in blocks:
        yield f"foot {block.key}", measure(block, wide, chosen)


def faults(laid: Laid) -> Iterator[str]:
    """Yield a line for each fault of a block."""
    texts = [mark for mark in laid.marks if isinstance(mark, Ink)]
    for mark in texts:
        yield from written(mark, laid)
    for one, other in combinations(texts, 2):
        if (
            one.x < other.x + other.width - SLACK
            and other.x < one.x + one.width - SLACK
            and one.y < other.y + other.height - SLACK
            and other.y < one.y + one.height - SLACK
        ):
            yield f"over each other: {one.text!r} and {other.text!r}"
    for touch in laid.touches:
        yield from touched(touch, laid)
    for mark in laid.marks:
        if isinstance(mark, Drawing):
            yield from drawn(mark)


def written(mark: Ink, laid: Laid) -> Iterator[str]:
    """Yield the faults of a text."""
    if mark.x < -SLACK or mark.x + mark.width > laid.width + SLACK or mark.width > mark.room + SLACK:
        yield f"too wide: {mark.text!r} is {mark.width:.0f} in {mark.room:.0f}"
    if mark.y < -SLACK or mark.y + mark.height > laid.height + SLACK:
        yield f"out of its block: {mark.text!r} at {mark.y:.0f}, {mark.height:.0f} of {laid.height:.0f}"
    if mark.text and mark.size < dp(SMALL) - 0.1:
        yield f"small text: {mark.text!r} is {mark.size:.1f}"


def touched(touch: Touch, laid: Laid) -> Iterator[str]:
    """Yield the faults of an area to touch."""
    if touch.width < LEAST - 0.5 or touch.height < LEAST - 0.5:
        yield f"small to touch: {touch.name!r} is {touch.width:.0f} x {touch.height:.0f}"
    if touch.x < -SLACK or touch.x + touch.width > laid.width + SLACK:
        yield f"off the side: {touch.name!r}"


def drawn(mark: Drawing) -> Iterator[str]:
    """Yield a line for each text of a picture that stands out of it or over another."""
    texts = [one for one in lay(mark.picture, mark.width, mark.height, mark.scale) if one.kind == "text"]
    boxes = []
    for one in texts:
        (x, y), wide = one.points[0], width_of(one.text, one.width, one.bold)
        if x < -SLACK or y < -SLACK or x + wide > mark.width + SLACK or y + one.height > mark.height + SLACK:
            yield f"out of its picture: {one.text!r} at {x:.0f}, {y:.0f}"
        boxes.append((one.text, x, y, x + wide, y + one.height))
    for (name, x0, y0, x1, y1), (other, a0, b0, a1, b1) in combinations(boxes, 2):
        if x0 < a1 - SLACK and a0 < x1 - SLACK and y0 < b1 - SLACK and b0 < y1 - SLACK:
            yield f"texts over each other in a picture: {name!r} and {other!r}"


@pytest.mark.parametrize("name", names())
def test_nothing_is_cut_and_everything_can_be_touched(name: str) -> None:
    found = []
    count = 0
    for what, page in states(name):
        for width, height in SIZES:
            for scale in SCALES:
                for part, laid in laids(page, width, height, scale):
                    found += [f"{what} {width}x{height} {scale} {part}: {fault}" for fault in faults(laid)]
                    count += 1
    assert count
    assert found == []


@pytest.mark.parametrize("name", names())
def test_beside_the_bars_of_the_system_nothing_is_cut_and_every_sentence_is_plain(name: str) -> None:
    found = []
    for what, page in states(name):
        # Where numbers and names fill a sentence, only the page shows how long it is.
        found += [f"{what}: {fault}" for fault in faults_of(name, page)]
        for width, height in BESIDE:
            found += [
                f"{what} {width}x{height} {part}: {fault}"
                for part, laid in laids(page, width, height, SCALES[-1])
                for fault in faults(laid)
            ]
        assert matter(page, *BESIDE[0], SCALES[-1]) >= 1.0 - SHARE, what
        for scale in SCALES:
            assert matter(page, *BESIDE[1], scale) >= 1.0 - SHARE or many_signs(page), (what, scale)
    assert found == []


def more_signs(page: Page, width: float) -> bool:
    """Tell whether what is entered has more signs than the usual room of the keys beside a page holds."""
    return page.foot.entry is not None and beside_width(page.foot.entry, width) > width * FOOT_BESIDE


def many_signs(page: Page) -> bool:
    """Tell whether what is entered has more signs beside the digits than three rows of keys have room for."""
    entry = page.foot.entry
    return entry is not None and len(entry.field.signs.split() or entry.field.signs) > MOST_BELOW - 2


@pytest.mark.parametrize("name", names())
def test_the_matter_has_at_least_45_percent_of_the_window(name: str) -> None:
    low = []
    for what, page in states(name):
        for width, height in (*SIZES, *LIES):
            for scale in SCALES:
                share = matter(page, width, height, scale)
                if (width, height) in LIES and more_signs(page, width):
                    continue
                if share < 1.0 - SHARE:
                    low.append(f"{what} {width}x{height} {scale}: {share:.0%}")
    assert low == []


@pytest.mark.parametrize("name", names())
def test_on_its_side_what_is_entered_and_its_keys_stand_whole_beside_the_page(name: str) -> None:
    """With three buttons of the system at the right, and at the largest text."""
    found = []
    for what, page in states(name):
        entry = page.foot.entry
        if entry is None:
            continue
        for width, height in (BESIDE[2], *((whole - LYING[2], high) for whole, high in LIES)):
            look = look_of(height, SCALES[-1])
            header = measure(Header(key="header", title=page.title, tools=page.tools), width, look.framed())
            room = height if height < TIGHT else height - header.height
            blocks = foot_blocks(page.foot, low=True, sentence=entry.sentence)
            wide = beside_width(entry, width)
            chosen = foot_look(blocks, wide, look, room)
            forms = [measure(block, wide, chosen) for block in blocks]
            if sum(laid.height for laid in forms) > room:
                found.append(
                    f"{what} {width}x{height}: {sum(laid.height for laid in forms):.0f} of {room:.0f}"
                )
            found += [f"{what} {width}x{height}: {fault}" for laid in forms for fault in faults(laid)]
    assert found == []


def test_a_text_that_has_no_room_is_found() -> None:
    sheet = Sheet(100.0, Look())
    sheet.write("Unbreakableunbreakableunbreakableword", 16, 0, 0, 60.0)
    assert [fault.split(":")[0] for fault in faults(sheet.done(""))][:1] == ["too wide"]


@pytest.mark.parametrize("chosen", [False, True])
def test_the_words_of_an_option_stand_in_the_middle_of_its_key(*, chosen: bool) -> None:
    """Room is kept for bold words: where these take two lines and the others one, the one stood at the top."""
    options = (Option("Nut turns by hand", Back(), chosen), Option("Wobbles", Back()))
    laid = measure(Choice(key="sign", label="What is it?", options=options), 360.0, Look())
    words = next(mark for mark in laid.marks if isinstance(mark, Ink) and mark.text == "Nut turns by hand")
    key = next(touch for touch in laid.touches if touch.name == "Nut turns by hand")
    assert words.y + words.height / 2 == pytest.approx(key.y + key.height / 2)
