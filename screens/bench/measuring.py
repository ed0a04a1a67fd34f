"""One way to a belt's tension, read from a world: what it asks, what was typed, what that tells, and how it is kept."""

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from logic.answers.belt_bench import nudge_for
from logic.answers.reading import Item, Result
from logic.answers.tension import BeltPlan, BeltReading, belt_plan
from logic.answers.tension_entry import tension_entry
from logic.board import Board, Field, Value
from logic.store import Record as Entered
from screens.acts import Act, Swap
from screens.acts.entering import Forget
from screens.acts.keeping import Record
from screens.asking import number_entry, typed_value
from screens.blocks import Block, Entry
from screens.showing import why
from screens.tongue import _, texts
from screens.words.belt import nudge_text
from screens.words.tension import undo_text, with_error
from screens.world import World

FORCE: dict[str, Any] = {"quantity": "force", "low": 0.05, "high": 2000.0}
DEPTH: dict[str, Any] = {"quantity": "length", "low": 0.0001, "high": 0.03}


def asked_field(key: str, label: str, limits: dict[str, Any]) -> Field:
    """Return a field that belongs to a page and not to the board."""
    return Field(key, label, "number", 0, "", **limits)


class Measuring:
    """One way on one belt, read once from a world. A subclass names its way, what it asks and how it reads it."""

    way: ClassVar[str]
    heading: ClassVar[str]

    def __init__(self, world: World) -> None:
        """Read the belt of `side` in front: the first one until another is named."""
        self.world, self.style = world, world.style
        self.board: Board = world.board if world.is_scratch else world.saved
        self.sides = self.board.sides
        self.side = world.side_of(self.board)
        self.plan: BeltPlan = world.kept(belt_plan, self.board, world.person)
        self.prepare()
        self.fields = self.asks()
        self.values: dict[str, Value] = {}
        for field in self.fields:
            found = typed_value(world, self.typed_key(field), field, self.unit_of(field))
            if found is not None:
                self.values[field.key] = found
        at = world.args.get("_at")
        self.asked = next((field for field in self.fields if field.key == at), self.fields[0])
        self.reading: BeltReading | None = self.read()

    # What a way is

    def prepare(self) -> None:
        """Work out what the questions rest on."""

    def asks(self) -> tuple[Field, ...]:
        """Return what is asked, in order."""
        raise NotImplementedError

    def read(self) -> BeltReading | None:
        """Return what the values tell, None while they do not tell anything."""
        raise NotImplementedError

    def headline(self) -> tuple[str, str]:
        """Return the word and the sentence of the crown before anything is read."""
        return self.heading, self.aim()

    def instructions(self) -> str:
        """Return what to do with the hands."""
        return texts("belt")["hands"][self.way]

    def before(self) -> Iterator[Block]:
        """Yield what must be seen before the hands do anything."""
        yield from ()

    def pictures(self) -> Iterator[Block]:
        """Yield drawings of how it is done."""
        yield from ()

    def remarks(self) -> list[str]:
        """Return what deserves a sentence."""
        return []

    def figures(self) -> Mapping[str, Item]:
        """Return the results that are shown under "All figures"."""
        return {}

    def own(self) -> dict[str, Any]:
        """Return the fields of the entry that only this way fills."""
        return {}

    def provisional(self) -> str:
        """Return why a word does not stand yet; "" where it does."""
        return ""

    # Values

    def typed_key(self, field: Field) -> str:
        """Return the key under which a field keeps its text."""
        return f"{self.way}/{self.side}/{field.key}"

    def unit_of(self, field: Field) -> str:
        """Return the unit that digits of a field are read in: a force in that of the scale."""
        return self.world.person.scale_unit if field.quantity == "force" else self.style.unit(field.quantity)

    def number(self, key: str) -> float | None:
        """Return a value in SI, None while it is not there."""
        value = self.values.get(key)
        return None if value is None else float(value.si)

    @property
    def entry(self) -> Entry:
        """Return the entry of the field that is asked."""
        return number_entry(self.world, self.typed_key(self.asked), self.asked, self.unit_of(self.asked))

    def next_field(self) -> Field | None:
        """Return the next field without a value, None when all are there."""
        at = self.fields.index(self.asked)
        ordered = (*self.fields[at + 1 :], *self.fields[:at])
        return next((field for field in ordered if field.key not in self.values), None)

    # Log

    @property
    def last(self) -> Entered | None:
        """Return the last reading of this belt, by whatever way."""
        return self.world.last("tension", belt=self.side)

    @property
    def savable(self) -> bool:
        """Tell whether there is a tension to keep and a board to keep it with."""
        return self.reading is not None and self.reading.known and not self.world.is_scratch

    def save(self) -> Act | None:
        """Return the act that writes the reading into the log, forgets the numbers and shows what was saved."""
        if not self.savable:
            return None
        entry = tension_entry(self.side, self.way, self.plan, self.reading, self.world.person, **self.own())
        keys = tuple(self.typed_key(field) for field in self.fields)
        then = (Forget(keys), Swap("bench.saved", gather={"ids": ("_saved",)}))
        return Record(entry, then, key="_saved", undo=undo_text(_("Belt tension")))

    # What it tells

    def lacks(self) -> str:
        """Return what a reading lacks to be a tension."""
        item = None if self.reading is None else self.reading.tension
        return "" if item is None or isinstance(item, Result) else why(item, self.style)

    def told(self) -> str:
        """Return the tension with its error, "" while there is none."""
        reading = self.reading
        if reading is None or not isinstance(reading.tension, Result):
            return ""
        error = reading.error.value if isinstance(reading.error, Result) else None
        return with_error(reading.tension.value, error, self.style)

    def aim(self) -> str:
        """Return the tension to set to."""
        target = self.plan.items["target"]
        if isinstance(target, Result):
            return _("Set to {force} in each span.").format(force=self.style.number(target.value, "force"))
        return why(target, self.style)

    def subject(self) -> str:
        """Return what the reading is one of."""
        return _("Belt tension")

    def move(self, word: str) -> str:
        """Return how far to move the motor, never as a promise."""
        reading = self.reading
        if word == "in window" or reading is None or not isinstance(reading.tension, Result):
            return ""
        return nudge_text(nudge_for(self.board, self.world.person, reading.tension.value), self.style)

    def change(self, tension: float) -> str:
        """Return the change since the last reading by this way: it is what is known best."""
        before = self.world.last("tension", belt=self.side, method=self.way)
        if before is None or before.body.tension is None:
            return ""
        text = _("{change} since last time, {way}.").format(
            change=self.style.change(tension, before.body.tension, "force"),
            way=texts("belt")["short_way"][self.way],
        )
        return text[:1].upper() + text[1:]

    def reads(self) -> str:
        """Return what the tool in the hand reads beside what it should; "" where that says nothing."""
        return ""
