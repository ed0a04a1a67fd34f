"""Wide windows on the app itself: phones on their side beside bars and a cut-out, and windows dragged from size to size."""

from collections.abc import Iterator
from itertools import pairwise

import pytest

from screens.acts.entering import Ask
from screens.paper.room import SHARE
from screens.phone import bars
from screens.phone.bars import Covered, Sides
from tests.pages.matter import matter
from tests.screens.session import Session
from tests.screens.test_edges import PAGES, under

BUTTONS, NOTCH, BOTH = Sides(0, 0, 48, 0), Sides(36, 0, 0, 24), Sides(36, 24, 48, 0)
"""What is covered on its side, in dp: three buttons; a cut-out at the left and the bar of gestures; a cut-out and buttons."""
LYING = ((915, 412), (740, 360), (568, 320))
DRAGGED = ((1200, 900), (1280, 800), (915, 412), (568, 320), (800, 1280), (360, 640))


@pytest.fixture
def covered(monkeypatch: pytest.MonkeyPatch) -> Iterator[dict[str, Covered]]:
    """Give what the phone says is covered, to be changed."""
    now = {"is": Covered()}
    monkeypatch.setattr(bars, "covered", lambda: now["is"])
    yield now
    now["is"] = Covered()


@pytest.mark.parametrize("text", [1.0, 2.0])
@pytest.mark.parametrize("sides", [BUTTONS, NOTCH, BOTH], ids=["buttons", "cut-out", "both"])
def test_on_its_side_nothing_stands_under_bars_or_cut_out(
    app: Session, covered: dict[str, Covered], sides: Sides, text: float
) -> None:
    app.state.set_person(text=text)
    for size in LYING:
        covered["is"] = Covered(sides)
        app.resize(*size)
        app.frame(2, seconds=0.4)
        for page in PAGES:
            app.front.go(page)
            app.frame(3, seconds=0.2)
            assert under(app, sides) == [], (size, page)
        app.front.go("numbers.gearing")
        app.front.perform(Ask("drive.wheel_diameter"))
        app.frame(3, seconds=0.2)
        assert under(app, sides) == [], (size, "keypad")
        app.key(27)


@pytest.mark.parametrize("text", [1.0, 2.0])
def test_what_is_reckoned_of_the_matter_is_what_stands_there(app: Session, text: float) -> None:
    app.state.set_person(text=text)
    for size in LYING:
        app.resize(*size)
        for page, asked in (
            ("ride.tension", ""),
            ("numbers.gearing", ""),
            ("numbers.gearing", "drive.wheel_diameter"),
        ):
            app.front.go(page)
            if asked:
                app.front.perform(Ask(asked))
            app.settle()
            paper = app.page
            crown = paper.parts.crown
            panes = [pane for pane in paper.parts.panes if pane.opacity]
            tall = panes[0].height + (crown.height if crown.opacity else 0.0)
            # The rail, and what stands beside the page, take of the width.
            taken = paper.parts.foot[0].width if paper.entry is not None else 0.0
            rail = paper.parts.places.width if paper.parts.places.opacity else 0.0
            share = tall * (size[0] - taken - rail) / (size[0] * size[1])
            assert share == pytest.approx(matter(paper.page, *size, text), abs=0.005)
            assert share >= 1.0 - SHARE
            assert not crown.opacity or crown.y >= panes[0].top - 1
            app.key(27)
            app.settle()


def test_a_dragged_window_keeps_page_typed_text_focus_and_place(app: Session) -> None:
    app.resize(1200, 900)
    app.front.go("numbers.gearing")
    app.settle()
    app.key(9)
    app.key(9)
    app.settle()
    for size in DRAGGED:
        app.resize(*size)
        stop = app.page.focused.area()
        assert stop is not None
        assert (app.page.title, stop[1].name) == ("Gearing and speed", "Wheel pulley"), size
        spot = next(one for one in app.page.spots() if one.touch is stop[1])
        assert spot.part.y - 1 <= spot.y <= spot.part.top, size
    app.type("97")
    for size in DRAGGED:
        app.resize(*size)
        assert app.page.entry.text == "97", size
        assert app.page.entry.label == "Wheel pulley"


def top_block(app: Session) -> str:
    """Return the key of the block at the upper edge of the first pane."""
    pane = app.page.parts.panes[0]
    top = 0.0
    for block, laid in zip(pane.blocks, pane.laids, strict=True):
        top += laid.height
        if top > pane.offset + 1:
            return str(block.key)
    return ""


def test_a_dragged_window_keeps_the_place_that_was_scrolled_to(app: Session) -> None:
    app.resize(412, 915)
    app.front.go("settings.sources")
    app.settle()
    pane = app.page.parts.panes[0]
    pane.to(pane.total / 2)
    app.settle()
    before = top_block(app)
    for size in ((420, 700), (640, 500), (915, 412), (700, 900), (412, 915)):
        app.resize(*size)
        assert top_block(app) == before, size


def test_a_dragged_window_keeps_what_is_written(app: Session) -> None:
    app.resize(1200, 900)
    app.key(ord("f"), "ctrl")
    app.page.writing.text = "belt"
    for size in DRAGGED:
        app.resize(*size)
        assert app.page.writing is not None
        assert app.page.writing.text == "belt"
        spot = next(one for one in app.page.spots() if one.touch is not None and one.touch.part == "field")
        assert app.page.writing.pos == [spot.x, spot.y]


def listed(app: Session) -> list[str]:
    """Return the keys of the rows beside the page."""
    pane = app.page.parts.panes[2]
    return [block.key for block in pane.blocks] if pane.opacity else []


def test_on_a_tablet_the_list_of_a_place_stands_beside_its_page(app: Session) -> None:
    app.resize(800, 1280)
    app.front.place("bench")
    app.settle()
    assert listed(app) == []
    app.tap("Screws")
    assert "list bench.joints" in listed(app)
    chosen = [block.key for block in app.page.parts.panes[2].blocks if getattr(block, "chosen", False)]
    assert chosen == ["list bench.joints"]
    pane, page = app.page.parts.panes[2], app.page.parts.panes[0]
    assert pane.right <= page.x + 1
    assert app.page.parts.header.x >= pane.right - 1
    app.front.go("bench.joint", joint="motor_face")
    app.settle()
    app.tap("Fault guide")
    assert [step.page for step in app.front.world.trail] == ["bench", "bench.faults"]
    app.key(27)
    assert [step.page for step in app.front.world.trail] == ["bench"]


@pytest.mark.parametrize("size", [(1280, 800), (1200, 900), (1024, 768)], ids=str)
def test_on_a_wide_window_the_list_and_both_panes_of_a_page_stand_beside_each_other(
    app: Session, size: tuple[int, int]
) -> None:
    app.resize(*size)
    app.front.place("numbers")
    app.front.go("numbers.gearing")
    app.settle()
    panes = [app.page.parts.panes[place] for place in (2, 0, 1)]
    assert all(pane.opacity for pane in panes)
    assert [pane.x for pane in panes] == sorted(pane.x for pane in panes)
    assert all(one.right <= two.x + 1 for one, two in pairwise(panes))


def test_the_list_comes_and_goes_with_the_size_of_the_window(app: Session) -> None:
    app.front.place("bench")
    app.front.go("bench.joints")
    app.settle()
    for size, shown in (((412, 915), False), ((800, 1280), True), ((915, 412), False), ((1200, 900), True)):
        app.resize(*size)
        assert bool(listed(app)) == shown, size
    app.front.place("ride")
    app.front.go("ride.tension")
    app.settle()
    assert listed(app) == []


def test_a_key_does_not_read_the_list_again(app: Session) -> None:
    app.resize(800, 1280)
    app.front.place("numbers")
    app.front.go("numbers.gearing")
    app.front.perform(Ask("drive.wheel_diameter"))
    app.settle()
    before = app.page.frame["list"]
    app.type("97")
    assert app.page.entry.text == "97"
    assert app.page.frame["list"] is before
    assert before


@pytest.mark.parametrize("size", [(1280, 800), (1200, 900)], ids=str)
def test_on_a_wide_window_the_keys_cover_nothing_of_the_two_panes(
    app: Session, size: tuple[int, int]
) -> None:
    app.resize(*size)
    app.tap("TENSION CHECK")
    app.settle()
    parts = app.page.parts
    keys = parts.foot[-1]
    for pane in parts.panes[:2]:
        assert pane.opacity
        assert pane.right <= keys.x + 1
        assert pane.y <= 1
    assert keys.right <= size[0] + 1
    app.type("0.92")
    app.resize(412, 915)
    assert app.page.entry.text == "0.92"


@pytest.mark.parametrize("text", [1.6, 2.0])
def test_on_its_side_the_crown_leaves_the_panes_more_than_it_takes(app: Session, text: float) -> None:
    app.state.set_person(text=text)
    app.resize(915, 412)
    app.front.go("numbers.gearing")
    app.settle()
    app.tap("Motor pulley, one more")
    for page in ("numbers.compare", "numbers.gearing", "ride.flight"):
        app.front.go(page)
        app.settle()
        crown, pane = app.page.parts.crown, app.page.parts.panes[0]
        assert crown.height < pane.height, page


def test_on_a_wide_window_the_numbers_stand_in_two_lists(app: Session) -> None:
    app.resize(1280, 800)
    app.front.place("numbers")
    app.settle()
    first, second = app.page.parts.panes[:2]
    assert second.opacity
    # Side by side nearly all of it is in sight.
    assert max(first.total, second.total) < 1.25 * first.height


def test_a_task_is_larger_where_a_tablet_has_the_room_and_stays_so(app: Session) -> None:
    """What is read and answered grows; what opens beside it does not change its size, nor does a place's list of pages."""
    heights = {}
    for size in ((412, 915), (800, 1280)):
        app.resize(*size)
        app.front.place("ride")
        app.front.go("ride.run", list="before_ride")
        app.settle()
        heights[size] = app.find("Wanted: flat, dry, no smell.").height
    assert heights[800, 1280] > 1.3 * heights[412, 915]
    app.tap("Why this item")
    app.settle()
    assert app.find("Wanted: flat, dry, no smell.").height == heights[800, 1280]
    app.front.place("numbers")
    app.settle()
    wide = app.find("Joining packs").height
    app.resize(720, 800)
    assert app.find("Joining packs").height == wide
