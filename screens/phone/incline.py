"""How the phone lies, for the grade of a hill: its gravity sensor through plyer, which does it right."""

from collections.abc import Callable
from contextlib import suppress
from typing import Any

from kivy.clock import Clock

from screens.phone.service import service
from screens.tongue import _

NOT_HERE = _("This phone cannot tell how it lies. Type the grade.")
SECONDS, EVERY = 1.5, 0.1

Gravity = tuple[float, float, float]
"""Along the short edge, along the long edge, out of the screen, in m/s2."""

Felt = Callable[[Gravity | None, str], None]
"""Called with the mean of what was felt, or None and the sentence that says why there is none."""


def feel(felt: Felt) -> None:
    """Feel how the phone lies for a moment, then tell."""
    try:
        sensor = service("gravity")
        sensor.enable()
    except Exception:  # noqa: BLE001  (no sensor, no such service: all the same here)
        felt(None, NOT_HERE)
        return
    _Feeling(sensor, felt)


class _Feeling:
    """Reads until the time is up."""

    def __init__(self, sensor: Any, felt: Felt) -> None:  # noqa: ANN401  (plyer's)
        self._sensor, self._felt = sensor, felt
        self._read: list[Gravity] = []
        self._left = round(SECONDS / EVERY)
        # The clock alone would not keep this from going.
        Clock.schedule_interval(lambda *_: self._look(), EVERY)

    def _look(self) -> bool:
        """Read once more; return False when it is done, which ends the looking."""
        self._left -= 1
        try:
            right, top, out = self._sensor.gravity
            if None not in (right, top, out):
                self._read.append((float(right), float(top), float(out)))
        except Exception:  # noqa: BLE001  (as above)
            self._left = 0
        if self._left > 0:
            return True
        with suppress(Exception):
            self._sensor.disable()
        if not self._read:
            self._felt(None, NOT_HERE)
            return False
        count = len(self._read)
        x, y, z = (sum(one[axis] for one in self._read) / count for axis in range(3))
        self._felt((x, y, z), "")
        return False
