"""What was saved from the bench: the reading, what is next, and the way back."""

from typing import Any

from kivy.properties import StringProperty

from logic.answers.tension_entry import word_of
from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.words.belt import SHORT_WAY
from screens.words.tension import MOVES, tension_text

NEXT = {
    "motor": "Set, not verified. Locked now? Turn the wheel and measure the span by another way.",
    "": "After moving a motor: lock its screws, turn the wheel a few turns, measure again.",
}


class BenchSaved(AppPage):
    """Shows the log entry of `ids`."""

    reading = StringProperty()
    move = StringProperty()
    ahead = StringProperty()
    other = StringProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        self._other = ""
        super().__init__(*args, title="Tension saved", nav=False, chip=False, **kwargs)

    def refresh(self) -> None:
        """Show the entry."""
        record = self.state.store.entry(self.args["ids"][0])
        said = record.body
        sides = self.state.saved.sides
        name = "Belt" if len(sides) == 1 else f"{said.belt.capitalize()} belt"
        self.reading = f"{name}: {tension_text(record, self.style)}, {SHORT_WAY.get(said.method, '')}."
        self.move = MOVES.get(word_of(said), "")
        self.ahead = NEXT.get(said.method, NEXT[""])
        self._other = next((side for side in sides if side != said.belt), "")
        self.other = f"The {self._other} belt" if self._other else ""

    def finish(self) -> None:
        """Go back to where setting a belt begins."""
        self.shell.back()

    def go_other(self) -> None:
        """Go on with the other belt."""
        self.shell.replace("bench.belt", side=self._other)


load_kv(__file__)
