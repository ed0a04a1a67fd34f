"""Handing a text on: by the phone's own sheet, else over the clipboard."""

import os
from collections.abc import Callable

SHARED, COPIED, NEITHER = "shared", "copied", "neither"


def share_text(
    text: str,
    title: str,
    *,
    sheet: Callable[[str, str], None] | None = None,
    copy: Callable[[str], None] | None = None,
) -> str:
    """Return how a text was handed on: "shared", "copied" or "neither". Nothing is raised.

    `sheet` and `copy` stand in for the phone's own in tests.
    """
    for way, act in ((SHARED, sheet or _sheet), (COPIED, lambda text, _: (copy or _copy)(text))):
        try:
            act(text, title)
        except Exception:  # noqa: BLE001, S112  (whatever a phone's service raises, the next way is tried)
            continue
        return way
    return NEITHER


def _sheet(text: str, title: str) -> None:
    """Open Android's own sheet. Raises whatever is amiss; on other systems there is none."""
    if "ANDROID_ARGUMENT" not in os.environ:
        raise NotImplementedError
    from jnius import autoclass, cast  # noqa: PLC0415  (there is no such module off Android)

    intent_class, string = autoclass("android.content.Intent"), autoclass("java.lang.String")
    intent = intent_class(intent_class.ACTION_SEND)
    intent.setType("text/plain")
    intent.putExtra(intent_class.EXTRA_TEXT, cast("java.lang.CharSequence", string(text)))
    chooser = intent_class.createChooser(intent, cast("java.lang.CharSequence", string(title)))
    autoclass("org.kivy.android.PythonActivity").mActivity.startActivity(chooser)


def _copy(text: str) -> None:
    from kivy.core.clipboard import Clipboard  # noqa: PLC0415  (opened when it is wanted, not at the start)

    Clipboard.copy(text)


SAID = {
    SHARED: "Handed to the phone: choose where it goes.",
    COPIED: "Copied: paste it where it is wanted.",
    NEITHER: "This phone could neither hand it on nor copy it.",
}
"""What is said of each way."""


def share(text: str, title: str) -> str:
    """Hand a text on and return the sentence that says where it went."""
    return SAID[share_text(text, title)]
