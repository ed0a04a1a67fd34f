"""One note a day at most, where the phone shows notes. Android's own, since plyer's is refused from Android 12 on."""

from collections.abc import Callable

from kivy.logger import Logger

from screens.phone import permission
from screens.phone.java import activity, cast, java, level, on_android, words
from screens.phone.service import service
from screens.tongue import _

POST = "android.permission.POST_NOTIFICATIONS"
ASKED_FROM, CHANNELS_FROM = 33, 26
"""Levels of Android from which leave is asked for, and from which a note has a channel."""
CHANNEL = "due"
ORDINARY, ONLY = 3, 1
"""How important the channel is, and the number of the note: the next one takes its place."""
IMMUTABLE, CURRENT = 0x04000000, 0x08000000

NOT_ALLOWED = _("The phone did not allow notes. What is due stands in the app all the same.")


def allow(answered: Callable[[bool], None]) -> None:
    """Ask whether notes may be shown, where the phone wants to be asked."""
    try:
        wanted = on_android() and level() >= ASKED_FROM
    except Exception:  # noqa: BLE001  (whatever Java raises: the note itself will tell)
        wanted = False
    if wanted:
        permission.ask(POST, answered)
    else:
        answered(True)  # noqa: FBT003  (yes)


def notice(title: str, text: str) -> bool:
    """Show a note outside the app; return whether the phone could."""
    try:
        if on_android():
            return _on_android(title, text)
        service("notification").notify(title=title, message=text, app_name="Deckhand")
    except Exception as problem:  # noqa: BLE001  (refused, not there, not allowed: the badge in the app stands for it)
        Logger.info("Deckhand: no note: %s", problem)
        return False
    return True


def _on_android(title: str, text: str) -> bool:
    here, context = activity(), java("android.content.Context")
    manager = cast("android.app.NotificationManager", here.getSystemService(context.NOTIFICATION_SERVICE))
    if not manager.areNotificationsEnabled():
        return False
    builder = java("android.app.Notification$Builder")
    if level() >= CHANNELS_FROM:
        channel = java("android.app.NotificationChannel")
        manager.createNotificationChannel(channel(CHANNEL, words(_("What is due")), ORDINARY))
        note = builder(here, CHANNEL)
    else:
        note = builder(here)
    back = java("android.content.Intent")(here, here.getClass())
    tapped = java("android.app.PendingIntent").getActivity(here, 0, back, IMMUTABLE | CURRENT)
    note.setSmallIcon(here.getApplicationInfo().icon)
    note.setContentTitle(words(title))
    note.setContentText(words(text))
    note.setContentIntent(tapped)
    note.setAutoCancel(True)
    manager.notify(ONLY, note.build())
    return True
