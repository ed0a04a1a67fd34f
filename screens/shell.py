"""The frame around every page: where one is, whose board it is, the four places, and the way back."""

import gc
from datetime import datetime, timedelta
from importlib import import_module
from typing import Any

from kivy.core.window import Window
from kivy.logger import Logger
from kivy.metrics import dp
from kivy.properties import BooleanProperty, ListProperty, NumericProperty, ObjectProperty, StringProperty
from kivy.uix.boxlayout import BoxLayout
from kivy.uix.layout import Layout

from screens.app_page import AppPage
from screens.cannot_show import CannotShowPage
from screens.paper.keys import Keys
from screens.register import PAGES, is_data
from screens.state import State, Undo
from screens.theme import theme
from screens.widgets.bar import IconButton
from screens.widgets.column import Column, Pair
from screens.widgets.dress import Dressed, let_go
from screens.widgets.load import load_kv
from screens.widgets.surface import Surface, Tap
from screens.widgets.text import width_of
from screens.widgets.undo import SECONDS, UndoBar

PLACES = (("ride", "Ride"), ("bench", "Bench"), ("numbers", "Numbers"), ("log", "Log"))

LAST_PLACE_FOR = timedelta(minutes=30)
"""How long after the last use the app opens where it was left."""

BACK = 27

NOT_COME_BACK_TO = (
    "The page you left could not be shown again, so this is Ride. Nothing that was saved is lost."
)


class BoardChip(Tap, BoxLayout):
    """The board in use; a tap opens its page. `slim` is one line of small text, where height is scarce."""

    name = StringProperty()
    note = StringProperty()
    slim = BooleanProperty(defaultvalue=False)


class DueBadge(Tap, BoxLayout):
    """How many things are due; a tap shows them."""

    count = NumericProperty(0)
    text = StringProperty()
    words_width = NumericProperty(0)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Start without a frame."""
        kwargs.setdefault("look", "bare")
        super().__init__(**kwargs)

    def dress(self, *_: object) -> None:
        """Write the count and measure it."""
        super().dress()
        self.text = f"{self.count:.0f}"
        self.words_width = width_of(self.text, "small", bold=True)
        self.a11y_label = f"{self.text} due"

    on_count = dress


class Heading(Pair):
    """Title and board chip, side by side when both fit on a line.

    Where they do not, the chip is slim, and a page that the four places name already goes without its title.
    """

    title = StringProperty()
    name = StringProperty()
    note = StringProperty()
    chip = BooleanProperty(defaultvalue=True)
    named_below = BooleanProperty(defaultvalue=False)
    title_width = NumericProperty(0)
    __events__ = ("on_board",)

    def on_kv_post(self, _base: object) -> None:
        """Put the chip after the title."""
        self._chip = BoardChip(name=self.name, note=self.note, slim=not self.beside)
        self._chip.bind(on_release=lambda *_: self.dispatch("on_board"))
        self.bind(
            name=self._chip.setter("name"),
            note=self._chip.setter("note"),
            chip=self._show_chip,
            beside=lambda _, beside: setattr(self._chip, "slim", not beside),
        )
        self._show_chip()

    def _show_chip(self, *_: object) -> None:
        if self.chip and self._chip.parent is None:
            self.add_widget(self._chip)
        elif not self.chip:
            self.remove_widget(self._chip)

    def measure(self, *_: object) -> None:
        """Side by side needs both on one line."""
        words = max(width_of(self.name, "body", bold=True), width_of(self.note, "small", bold=True))
        chip = words + theme.strong + dp(48)
        self.title_width = width_of(self.title, "strong", bold=True)
        self.need = self.title_width + (chip if self.chip else 0)

    on_title = on_name = on_note = on_chip = measure

    def on_board(self) -> None:
        """Say that the board was asked for."""


class TopBar(BoxLayout):
    """Back, and the heading. Events: `on_back()`, `on_board()`."""

    title = StringProperty()
    name = StringProperty()
    note = StringProperty()
    chip = BooleanProperty(defaultvalue=True)
    can_back = BooleanProperty(defaultvalue=False)
    count = NumericProperty(0)
    __events__ = ("on_back", "on_board", "on_due")

    def on_can_back(self, *_: object) -> None:
        """Show the step back where there is one."""
        self.ids.back_slot.clear_widgets()
        if self.can_back:
            button = IconButton(icon="back", a11y_label="Back")
            button.bind(on_release=lambda *_: self.dispatch("on_back"))
            self.ids.back_slot.add_widget(button)

    def show_due(self, *_: object) -> None:
        """Show the badge where something is due and the page leaves room for what lies beside its task."""
        self.ids.due_slot.clear_widgets()
        if self.count and self.chip:
            badge = DueBadge(count=self.count)
            badge.bind(on_release=lambda *_: self.dispatch("on_due"))
            self.ids.due_slot.add_widget(badge)
            # Kv does not follow the width of a child that is picked by its number.
            badge.bind(width=lambda _, width: setattr(self.ids.due_slot, "width", width))
            self.ids.due_slot.width = badge.width

    on_count = on_chip = show_due

    def on_back(self) -> None:
        """Say that the step back was asked for."""

    def on_due(self) -> None:
        """Say that what is due was asked for."""

    def on_board(self) -> None:
        """Say that the board was asked for."""


class PlaceButton(Tap, Column):
    """One of the four places; without its picture where height is scarce."""

    icon = StringProperty("ride")
    text = StringProperty()
    here = BooleanProperty(defaultvalue=False)
    pictured = BooleanProperty(defaultvalue=True)
    least_width = NumericProperty(0)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Start without a frame."""
        kwargs.setdefault("look", "bare")
        super().__init__(**kwargs)

    def dress(self, *_: object) -> None:
        """Mark the place one is in by fill and ink, not by colour alone: its label is bold as well."""
        self.look = "main" if self.here else "bare"
        super().dress()
        self.least_width = width_of(self.text, "small", bold=True) + dp(8)

    on_here = on_text = dress


class NavBar(Dressed, Layout):
    """The four places: in one row of equal cells, of unequal ones, or in two rows, as their words allow."""

    places = ListProperty()
    here = StringProperty()
    __events__ = ("on_place",)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Build a button for each place."""
        super().__init__(**kwargs)
        for name, text in PLACES:
            button = PlaceButton(icon=name, text=text)
            button.name = name
            button.bind(on_release=lambda pressed: self.dispatch("on_place", pressed.name))
            button.fbind("height", self._trigger_layout)
            button.fbind("least_width", self._trigger_layout)
            self.add_widget(button)
        for name in ("pos", "size"):
            self.fbind(name, self._trigger_layout)

    def on_here(self, *_: object) -> None:
        """Mark where one is."""
        for button in self.children:
            button.here = button.name == self.here

    def on_place(self, _name: str) -> None:
        """Say that a place was asked for."""

    def do_layout(self, *_: object) -> None:
        """Share the width out."""
        buttons = self.children[::-1]
        least = [button.least_width for button in buttons]
        if max(least) <= self.width / len(buttons):
            rows, widths = [buttons], [self.width / len(buttons)] * len(buttons)
        elif sum(least) <= self.width:
            gap = (self.width - sum(least)) / len(buttons)
            rows, widths = [buttons], [wide + gap for wide in least]
        else:
            rows, widths = [buttons[:2], buttons[2:]], [self.width / 2] * 2
        for button in buttons:
            button.pictured = len(rows) == 1
        tall = max(button.minimum_height for button in buttons)
        self.height = tall * len(rows)
        top = self.top
        for row in rows:
            x = self.x
            for button, wide in zip(row, widths, strict=False):
                button.size, button.pos = (wide, tall), (x, top - tall)
                x += wide
            top -= tall


class Shell(Surface, BoxLayout):
    """Holds one page at a time, built when it is first asked for."""

    page = ObjectProperty(None, allownone=True)

    def __init__(self, state: State, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Open where the person left off a short while ago, else at the first place."""
        self.state = state
        self.pages: dict[str, AppPage] = {}
        self.trail: list[tuple[str, dict[str, Any]]] = []
        self._undo: UndoBar | None = None
        super().__init__(**kwargs)
        self.nav, self.top_bar = self.ids.nav.__self__, self.ids.top.__self__
        state.bind(revision=self._show_board, undo=self._show_undo, upcoming=self._show_due)
        self.keys = Keys(Window)
        Window.bind(on_keyboard=self._on_keyboard)
        self._resume()

    def dress(self, *_: object) -> None:
        """Fill the window with the ground of the theme."""
        self.fill = theme.ground
        Window.clearcolor = theme.ground

    # Moving about

    def go(self, name: str, **args: Any) -> None:  # noqa: ANN401  (each page names its own)
        """Open a page on top of the one in front."""
        self.trail.append((name, args))
        self._show()

    def place(self, name: str) -> None:
        """Open one of the places; what was open in another is left."""
        self.trail = [(name, {})]
        self._show()

    def replace(self, name: str, **args: Any) -> None:  # noqa: ANN401  (each page names its own)
        """Open a page instead of the one in front."""
        self.trail[-1] = (name, args)
        self._show()

    def back(self) -> bool:
        """Go one level back; return False when there is nowhere to go but out."""
        if self.page is not None and self.page.back():
            return True
        if len(self.trail) > 1:
            self.trail.pop()
        elif self.trail[0][0] != PLACES[0][0]:
            self.trail = [(PLACES[0][0], {})]
        else:
            return False
        self._show()
        return True

    def forget(self) -> None:
        """Let go of every page but the one in front; each is built anew when it is asked for."""
        for name, page in list(self.pages.items()):
            if page is not self.page:
                let_go(self.pages.pop(name))
        # Widgets hold each other in cycles; those that are still there would be dressed and laid out with the rest.
        gc.collect()

    def open_due(self) -> None:
        """Open what is due, from anywhere."""
        if self.trail[-1][0] != "log.due":
            self.go("log.due")

    def open_board(self) -> None:
        """Open the page of the board in use, from anywhere."""
        if self.trail[-1][0] != "board":
            self.go("board")

    def _show(self) -> None:
        name, args = self.trail[-1]
        page = self._page(name)
        if page is not self.page:
            self._bring(page)
        page.open(**args)
        self._dress_page()
        self._remember()

    def _bring(self, page: AppPage) -> None:
        self.ids.holder.clear_widgets()
        self.page = page
        self.ids.holder.add_widget(page)
        self.keys.front = page

    def cannot_show(self, problem: Exception) -> None:
        """Put a plain page in place of the one that failed; Back and the places lead on, and it is not come back to."""
        Logger.error("Deckhand: a page failed", exc_info=problem)
        if not isinstance(self.page, CannotShowPage):
            self._bring(CannotShowPage(self.state, self))
        broken = self.pages.pop(self.trail[-1][0], None)
        if broken is not None:
            let_go(broken)
        self._dress_page()
        self._remember()

    def _dress_page(self) -> None:
        page, bar, nav = self.page, self.top_bar, self.nav
        bar.title, bar.chip, bar.can_back = page.title, page.chip, len(self.trail) > 1
        nav.here = self.trail[0][0]
        self._frame_of_data(page)
        if page.nav and nav.parent is None:
            self.add_widget(nav)
        elif not page.nav and nav.parent is not None:
            self.remove_widget(nav)
        self._show_board()

    def _frame_of_data(self, page: Any) -> None:  # noqa: ANN401  (a page of either kind)
        """Take the header away for a page of data, which brings header, places and bar with it."""
        top, data = self.top_bar, getattr(page, "data", False)
        if data and top.parent is not None:
            self.remove_widget(top)
        elif not data and top.parent is None:
            self.add_widget(top, index=len(self.children))
        self._show_undo()

    def _page_changed(self, page: AppPage, *_: object) -> None:
        if self.page is page:
            self._dress_page()

    def _page(self, name: str) -> AppPage:
        if is_data(name):
            return self._paper()
        if name not in self.pages:
            module, _, class_name = PAGES[name].rpartition(".")
            page = getattr(import_module(module), class_name)(self.state, self)
            for name_of in ("title", "nav", "chip"):
                page.fbind(name_of, self._page_changed, page)
            self.pages[name] = page
        return self.pages[name]

    def _paper(self) -> Any:  # noqa: ANN401  (it has what the shell asks of a page)
        if "paper" not in self.pages:
            from screens.paper.host import PaperPage  # noqa: PLC0415  (not on the way to the first frame)

            self.pages["paper"] = PaperPage(self.state, self)
        return self.pages["paper"]

    def warm_up(self) -> None:
        """Make the paper before it is wanted."""
        self._paper().warm_up()

    def _resume(self) -> None:
        last = self.state.store.get("place")
        fresh = last is not None and self.state.clock() - datetime.fromisoformat(last["at"]) < LAST_PLACE_FOR
        trail = [(name, args) for name, args in last["trail"] if name in PAGES] if fresh else []
        first = [(PLACES[0][0], {})]
        self.trail = trail or first
        if not self._could_show() and trail:
            self.trail = first
            if self._could_show():
                self.tell(NOT_COME_BACK_TO)

    def _could_show(self) -> bool:
        try:
            self._show()
        except Exception as problem:  # noqa: BLE001  (whatever a page does, it does not stop the start)
            self.cannot_show(problem)
            return False
        # A page of data that fails is taken care of by the paper.
        return not getattr(self.page, "lost", False)

    def note_args(self) -> None:
        """Store what the page in front changed in its own arguments, so that a restart comes back to it."""
        self._remember()

    def _remember(self) -> None:
        # A page whose arguments are not plain data (a working) is not come back to.
        kept = self.trail[:-1] if isinstance(self.page, CannotShowPage) else self.trail
        trail = [
            (name, {key: value for key, value in args.items() if not key.startswith("_")})
            for name, args in kept
            if name != "working"
        ]
        self.state.remember("place", {"trail": trail, "at": self.state.clock().isoformat()})

    # What the frame shows

    def _show_board(self, *_: object) -> None:
        bar = self.top_bar
        bar.name = self.state.saved.name
        notes = ["Example"] if self.state.saved.example else []
        notes += ["not saved"] if self.state.is_scratch else ["trial open"] if self.state.trial else []
        bar.note = ", ".join(notes)

    def _show_due(self, *_: object) -> None:
        self.top_bar.count = len(self.state.due)

    def _show_undo(self, *_: object) -> None:
        if self._undo is not None:
            self._undo.stop()
            self.ids.slot.clear_widgets()
            self._undo = None
        step = self.state.undo
        # A page of data shows it itself.
        if step is not None and not getattr(self.page, "data", False):
            self._undo = UndoBar(text=step.text, action=step.word, stay=0 if step.stays else SECONDS)
            self._undo.bind(on_undo=self._take_back, on_dismiss=self._forget_undo)
            self.ids.slot.add_widget(self._undo)

    def _take_back(self, *_: object) -> None:
        step = self.state.undo
        # A second tap on the bar while it goes finds nothing left to take back.
        if step is not None:
            self.state.undo = None
            step.act()

    def _forget_undo(self, *_: object) -> None:
        self.state.undo = None

    # The keyboard

    def _on_keyboard(self, _window: object, code: int, *_: object) -> bool:
        return code == BACK and self.back()

    def tell(self, text: str) -> None:
        """Say something over the places; it stays until it is closed."""
        self.state.undo = Undo(text, lambda: None, "Close", stays=True)

    def release(self) -> None:
        """Let go of the window, for an app that ends inside a running process."""
        self.keys.stop()
        Window.unbind(on_keyboard=self._on_keyboard)


load_kv(__file__)
