"""Two readings of one belt by different ways: their weighted mean, or why they disagree."""

from typing import Any

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from logic.answers.belt_together import Together, Told, together
from logic.answers.reading import Result
from logic.answers.tension import BeltPlan, belt_plan
from logic.answers.tension_entry import tension_entry
from screens.app_page import AppPage
from screens.belt_gauge import show_window
from screens.widgets.load import load_kv
from screens.widgets.row import Row
from screens.words.belt import BENCH, WAYS
from screens.words.tension import REASONS, TONES, ago, tension_text, tile, with_error


class TogetherPage(AppPage):
    """Shows what the log entries `ids` tell together."""

    verdict = StringProperty()
    tone = StringProperty("text")
    tension = StringProperty()
    certainty = StringProperty()
    apart = StringProperty()
    advice = StringProperty()
    agree = BooleanProperty(defaultvalue=False)
    gauge = ObjectProperty()
    told = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        self.found: Together | None = None
        self.plan: BeltPlan | None = None
        super().__init__(*args, title=WAYS["together"], nav=False, chip=False, **kwargs)

    def refresh(self) -> None:
        """Show both readings and what they tell."""
        style, state = self.style, self.state
        records = [state.store.entry(number) for number in self.args["ids"]]
        self.told.clear_widgets()
        for record in records:
            way = WAYS[record.body.method]
            told = tension_text(record, style).split(",")[0]
            when = ago(record.at, state.clock())
            self.told.add_widget(Row(title=way, detail=when, value=told, chevron=False))
        self.found = together(
            state.saved,
            state.person,
            *(Told(record.body.method, record.body.tension, record.body.error) for record in records),
        )
        self.plan = belt_plan(state.saved, state.person)
        reading = self.found.reading
        show_window(self.gauge, self.plan, reading, None, style)
        self.agree = self.found.agree
        self.advice = self.found.advice
        if isinstance(self.found.apart, Result):
            self.apart = (
                f"They stand {style.plain(self.found.apart.value, 2)} times as far apart as their errors"
                " allow."
                if not self.agree
                else "They agree within their errors."
            )
        self.verdict = self.tension = self.certainty = ""
        self.tone = "text"
        if not self.agree:
            self.verdict, self.tone = "THEY DISAGREE", "bad"
        elif (
            reading is not None and isinstance(reading.tension, Result) and isinstance(reading.error, Result)
        ):
            told = with_error(reading.tension.value, reading.error.value, style)
            self.tension = f"Belt tension {told}"
            if reading.verdict is not None:
                word = reading.verdict.word
                self.verdict, self.certainty, self.tone = tile(word), REASONS[word], TONES.get(word, "text")

    def open_working(self) -> None:
        """Open the working of the mean, or of how far they stand apart."""
        item = self.found.reading.tension if self.found.reading is not None else self.found.apart
        if isinstance(item, Result):
            self.shell.go("working", item=item, label=BENCH[item.name])

    def save(self) -> None:
        """Write the mean into the log."""
        number = self.state.record(
            tension_entry(
                self.args["side"],
                "together",
                self.plan,
                self.found.reading,
                self.state.person,
                means=tuple(self.args["ids"]),
            )
        )
        self.shell.replace("bench.saved", ids=[number])


load_kv(__file__)
