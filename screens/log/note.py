"""A note, work done or a new belt, in words; also the note of any other entry."""

from dataclasses import replace
from typing import Any

from kivy.properties import BooleanProperty, ListProperty, ObjectProperty, StringProperty

from logic.log import BeltFitted, Note, Work
from logic.store import Record
from screens.app_page import AppPage
from screens.widgets.load import load_kv

KINDS = [("note", "Note"), ("work", "Repair or work"), ("belt_fitted", "New belt")]
PROMPTS = {
    "note": "Anything worth keeping.",
    "work": "What was repaired, renewed or changed.",
    "belt_fitted": "A new belt begins its re-checks anew: first ride, 10\u00a0km, 50\u00a0km.",
}


class NotePage(AppPage):
    """Adds an entry; with `number`, corrects that one's words."""

    kinds = ListProperty(KINDS)
    kind = StringProperty("note")
    side = StringProperty("left")
    prompt = StringProperty()
    sentence = StringProperty()
    fresh = BooleanProperty(defaultvalue=True)
    writing = ObjectProperty()
    kind_slot = ObjectProperty()
    side_slot = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build the choices; they are shown where they lead somewhere."""
        super().__init__(*args, nav=False, chip=False, **kwargs)
        # Kv holds its own weakly: what is taken off the page must be held here.
        self._slots = (self.kind_slot.__self__, self.side_slot.__self__)
        self.writing.bind(text=self._on_text)

    @property
    def record(self) -> Record | None:
        """Return the entry that is corrected."""
        number = self.args.get("number")
        return None if number is None else self.state.store.entry(number)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin with what was written before the page was left."""
        super().open(**args)
        record = self.record
        self.fresh = record is None
        self.title = "Add to the log" if record is None else "Correct the entry"
        self.sentence = ""
        self.side = self.state.saved.sides[0]
        if record is None:
            self.kind = args.get("kind", self.kind)
        start = record.body.note if record is not None else ""
        self.writing.text = self.state.typed.get(self._key, start)
        self.refresh()

    @property
    def _key(self) -> str:
        return f"note/{self.args.get('number', 'new')}"

    def _on_text(self, _writing: object, text: str) -> None:
        self.sentence = ""
        if self.in_front:
            self.state.note_typed(self._key, text)

    def refresh(self) -> None:
        """Show the choices that apply."""
        two = len(self.state.saved.sides) > 1
        for slot, shown in zip(self._slots, (self.fresh, self._asks_side() and two), strict=True):
            if shown and slot.parent is None:
                self.ids.choices.add_widget(slot)
            elif not shown and slot.parent is not None:
                slot.parent.remove_widget(slot)
        self.prompt = PROMPTS[self.kind] if self.fresh else "The words of this entry."

    def _asks_side(self) -> bool:
        return self.fresh and self.kind == "belt_fitted"

    def choose_kind(self, kind: str) -> None:
        """Say what it is."""
        self.kind = kind
        self.refresh()

    def save(self) -> None:
        """Write it into the log."""
        note = self.writing.text.strip()
        if not note and not self._asks_side():
            self.sentence = "Write a few words first."
            return
        record = self.record
        if record is not None:
            self.state.correct(record.id, replace(record.body, note=note))
        elif self._asks_side():
            self.state.record(BeltFitted(belt=self.side, note=note))
        else:
            self.state.record(Work(note=note) if self.kind == "work" else Note(note=note))
        self.state.note_typed(self._key, "")
        self.writing.focus = False
        self.shell.back()


load_kv(__file__)
