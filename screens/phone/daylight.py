"""Whether the phone is set to dark, and which theme that makes; where the phone does not say, it is day."""

from logic.person import Person

NIGHT_MASK, NIGHT_YES = 0x30, 0x20
"""Bits of Android's Configuration.uiMode (recalled from memory): the part that tells of night, and its yes."""


def is_dark() -> bool:
    """Tell whether the phone shows its own pages dark now."""
    try:
        from jnius import autoclass  # noqa: PLC0415  (there on a phone only)

        activity = autoclass("org.kivy.android.PythonActivity").mActivity
        mode = int(activity.getResources().getConfiguration().uiMode)
    except Exception:  # noqa: BLE001  (no such phone, no such call: all the same here)
        return False
    return mode & NIGHT_MASK == NIGHT_YES


def theme_of(person: Person) -> str:
    """Return the name of the palette a person sees now."""
    if person.sun:
        return "sun"
    if person.theme != "phone":
        return person.theme
    return "night" if is_dark() else "day"
