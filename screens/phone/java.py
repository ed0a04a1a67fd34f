"""The way to Android's own parts. Off a phone there is none: nothing is imported until it is asked for.

Each adapter beside this module holds to three rules. It raises nothing: what a phone lacks or refuses comes back as a sentence.
What Android answers on a thread of its own is handed to the app's thread by the clock. What must run on Android's thread is
sent there and not waited for.
"""

import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

from kivy.clock import Clock
from kivy.logger import Logger


def on_android() -> bool:
    """Tell whether this is an Android phone."""
    return "ANDROID_ARGUMENT" in os.environ


def java(name: str) -> Any:  # noqa: ANN401  (a class of Android's)
    """Return a class of Java. Raises ImportError off a phone, JavaException for one that this Android lacks."""
    from jnius import autoclass  # noqa: PLC0415  (there is none off a phone)

    return autoclass(name)


def cast(name: str, thing: object) -> Any:  # noqa: ANN401  (as above)
    """Return a thing as one of a class that it is: what Java tells apart by its type wants it said."""
    from jnius import cast as as_class  # noqa: PLC0415  (as above)

    return as_class(name, thing)


def words(text: str) -> Any:  # noqa: ANN401  (as above)
    """Return a text where Java wants a CharSequence: as a plain text it would not be found."""
    return cast("java.lang.CharSequence", java("java.lang.String")(text))


def activity() -> Any:  # noqa: ANN401  (as above)
    """Return the activity that the app runs in."""
    return java("org.kivy.android.PythonActivity").mActivity


def level() -> int:
    """Return the level of Android's parts, 24 for Android 7."""
    return int(java("android.os.Build$VERSION").SDK_INT)


@contextmanager
def amiss(what: str, then: Callable[[], None] = lambda: None) -> Iterator[None]:
    """Log what goes wrong inside, whatever Java raises, and do what is to be done then: no part of the phone stops the app."""
    try:
        yield
    except Exception as problem:  # noqa: BLE001  (said above)
        Logger.warning("Deckhand: %s: %s", what, problem)
        then()


def on_androids_thread(work: Callable[[], None]) -> None:
    """Have something done on the thread that owns Android's views. What goes wrong there is logged."""
    from android.runnable import Runnable  # noqa: PLC0415  (as above)

    def quietly() -> None:
        with amiss("refused by the phone"):
            work()

    Runnable(quietly)()


def in_app(work: Callable[[], None]) -> None:
    """Have something done in the app's own thread, at its next frame."""
    Clock.schedule_once(lambda *_: work(), 0)
