"""When the file cannot be opened or written, or a page fails: one sentence on the screen, never a traceback."""

from typing import Any

from kivy.base import ExceptionHandler, ExceptionManager
from kivy.core.window import Window
from kivymd.app import MDApp

from logic.store.errors import CannotStore, Damaged
from logic.store.opening import look_next_time
from screens import faults
from screens.blocks import Words
from screens.front import Front
from screens.page import Page
from screens.paper.paper import Paper
from screens.theme import theme
from screens.tongue import _
from screens.words.storage import sentence


class TroubleApp(MDApp):
    """Shows why the data cannot be opened."""

    title = "Deckhand"

    def __init__(self, problem: Exception, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Keep the problem for the screen."""
        super().__init__(**kwargs)
        self.problem = problem

    def build(self) -> Paper:
        """Return a page with the one sentence."""
        Window.clearcolor = theme.ground
        paper = Paper(lambda _act: None)
        said = Words(key="why", text=sentence(self.problem), role="lead")
        page = Page(title=_("The data cannot be opened"), blocks=(said,), places=False)
        paper.show(page, "trouble", back=False)
        return paper


class TellsTrouble(ExceptionHandler):
    """Says that a change could not be saved, or that a page failed, and lets the app go on."""

    def __init__(self, front: Front) -> None:
        """Speak through what is in front."""
        self.front = front

    def handle_exception(self, problem: BaseException) -> int:
        """Take up every fault; what ends a program on purpose goes on up."""
        if isinstance(problem, CannotStore):
            if isinstance(problem, Damaged):
                look_next_time(self.front.world.store.path.parent)
            self.front.tell(sentence(problem))
        elif isinstance(problem, Exception):
            world = self.front.world
            faults.keep(world.store.path.parent, problem, world.clock())
            self.front.cannot_show(problem)
        else:
            return int(ExceptionManager.RAISE)
        return int(ExceptionManager.PASS)
