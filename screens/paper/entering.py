"""What is being entered: keys of ours and of a keyboard, what is not taken, and when it is said what is wrong."""

from collections.abc import Callable

from kivy.clock import Clock

from logic.keys import key_refused
from logic.units import LONGEST
from screens.acts import Act
from screens.acts.entering import Type
from screens.blocks import Entry
from screens.phone import haptics
from screens.tongue import _

PATIENCE = 0.8
"""Seconds without a key after which it is said what is wrong."""
BRIEF = 0.8
"""Seconds for which it is said why a key was not taken."""
BOUNCE = 0.08
"""The same key within so many seconds counts once: a gloved finger trembles."""
WHOLE = 2 * LONGEST
"""Characters that are taken from a keyboard: far more than any that is read, so none is cut to a right one."""
REFUSED = {
    "two marks": _("There is already a decimal mark."),
    "too long": _("At most {most} characters.").format(most=LONGEST),
    "minus first": _("The minus comes first."),
    "no minus": _("This value has no minus."),
}
"""Sentence of each reason for which a key of ours is not taken."""


class Entering:
    """Turns keys into acts. `choosing` tells whether units stand in place of the keys."""

    def __init__(self, act: Callable[[Act], None], arrange: Callable[[], None]) -> None:
        """Begin with nothing to enter; `arrange` lays the page out anew."""
        self._act, self._arrange = act, arrange
        self.entry: Entry | None = None
        self.choosing = False
        self._told = False
        self._refused = ""
        self._last = ("", -1.0)
        """The key before, and when it was."""
        self._tell = Clock.create_trigger(self.say_wrong, PATIENCE)
        self._brief = Clock.create_trigger(self._brief_over, BRIEF)

    @property
    def sentence(self) -> str:
        """Return what is said under the entry: why a key was not taken, else what is wrong, after a while."""
        wrong = self.entry.sentence if self.entry is not None and self._told else ""
        return self._refused or wrong

    @property
    def typed(self) -> Entry | None:
        """Return what is entered by signs; None where nothing is, or one of several options."""
        return None if self.entry is None or self.entry.field.kind == "choice" else self.entry

    def take(self, entry: Entry | None) -> None:
        """Take what the page in front asks for. The units that were looked at were those of the value before."""
        if entry is None or self.entry is None or entry.key != self.entry.key:
            self.choosing = False
        self.entry = entry
        if entry is None or not entry.sentence:
            self._tell.cancel()
            self._told = False

    def leave(self) -> None:
        """Forget what was said: another page comes."""
        self._refused = ""
        self.over()

    def over(self) -> None:
        """Forget what was wrong and which unit was looked for: the value is done with."""
        self._told = self.choosing = False

    def say_wrong(self, *_: object) -> None:
        """Say what is wrong with what is typed."""
        if self.entry is not None and self.entry.sentence:
            self._told = True
            self._arrange()

    def key(self, name: str) -> None:
        """Obey a key of ours."""
        (before, then), self._last = self._last, (name, Clock.get_time())
        if name == before and Clock.get_time() - then < BOUNCE:
            return
        haptics.tick()
        if name == "delete":
            self.delete()
        elif name == "clear":
            self._type("")
        elif name == "unit":
            self.choose(units=not self.choosing)
        elif name.startswith("unit "):
            self.choosing = False
            if self.entry is not None:
                self._type(self.entry.text, name.removeprefix("unit "))
        elif self.entry is not None:
            self._tap(name, self.entry)

    def choose(self, *, units: bool) -> None:
        """Show the units in place of the keys, or the keys again."""
        self.choosing = units
        self._arrange()

    def delete(self) -> None:
        """Take away the last sign."""
        if self.entry is not None:
            self._type(self.entry.text[:-1])

    def feed(self, characters: str) -> bool:
        """Take what a hardware keyboard types or what is pasted, whole: reading it refuses what is wrong."""
        entry = self.typed
        if entry is None or not characters.isprintable():
            return False
        if len(entry.text) + len(characters) > WHOLE:
            self._refuse(REFUSED["too long"])
            return False
        self._type(entry.text + characters)
        return True

    def _tap(self, character: str, entry: Entry) -> None:
        """Type a character by a key of ours, unless no number could have it there."""
        reason = key_refused(entry.text, character, signed=entry.signed)
        if reason and character not in entry.field.signs:
            self._refuse(REFUSED[reason])
        else:
            self._type(entry.text + character)

    def _type(self, text: str, unit: str = "") -> None:
        entry = self.typed
        if entry is None:
            return
        self._refused, self._told = "", False
        self._tell.cancel()
        self._act(Type(entry.key, entry.field, text, unit or entry.unit, entry.keeps))
        if self.entry is not None and self.entry.sentence:
            self._tell()
        if unit:
            self._arrange()

    def _refuse(self, sentence: str) -> None:
        self._refused = sentence
        self._brief()
        self._arrange()

    def _brief_over(self, *_: object) -> None:
        self._refused = ""
        self._arrange()
