"""How the phone is set: dark pages, and the size of text. Where it does not say, it is day and text has the ordinary size."""

from typing import Any

from logic.person import TEXT_SCALES, Person
from screens.phone.java import activity, on_android

NIGHT_MASK, NIGHT_YES = 0x30, 0x20
"""Bits of Android's Configuration.uiMode (recalled from memory): the part that tells of night, and its yes."""


def _set_to(name: str, otherwise: float) -> Any:  # noqa: ANN401  (a number of Java's)
    """Return what Android's Configuration holds under a name."""
    try:
        return getattr(activity().getResources().getConfiguration(), name) if on_android() else otherwise
    except Exception:  # noqa: BLE001  (whatever Java raises, the ordinary is a good one)
        return otherwise


def is_dark() -> bool:
    """Tell whether the phone shows its own pages dark now."""
    return int(_set_to("uiMode", 0)) & NIGHT_MASK == NIGHT_YES


def theme_of(person: Person) -> str:
    """Return the name of the palette a person sees now."""
    if person.sun:
        return "sun"
    if person.theme != "phone":
        return person.theme
    return "night" if is_dark() else "day"


def text_scale() -> float:
    """Return the one of the app's text scales that is nearest to the phone's: what it begins with until the person chooses."""
    wanted = float(_set_to("fontScale", TEXT_SCALES[0]))
    return min(TEXT_SCALES, key=lambda scale: abs(scale - wanted))
