"""A window without graphics, for runs where there are none at all. Layout, touches and text sizes stay real."""

from typing import Any


def install_mock() -> None:
    """Give Kivy a window without graphics. Layout, touches and text sizes stay real; there are no pixels."""
    import kivy.core  # noqa: PLC0415

    choose = kivy.core.core_select_lib

    def select(category: str, libraries: Any, create_instance: bool = False, **more: Any) -> Any:  # noqa: ANN401, FBT001, FBT002 - Kivy's own signature.
        if category != "window":
            return choose(category, libraries, create_instance, **more)
        return _window_without_pixels()

    kivy.core.core_select_lib = select


def _window_without_pixels() -> Any:  # noqa: ANN401 - Kivy's window has no public type.
    from kivy.core.window import WindowBase  # noqa: PLC0415

    def nothing(*_: object) -> None:
        """Do nothing: there is no screen to do it on."""

    silent = (
        "mainloop",
        "close",
        "set_title",
        "set_icon",
        "show_keyboard",
        "hide_keyboard",
        "set_system_cursor",
    )
    methods: dict[str, Any] = dict.fromkeys(silent, nothing)
    methods["is_keyboard_shown"] = lambda _window: False
    methods["_get_window_pos"] = lambda _window: (0, 0)
    return type("WindowWithoutPixels", (WindowBase,), {"managed_textinput": True, **methods})()
