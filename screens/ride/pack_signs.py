"""A pack that swells, hisses, smokes or is hot: what to do, and out of use until a person says what came of it."""

from datetime import datetime
from typing import Any

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from logic.answers.care import advice
from screens.app_page import AppPage
from screens.asked import out_of_use, put_back, take_out
from screens.widgets.choice import Choice
from screens.widgets.load import load_kv
from screens.widgets.row import Section
from screens.widgets.text import Text
from screens.words.tension import ago

SIGNS = (
    ("swollen", "Swollen"),
    ("hissing or smoking", "Hissing or smoking"),
    ("hot", "Hot without a hard ride"),
    ("leaking or smelling", "Leaking or smelling"),
)
ENDS = (
    ("another pack is in the board", "Another pack is in the board"),
    ("the sign was entered by mistake", "It was entered by mistake"),
)


class PackSigns(AppPage):
    """DANGER on top, always. Taking out needs a sign and a bar; putting back needs a reason and the same bar's place.

    No single tap and no repeated tap on one spot does either, and Back leaves everything as it is.
    """

    text = StringProperty()
    since = StringProperty()
    sign = StringProperty()
    out = BooleanProperty(defaultvalue=False)
    question = StringProperty()
    choice = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Write the advice once: it is data."""
        super().__init__(*args, nav=False, title="Pack: stop signs", **kwargs)
        stop, *_ = advice("stop")
        self.text = stop.text
        self.choice = Choice()
        self.choice.bind(on_choose=lambda _, key: self._choose(key))
        self.ids.choice_slot.add_widget(self.choice)
        for row in advice("fire"):
            self.ids.lines.add_widget(Text(text=row.text, bold=True))
        self.ids.lines.add_widget(Section(title="Other signs"))
        for row in advice("stop")[1:]:
            self.ids.lines.add_widget(Text(text=row.text))

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin with nothing chosen."""
        self.sign = ""
        super().open(**args)

    def refresh(self) -> None:
        """Show whether the pack is in use, and what can be done."""
        out = out_of_use(self.state)
        self.out = out is not None
        self.since = (
            f"Out of use: {out['sign']}, {ago(datetime.fromisoformat(out['at']), self.state.clock())}."
            if out
            else ""
        )
        self.question = "What came of it?" if self.out else "What do you see?"
        options = [list(option) for option in (ENDS if self.out else SIGNS)]
        self.choice.chosen = self.sign
        if [list(option) for option in self.choice.options] != options:
            self.choice.options = options

    def _choose(self, key: str) -> None:
        self.sign = key
        self.refresh()

    def act(self) -> None:
        """Take the pack out of use for the sign, or put it back for the reason."""
        if not self.sign:
            return
        sign, self.sign = self.sign, ""
        if self.out:
            put_back(self.state, sign)
        else:
            take_out(self.state, sign)
        self.refresh()


load_kv(__file__)
