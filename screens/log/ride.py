"""A ride in a few keys: how far, what it took out of the pack, and whether there was a fall or water."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from functools import cached_property
from typing import Any

from logic.board import Field, Value
from logic.log import Ride
from logic.log.rides import LIMITS
from logic.store import Record as Entered
from logic.units import Shown
from screens.acts import Act, Back, Both, Go, Turn
from screens.acts.entering import Write
from screens.acts.keeping import Correct, Record
from screens.asking import number_entry, page_choice, read_entry
from screens.blocks import Block, Button, Choice, Entry, Line
from screens.blocks import Field as TextField
from screens.page import Foot, Page
from screens.tongue import _
from screens.words import Style
from screens.words.typed import not_used
from screens.world import World

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
        ("distance", _("Distance"), "distance"),
        ("energy", _("Energy used"), "energy"),
        ("volts_before", _("Volts before"), "voltage"),
        ("volts_after", _("Volts after"), "voltage"),
    )
}
"""What can be entered, the distance first; the limits are those of the entry."""

CHECKED = {"volts_before": ("before_ride", "charge"), "volts_after": ("after_ride", "volts")}
"""The list and item whose reading stands for volts that are not typed."""

TYPED = 5
"""Digits of a figure as one types it, at most."""

STILL_THE_SAME = timedelta(hours=24)
"""A reading of a check counts for a ride entered this soon after it."""


def ride_page(world: World) -> Page:
    """Return what a new ride will say, or what ride `number` says, corrected."""
    form = _Form(world)
    text = _("Save the correction") if form.record else _("Save the ride")
    why = form.problem
    return Page(
        title=_("Correct the ride") if form.record else _("Add a ride"),
        blocks=tuple(_blocks(form)),
        foot=Foot(main=Button(text, None if why else form.save(), why), entry=form.entry()),
        places=False,
    )


def correct_ride(world: World, record: Entered) -> Act:
    """Return the act that opens a ride to be corrected, with what it says as if it had been typed."""
    go = Go("log.ride", {"number": record.id})
    if any(key.startswith(f"ride/{record.id}/") for key in world.typed):
        return go
    texts = {name: _text(getattr(record.body, name), name, world.style) for name in FIELDS}
    texts["note"] = record.body.note
    writes = (Write(f"ride/{record.id}/{name}", text) for name, text in texts.items())
    return Both((*writes, go))


def _shown(value: float, name: str, style: Style) -> Shown:
    """Return a figure as it was typed; one that nobody types, as another unit makes it, with three digits."""
    quantity = FIELDS[name].quantity
    whole = style.shown(value, quantity, 9)
    return whole if sum(map(str.isdigit, whole.number)) <= TYPED else style.shown(value, quantity)


def _text(value: float | None, name: str, style: Style) -> str:
    """Return a figure as one would type it."""
    return "" if value is None else _shown(value, name, style).number.replace("\u202f", "")


class _Form:
    """What is typed and chosen so far, over what the log already holds."""

    def __init__(self, world: World) -> None:
        """Read the entry that is corrected, if one is."""
        self.world = world
        number = world.args.get("number")
        self.record = None if number is None else world.store.entry(number)
        self.ride: Ride = self.record.body if self.record else Ride()

    @property
    def front(self) -> str:
        """Return the field that is being typed, the distance first; "" for none."""
        return str(self.world.args.get("_field", "distance"))

    def key(self, name: str) -> str:
        """Return the key under which a field is typed."""
        return f"ride/{self.world.args.get('number', 'new')}/{name}"

    def typed(self, name: str) -> str:
        """Return the text of a field."""
        return self.world.typed.get(self.key(name), "")

    def unit(self, name: str) -> str:
        """Return the unit that digits of a field are read in until another is chosen."""
        quantity, known = FIELDS[name].quantity, getattr(self.ride, name)
        shown = self.world.style.shown(known, quantity) if known is not None else None
        return shown.unit if shown else self.world.style.unit(quantity)

    def stands(self, name: str) -> Value | None:
        """Return what counts while nothing that can be used is typed: the entry's own, or what a check has just read."""
        if self.record:
            known = getattr(self.ride, name)
            return None if known is None else Value(known, "measured", typed_unit=self.unit(name))
        if name not in CHECKED or self.world.args.get(f"no_{name}"):
            return None
        base, item = CHECKED[name]
        check = self.world.last("check", base=base)
        volts = check.body.volts(item) if check is not None else None
        low, high = LIMITS[name]
        # A check dated ahead of now was read with a wrong clock: its age is not known.
        fresh = check is not None and timedelta(0) <= self.world.now - check.at < STILL_THE_SAME
        usable = fresh and volts is not None and low <= volts <= high
        return Value(volts, "measured", note=_("from the check")) if usable and volts is not None else None

    @cached_property
    def values(self) -> dict[str, Value | None]:
        """Return each figure as it would be written."""
        return {name: self._value(name) for name in FIELDS}

    def _value(self, name: str) -> Value | None:
        text, stands = self.typed(name), self.stands(name)
        if not text:
            return None if self.record else stands
        if self.record and text == _text(getattr(self.ride, name), name, self.world.style):
            # Left as it was: the digits that are not shown stay as well.
            return stands
        return self.read(name) or stands

    def read(self, name: str) -> Value | None:
        """Return what the text of a field makes, None where it cannot be used."""
        unit = self.world.units.get(self.key(name), self.unit(name))
        return read_entry(self.world, self.typed(name), FIELDS[name], unit).value

    @property
    def problem(self) -> str:
        """Return what stands in the way of writing it, "" for nothing."""
        before, after = self.values["volts_before"], self.values["volts_after"]
        if self.values["distance"] is None:
            return _("The distance is wanted; an estimate is better than none.")
        if before is not None and after is not None and float(after.si) > float(before.si):
            return _("More volts after than before: read both again, or leave one out.")
        if self.front and self.typed(self.front) and self.read(self.front) is None:
            return _("What is being typed cannot be used.")
        return ""

    def flag(self, name: str) -> bool:
        """Tell whether there was a fall, or water."""
        said = self.world.args.get(name)
        return bool(getattr(self.ride, name)) if said is None else said == "yes"

    def entry(self) -> Entry | None:
        """Return the keypad of the field in front."""
        if not self.front:
            return None
        return number_entry(self.world, self.key(self.front), FIELDS[self.front], self.unit(self.front))

    def save(self) -> Act:
        """Return the act that writes the ride, or its correction, into the log."""
        figures: dict[str, Any] = {
            name: None if one is None else float(one.si) for name, one in self.values.items()
        }
        ride = replace(
            self.ride,
            **figures,
            note=self.typed("note").strip(),
            crash=self.flag("crash"),
            wet=self.flag("wet"),
        )
        then = (*(Write(self.key(name), "") for name in (*FIELDS, "note")), Back())
        return Correct(self.record.id, ride, then) if self.record else Record(ride, then, undo=_("Recorded"))


def _blocks(form: _Form) -> Iterator[Block]:
    for name in FIELDS:
        yield _line(form, name)
        value = form.values[name]
        if value is not None and value.note:
            # Volts of a check may be those of another ride.
            yield Line(f"no {name}", _("Leave these volts out"), icon="cross", act=Turn({f"no_{name}": True}))
    yield _choice(form, "crash", _("A fall or a crash?"), (_("No"), _("Crash")))
    yield _choice(form, "wet", _("Rain, puddles, a soaking?"), (_("Dry"), _("Wet")))
    yield TextField(form.key("note"), _("Note"), form.typed("note"), hint=_("Anything odd"))


def _line(form: _Form, name: str) -> Line:
    value, text, field = form.values[name], form.typed(name), FIELDS[name]
    refused = bool(text) and form.read(name) is None and name != form.front
    shown = _("not set")
    if value is not None:
        style, si = form.world.style, float(value.si)
        kept = form.record is not None and si == getattr(form.ride, name)
        shown = str(_shown(si, name, style)) if kept else style.typed(si, field.quantity, value.typed_unit)
    known = value.note if value is not None else ""
    return Line(
        name,
        field.label,
        not_used(text) if refused else known or ("" if name == "distance" else _("optional")),
        value=shown,
        bad=refused,
        chosen=name == form.front,
        act=Turn({"_field": name}),
    )


def _choice(form: _Form, name: str, label: str, texts: tuple[str, str]) -> Choice:
    """Return whether something happened."""
    words = zip(("no", "yes"), texts, strict=True)
    return page_choice(name, label, words, "yes" if form.flag(name) else "no")
