"""Leave of the person for a part of the phone, asked for at the moment of use."""

from collections.abc import Callable
from typing import Any

from screens.phone.java import amiss, in_app


def ask(name: str, answered: Callable[[bool], None]) -> None:
    """Ask for a permission such as "android.permission.RECORD_AUDIO"; the answer comes in the app's own thread.

    An empty answer, which Android gives when its question was put away without one, is no leave.
    """

    def told(_names: Any, granted: Any) -> None:  # noqa: ANN401  (lists of Android's)
        leave = bool(granted) and all(granted)
        in_app(lambda: answered(leave))

    with amiss(f"{name} could not be asked for", lambda: told([], [])):
        from android.permissions import (  # noqa: PLC0415  (none off a phone)
            check_permission,
            request_permissions,
        )

        if check_permission(name):
            told([name], [True])
        else:
            request_permissions([name], told)
