"""Saying a page aloud: when asked to, and on its own while the person wants items said."""

from collections.abc import Callable

from screens.page import AppPage
from screens.phone import speech
from screens.words.spoken import spoken


class Aloud:
    """The voice of a page. `words` returns what is to be said, `tell` is given why the phone could not."""

    def __init__(self, page: AppPage, words: Callable[[], str], tell: Callable[[str], None]) -> None:
        """Speak for a page."""
        self._page, self._words, self._tell = page, words, tell

    def say(self) -> None:
        """Say it; where the phone cannot, tell so."""
        words = self._words()
        if words:
            self._tell("" if speech.say(spoken(words)) else speech.NO_VOICE)

    def on_its_own(self) -> None:
        """Say it if the person wants that, and the page is still looked at."""
        if self._page.state.person.say and self._page.in_front:
            self.say()

    def toggle(self) -> None:
        """Say things on its own from now on, or no longer."""
        self._page.state.set_person(say=not self._page.state.person.say)
        self.on_its_own()
