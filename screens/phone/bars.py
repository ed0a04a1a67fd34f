"""What the system's bars, the notch and the keyboard cover of the window, and the icons of the bars, light or dark.

From Android 15 on the window lies under the bars; before, the system keeps them off it. So the room to leave is what the
insets say less what already lies outside the surface that the app draws on.
"""

from typing import Any, NamedTuple

from screens.phone.java import activity, amiss, java, level, on_android, on_androids_thread

TYPED_FROM, LIGHT_NAVIGATION_FROM = 30, 26
"""Levels of Android from which insets are told apart by what covers, and from which the lower bar can be light."""
LIGHT_BARS = 8 | 16
"""Dark icons on the upper and the lower bar, from level 30 on."""
LIGHT_STATUS, LIGHT_NAVIGATION = 0x2000, 0x10
"""The same before."""


class Sides(NamedTuple):
    """Pixels at each side of the window."""

    left: float = 0.0
    top: float = 0.0
    right: float = 0.0
    bottom: float = 0.0


NONE = Sides()


class Covered(NamedTuple):
    """What is covered by bars and notch, and how much of the bottom by the keyboard where Android tells."""

    bars: Sides = NONE
    keyboard: float = 0.0


def room(inset: Sides, outside: Sides) -> Sides:
    """Return what is left to be kept free: the insets less what lies outside the surface already.

    >>> room(Sides(0, 63, 0, 126), Sides(0, 63, 0, 126))
    Sides(left=0.0, top=0.0, right=0.0, bottom=0.0)
    """
    return Sides(*(max(0.0, float(one) - other) for one, other in zip(inset, outside, strict=True)))


def covered() -> Covered:
    """Return what is covered now, in pixels of the window; nothing off Android and where it cannot be read."""
    if not on_android():
        return Covered()
    with amiss("the bars cannot be read"):
        return _covered()
    return Covered()


def _covered() -> Covered:
    view = activity().getWindow().getDecorView()
    insets = view.getRootWindowInsets()
    if insets is None:
        return Covered()
    outside = _outside(view)
    if level() < TYPED_FROM:
        stable = (getattr(insets, f"getStableInset{side}")() for side in ("Left", "Top", "Right", "Bottom"))
        return Covered(room(Sides(*stable), outside))
    kinds = java("android.view.WindowInsets$Type")
    bars = _sides(insets.getInsets(kinds.systemBars() | kinds.displayCutout()))
    keyboard = _sides(insets.getInsets(kinds.ime()))
    return Covered(room(bars, outside), room(keyboard, outside).bottom)


def tells_keyboard() -> bool:
    """Tell whether this Android says how high the keyboard stands."""
    try:
        return on_android() and level() >= TYPED_FROM
    except Exception:  # noqa: BLE001  (whatever Java raises)
        return False


def _sides(insets: Any) -> Sides:  # noqa: ANN401  (android.graphics.Insets)
    return Sides(insets.left, insets.top, insets.right, insets.bottom)


def _outside(view: Any) -> Sides:  # noqa: ANN401  (a View)
    """Return how much of the whole window lies outside the surface at each side."""
    surface = java("org.kivy.android.PythonActivity").getSurface()
    if surface is None:
        return NONE
    place = [0, 0]
    surface.getLocationInWindow(place)
    left, top = place
    return Sides(
        max(0, left),
        max(0, top),
        max(0, view.getWidth() - left - surface.getWidth()),
        max(0, view.getHeight() - top - surface.getHeight()),
    )


def dress(*, dark: bool) -> None:
    """Give the bars icons that can be seen on a dark or a light page."""
    if not on_android():
        return
    with amiss("the bars stay as they are"):
        on_androids_thread(lambda: _dress(dark=dark))


def _dress(*, dark: bool) -> None:
    window = activity().getWindow()
    if level() >= TYPED_FROM:
        controller = window.getInsetsController()
        if controller is not None:
            controller.setSystemBarsAppearance(0 if dark else LIGHT_BARS, LIGHT_BARS)
        return
    view = window.getDecorView()
    light = LIGHT_STATUS | (LIGHT_NAVIGATION if level() >= LIGHT_NAVIGATION_FROM else 0)
    view.setSystemUiVisibility(view.getSystemUiVisibility() & ~light | (0 if dark else light))
