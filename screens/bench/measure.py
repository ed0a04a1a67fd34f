"""What every way to a belt's tension has in common: numbers asked in order, a verdict at once, saving."""

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from logic.answers.belt_bench import nudge_for
from logic.answers.reading import Item, Result
from logic.answers.tension import BeltPlan, BeltReading, belt_plan
from logic.answers.tension_entry import tension_entry
from logic.board import Board, Field, Value
from logic.store import Record as Entered
from screens.acts import Act, Forget, Go, Record, Swap, Turn
from screens.asking import figure, fold, number_entry, shared_sureness, typed_value, why, working
from screens.belt_verdict import form_of
from screens.blocks import (
    PLAIN,
    Block,
    Button,
    Choice,
    Entry,
    Line,
    Option,
    Picture,
    Verdict,
    Words,
)
from screens.page import Foot, Page
from screens.pictures.gauge import gauge
from screens.saved_board import trial_note
from screens.tongue import _
from screens.words.belt import BENCH, SHORT_WAY, nudge_text
from screens.words.tension import ITEMS, REASONS, ago, tension_text, tile, with_error
from screens.world import World

LABELS = {**ITEMS, **BENCH}


class Measure:
    """One way on one belt, read once from a world. A subclass names its way, what it asks and how it reads it."""

    way: ClassVar[str]
    heading: ClassVar[str]

    def __init__(self, world: World) -> None:
        """Read the belt of `side` in front: the first one until another is named."""
        self.world, self.style = world, world.style
        self.board: Board = world.board if world.is_scratch else world.saved
        self.sides = self.board.sides
        wanted = world.args.get("side", self.sides[0])
        self.side: str = wanted if wanted in self.sides else self.sides[0]
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
        raise NotImplementedError

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
        return Record(entry, then, key="_saved")

    # The page

    def page(self) -> Page:
        """Return the page of this way."""
        at = self.fields.index(self.asked)
        return Page(
            title=self.title(),
            crown=self.crown(),
            blocks=tuple(self.blocks()),
            foot=self.foot(),
            aside=frozenset(
                {"gauge", "span picture", "drive picture", "remarks", "figures", *self.figures()}
            ),
            back=Turn({"_at": self.fields[at - 1].key}) if at else None,
            places=False,
            card=f"{self.way} {self.side}",
        )

    def title(self) -> str:
        """Return the way, with the side where there are two."""
        if len(self.sides) == 1:
            return self.heading
        return _("{way}, {side}").format(way=self.heading, side=self.side.upper())

    def foot(self) -> Foot:
        """Return the entry, and the bar that goes on or saves."""
        ahead, here = self.next_field(), self.asked.key in self.values
        if here and ahead is not None:
            text = _("NEXT: {label}").format(label=ahead.label.upper())
            return Foot(main=Button(text, Turn({"_at": ahead.key})), entry=self.entry)
        return Foot(main=self.save_bar(), entry=self.entry)

    def save_bar(self) -> Button:
        """Return the bar that saves, or keeps the board first."""
        if self.world.is_scratch and self.reading is not None and self.reading.known:
            return Button(_("KEEP THIS BOARD"), Go("board.name", {"purpose": "keep"}))
        return Button(_("SAVE"), self.save() if self.asked.key in self.values else None, self.why_not())

    def why_not(self) -> str:
        """Return why nothing can be saved."""
        if self.asked.key not in self.values:
            return _("Type a value first.")
        if self.world.is_scratch:
            return _("Nothing is kept without a board: make one first.")
        return "" if self.reading is None else self.lacks()

    def lacks(self) -> str:
        """Return what a reading lacks to be a tension."""
        item = None if self.reading is None else self.reading.tension
        return "" if item is None or isinstance(item, Result) else why(item, self.style)

    def crown(self) -> Verdict:
        """Return the verdict with what was read; before there is one, what to do and to aim at."""
        reading = self.reading
        if reading is None:
            word, text = self.headline()
            return Verdict(key="verdict", word=word, text=text, form=PLAIN, lines=2)
        told, word = self.told(), reading.verdict.word if reading.verdict is not None else ""
        if not word:
            return Verdict(
                key="verdict", word=told or _("Not known yet"), text=self.lacks(), form=PLAIN, lines=2
            )
        reserve = self.provisional()
        if reserve:
            head = _("HERE: {word}").format(word=tile(word))
            return Verdict(key="verdict", word=head, text=reserve, form=form_of("unsure"), lines=2)
        return Verdict(key="verdict", word=tile(word), text=self.reads() or told, form=form_of(word), lines=2)

    def reads(self) -> str:
        """Return what the tool in the hand reads beside what it should; "" where that says nothing."""
        return ""

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

    def blocks(self) -> Iterator[Block]:
        """Yield what stands under the verdict, the most wanted first."""
        yield from trial_note(self.world)
        yield from self.before()
        yield from self.picks()
        if self.reading is None or self.provisional():
            yield Words(key="do", text=self.instructions(), role="lead")
        yield from self.what_it_tells()
        yield from self.pictures()
        said = " ".join(self.remarks())
        if said:
            yield Words(key="remarks", text=said)
        yield from self.rest()

    def rest(self) -> Iterator[Block]:
        """Yield what is folded."""
        shown = self.figures()
        if shown:
            note = self.world.kept(shared_sureness, shown)
            yield from fold(
                self.world, "figures", _("All figures"), lambda: (*self.drawn(), *self.rows(shown)), note
            )
        if any(self.world.typed.get(self.typed_key(field)) for field in self.fields):
            keys = tuple(self.typed_key(field) for field in self.fields)
            forget = Forget(keys, _("Numbers forgotten"))
            yield Line(key="forget", title=_("Forget these numbers"), icon="undo", act=forget)

    def drawn(self) -> Iterator[Block]:
        """Yield the drawing that belongs to the figures."""
        yield from ()

    def rows(self, items: Mapping[str, Item]) -> Iterator[Block]:
        """Yield figures as rows; a pull is told in the unit of the scale."""
        for name, item in items.items():
            pulled = name.startswith("pull") or name in ("best_pull", "motor_pull")
            unit = self.world.person.scale_unit if pulled else ""
            yield figure(self.world, item, LABELS[name], unit=unit)

    def picks(self) -> Iterator[Block]:
        """Yield what has been read so far, where several numbers are asked."""
        if len(self.fields) > 1:
            yield Choice(
                key="values",
                label=self.picks_label(),
                options=tuple(
                    Option(self.pick(field), Turn({"_at": field.key}), field is self.asked)
                    for field in self.fields
                ),
            )

    def picks_label(self) -> str:
        """Return what has been typed so far."""
        return _("{count} of {all} typed").format(count=len(self.values), all=len(self.fields))

    def pick(self, field: Field) -> str:
        """Return a field with its value, short."""
        value = self.values.get(field.key)
        if value is None:
            return field.label
        return f"{field.label}: {self.style.typed(float(value.si), field.quantity, value.typed_unit)}"

    def what_it_tells(self) -> Iterator[Block]:
        """Yield move, gauge, tension and change of a reading, and the reading before."""
        reading, last = self.reading, self.last
        word = reading.verdict.word if reading is not None and reading.verdict is not None else ""
        if word and not self.provisional():
            if REASONS[word]:
                yield Words(key="certainty", text=REASONS[word])
            move = self.move(word)
            if move:
                yield Words(key="move", text=move, role="lead", bold=True)
        known = None if last is None else last.body.tension
        drawn = gauge(self.plan, reading, known, self.style)
        if drawn is not None:
            yield Picture(key="gauge", strokes=drawn, text=f"{self.aim()} {self.told()}".strip())
        if reading is not None and isinstance(reading.tension, Result):
            yield Words(key="tension", text=f"{self.subject()} {self.told()}", role="lead", bold=True)
            change = self.change(reading.tension.value)
            if change:
                yield Words(key="change", text=change, bold=True)
            act = working(reading.tension, LABELS["tension"])
            yield Line(key="working", title=_("Working of this reading"), icon="sum", act=act)
        yield Words(key="last", text=last_text(self.world, last), tone="second")

    def subject(self) -> str:
        """Return what the reading is one of."""
        return _("Belt tension")

    def move(self, word: str) -> str:
        """Return how far to move the motor, never as a promise."""
        reading = self.reading
        if word == "in window" or reading is None or not isinstance(reading.tension, Result):
            return ""
        found = nudge_for(self.board, self.world.person, reading.tension.value)
        return nudge_text(found, self.style)

    def change(self, tension: float) -> str:
        """Return the change since the last reading by this way: it is what is known best."""
        before = self.world.last("tension", belt=self.side, method=self.way)
        if before is None or before.body.tension is None:
            return ""
        text = _("{change} since last time, {way}.").format(
            change=self.style.change(tension, before.body.tension, "force"), way=SHORT_WAY[self.way]
        )
        return text[:1].upper() + text[1:]


def last_text(world: World, last: Entered | None) -> str:
    """Return the reading before, by whatever way."""
    if last is None:
        return _("First reading of this belt.")
    return _("Last time {tension}, {way}, {ago}.").format(
        tension=tension_text(last, world.style),
        way=SHORT_WAY.get(last.body.method, ""),
        ago=ago(last.at, world.now),
    )
