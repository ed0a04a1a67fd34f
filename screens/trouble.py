"""When the file cannot be opened or written, or a page fails: one sentence on the screen, never a traceback."""

from typing import Any

from kivy.base import ExceptionHandler, ExceptionManager
from kivy.core.window import Window
from kivymd.app import MDApp

from logic.store import NewerFile, NotAStore, NotSaved
from screens.shell import Shell
from screens.theme import theme
from screens.widgets.notice import Notice
from screens.widgets.row import Page

CANNOT_OPEN = (NewerFile, NotAStore, NotSaved)

SENTENCES = {
    NewerFile: "The saved data was written by a newer Deckhand. It is left untouched: update this app to open it.",
    NotAStore: (
        "The file deckhand.db is not readable as Deckhand's data. It is left untouched: move it away, or put a copy back."
    ),
    NotSaved: "The storage is full or locked. Nothing was lost that was saved before. Free some space and try again.",
}


class TroubleApp(MDApp):
    """Shows why the data cannot be opened."""

    title = "Deckhand"

    def __init__(self, problem: Exception, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Keep the problem for the screen."""
        super().__init__(**kwargs)
        self.problem = problem

    def build(self) -> Page:
        """Return a page with the one sentence."""
        Window.clearcolor = theme.ground
        page = Page()
        page.add_widget(Notice(text=SENTENCES[type(self.problem)]))
        return page


class TellsTrouble(ExceptionHandler):
    """Says that a change could not be saved, or that a page failed, and lets the app go on."""

    def __init__(self, shell: Shell) -> None:
        """Speak through a shell."""
        self.shell = shell

    def handle_exception(self, problem: BaseException) -> int:
        """Take up every fault; what ends a program on purpose goes on up."""
        if isinstance(problem, NotSaved):
            self.shell.tell(SENTENCES[NotSaved])
        elif isinstance(problem, Exception):
            self.shell.cannot_show(problem)
        else:
            return int(ExceptionManager.RAISE)
        return int(ExceptionManager.PASS)
