"""Settings by touch: theme and text size act at once and stay."""

from collections.abc import Iterator
from typing import Any

from kivy.core.window import Window
from kivy.graphics import Color
from kivy.utils import get_color_from_hex

from screens.theme import palettes, theme
from tests.pages import test_layout
from tests.screens.session import Session


def faults(app: Session) -> Iterator[str]:
    """Yield what is cut or too small to touch on the page in front."""
    for _part, laid in test_layout.laids(app.front.page, 412, 915, theme.scale):
        yield from test_layout.faults(laid)


def off_palette(app: Session) -> list[list[float]]:
    """The colours on the page that are not of the theme in force; how see-through they are does not count."""
    of_theme = [
        get_color_from_hex(shade) for part in (theme.name, "signal") for shade in palettes()[part].values()
    ]
    allowed = {tuple(round(part, 3) for part in shade[:3]) for shade in of_theme}
    shown = [view for view, _block in app.page.parts.views() if view.opacity and view.width]
    found = [one.rgba for view in shown for one in colours_in(view.canvas)]
    return [shade for shade in found if tuple(round(part, 3) for part in shade[:3]) not in allowed]


def colours_in(canvas: Any) -> Iterator[Color]:
    """Yield what a canvas is painted with."""
    for one in canvas.children:
        if isinstance(one, Color):
            yield one
        elif hasattr(one, "children"):
            yield from colours_in(one)


def settings(app: Session) -> None:
    """Open the settings from the board chip."""
    app.tap("Board Towpath 36")
    app.tap("Settings")


def test_theme_and_text_change_while_a_number_is_typed(app: Session) -> None:
    app.tap("TENSION CHECK")
    app.keys("0.92")
    app.state.set_person(text=2.0)
    app.settle()
    assert theme.scale == 2.0
    assert app.page.entry.text == "0.92"
    assert app.shows("JUST RIGHT")
    assert list(faults(app)) == []
    for name in ("night", "sun", "day"):
        app.state.set_person(theme=name)
        app.settle()
        assert list(Window.clearcolor) == list(theme.colour("ground"))
        # What stood on the page kept the colours of before: light words on a light ground.
        assert off_palette(app) == []
        assert app.page.entry.text == "0.92"
        assert list(faults(app)) == []
    app.state.set_person(text=1.0)
    app.settle()
    assert theme.scale == 1.0


def test_a_text_that_is_being_written_takes_another_theme_and_text_size(app: Session) -> None:
    """The field stayed light on dark on a light page, and its words were cut."""
    app.front.go("log.note")
    app.tap("A few words")
    app.page.writing.text = "Belt frayed"
    app.state.set_person(theme="night", text=2.0)
    app.settle()
    assert app.page.writing.text == "Belt frayed"
    assert list(app.page.writing.foreground_color) == list(theme.colour("text"))
    assert list(app.page.writing.background_color) == list(theme.colour("panel"))
    assert app.page.writing.font_size <= app.page.writing.height
    large = app.page.writing.font_size
    app.state.set_person(theme="day", text=1.0)
    app.settle()
    assert list(app.page.writing.foreground_color) == list(theme.colour("text"))
    assert app.page.writing.font_size < large


def test_theme_and_text_size_are_a_tap_and_outlive_a_restart(app: Session) -> None:
    settings(app)
    app.tap("Night")
    app.tap("160\u202f%")
    assert (theme.name, theme.scale) == ("night", 1.6)
    app.restart(hours=1)
    assert (theme.name, theme.scale) == ("night", 1.6)
    app.state.set_person(theme="day", text=1.0)
