"""Every widget in every state, at each size and text scale: nothing cut, overlapped or too small."""

from collections.abc import Iterator
from typing import Any

import pytest
from kivy.core.window import Window
from kivy.uix.button import Button
from kivy.uix.floatlayout import FloatLayout
from kivy.uix.label import Label

from screens.driver import Driver
from screens.theme import theme
from tests.screens.audit import faults
from tests.screens.gallery import PAGES, Gallery

SIZES = ((320, 568), (412, 915), (800, 1280), (915, 412))
SCALES = (1.0, 1.3, 1.6, 2.0)


@pytest.fixture(scope="module")
def gallery() -> Iterator[Driver]:
    """Keep one app for the module."""
    driver = Driver(Gallery())
    yield driver
    theme.apply("day", 1.0)
    driver.stop()


# Night sets its text two points larger and changes nothing else that takes room: the largest text shows it.
@pytest.mark.parametrize(
    ("size", "scale", "name"),
    [(size, scale, "day") for size in SIZES for scale in SCALES] + [(size, 2.0, "night") for size in SIZES],
)
def test_no_widget_has_a_fault(gallery: Driver, size: tuple[int, int], scale: float, name: str) -> None:
    gallery.resize(*size)
    theme.apply(name, scale)
    found = []
    for page in PAGES:
        gallery.app.show(page)
        gallery.settle()
        found += [f"{page}: {fault}" for fault in faults()]
    assert found == []


def places(page: Any) -> list[tuple[float, ...]]:
    """Return where every widget of a page is."""
    return [(*widget.size, *widget.pos) for widget in page.walk(restrict=True)]


def test_sizes_follow_a_change_of_text_scale_and_come_back(gallery: Driver) -> None:
    gallery.resize(320, 568)
    theme.apply("day", 1.0)
    page = gallery.app.show("glove")
    gallery.settle()
    before = places(page)
    theme.apply("night", 2.0)
    gallery.settle()
    assert faults() == []
    assert places(page) != before
    theme.apply("day", 1.0)
    gallery.settle()
    assert places(page) == before


def bad_label() -> Label:
    """Return a label too small for its words."""
    return Label(text="tension", font_size=40, size_hint=(None, None), size=(60, 20), pos=(100, 100))


@pytest.mark.parametrize(
    ("word", "widgets"),
    [
        ("cut", lambda: [bad_label()]),
        (
            "off the side",
            lambda: [Label(text="tension", size_hint=(None, None), size=(100, 30), pos=(-60, 0))],
        ),
        (
            "off the screen",
            lambda: [Label(text="tension", size_hint=(None, None), size=(100, 30), pos=(0, -20))],
        ),
        ("small", lambda: [Button(text="a", size_hint=(None, None), size=(47, 48), pos=(9, 9))]),
        ("overlap", lambda: [Label(text="one"), Label(text="two")]),
        ("shortened", lambda: [Label(text="long " * 40, shorten=True, text_size=(80, 30))]),
    ],
)
def test_the_audit_sees_a_fault(gallery: Driver, word: str, widgets: Any) -> None:
    gallery.resize(320, 568)
    gallery.app.show("texts")
    Window.remove_widget(gallery.app.root)
    gallery.app.root = FloatLayout()
    for widget in widgets():
        gallery.app.root.add_widget(widget)
    Window.add_widget(gallery.app.root)
    gallery.settle()
    assert any(fault.startswith(word) for fault in faults()), faults()
