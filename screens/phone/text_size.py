"""The size of text that the phone is set to: what the app begins with until the person chooses one."""

from logic.person import TEXT_SCALES
from screens.phone.java import activity, on_android


def text_scale() -> float:
    """Return the nearest of the app's text scales; 1.0 off Android and where it cannot be read."""
    if not on_android():
        return TEXT_SCALES[0]
    try:
        wanted = float(activity().getResources().getConfiguration().fontScale)
    except Exception:  # noqa: BLE001  (whatever Java raises, the ordinary size is a good one)
        return TEXT_SCALES[0]
    return min(TEXT_SCALES, key=lambda scale: abs(scale - wanted))
