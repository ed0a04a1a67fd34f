"""What the hand feels and what it may type: a tick under the finger, keys that tremble, letters that are not taken."""

from logic.keys import key_refused
from logic.units import LONGEST
from screens.phone import haptics
from screens.tongue import _

BOUNCE = 0.08
"""The same key within so many seconds counts once: a gloved finger trembles."""

feels = {"on": True, "motor": True}
"""Whether the person wants the tick, and whether there is a motor."""


def tick() -> None:
    """Tick the vibration motor, where there is one and the person wants it."""
    if feels["on"] and feels["motor"]:
        # Where there is none, looking for it at each key would take longer than the key.
        feels["motor"] = haptics.tick()


class Bounce:
    """Tells whether a key counts."""

    def __init__(self) -> None:
        """Begin with no key."""
        self._last: tuple[str, float] = ("", -1.0)

    def __call__(self, key: str, now: float) -> bool:
        """Return whether a key at a time is not the tremble of the one before."""
        before, self._last = self._last, (key, now)
        return before[0] != key or now - before[1] >= BOUNCE


REFUSED = {
    "two marks": _("There is already a decimal mark."),
    "too long": _("At most {most} characters.").format(most=LONGEST),
    "minus first": _("The minus comes first."),
    "no minus": _("This value has no minus."),
}
"""Sentence of each reason for which a key of ours is not taken."""


def refused(character: str, text: str, *, signed: bool) -> str:
    """Return why a key is not taken after a text; "" when it is.

    >>> refused(".", "9.7", signed=False)
    'There is already a decimal mark.'
    """
    return REFUSED.get(key_refused(text, character, signed=signed), "")
