"""A short tick under the finger, never the only sign of anything. Through plyer, which does it right on every Android."""

from screens.phone.service import service

TICK = 0.02
"""Seconds of a tick."""


def tick() -> bool:
    """Tick once; return whether the phone could."""
    try:
        motor = service("vibrator")
        if not motor.exists():
            return False
        motor.vibrate(TICK)
    except Exception:  # noqa: BLE001  (no motor, no permission, no such service: all the same here)
        return False
    return True
