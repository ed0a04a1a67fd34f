"""Two set-ups side by side: the saved board against its trial, or against another board."""

from functools import partial
from typing import Any

from kivy.metrics import dp
from kivy.properties import BooleanProperty, NumericProperty, ObjectProperty, StringProperty

from logic.answers.compare import ComparedLine, Comparison, comparison
from logic.answers.reading import RIDER, Item, Open
from logic.board import Board
from logic.units import quantities
from screens.answering import AnsweringPage
from screens.cards import why
from screens.widgets.chart import Curve
from screens.widgets.choice import ChoiceButton
from screens.widgets.column import Column
from screens.widgets.load import load_kv
from screens.widgets.surface import Tap
from screens.widgets.text import width_of
from screens.words import push as push_words
from screens.words.pairs import LABELS as PAIR_LABELS

TRIAL = "trial"


class CompareRow(Tap, Column):
    """One figure of both set-ups and the difference. A tap opens the working of the second."""

    title = StringProperty()
    first = StringProperty()
    second = StringProperty()
    change = StringProperty()
    changed = BooleanProperty(defaultvalue=False)
    need = NumericProperty(0)

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Start without a frame."""
        kwargs.setdefault("look", "bare")
        super().__init__(**kwargs)

    def dress(self, *_: object) -> None:
        """Measure: three values on one line, or one under the other."""
        super().dress()
        widest = max(
            width_of(text, "body", bold=True) for text in (self.first, self.second, self.change, "0")
        )
        self.need = 3 * widest + dp(32)

    on_first = on_second = on_change = dress


class ComparePage(AnsweringPage):
    """The board as saved stands first; the second is its trial, or another board."""

    CHIPS = ("ask.speed", "ask.grade", "ask.wind", "ask.climb_grade", "ask.climb_speed", RIDER.key)
    LABELS = PAIR_LABELS | {
        "climb_heat": "Heat of one motor on the reference climb",
        "time_20": push_words.LABELS["time_20"],
        "time_30": push_words.LABELS["time_30"],
        "per_distance": "Energy on the way, held steady",
    }

    title = StringProperty("Two set-ups")
    headline = StringProperty()
    told = StringProperty()
    rows = ObjectProperty()
    chart = ObjectProperty()
    others = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Start with the trial, or with the first other board."""
        self.second_id = ""
        self._trial_seen = False
        self._row_of: dict[str, CompareRow] = {}
        self._choices: tuple[tuple[str, str], ...] = ()
        super().__init__(*args, **kwargs)

    def work_out(self, _board: Board) -> Comparison | None:
        """Return both set-ups, None while there is nothing to compare with."""
        state = self.state
        boards = {board.id: board for board in state.boards() if board.id != state.saved.id}
        trial = bool(state.trial) and not state.is_scratch
        choices = ((TRIAL, "The trial"),) if trial else ()
        choices += tuple((key, board.name) for key, board in boards.items())
        if trial and not self._trial_seen:
            self.second_id = TRIAL
        self._trial_seen = trial
        if self.second_id not in dict(choices):
            self.second_id = choices[0][0] if choices else ""
        self._show_choices(choices)
        if not self.second_id:
            return None
        first = state.board if state.is_scratch else state.saved
        second = state.board if self.second_id == TRIAL else boards[self.second_id]
        name = "its trial" if self.second_id == TRIAL else second.name
        self.headline = f"{first.name} against {name}"
        return comparison(first, second, self.rider, self.asking)

    def show_figures(self) -> None:
        """Show a row for each figure."""
        lines = self.answer.lines if self.answer is not None else ()
        self.items = {line.name: line.second for line in lines}
        self._show_lines(lines)

    def show(self, answer: Comparison | None) -> None:
        """Name both, and draw them."""
        if answer is None:
            self.headline = "There is nothing to compare with yet."
            self.told = "Try another value on a page of Numbers, or save a second board."
            self.chart.lines = ()
            return
        self.told = "First, second, and the second less the first."
        self._show_chart(answer)

    def label(self, name: str) -> str:
        """Return the words of a figure, with the speeds in the person's unit."""
        words = super().label(name)
        for kmh in (20, 30):
            words = words.replace("{" + str(kmh) + "}", self.style.number(kmh / 3.6, "speed"))
        return words

    def _show_lines(self, lines: tuple[ComparedLine, ...]) -> None:
        wanted = [line.name for line in lines]
        for name in [name for name in self._row_of if name not in wanted]:
            self.rows.remove_widget(self._row_of.pop(name))
        for line in lines:
            row = self._row_of.get(line.name)
            if row is None:
                row = self._row_of[line.name] = CompareRow()
                row.bind(on_release=partial(self.open_working, line.name))
                self.rows.add_widget(row)
            row.title = self.label(line.name)
            row.first, row.second = self._text(line.first), self._text(line.second)
            row.change = self._change(line)
            row.changed = row.change not in ("", "no change")

    def _text(self, item: Item) -> str:
        return (
            why(item, self.style, self.OUTCOMES)
            if isinstance(item, Open)
            else self.style.number(item.value, item.quantity)
        )

    def _change(self, line: ComparedLine) -> str:
        if isinstance(line.first, Open) or isinstance(line.second, Open):
            return ""
        return self.style.change(line.second.value, line.first.value, line.second.quantity)

    def _show_choices(self, choices: tuple[tuple[str, str], ...]) -> None:
        if choices != self._choices:
            self._choices = choices
            self.others.clear_widgets()
            for key, text in choices:
                button = ChoiceButton(text=text, key=key)
                button.bind(on_release=self._choose)
                self.others.add_widget(button)
        for button in self.others.children:
            button.chosen = button.key == self.second_id

    def _choose(self, button: ChoiceButton) -> None:
        self.second_id = button.key
        self.refresh()

    def _show_chart(self, answer: Comparison) -> None:
        chart, style = self.chart, self.style
        speed, force = (quantities()[name].home(style.system).shown for name in ("speed", "force"))
        chart.x_title, chart.y_title = f"Speed, {speed}", f"Push, {force}"
        chart.empty_text = "The chart needs values that are missing on both."
        named = zip(("first", "second"), answer.push, answer.load, strict=True)
        lines = []
        for name, push, load in named:
            for words, points in ((name, push), (f"load, {name}", load)):
                scaled = [(style.scale(x, "speed"), style.scale(y, "force")) for x, y in points]
                if scaled:
                    lines.append(Curve(words, scaled))
        chart.lines = tuple(lines)


load_kv(__file__)
