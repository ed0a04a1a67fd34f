"""A ride in a few keys: how far, what it took out of the pack, and whether there was a fall or water."""

from dataclasses import replace
from datetime import timedelta
from functools import partial
from typing import Any

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from logic.board import Field, Value
from logic.log import Ride
from logic.log.rides import LIMITS
from logic.store import Record
from screens.app_page import AppPage
from screens.entry import Entry
from screens.widgets.keypad import Keypad
from screens.widgets.load import load_kv
from screens.widgets.row import Row
from screens.words.typed import not_used

FIELDS = {
    name: Field(
        f"ride.{name}",
        label,
        "number",
        int(name == "distance"),
        "",
        quantity=quantity,
        low=LIMITS[name][0],
        high=LIMITS[name][1],
    )
    for name, label, quantity in (
        ("distance", "Distance", "distance"),
        ("energy", "Energy used", "energy"),
        ("volts_before", "Volts before", "voltage"),
        ("volts_after", "Volts after", "voltage"),
    )
}
"""What can be entered, the distance first; the limits are those of the entry."""

CHECKED = {"volts_before": ("before_ride", "charge"), "volts_after": ("after_ride", "volts")}
"""The list and item whose reading stands for volts that are not typed."""

STILL_THE_SAME = timedelta(hours=24)
"""A reading of a check counts for a ride entered this soon after it."""


class RideEntry(AppPage):
    """Adds a ride; with `number`, corrects that one."""

    problem = StringProperty()
    crash = StringProperty("no")
    wet = StringProperty("no")
    save_text = StringProperty("SAVE THE RIDE")
    can_save = BooleanProperty(defaultvalue=False)
    rows = ObjectProperty()
    entry = ObjectProperty()
    writing = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build a row for each field."""
        self._field = "distance"
        self._values: dict[str, Value | None] = {}
        self._before: Value | None = None
        self._refused: set[str] = set()
        self._rows: dict[str, Row] = {}
        super().__init__(*args, nav=False, chip=False, **kwargs)
        for name, field in FIELDS.items():
            row = Row(title=field.label, chevron=False)
            row.bind(on_release=partial(self._tap, name))
            self._rows[name] = row
            self.rows.add_widget(row)
        self.entry.bind(
            on_value=lambda _, value: self._hold(value),
            on_empty=lambda *_: self._hold(None),
            on_wrong=lambda *_: self._hold(self._before, wrong=True),
            on_typed=self._typed,
            on_enter=lambda *_: self._next(1),
            on_next=lambda _, step: self._next(step),
        )
        self.writing.bind(text=lambda _, text: self._note_typed("note", text))

    @property
    def keypad(self) -> Keypad | None:
        """Return the keypad, unless words are being written."""
        return None if self.writing.focus else self.entry.keypad

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin with the distance; what was typed before the page was left is still there."""
        super().open(**args)
        self.title = "Correct the ride" if self._record else "Add a ride"
        self.save_text = "SAVE THE CORRECTION" if self._record else "SAVE THE RIDE"
        self.problem = ""
        ride = self._record.body if self._record else Ride()
        self._values = {name: self._start_value(name, ride) for name in FIELDS}
        self._refused = set()
        self.crash = "yes" if ride.crash else "no"
        self.wet = "yes" if ride.wet else "no"
        self.writing.text = self.state.typed.get(self._key("note"), ride.note)
        for name in FIELDS:
            if name != "distance" and self.state.typed.get(self._key(name)):
                self._ask(name)
        self._ask("distance")

    @property
    def _record(self) -> Record | None:
        number = self.args.get("number")
        return None if number is None else self.state.store.entry(number)

    def _start_value(self, name: str, ride: Ride) -> Value | None:
        if self._record:
            known = getattr(ride, name)
            return None if known is None else Value(known, "measured")
        if name in CHECKED:
            base, item = CHECKED[name]
            check = self.state.last("check", base=base)
            volts = check.body.volts(item) if check is not None else None
            low, high = LIMITS[name]
            fresh = check is not None and self.state.clock() - check.at < STILL_THE_SAME
            if fresh and volts is not None and low <= volts <= high:
                return Value(volts, "measured", note="from the check")
        return None

    def _key(self, name: str) -> str:
        return f"ride/{self.args.get('number', 'new')}/{name}"

    def _typed(self, _entry: Entry, text: str) -> None:
        self._note_typed(self._field, text)

    def _note_typed(self, name: str, text: str) -> None:
        if self.in_front:
            self.state.note_typed(self._key(name), text)

    def _ask(self, name: str) -> None:
        self._field = name
        value, field = self._values[name], FIELDS[name]
        self._before = value
        typed = self.state.typed.get(self._key(name), "")
        if not typed and value is not None:
            unit = self.style.shown(float(value.si), field.quantity)
            typed, value = unit.number.replace("\u202f", ""), Value(value.si, typed_unit=unit.unit)
        self.entry.ask(field, value, self.style, typed)
        self.refresh()

    def _tap(self, name: str, *_: object) -> None:
        self.writing.focus = False
        self._ask(name)

    def _next(self, step: int) -> None:
        names = list(FIELDS)
        place = names.index(self._field) + step
        if place >= len(names):
            self.save()
        else:
            self._ask(names[max(place, 0)])

    def _hold(self, value: Value | None, *, wrong: bool = False) -> None:
        self._values[self._field] = value
        self._refused = self._refused - {self._field} | ({self._field} if wrong else set())
        self.problem = ""
        self.refresh()

    def refresh(self) -> None:
        """Show what is entered so far."""
        if not self._values:
            return
        for name, row in self._rows.items():
            value = self._values[name]
            row.selected = name == self._field
            row.icon = "edit" if name == self._field else ""
            left = name in self._refused and name != self._field
            row.detail = (
                (not_used(self.state.typed.get(self._key(name), "")) if left else "")
                or (value.note if value is not None else "")
                or ("optional" if name != "distance" else "")
            )
            row.value = "not set"
            if value is not None:
                row.value = self.style.typed(float(value.si), FIELDS[name].quantity, value.typed_unit)
        self.can_save = self._values["distance"] is not None

    def save(self) -> None:
        """Write the ride, or its correction, into the log."""
        if self._values["distance"] is None:
            self.problem = "The distance is wanted; an estimate is better than none."
            self._ask("distance")
            return
        if self._field in self._refused:
            self.entry.leave()
            return
        before, after = self._values["volts_before"], self._values["volts_after"]
        if before is not None and after is not None and float(after.si) > float(before.si):
            self.problem = "More volts after than before: read both again, or leave one out."
            return
        before_it = self._record
        ride = replace(
            before_it.body if before_it else Ride(),
            **{name: None if value is None else float(value.si) for name, value in self._values.items()},
            note=self.writing.text.strip(),
            crash=self.crash == "yes",
            wet=self.wet == "yes",
        )
        if before_it:
            self.state.correct(before_it.id, ride)
        else:
            self.state.record(ride)
        for name in (*FIELDS, "note"):
            self.state.note_typed(self._key(name), "")
        self.writing.focus = False
        self.shell.back()


load_kv(__file__)
