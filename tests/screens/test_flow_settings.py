"""Settings by touch: units, decimal mark, theme, text size, rider and tools act at once and stay."""

from kivy.core.window import Window

from screens.theme import theme
from tests.screens.audit import faults
from tests.screens.session import Session


def settings(app: Session) -> None:
    """Open the settings from the board chip."""
    app.tap("Board Towpath 36")
    app.tap("Settings")


def gearing(app: Session) -> None:
    """Open gearing from wherever one is."""
    while app.shell.back():
        app.frame()
    app.tap("Numbers")
    app.tap("Gearing and speed")


def test_inch_shows_miles_and_pounds_and_leaves_what_was_typed(app: Session) -> None:
    settings(app)
    app.tap("Inch and pound")
    gearing(app)
    assert app.page.page.crown.unit == "mph"
    assert app.row("Push from standstill").unit == "lbf"
    # Typed in millimetres, shown as typed.
    assert app.row("Wheel diameter").value == "100\u00a0mm"
    app.key(27)
    app.tap("Ride")
    app.tap("Tension check")
    # Ours: 107.6 N / 4.44822 = 24.2 lbf.
    assert app.shows("Set to 24.2\u00a0lbf")
    app.restart(hours=1)
    assert app.state.person.system == "inch"


def test_the_keypad_starts_with_the_unit_of_the_system(app: Session) -> None:
    settings(app)
    app.tap("Inch and pound")
    app.key(27)
    app.tap("Wheel diameter")
    app.tap("Take this value out")
    app.tap("Wheel diameter")
    app.keys("3.8")
    app.tap("Save")
    assert app.row("Wheel diameter").value == "3.8\u00a0in"
    assert round(app.state.saved.drive.wheel_diameter.si, 9) == 0.09652


def test_the_comma_is_on_the_key_and_in_every_number(app: Session) -> None:
    settings(app)
    app.tap("Comma: 1,5")
    gearing(app)
    assert app.row("Gear ratio").number == "2,5"
    assert app.row("Unloaded, nominal pack").number == "43,8"
    app.tap("Wheel diameter")
    app.keys("97,5")
    assert app.row("Wheel diameter").value == "97,5\u00a0mm"
    app.tap("Motor pulley, one more")
    differences = [change for block in app.page.page.blocks if (change := getattr(block, "change", ""))]
    assert differences
    assert not [text for text in differences if "." in text]
    app.tap("Done")
    app.tap("Gear ratio")
    assert app.page.page.crown.number == "2,35"


def test_theme_and_text_change_while_a_number_is_typed(app: Session) -> None:
    app.tap("Tension check")
    app.keys("0.92")
    before = theme.body
    app.state.set_person(text=2.0)
    app.settle()
    assert theme.body > before
    assert app.page.entry.text == "0.92"
    assert app.shows("JUST RIGHT")
    assert faults() == []
    for name in ("night", "sun", "day"):
        app.state.set_person(theme=name)
        app.settle()
        assert list(Window.clearcolor) == list(theme.ground)
        assert app.page.entry.text == "0.92"
        assert faults() == []
    app.state.set_person(text=1.0)
    app.settle()
    assert theme.body == before


def test_theme_and_text_size_are_a_tap_and_outlive_a_restart(app: Session) -> None:
    settings(app)
    app.tap("Night")
    app.tap("160\u202f%")
    assert (theme.name, theme.scale) == ("night", 1.6)
    app.restart(hours=1)
    assert (theme.name, theme.scale) == ("night", 1.6)
    app.state.set_person(theme="day", text=1.0)


def test_a_finer_tool_narrows_the_band(app: Session) -> None:
    settings(app)
    before = app.state.person
    app.tap("Fish or kitchen scale, 10 g steps")
    app.tap("Feeler gauge")
    assert app.state.person != before
    while app.shell.back():
        app.frame()
    app.tap("Tension check")
    app.type("0.92")
    tension = next(text for text in app.texts() if "±\u00a0" in text)
    error = float(tension.rpartition("±\u00a0")[2].split("\u00a0")[0])
    assert error < 21.9


def test_the_rider_is_a_setting(app: Session) -> None:
    settings(app)
    app.tap("Rider with helmet and bag")
    app.keys("95")
    app.tap("Save")
    assert app.shows("95\u00a0kg")
    assert app.state.person.rider.si == 95.0
    gearing(app)
    assert app.row("Rider").value == "95\u00a0kg"


def test_a_rider_that_cannot_be_is_not_used(app: Session) -> None:
    settings(app)
    before = app.state.person.rider
    app.tap("Rider with helmet and bag")
    app.keys("9500")
    app.shell.back()
    app.settle()
    row = app.row("Rider with helmet and bag")
    assert (row.value, row.detail) == ("80\u00a0kg", "9500 not used")
    assert app.state.person.rider == before
