"""One finger on the window of a driver."""

from typing import Any


class Finger:
    """One finger. Made down; moved and lifted by hand."""

    def __init__(self, driver: Any, x: float, y: float) -> None:  # noqa: ANN401 - the driver, which makes it.
        """Put it down at a place of the window."""
        from kivy.input.motionevent import MotionEvent  # noqa: PLC0415

        class Moved(MotionEvent):
            """A touch in window pixels."""

            def __init__(self, place: dict[str, float]) -> None:
                super().__init__("driver", "driver", place, is_touch=True, type_id="touch")

            def depack(self, place: dict[str, float]) -> None:
                self.sx, self.sy = place["sx"], place["sy"]
                self.profile = ["pos"]
                super().depack(place)

        self._driver = driver
        self._finger = Moved(self._place(x, y))
        self._send("begin")

    def _place(self, x: float, y: float) -> dict[str, float]:
        width, height = self._driver.window.size
        return {"sx": x / max(width - 1, 1), "sy": y / max(height - 1, 1)}

    def _send(self, kind: str) -> None:
        self._driver.loop.post_dispatch_input(kind, self._finger)

    def move(self, x: float, y: float) -> None:
        """Slide to a place of the window."""
        self._finger.move(self._place(x, y))
        self._send("update")
        self._driver.frame()

    def up(self) -> None:
        """Lift it."""
        self._finger.update_time_end()
        self._send("end")
