"""The paper by a hardware keyboard: Tab, arrows, Enter, Escape and Ctrl+F, on a wide window of a desktop."""

import pytest

from screens.paper.view import RING
from tests.screens.session import Session

TAB, ENTER, ESCAPE, UP, DOWN, RIGHT, LEFT = 9, 13, 27, 273, 274, 275, 276
WIDE = (1200, 900)


@pytest.fixture
def gears(app: Session) -> Session:
    """Give the gearing page of Towpath 36 on a desktop."""
    app.resize(*WIDE)
    app.front.go("numbers.gearing")
    app.settle()
    return app


def on(app: Session) -> str:
    """Return what the keyboard is on."""
    stop = app.page.focused.area()
    return "" if stop is None else str(stop[1].name)


def through(app: Session, key: int = TAB, *modifiers: str) -> list[str]:
    """Return what the keyboard comes to until it is where it began."""
    app.key(key, *modifiers)
    first, names = on(app), []
    while not names or on(app) != first:
        names.append(on(app))
        app.key(key, *modifiers)
        assert len(names) < 200
    return names


def test_tab_comes_to_everything_once_and_through_one_pane_before_the_other(gears: Session) -> None:
    names = through(gears)
    parts = gears.page.parts
    assert parts.panes[1].opacity == 1
    wanted = {
        touch.name
        for block, touch in parts.areas()
        if not touch.part.startswith("key") and touch.part not in ("less", "more")
    }
    assert set(names) == wanted
    assert names[:2] == ["Motor pulley", "Wheel pulley"]
    first, second = (
        [touch.name for laid in pane.laids for touch in laid.touches] for pane in parts.panes[:2]
    )
    places = [0 if name in first else 1 for name in names if name in first or name in second]
    assert places == sorted(places)
    assert through(gears, TAB, "shift") == names[::-1]


def test_the_frame_around_it_is_painted_and_in_sight(gears: Session) -> None:
    for _ in range(len(through(gears)) // 2):
        gears.key(TAB)
    gears.settle()
    framed = [view for view, _block in gears.page.parts.views() if view.ringed]
    assert len(framed) == 1
    name = on(gears)
    spot = next(one for one in gears.page.spots() if one.touch is not None and one.text == name)
    assert spot.part.y - 1 <= spot.y
    assert spot.y + spot.height <= spot.part.top + 1
    assert RING >= 2
    gears.tap("Motor pulley, one more")
    assert on(gears) == ""


def test_arrows_step_a_number_and_go_on_elsewhere(gears: Session) -> None:
    gears.key(TAB)
    for key, teeth in ((RIGHT, 17), (UP, 18), (LEFT, 17), (DOWN, 16), (DOWN, 15)):
        gears.key(key)
        assert gears.state.world.board.drive.motor_teeth.si == teeth
        assert on(gears) == "Motor pulley"
    gears.key(TAB)
    assert on(gears) == "Wheel pulley"
    gears.key(TAB)
    here = on(gears)
    gears.key(DOWN)
    assert on(gears) not in (here, "Wheel pulley")
    gears.key(UP)
    assert on(gears) == here


def test_a_value_is_entered_by_typing_where_one_is_and_tab_goes_on_to_the_next(gears: Session) -> None:
    gears.key(TAB)
    assert gears.page.entry is None
    gears.type("18")
    assert gears.page.entry.label == "Motor pulley"
    gears.key(TAB)
    assert gears.page.entry.label == "Wheel pulley"
    gears.key(TAB, "shift")
    assert gears.page.entry.label == "Motor pulley"
    gears.key(ENTER)
    assert gears.page.entry is None
    assert gears.state.world.trial["drive.motor_teeth"].si == 18.0


def test_enter_opens_what_it_is_on_and_escape_goes_back_a_step_at_a_time(gears: Session) -> None:
    gears.key(TAB)
    gears.key(ENTER)
    assert gears.page.entry.label == "Motor pulley"
    gears.key(ESCAPE)
    assert gears.page.entry is None
    assert gears.page.title == "Gearing and speed"
    gears.key(ESCAPE)
    assert gears.page.title == "Ride"


def test_beside_an_open_entry_every_bar_and_row_can_be_come_to(app: Session) -> None:
    app.tap("TENSION CHECK")
    names = through(app)
    assert "Working of the target" in names
    assert any("save" in name.lower() for name in names) or app.page.page.foot.main.act is None
    app.type("0.92")
    assert app.page.entry.text == "0.92"


def test_ctrl_f_opens_the_search_and_its_field_from_any_page(gears: Session) -> None:
    gears.key(ord("f"), "ctrl")
    assert gears.page.title == "Search"
    assert gears.page.writing is not None
    gears.page.writing.text = "belt"
    gears.settle()
    gears.key(ord("f"), "ctrl")
    assert [step.page for step in gears.front.world.trail].count("search") == 1
    gears.key(ESCAPE)
    assert gears.page.writing is None
    assert gears.page.title == "Search"
    assert gears.front.world.typed["search"] == "belt"
    gears.key(ESCAPE)
    assert gears.page.title == "Gearing and speed"


def test_tab_leaves_the_field_of_text_for_what_follows_it(app: Session) -> None:
    app.key(ord("f"), "ctrl")
    app.key(TAB)
    assert app.page.writing is None
    assert on(app) != ""


@pytest.mark.parametrize("before", [(), (TAB, TAB)])
def test_letters_go_to_the_field_of_a_page_that_enters_no_number(
    app: Session, before: tuple[int, ...]
) -> None:
    """The field had to be touched before the search heard a letter."""
    app.tap("Search")
    for key in before:
        app.key(key)
    app.type("belt")
    assert app.page.writing.text == "belt"
    app.settle()
    assert app.front.world.typed["search"] == "belt"
    app.key(ESCAPE)
    app.type("s")
    assert app.front.world.typed["search"] == "belts"


def test_letters_go_to_the_number_where_one_is_entered_beside_a_field(app: Session) -> None:
    app.front.go("log.ride")
    app.settle()
    app.type("12")
    assert (app.page.writing, app.page.entry.text) == (None, "12")


def test_what_is_written_stays_where_it_is_when_its_field_is_touched(app: Session) -> None:
    app.tap("Search")
    app.type("belt")
    app.settle()
    line = app.page.writing
    middle = line.top - line.padding[1] - line.line_height / 2
    app.key(ESCAPE)
    app.settle()
    block = next(spot for spot in app.page.spots() if spot.touch is not None and spot.touch.part == "field")
    assert middle == pytest.approx(block.y + block.height / 2, abs=1.0)
