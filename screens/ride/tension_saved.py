"""What a tension check found: each belt with its verdict and what to do."""

from typing import Any

from kivy.properties import ObjectProperty

from logic.answers.tension_entry import word_of
from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Row
from screens.words.tension import MOVES, SIGNS, tension_text


class TensionSaved(AppPage):
    """Shows the log entries `ids`."""

    belts = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        super().__init__(*args, title="Tension saved", nav=False, chip=False, **kwargs)

    def refresh(self) -> None:
        """Show the entries."""
        self.belts.clear_widgets()
        for number in self.args["ids"]:
            record = self.state.store.entry(number)
            word = word_of(record.body)
            name = "Belt" if len(self.args["ids"]) == 1 else f"{record.body.belt.capitalize()} belt"
            row = Row(
                title=f"{name}: {tension_text(record, self.style)}",
                detail=MOVES.get(word, ""),
                icon=SIGNS.get(word, ""),
                chevron=False,
            )
            self.belts.add_widget(row)


load_kv(__file__)
