"""Words said aloud by the phone's own voice, where it has one."""

from screens.phone.service import service

NO_VOICE = "This phone has no offline voice. Add one in the phone's settings to hear items."


def say(text: str) -> bool:
    """Say a text; return whether the phone could. Nothing is listened to."""
    try:
        service("tts").speak(text)
    except Exception:  # noqa: BLE001  (a voice that is missing fails in as many ways as there are phones)
        return False
    return True
