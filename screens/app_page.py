"""What every page of the app has: the state it shows, the way on, and its share of Back and of the keyboard."""

from typing import TYPE_CHECKING, Any

from kivy.clock import Clock
from kivy.properties import BooleanProperty, StringProperty

from screens.state import State
from screens.widgets.keypad import Keypad
from screens.widgets.row import Page
from screens.words import Style

if TYPE_CHECKING:
    from screens.shell import Shell


class AppPage(Page):
    """A page of the app. It is built at its first visit and kept.

    `nav` shows the four places at the foot, `chip` the board's name as a way to the board page. A page shows the
    state in `refresh`, at most once a frame, and only while it is in front.
    """

    title = StringProperty()
    nav = BooleanProperty(defaultvalue=True)
    chip = BooleanProperty(defaultvalue=True)

    def __init__(self, state: State, shell: "Shell", **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Build the page for a state, inside a shell."""
        self.state = state
        self.shell = shell
        self.args: dict[str, Any] = {}
        self.soon = Clock.create_trigger(self._refresh, -1)
        super().__init__(**kwargs)
        # A bound method is held weakly: a page that the shell lets go of is gone.
        state.bind(revision=self._changed)

    @property
    def style(self) -> Style:
        """Return how numbers are written for the person."""
        return Style(self.state.person.system, self.state.person.mark)

    @property
    def in_front(self) -> bool:
        """Tell whether this is the page that is seen."""
        return self.parent is not None

    def _changed(self, *_: object) -> None:
        self.soon()

    def _refresh(self, *_: object) -> None:
        if self.in_front:
            self.refresh()

    def open(self, **args: Any) -> None:  # noqa: ANN401  (each page names its own)
        """Be shown, with what the page before asked for."""
        self.args = args
        self.scroll.scroll_y = 1
        self.refresh()

    def refresh(self) -> None:
        """Show the state."""

    def back(self) -> bool:
        """Take one step back inside the page; return whether there was one."""
        return False

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad that a hardware keyboard types into, None when this page has none in use."""
        return None

    def feed(self, characters: str) -> bool:
        """Take characters of a hardware keyboard; return whether they were used."""
        return self.keypad is not None and self.keypad.feed(characters)

    def press(self, name: str) -> bool:
        """Obey a named key of a hardware keyboard; return whether it meant anything here."""
        return self.keypad is not None and self.keypad.press(name)
