"""The base of pages that answer while one tries values. Its parts: what is asked, what is shown, what is kept."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.reading import Item, Result
from logic.board import Board, Field, Value
from screens.app_page import AppPage
from screens.asked import answers
from screens.cards import Cards, written
from screens.controls import Controls
from screens.entering import Entering
from screens.entry import Entry
from screens.inputs import Inputs
from screens.trial_foot import TrialFoot
from screens.widgets.column import Column
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.words import label_of, refusal
from screens.words.figures import OUTCOMES
from screens.words.typed import not_used


class TrialNotes(Column):
    """Which values are tried, and what does not fit together."""

    trying = StringProperty()
    problem = StringProperty()


class AnsweringPage(AppPage):
    """Works an answer out from the board and the values asked for, and shows it anew at every change.

    A page says what it shows by the names in capitals and by `work_out`. Its kv has a `chips` (ChipFlow), and what it
    needs of a `head` (Result) for the first answer, a `flow` (ResultFlow) for the rest, `controls` (Column).
    """

    HEAD = ""
    LABELS: dict[str, str] = {}  # noqa: RUF012  (each page names its own once, none changes them)
    DETAILS: dict[str, str] = {}  # noqa: RUF012  (as above)
    OUTCOMES = OUTCOMES
    CONTROLS: tuple[str, ...] = ()
    CHIPS: tuple[str, ...] = ()
    INPUTS = Inputs

    trying = StringProperty()
    problem = StringProperty()
    head = ObjectProperty(None, allownone=True)
    flow = ObjectProperty(None, allownone=True)
    controls = ObjectProperty(None, allownone=True)
    chips = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build controls and chips once; later only their words change."""
        self.answer: Any = None
        self.items: dict[str, Item] = {}
        self.asking: dict[str, Value] = {}
        self._of_saved: tuple[object, dict[str, Item]] | None = None
        super().__init__(*args, **kwargs)
        self.inputs = self.INPUTS(self)
        self.entering = Entering(self)
        self.values = Controls(self)
        self.cards = Cards(self)
        self.kept = TrialFoot(self)
        if self.head is not None:
            self.head.bind(on_open=lambda *_: self.open_working(self.HEAD))

    # What each page says

    def work_out(self, board: Board) -> Any:  # noqa: ANN401  (each page has its own answer)
        """Return the answer for a board: results by name, or what has them as `items` with its `faults`."""
        raise NotImplementedError

    def show_figures(self) -> None:
        """Show the results: the head, and the rest in the flow."""
        self.show_head()
        self.cards.show(self.flow, *self.items)

    def show(self, answer: Any) -> None:  # noqa: ANN401  (as above)
        """Show what is not a figure: pictures and advice."""

    def label(self, name: str) -> str:
        """Return the label of a result."""
        return self.LABELS[name]

    def detail(self, name: str, item: Item) -> str:
        """Return what a result holds for."""
        words = self.DETAILS.get(name, "")
        if isinstance(item, Result) and item.band:
            return f"{self.figure(item, item.value)} as entered. {words}".strip()
        return words

    def figure(self, item: Result, si: float) -> Any:  # noqa: ANN401  (a Shown)
        """Return a number of a result, its value or an end of its band, as this page writes it."""
        return written(item, si, self.style)

    def control_label(self, key: str) -> str:
        """Return the label of a stepper."""
        return label_of(key)

    def bars(self) -> list[tuple[str, str, Any]]:
        """Return text, kind and act of each bar while no value is asked for."""
        return self.kept.bars()

    # What is asked

    @property
    def board(self) -> Board:
        """Return the board the page works with: the trial's values over the saved ones."""
        return self.state.board

    @property
    def rider(self) -> Value | None:
        """Return the rider's mass."""
        return self.state.person.rider

    def asked(self, key: str) -> float | None:
        """Return the SI value of a question that stands."""
        value = self.inputs.value(key)
        return None if value is None else float(value.si)

    @property
    def keys(self) -> list[str]:
        """Return what can be asked for here, in the order of Tab."""
        return list(dict.fromkeys((*self.CONTROLS, *self.CHIPS)))

    def edit(self, key: str) -> None:
        """Ask for a value with the keypad, under the answers."""
        self.entering.ask(key)
        self.scroll.scroll_y = 1
        self.refresh()

    def done(self) -> None:
        """Close the keypad. What is typed and not a value stays typed, for when the field is opened again."""
        self.entering.leave()
        self.refresh()

    # What is shown

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Be shown; with `field`, ask for that one at once."""
        self.entering.leave()
        self._of_saved = None
        super().open(**args)
        if "field" in args:
            self.edit(args["field"])

    def refresh(self) -> None:
        """Work everything out anew and show it."""
        self.asking = answers(self.state)
        self.answer = self.work_out(self.board)
        self.items = _items(self.answer)
        self.problem = " ".join([*(refusal(fault, self.style) for fault in self.faults), *self._left()])
        self.show_figures()
        self.show(self.answer)
        self.values.show()
        self.trying = self.trying_text()
        self.kept.show()

    def _left(self) -> list[str]:
        """Return what was typed at a stepper and not used; a chip says so itself."""
        left = {key: not_used(self.inputs.unused(key)) for key in self.CONTROLS if key not in self.CHIPS}
        return [f"{self.control_label(key)}: {text}." for key, text in left.items() if text]

    @property
    def faults(self) -> Any:  # noqa: ANN401  (a tuple of InputError)
        """Return what does not fit together on the board."""
        return getattr(self.answer, "faults", ())

    @property
    def greyed(self) -> bool:
        """Tell whether the results are old: what was entered last cannot be used."""
        return self.entering.refused is not None or bool(self.faults)

    def show_head(self) -> None:
        """Show the first answer, where the page has one."""
        if self.HEAD in self.items:
            self.cards.fill(self.head, self.items[self.HEAD])

    def before(self, name: str) -> Item | None:
        """Return a result of the saved board, None while there is no trial; typing does not work it out again."""
        state = self.state
        if not state.trial or state.is_scratch:
            return None
        of = (state.saved, state.person, self.asking)
        if self._of_saved is None or self._of_saved[0] != of:
            self._of_saved = (of, _items(self.work_out(state.saved)))
        return self._of_saved[1].get(name)

    def trying_text(self) -> str:
        """Return which values are on trial."""
        changed = [label_of(key) for key in self.state.trial]
        return "" if self.state.is_scratch or not changed else "Trying: " + ", ".join(changed)

    def open_working(self, name: str) -> None:
        """Open the working of a result, or ask for what it lacks."""
        item = self.items[name]
        if isinstance(item, Result):
            self.shell.go("working", item=item, label=self.label(name))
        elif item.missing:
            self.edit(item.missing[0])

    # Back and the keyboard

    @property
    def field(self) -> Field | None:
        """Return what is asked for now."""
        return self.entering.field

    @property
    def entry(self) -> Entry | None:
        """Return where it is typed."""
        return self.entering.entry

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad while it is open."""
        return self.entering.keypad

    def back(self) -> bool:
        """Close the keypad first."""
        if self.field is None:
            return False
        self.done()
        return True

    def press(self, name: str) -> bool:
        """Tab opens the first field when none is open."""
        if name in ("next", "previous") and self.field is None and self.keys:
            self.edit(self.keys[0])
            return True
        return super().press(name)


def _items(answer: Any) -> dict[str, Item]:  # noqa: ANN401  (each page has its own answer)
    return dict(answer if isinstance(answer, dict) else getattr(answer, "items", {}))


load_kv(__file__)
