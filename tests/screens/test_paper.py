"""The paper by real touches: what the hand feels on every page of data."""

from collections.abc import Callable
from gc import collect, disable, enable, get_objects
from typing import Any
from weakref import ref

import pytest
from kivy.graphics import Canvas, Mesh

from screens.acts import Turn
from screens.acts.entering import Ask
from screens.acts.keeping import Drop
from screens.blocks import Block, Field, Line, Stepper, Words
from screens.driver.finger import Finger
from screens.page import Page
from screens.paper import paint
from screens.paper.sheet import Box, Ink, Laid
from screens.paper.written import MOST_PIXELS, MOST_SHEETS, Written, written
from screens.register import PAGES, page_function
from tests.screens.session import Session

SIZES = [(320, 568), (412, 915), (800, 1280)]


@pytest.fixture
def gears(app: Session) -> Session:
    """Give the gearing page of Towpath 36."""
    app.front.go("numbers.gearing")
    app.settle()
    return app


def place(app: Session, text: str) -> tuple[float, float]:
    """Return the middle of what is called so, brought into sight."""
    spot = app.find(text)
    spot.bring()
    app.settle()
    spot = app.find(text)
    return spot.x + spot.width / 2, spot.y + spot.height / 2


@pytest.mark.parametrize("size", SIZES, ids=str)
def test_a_touched_stepper_stays_where_it_is_to_the_pixel(gears: Session, size: tuple[int, int]) -> None:
    gears.resize(*size)
    before = place(gears, "Motor pulley, one more")
    for name in ("one more", "one more", "one less", "one less"):
        gears.tap(f"Motor pulley, {name}")
        gears.settle()
        spot = gears.find("Motor pulley, one more")
        assert (spot.x + spot.width / 2, spot.y + spot.height / 2) == before


def test_growth_above_the_touched_block_is_taken_up_by_the_scroll(app: Session, monkeypatch: Any) -> None:
    show(app, monkeypatch, growing)
    at = place(app, "Number, one more")
    for count in range(4):
        finger = Finger(app, *at)
        app.frame(2)
        finger.up()
        app.settle()
        spot = app.find("Number, one more")
        assert (spot.x + spot.width / 2, spot.y + spot.height / 2) == pytest.approx(at, abs=0.01), count


def growing(world: Any) -> Page:
    """Return a page whose first block grows with each step of the last."""
    count = world.args.get("count", 0)
    more = Turn({"count": count + 1})
    blocks: tuple[Block, ...] = (
        Words(key="grows", text="More words than before. " * (1 + 6 * count)),
        *(Line(key=f"line {number}", title=f"Line {number}") for number in range(12)),
        Stepper(key="step", label="Number", value=str(count), more=more),
        *(Line(key=f"after {number}", title=f"After {number}") for number in range(12)),
    )
    return Page(title="Growing", blocks=blocks, places=False)


def show(app: Session, monkeypatch: Any, function: Callable[[Any], Page]) -> None:
    """Put a page of a test in place of the tension check."""
    real = page_function
    monkeypatch.setattr(
        "screens.front.page_function", lambda name: function if name == "ride.tension" else real(name)
    )
    app.front.go("ride.tension")
    app.settle()


def hold(app: Session, at: tuple[float, float], tremble: float) -> None:
    """Hold a finger down for three seconds, trembling by so much."""
    finger = Finger(app, *at)
    for number in range(180):
        turn = (number % 4 - 1.5) * tremble / 1.5
        finger.move(at[0] + turn, at[1] - turn)
    finger.up()
    app.settle()


def test_a_trembling_hold_steps_as_often_as_a_still_one(gears: Session) -> None:
    at = place(gears, "Wheel pulley, one more")
    hold(gears, at, 0.0)
    still = gears.state.world.trial["drive.wheel_teeth"].si
    gears.state.do(Drop())
    gears.settle()
    at = place(gears, "Wheel pulley, one more")
    hold(gears, at, 16.0)
    assert gears.state.world.trial["drive.wheel_teeth"].si == still > 50


def test_a_press_is_shown_in_the_next_frame_and_long_enough(gears: Session) -> None:
    at = place(gears, "Motor pulley, one more")
    view = gears.page.parts.at(*at)[0]
    finger = Finger(gears, *at)
    gears.frame()
    assert view.pressed
    finger.up()
    gears.frame()
    assert view.pressed
    gears.frame(seconds=0.12)
    gears.frame()
    assert not view.pressed


def test_a_bar_that_has_just_appeared_is_deaf_for_a_moment(gears: Session) -> None:
    gears.tap("Motor pulley, one more")
    spot = gears.find("Keep on board")
    middle = (spot.x + spot.width / 2, spot.y + spot.height / 2)
    gears.page.parts.deafen("foot")
    for seconds, kept in ((0.05, False), (0.4, True)):
        gears.frame(seconds=seconds)
        finger = Finger(gears, *middle)
        gears.frame(2)
        finger.up()
        gears.frame(2)
        assert (gears.state.saved.drive.motor_teeth.si == 17.0) == kept


def test_the_bars_of_a_trial_are_deaf_when_they_come(gears: Session) -> None:
    at = place(gears, "Motor pulley, one more")
    finger = Finger(gears, *at)
    gears.frame(2)
    finger.up()
    gears.frame()
    assert gears.find("Keep on board").wait > 0.2


def test_the_crown_stays_in_sight_while_the_keypad_is_open(gears: Session) -> None:
    for size in SIZES:
        gears.resize(*size)
        gears.tap("Wheel diameter")
        gears.settle()
        crown, keys = gears.page.parts.crown, gears.page.parts.foot[0]
        assert crown.y >= keys.top
        gears.key(27)
        gears.settle()


def test_no_key_moves_while_a_number_is_typed(app: Session) -> None:
    app.tap("TENSION CHECK")
    before = [(name, app.page.key(name).x, app.page.key(name).y) for name in "0123456789"]
    app.type("0.6")
    app.settle()
    assert [(name, app.page.key(name).x, app.page.key(name).y) for name in "0123456789"] == before


def test_it_is_said_what_is_wrong_once_the_typing_pauses(gears: Session) -> None:
    gears.tap("Wheel diameter")
    gears.type("978")
    said = "Wheel diameter: 50\u00a0mm to 250\u00a0mm."
    gears.frame(40)
    assert not gears.shows(said)
    gears.frame(12)
    assert gears.shows(said)
    gears.key(8)
    assert not gears.shows(said)


def test_a_key_of_ours_takes_no_second_mark_and_says_why(gears: Session) -> None:
    gears.tap("Wheel diameter")
    gears.keys("9.7")
    gears.keys(".")
    assert gears.page.entry.text == "9.7"
    assert gears.shows("There is already a decimal mark.")


def test_a_finger_that_moves_away_presses_nothing(gears: Session) -> None:
    at = place(gears, "Motor pulley, one more")
    finger = Finger(gears, *at)
    finger.move(at[0], at[1] + 60)
    finger.up()
    gears.settle()
    assert gears.state.world.trial == {}


def test_a_page_is_come_back_to_where_it_was_left(gears: Session) -> None:
    gears.tap("Motor constant (Kv)")
    gears.key(27)
    gears.settle()
    offset = gears.page.parts.panes[0].offset
    assert offset > 0
    gears.front.go("board")
    gears.settle()
    gears.key(27)
    gears.settle()
    assert gears.page.parts.panes[0].offset == pytest.approx(offset, abs=1.0)


def test_a_page_that_fails_says_so_and_back_leads_on(app: Session, monkeypatch: Any, caplog: Any) -> None:
    def broken(_world: Any) -> Page:
        raise KeyError("a fault of ours")

    show(app, monkeypatch, broken)
    assert app.shows("This page cannot be shown")
    app.tap("Back")
    assert app.page.title == "Ride"
    assert "cannot be shown" in caplog.text


def test_free_text_is_written_in_a_real_field(app: Session, monkeypatch: Any) -> None:
    def noting(world: Any) -> Page:
        text = world.typed.get("note", "")
        return Page(title="Note", blocks=(Field(key="note", label="What is not right", text=text),))

    show(app, monkeypatch, noting)
    app.tap("What is not right")
    app.page.writing.text = "Belt frayed"
    app.frame()
    app.page.close_writing()
    assert app.shows("Belt frayed")
    assert app.state.world.typed["note"] == "Belt frayed"


def test_a_page_goes_on_by_itself_but_not_under_a_finger(app: Session, monkeypatch: Any) -> None:
    show(app, monkeypatch, going_on)
    app.settle()
    assert app.shows("Step 3")
    finger = Finger(app, *place(app, "Hold me"))
    app.page.perform(Turn({"_step": 0}))
    app.frame(20)
    assert app.shows("Step 0")
    finger.up()
    app.settle()
    assert app.shows("Step 3")


def going_on(world: Any) -> Page:
    """Return a page that takes three steps by itself."""
    step = world.args.get("_step", 0)
    return Page(
        title="Going on",
        blocks=(Words(key="step", text=f"Step {step}"), Line(key="hold", title="Hold me", act=Turn({}))),
        then=Turn({"_step": step + 1}) if step < 3 else None,
    )


def test_textures_are_kept_up_to_a_bound(gears: Session) -> None:
    for scale in (1.0, 1.3, 1.6, 2.0):
        gears.state.set_person(text=scale)
        gears.settle()
    assert 0 < written.sheets <= MOST_SHEETS
    assert written.large_pixels <= MOST_PIXELS


@pytest.mark.usefixtures("app")
def test_texts_stand_side_by_side_on_few_textures() -> None:
    kept, places, sheets = Written(), set(), []
    first = kept(("One",), 16.0, False, "left")  # noqa: FBT003  (as it is painted)
    assert kept(("One",), 16.0, False, "left") is first  # noqa: FBT003  (the same)
    for number in range(5000):
        one = kept((f"Text {number}",), 16.0, False, "left")  # noqa: FBT003  (the same)
        assert one.height == first.height
        if kept.sheet not in sheets:
            sheets.append(kept.sheet)
        places.add((len(sheets), *one.tex_coords))
    # None stands where another one stands, and the oldest sheets have gone.
    assert len(places) == 5000
    assert len(sheets) > kept.sheets == MOST_SHEETS
    assert kept(("One",), 16.0, False, "left") is not first  # noqa: FBT003  (the same)
    tall = kept(tuple(f"Line {number}" for number in range(40)), 16.0, False, "left")  # noqa: FBT003  (the same)
    assert kept.large_pixels == tall.width * tall.height


@pytest.mark.usefixtures("app")
def test_what_is_no_longer_painted_is_let_go_at_once() -> None:
    """Python's great sweep is rare: what only it finds kept textures, half a megabyte each, page after page."""

    def alive() -> int:
        return sum(type(one) is Mesh for one in get_objects())

    box, ink = Box(0, 0, 90, 40, fill="panel"), Ink("A", ("A",), 0, 0, 9, 18, 16, bold=False, tone="text")
    canvas = Canvas()
    painted = paint.Painted(canvas)
    disable()
    try:
        before = alive()
        for _ in range(20):
            painted.show(Laid(90, 40, (box, ink)), again=False)
            painted.show(Laid(90, 40, (box,)), again=False)
        assert alive() == before + 1
    finally:
        enable()


def test_each_page_is_a_function_of_a_module_that_is_found() -> None:
    assert all(callable(page_function(name)) for name in PAGES)


def test_a_trial_is_seen_from_page_to_page(gears: Session) -> None:
    gears.tap("Motor pulley, one more")
    gears.front.place("numbers")
    gears.settle()
    assert gears.shows("Trial open")
    gears.tap("Gearing and speed")
    gears.tap("Top speed, loaded")
    assert gears.page.title == "Working"
    gears.tap("Back")
    gears.tap("Drop the trial")
    gears.tap("Undo")
    assert gears.shows("17\u00a0teeth")


def test_a_closed_app_leaves_no_page_behind(app: Session) -> None:
    """What outlives it, as the theme does, must not hold it: it would be measured again at each change of text size."""
    app.front.go("numbers.gearing")
    app.settle()
    page = ref(app.page)
    app.restart(hours=1)
    collect()
    assert page() is None


def test_what_did_not_change_is_not_painted_again_though_it_moves(app: Session, monkeypatch: Any) -> None:
    painted: list[str] = []
    real = paint._inks  # noqa: SLF001  (what is painted is seen nowhere else)

    def seen(canvas: Any, marks: Any, height: float) -> None:
        painted.extend(mark.text for mark in marks if mark.text)
        real(canvas, marks, height)

    monkeypatch.setattr(paint, "_inks", seen)
    show(app, monkeypatch, shifting)
    assert {"Number", "0", "Line 1"} <= set(painted)
    painted.clear()
    app.tap("Number, one more")
    app.settle()
    # The texts of the block that changed and of the new one; the lines that moved are left as they are.
    assert set(painted) == {"Number", "1", "New"}


def shifting(world: Any) -> Page:
    """Return a page on which a block appears over the others."""
    count = world.args.get("count", 0)
    blocks: tuple[Block, ...] = (
        Stepper(key="step", label="Number", value=str(count), more=Turn({"count": count + 1})),
        *((Words(key="new", text="New"),) if count else ()),
        *(Line(key=f"line {number}", title=f"Line {number}") for number in range(4)),
    )
    return Page(title="Shifting", blocks=blocks)


def test_the_crown_begins_where_what_is_under_it_begins(gears: Session) -> None:
    for size in ((915, 412), (800, 1280), (360, 640)):
        gears.resize(*size)
        paper = gears.page
        assert paper.parts.crown.x == pytest.approx(paper.parts.panes[0].x, abs=1), size


@pytest.mark.parametrize("size", [(320, 568), (360, 640)], ids=str)
def test_a_row_that_is_entered_stays_in_sight_over_the_keypad(gears: Session, size: tuple[int, int]) -> None:
    gears.resize(*size)
    spot = gears.find("Wheel diameter")
    pane = spot.part
    # The row lies at the foot of the page, where the keypad will rise.
    pane.to(spot.down + spot.height - pane.height)
    gears.settle()
    gears.tap("Wheel diameter")
    gears.settle()
    row = gears.find("Wheel diameter")
    # Where a pane is scrolled to is a share of its height: the last digit of a pixel is rounding.
    assert round(row.y, 6) >= gears.page.parts.foot[0].top


def test_the_units_of_one_value_do_not_stand_under_the_next(app: Session) -> None:
    app.front.go("numbers.range")
    app.settle()
    app.tap("Temperature of the cells")
    app.tap("Unit")
    assert app.page.entering.choosing
    app.front.perform(Ask("load.drag_area"))
    app.settle()
    assert not app.page.entering.choosing
    app.tap("7")
    assert app.page.entry.text == "7"


def test_a_finger_that_slides_on_the_crown_scrolls_what_is_under_it(gears: Session) -> None:
    """With large text half of a small window is crown, and nothing moved there."""
    gears.resize(320, 568)
    crown, pane = gears.page.parts.crown, gears.page.parts.panes[0]
    finger = Finger(gears, crown.center_x, crown.y + 8)
    finger.move(crown.center_x, crown.y + 28)
    assert pane.offset == 0.0
    finger.move(crown.center_x, crown.y + 132)
    finger.up()
    gears.settle()
    assert pane.offset == pytest.approx(100.0)
    finger = Finger(gears, crown.center_x, crown.y + 40)
    finger.move(crown.center_x, crown.y - 300)
    finger.up()
    gears.settle()
    assert pane.offset == 0.0
