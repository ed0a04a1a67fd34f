"""What is kept: the foot of a page, with the keypad while a value is asked for, else with bars to keep or drop a trial."""

from functools import partial
from typing import TYPE_CHECKING, Any

from screens.widgets.bar import Bar
from screens.widgets.row import Foot

if TYPE_CHECKING:
    from screens.answering import AnsweringPage


class TrialFoot:
    """Builds the foot anew when it is to show something else."""

    def __init__(self, page: "AnsweringPage") -> None:
        """Serve a page."""
        self.page = page
        self._shows: object = None

    def bars(self) -> list[tuple[str, str, Any]]:
        """Return the bars of an open trial: text, kind and act of each."""
        if not self.page.state.trial:
            return []
        kind = "plain" if self.page.faults else "main"
        return [("Drop the trial", "plain", self.page.state.drop), ("Keep on board", kind, self.keep)]

    def keep(self) -> None:
        """Make the trial's values the board's; the scratch board needs a name first."""
        if self.page.state.is_scratch:
            self.page.shell.go("board.name", purpose="keep")
        else:
            self.page.state.keep()

    def show(self) -> None:
        """Show the keypad, or the bars of the page."""
        page, entry = self.page, self.page.entry
        typing = page.field is not None and entry is not None
        bars = [("Done", "main", page.done)] if typing else page.bars()
        shows = (typing, [(text, kind) for text, kind, _ in bars])
        if self._shows == shows:
            return
        self._shows = shows
        # The keypad needs the height that the four places take.
        page.nav = not typing
        foot = Foot()
        if typing:
            if entry.parent is not None:
                entry.parent.remove_widget(entry)
            foot.add_widget(entry)
        for text, kind, act in bars:
            bar = Bar(text=text, kind=kind)
            bar.bind(on_release=partial(_do, act))
            foot.add_widget(bar)
        page.foot = foot


def _do(act: Any, *_: object) -> None:  # noqa: ANN401  (a function without arguments)
    act()
