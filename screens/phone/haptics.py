"""A short tick under the finger, never the only sign of anything. Through plyer, which does it right on every Android."""

from screens.phone.service import service

TICK = 0.02
"""Seconds of a tick."""

feels = {"on": True, "motor": True}
"""Whether the person wants the tick, and whether there is a motor."""


def tick() -> None:
    """Tick once, where there is a motor and the person wants it."""
    if feels["on"] and feels["motor"]:
        # Where there is none, looking for it at each key would take longer than the key.
        feels["motor"] = _tick()


def _tick() -> bool:
    """Tick; return whether the phone could."""
    try:
        motor = service("vibrator")
        if not motor.exists():
            return False
        motor.vibrate(TICK)
    except Exception:  # noqa: BLE001  (no motor, no permission, no such service: all the same here)
        return False
    return True
