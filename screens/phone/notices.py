"""One note a day at most, where the phone shows notes."""

from screens.phone.service import service


def notice(title: str, text: str) -> bool:
    """Show a note outside the app; return whether the phone could."""
    try:
        service("notification").notify(title=title, message=text, app_name="Deckhand")
    except Exception:  # noqa: BLE001  (refused, not there, not allowed: the badge in the app stands for it)
        return False
    return True
