"""Finds text that is cut, off the edge or overlapped, and touch areas that are too small."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from kivy.core.window import Window
from kivy.uix.behaviors import ButtonBehavior
from kivy.uix.label import Label
from kivy.uix.scrollview import ScrollView
from kivy.uix.slider import Slider
from kivy.uix.textinput import TextInput

LEAST_TOUCH = 48
SLACK = 1.5
"""Pixels by which rounding may move an edge."""

type_of_tap = (ButtonBehavior, TextInput, Slider)


@dataclass(frozen=True)
class Box:
    """A rectangle in window pixels."""

    left: float
    bottom: float
    right: float
    top: float

    def meet(self, other: "Box") -> "Box":
        """Return the part both cover; empty when right is not right of left or top not above bottom."""
        return Box(
            max(self.left, other.left),
            max(self.bottom, other.bottom),
            min(self.right, other.right),
            min(self.top, other.top),
        )

    def over(self, slack: float) -> bool:
        """Tell whether it is wider and higher than a slack."""
        return self.right - self.left > slack and self.top - self.bottom > slack

    def holds(self, other: "Box") -> bool:
        """Tell whether another lies within, but for rounding."""
        return (
            other.left >= self.left - SLACK
            and other.bottom >= self.bottom - SLACK
            and other.right <= self.right + SLACK
            and other.top <= self.top + SLACK
        )


@dataclass(frozen=True)
class Seen:
    """A widget, where it is, what of it shows, and what it stands in."""

    widget: Any
    box: Box
    shown: Box
    scrolled: bool
    above: tuple[Any, ...]


def faults() -> list[str]:
    """Return a line for each fault on the screen now; none when all is well."""
    seen = [one for top in Window.children for one in _walk(top, _window_box(), scrolled=False, above=())]
    found = [fault for one in seen for fault in (*_text_faults(one), *_touch_faults(one))]
    return found + _overlaps(seen)


def _window_box() -> Box:
    return Box(0, 0, *Window.size)


def _box(widget: Any) -> Box:
    left, bottom = widget.to_window(*widget.pos)
    return Box(left, bottom, left + widget.width, bottom + widget.height)


def _walk(widget: Any, clip: Box, *, scrolled: bool, above: tuple[Any, ...]) -> Iterator[Seen]:
    if widget.opacity <= 0 or widget.width < 1 or widget.height < 1:
        return
    box = _box(widget)
    yield Seen(widget, box, box.meet(clip), scrolled, above)
    if isinstance(widget, ScrollView):
        clip, scrolled = clip.meet(box), True
    for child in widget.children:
        yield from _walk(child, clip, scrolled=scrolled, above=(*above, widget))


def name(widget: Any) -> str:
    """Return a widget's class and what it shows."""
    said = next(
        (
            getattr(widget, key)
            for key in ("text", "title", "label", "a11y_label")
            if getattr(widget, key, "")
        ),
        "",
    )
    return f"{type(widget).__name__} {said!r}"


def _glyphs(one: Seen) -> Box:
    wide, high = one.widget.texture_size
    middle = ((one.box.left + one.box.right) / 2, (one.box.bottom + one.box.top) / 2)
    return Box(middle[0] - wide / 2, middle[1] - high / 2, middle[0] + wide / 2, middle[1] + high / 2)


def _text_faults(one: Seen) -> Iterator[str]:
    label = one.widget
    if not isinstance(label, Label) or not label.text.strip():
        return
    if label.texture_size[0] > label.width + SLACK or label.texture_size[1] > label.height + SLACK:
        yield f"cut: {name(label)} needs {label.texture_size}, has {label.size}"
    if label.shorten and label.is_shortened:
        yield f"shortened: {name(label)}"
    glyphs, window = _glyphs(one), _window_box()
    if glyphs.left < -SLACK or glyphs.right > window.right + SLACK:
        yield f"off the side: {name(label)} at {glyphs}"
    if not one.scrolled and not window.holds(glyphs):
        yield f"off the screen: {name(label)} at {glyphs}"
    for over in reversed(one.above):
        if isinstance(over, ScrollView):
            break
        if isinstance(over, type_of_tap) and not _box(over).holds(glyphs):
            yield f"out of its frame: {name(label)} at {glyphs} in {name(over)} at {_box(over)}"


def _touch_faults(one: Seen) -> Iterator[str]:
    if not isinstance(one.widget, type_of_tap):
        return
    if one.widget.width < LEAST_TOUCH - 0.5 or one.widget.height < LEAST_TOUCH - 0.5:
        yield f"small: {name(one.widget)} is {one.widget.size}"
    if not one.scrolled and not _window_box().holds(one.box):
        yield f"off the screen: {name(one.widget)} at {one.box}"


def _overlaps(seen: list[Seen]) -> list[str]:
    leaves = []
    for one in seen:
        if isinstance(one.widget, type_of_tap):
            leaves.append((one, one.shown))
        elif isinstance(one.widget, Label) and one.widget.text.strip():
            leaves.append((one, _glyphs(one).meet(one.shown)))
    return [f"overlap: {name(one.widget)} and {name(other.widget)}" for one, other in _meeting(leaves)]


def _meeting(leaves: list[tuple[Seen, Box]]) -> Iterator[tuple[Seen, Seen]]:
    """Give each two that cover a common part and do not stand in one another; sorted, so that few are compared."""
    rising = sorted((leaf for leaf in leaves if leaf[1].over(0)), key=lambda leaf: leaf[1].bottom)
    for place, (one, box) in enumerate(rising):
        for other, second in rising[place + 1 :]:
            if second.bottom >= box.top:
                break
            apart = other.widget not in one.above and one.widget not in other.above
            if apart and box.meet(second).over(SLACK):
                yield one, other
