"""The page of every way to a belt's tension: the verdict, numbers asked in order, what they tell."""

from collections.abc import Iterator, Mapping

from logic.answers.reading import Item, Result
from logic.board import Field
from logic.store import Record as Entered
from screens.acts import Turn
from screens.acts.entering import Forget
from screens.bench.measuring import Measuring
from screens.blocks import Block, Button, Choice, Line, Option, Verdict, Words
from screens.page import Foot, Page
from screens.pictures.gauge import gauge
from screens.showing import figure, fold, shared_sureness, working
from screens.tongue import _, texts
from screens.trying import KEEP_THIS_BOARD, trial_note
from screens.ways import picture_if, words_if
from screens.words.tension import ITEMS, REASONS, SIGNS, ago, belt_name, form_of, tension_text, tile
from screens.world import World

LABELS = {**ITEMS, **texts("belt")["bench"]}


class Measure(Measuring):
    """The page of one way: the verdict, what is asked, what it tells."""

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
        way = self.heading[0].lower() + self.heading[1:]
        return _("{belt}: {way}").format(belt=belt_name(self.side), way=way)

    def foot(self) -> Foot:
        """Return the entry, and the bar that goes on or saves."""
        ahead, here = self.next_field(), self.asked.key in self.values
        if here and ahead is not None:
            text = _("Next: {label}").format(label=ahead.label.lower())
            return Foot(main=Button(text, Turn({"_at": ahead.key})), entry=self.entry)
        return Foot(main=self.save_bar(), entry=self.entry)

    def save_bar(self) -> Button:
        """Return the bar that saves, or keeps the board first."""
        if self.world.is_scratch and self.reading is not None and self.reading.known:
            return Button(_("Keep this board"), KEEP_THIS_BOARD)
        return Button(_("Save"), self.save() if self.asked.key in self.values else None, self.why_not())

    def why_not(self) -> str:
        """Return why nothing can be saved."""
        if self.asked.key not in self.values:
            return _("Type a value first.")
        if self.world.is_scratch:
            return _("Nothing is kept without a board: make one first.")
        return "" if self.reading is None else self.lacks()

    def crown(self) -> Verdict:
        """Return the verdict with what was read; before there is one, what to do and to aim at."""
        reading = self.reading
        if reading is None:
            word, text = self.headline()
            return Verdict(word, text, lines=2)
        told, word = self.told(), reading.verdict.word if reading.verdict is not None else ""
        if not word:
            return Verdict(told or _("Not known yet"), self.lacks(), lines=2)
        reserve = self.provisional()
        if reserve:
            head = _("HERE: {word}").format(word=tile(word))
            return Verdict(head, reserve, form=form_of("unsure"), lines=2)
        return Verdict(
            tile(word), self.reads() or told, form=form_of(word), sign=SIGNS.get(word, ""), lines=2
        )

    def blocks(self) -> Iterator[Block]:
        """Yield what stands under the verdict, the most wanted first."""
        yield from trial_note(self.world)
        yield from self.before()
        yield from self.picks()
        if self.reading is None or self.provisional():
            yield Words("do", self.instructions(), role="lead")
        yield from self.what_it_tells()
        yield from self.pictures()
        yield from words_if("remarks", " ".join(self.remarks()))
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
            yield Line("forget", _("Forget these numbers"), icon="undo", act=forget)

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
                "values",
                self.picks_label(),
                tuple(
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
            yield from words_if("certainty", REASONS.get(word))
            yield from words_if("move", self.move(word), role="lead", bold=True)
        known = None if last is None else last.body.tension
        drawn = gauge(self.plan, reading, known, self.style)
        yield from picture_if("gauge", drawn, f"{self.aim()} {self.told()}".strip())
        if reading is not None and isinstance(reading.tension, Result):
            yield Words("tension", f"{self.subject()} {self.told()}", role="lead", bold=True)
            yield from words_if("change", self.change(reading.tension.value), bold=True)
            act = working(reading.tension, LABELS["tension"])
            yield Line("working", _("Working of this reading"), icon="sum", act=act)
        yield Words("last", last_text(self.world, last), tone="second")


def last_text(world: World, last: Entered | None) -> str:
    """Return the reading before, by whatever way."""
    if last is None:
        return _("First reading of this belt.")
    # An entry from elsewhere may not say by which way.
    way = texts("belt")["short_way"].get(last.body.method, "")
    said = (tension_text(last, world.style), way, ago(last.at, world.now))
    return _("Last time {said}.").format(said=", ".join(filter(None, said)))
