"""Runs the app without a screen, frame by frame, on a clock of its own: for pictures and for tests.

Set the environment (`prepare`) and, where there is no graphics at all, the window without pixels
(`install_mock`) before anything imports `kivy.core.window`.
"""

import logging
import os
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any

from screens.driver.finger import Finger
from screens.driver.mock_window import install_mock
from screens.ends import keep_picture

TICK = 1 / 60
FEW = 20
"""Frames after which a page that is still moving is tapped all the same."""
PATIENCE = 6.0
"""Seconds of the driver's clock after which something that still moves is a fault."""


def prepare(home: Path, *, width: int = 800, height: int = 1280, mock: bool = False) -> None:
    """Set Kivy up for a run without a screen, in a folder of its own.

    The largest window of the run goes first.
    """
    from screens import environment  # noqa: PLC0415 - Kivy reads its environment when it is imported.

    environment.prepare(home)
    os.environ.update(KIVY_METRICS_DENSITY="1", KIVY_METRICS_FONTSCALE="1", KIVY_DPI="160")
    if mock:
        os.environ.update(KIVY_GL_BACKEND="mock", SDL_VIDEODRIVER="dummy")
    environment.configure((width, height))
    if mock:
        # Kivy reports that the mocked graphics tell no version and compile no shader.
        logging.getLogger("kivy").setLevel(logging.CRITICAL)
        install_mock()


class Driver:
    """An app under way, moved on by hand. Works on real graphics off the screen and on the mocked window."""

    def __init__(self, app: Any) -> None:  # noqa: ANN401 - any Kivy app.
        """Start the app; its first frame is drawn."""
        from kivy.animation import Animation  # noqa: PLC0415 - this and the rest: as in `prepare`.
        from kivy.base import EventLoop, runTouchApp  # noqa: PLC0415
        from kivy.clock import Clock  # noqa: PLC0415
        from kivy.core.window import Window  # noqa: PLC0415

        self.app, self.window, self.clock, self.loop = app, Window, Clock, EventLoop
        self._animations = Animation._instances  # noqa: SLF001 - Kivy does not say otherwise whether one runs.
        self._real_time, self._real_rate = Clock.time, Clock._max_fps  # noqa: SLF001 - no public switch.
        # A driver before this one may have run ahead of the real time; Kivy's events would wait until it has passed.
        self.now = max(Clock.time(), Clock.get_time())
        Clock.time = lambda: self.now
        Clock._max_fps = 0  # noqa: SLF001 - without it each frame sleeps.
        self.mock = os.environ.get("KIVY_GL_BACKEND") == "mock"
        self.unseen = False
        """Whether nobody looks at a frame but in a picture."""
        app._run_prepare()  # noqa: SLF001 - what `run` calls before its endless loop.
        runTouchApp(embedded=True)
        if not self.mock:
            Window.bind(on_flip=_finish)
        self.frame()

    def frame(self, count: int = 1, *, seconds: float = TICK) -> None:
        """Draw frames, each so many seconds after the last."""
        for _ in range(count):
            self.now += seconds
            if self.unseen and not self.mock:
                _into_a_pixel()
            self.loop.idle()

    def settle(self, step: float = 0.3) -> bool:
        """Draw frames until three in a row change nothing; return whether it came to that."""
        quiet, end = 0, self.now + PATIENCE
        self.frame()
        while quiet < 3 and self.now < end:  # noqa: PLR2004 - said above.
            dirty = self.window.canvas.needs_redraw
            self.frame(seconds=step)
            busy = dirty or self._animations or self.window.canvas.needs_redraw
            quiet = 0 if busy else quiet + 1
        return quiet == 3  # noqa: PLR2004 - said above.

    def still(self) -> None:
        """Draw until nothing waits to be laid out, in no time: who taps something sees it standing."""
        quiet = 0
        for _ in range(FEW):
            dirty = self.window.canvas.needs_redraw
            self.frame(seconds=0)
            quiet = 0 if dirty or self.window.canvas.needs_redraw else quiet + 1
            if quiet == 2:  # noqa: PLR2004 - once for what a change of size sets off.
                return

    def resize(self, width: int, height: int) -> None:
        """Change the window; with real graphics only to what fits into the one it opened with."""
        if self.mock:
            self.window._size = (width, height)  # noqa: SLF001 - there is no system to ask.
            self.window.dispatch("on_resize", width, height)
        else:
            self.window.size = (width, height)
        self.settle()

    def walk(self) -> Iterator[Any]:
        """Give every widget on the screen, in front first, without what is hidden."""
        for top in self.window.children:
            for widget in _visible(top):
                yield widget
                # A page of data has no widget for each text: it says itself what it shows and where.
                if hasattr(widget, "spots"):
                    yield from widget.spots()

    def find_all(self, text: str) -> list[Any]:
        """Return the widgets that show a text, or are called by it: whole text first, else part of it."""
        named = [(widget, words(widget)) for widget in self.walk()]
        whole = [widget for widget, said in named if text in said]
        return whole or [widget for widget, said in named if any(text in one for one in said)]

    def find(self, text: str) -> Any:  # noqa: ANN401 - any widget.
        """Return the one to tap for a text: the innermost thing to tap that shows it, else the label.

        Raises LookupError when nothing shows it.
        """
        found = self.find_all(text)
        if not found:
            shown = sorted({one for widget in self.walk() for one in words(widget)})
            message = f"nothing shows {text!r}; there is {shown}"
            raise LookupError(message)
        for widget in found:
            over: Any = widget
            while over is not None and over is not self.window and over.parent is not over:
                if hasattr(over, "on_release"):
                    return over
                over = over.parent
        return found[0]

    def shows(self, text: str) -> bool:
        """Return whether a text is on the screen."""
        return bool(self.find_all(text))

    def tap(self, target: Any) -> None:  # noqa: ANN401 - a text, a spot or a widget.
        """Tap what shows a text, or a place; it is scrolled into sight first."""
        touch = self.touch(target)
        self.frame(3)
        touch.up()
        self.frame(3)

    def touch(self, target: Any) -> Finger:  # noqa: ANN401 - as in `tap`.
        """Put a finger down and leave it there."""
        self.still()
        widget = self.find(target) if isinstance(target, str) else target
        if not hasattr(widget, "bring"):
            return Finger(self, *widget.to_window(*widget.center))
        self.frame(seconds=widget.wait)
        self.still()
        # Meanwhile the page may have found more to show: what was seen may stand elsewhere.
        widget = self.find(target) if isinstance(target, str) else target
        widget.bring()
        self.still()
        return Finger(self, *widget.middle)

    def type(self, text: str) -> None:
        """Type on a hardware keyboard."""
        for character in text:
            self.window.dispatch("on_textinput", character)
            self.frame()

    def key(self, code: int, *modifiers: str) -> None:
        """Press a key by Kivy's code: 27 back, 9 tab, 13 enter, 8 backspace."""
        if not self.window.dispatch("on_key_down", code, 0, "", list(modifiers)):
            self.window.dispatch("on_keyboard", code, 0, "", list(modifiers))
        self.window.dispatch("on_key_up", code, 0)
        self.frame()

    def picture(self) -> Any:  # noqa: ANN401 - Kivy's texture has no public type.
        """Return what is on the screen as a texture. Needs real graphics."""
        from kivy.graphics.opengl import (  # noqa: PLC0415
            GL_RGB,
            GL_UNSIGNED_BYTE,
            glFinish,
            glReadPixels,
        )
        from kivy.graphics.texture import Texture  # noqa: PLC0415

        self.window.update_viewport()
        self.window.canvas.ask_update()
        self.window.dispatch("on_draw")
        glFinish()
        width, height = (int(side) for side in self.window.size)
        # Rows are read bottom up, as textures hold them: a texture brings them the right way round.
        texture = Texture.create(size=(width, height), colorfmt="rgb")
        texture.blit_buffer(glReadPixels(0, 0, width, height, GL_RGB, GL_UNSIGNED_BYTE), colorfmt="rgb")
        return texture

    def shot(self, path: Path) -> Path:
        """Write what is on the screen as a PNG. Needs real graphics."""
        path.parent.mkdir(parents=True, exist_ok=True)
        keep_picture(path, png(self.picture()))
        return path

    def stop(self) -> None:
        """End the app and leave Kivy as it was found, so that another can start."""
        from kivy.app import App  # noqa: PLC0415

        self._animations.clear()
        self.app.dispatch("on_stop")
        for child in self.window.children[:]:
            self.window.remove_widget(child)
        for event in self.clock.get_events():
            event.cancel()
        self.loop.me_list.clear()
        self.window.unbind(on_keyboard=self.app._on_keyboard_settings)  # noqa: SLF001 - bound by `_run_prepare`.
        if not self.mock:
            self.window.unbind(on_flip=_finish)
        App._running_app = None  # noqa: SLF001 - as Kivy's own stop does.
        self.loop.stop()
        self.loop.status, self.loop.quit = "idle", False
        self.clock.time, self.clock._max_fps = self._real_time, self._real_rate  # noqa: SLF001 - as above.


def png(texture: Any) -> bytes:  # noqa: ANN401 - Kivy's texture has no public type.
    """Return a picture as the bytes of a PNG."""
    from kivy.core.image import Image  # noqa: PLC0415

    data = BytesIO()
    Image(texture).save(data, flipped=True, fmt="png")
    return data.getvalue()


def _into_a_pixel() -> None:
    """Draw the next frame smaller than anyone sees: the graphics are half of the time of a walk to a picture."""
    from kivy.graphics.opengl import glViewport  # noqa: PLC0415

    glViewport(0, 0, 1, 1)


def _finish(*_: object) -> None:
    """Wait for the graphics: off the screen nothing else does, and 2.4 MB a frame would pile up."""
    from kivy.graphics.opengl import glFinish  # noqa: PLC0415

    glFinish()


def _visible(widget: Any) -> Iterator[Any]:  # noqa: ANN401 - any widget.
    if widget.opacity > 0 and widget.width > 0 and widget.height > 0:
        yield widget
        for child in widget.children:
            yield from _visible(child)


def words(widget: Any) -> list[str]:  # noqa: ANN401 - any widget.
    """Return the texts a widget shows or is called by."""
    said = (getattr(widget, name, "") for name in ("text", "title", "label", "a11y_label"))
    return [one for one in said if isinstance(one, str) and one]
