"""Screw reach: five lengths in, whether the thread holds and the windings are clear, drawn to scale."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cached_property

from logic.answers.asked import questions
from logic.answers.reach import NAMES, ReachCard, asked_key, reach_card
from logic.answers.reading import Result
from logic.board import Value
from logic.frozen import frozen
from logic.tables import matching
from screens.acts.entering import Ask, Done, Put
from screens.asking import entry_of, field_of, refused_now, value_line
from screens.bench.joint_card import board_of
from screens.blocks import Block, Button, Choice, Line, Notice, Option, Picture, Section, Verdict, Words
from screens.figure_page import Figures
from screens.page import Foot, Page
from screens.pictures.reach import reach_picture
from screens.showing import sentences
from screens.tongue import _, texts
from screens.ways import words_if
from screens.words import refusal
from screens.world import World

FORMS = {"enough": "right", "close": "unsure"}
"""How a verdict looks; the others are a no."""
WINDINGS = texts("joints")["said"]["windings"]
LESS_THAN_WANTED = _("One diameter holds, but less than this metal wants.")
NONE_FITS = _("No screw fits here: the hole has too little thread.")
HATCHING = _("Single lines are light metal, pairs steel, broken lines brass or nylon.")
PICKS = ("thread", "metal", "behind")


def reach_page(world: World) -> Page:
    """Return the verdict, the cut, the five lengths, and what to look at once the screws are in."""
    seat = _Seat(world)
    steps = matching("reach_steps", of="after")
    figures = Figures(world, seat.card.items, texts("joints")["items"])
    return Page(
        title=_("Screw reach"),
        crown=seat.verdict(),
        blocks=(
            *seat.told(),
            *seat.picture(),
            *(seat.length(name) for name in NAMES),
            *(seat.pick(name) for name in PICKS),
            *figures.rows((), _("How it is worked out")),
            Section("after", _("After the screws are in")),
            *sentences("step", (row.text("step") for row in steps)),
        ),
        foot=seat.foot(),
        aside=frozenset({"picture", "hatching"}),
        places=False,
    )


@frozen
class _Seat:
    """How a screw sits by what was answered."""

    world: World

    @cached_property
    def lengths(self) -> dict[str, Value]:
        """Return the lengths that are known, each measured."""
        answers = self.world.answers
        return {
            name: replace(answers[key], known="measured")
            for name in NAMES
            if (key := asked_key(name)) in answers
        }

    def picked(self, name: str) -> str:
        """Return the thread, the metal or what is behind the hole: as answered, else as this board's motor screws have it."""
        question, answer = questions()[asked_key(name)], self.world.answers.get(asked_key(name))
        if answer is not None:
            return str(answer.si)
        own = board_of(self.world).joint("motor_face")
        stands = {"thread": own.thread, "metal": own.into}.get(name) or question.begins
        keys = [option.key for option in question.field.options]
        usual = {"thread": "M4", "metal": "6061-T6"}.get(name, keys[0])
        return str(stands.si) if stands is not None and stands.si in keys else usual

    @cached_property
    def card(self) -> ReachCard:
        """Return the answer."""
        through = self.picked("behind") == "windings"
        return reach_card(self.picked("thread"), self.lengths, self.picked("metal"), through=through)

    def verdict(self) -> Verdict:
        """Return whether it holds and is clear; how many lengths are missing before that."""
        card, stale = self.card, refused_now(self.world)
        if card.verdict:
            text, form = texts("joints")["reach_told"][card.verdict], FORMS.get(card.verdict, "wrong")
            if card.verdict == "enough" and card.short:
                text = LESS_THAN_WANTED
            room = card.items.get("room")
            if isinstance(room, Result):
                text = text.format(past=self.world.style.number(abs(room.value), "length"))
            return Verdict(texts("joints")["reach"][card.verdict], text, form=form, grey=stale, lines=2)
        if card.problem is not None:
            text = refusal(card.problem, self.world.style)
            return Verdict(_("Not known"), text, lines=2)
        count = len(card.missing)
        text = _("Still to measure: 1 length.") if count == 1 else _("Still to measure: {count} lengths.")
        text = text.format(count=count)
        return Verdict(_("Not known yet"), text, lines=2)

    def told(self) -> Iterator[Block]:
        """Yield how to measure what is asked; the hazard; which screws fit; what to do about one that is too long."""
        world, card = self.world, self.card
        if world.asking is not None:
            yield Words("help", field_of(world.asking.key).help)
        if card.verdict == "reaches the windings":
            yield Notice("hazard", "warning", WINDINGS)
        yield from words_if("fits", self._fits(), bold=True)
        if card.verdict in ("reaches the windings", "bottoms"):
            yield Words("long", next(matching("reach_steps", of="long")).text("step"))

    def _fits(self) -> str:
        shortest, longest = self.card.items.get("shortest"), self.card.items.get("longest")
        if isinstance(shortest, Result) and isinstance(longest, Result):
            low, high = (self.world.style.number(item.value, "length") for item in (shortest, longest))
            return _("Screws of {low} to {high} fit here.").format(low=low, high=high)
        return "" if shortest is None else NONE_FITS

    def picture(self) -> Iterator[Block]:
        """Yield the cut once all lengths are known."""
        engaged, room = self.card.items.get("engaged"), self.card.items.get("room")
        if not isinstance(engaged, Result) or not isinstance(room, Result):
            return
        through = self.picked("behind") == "windings"
        strokes = reach_picture(
            self.picked("thread"),
            {name: float(value.si) for name, value in self.lengths.items()},
            self.world.style,
            engaged=engaged.value,
            room=room.value,
            metal=self.picked("metal"),
            through=through,
        )
        said = _("The screw in its hole, to scale. {engaged} of thread holds.").format(
            engaged=self.world.style.number(engaged.value, "length")
        )
        yield Picture("picture", strokes, said)
        yield Words("hatching", HATCHING, role="small", tone="second")

    def length(self, name: str) -> Line:
        """Return a length; who types one has measured it."""
        line = value_line(self.world, asked_key(name))
        return line if line.bad else replace(line, detail="")

    def pick(self, name: str) -> Choice:
        """Return a choice of what the lengths belong to."""
        key, chosen = asked_key(name), self.picked(name)
        field = questions()[key].field
        return Choice(
            key,
            field.label,
            tuple(
                Option(one.label, Put(key, Value(one.key), "question"), one.key == chosen)
                for one in field.options
            ),
        )

    def foot(self) -> Foot:
        """Return the keypad with the way to the next length that is missing."""
        world, entry = self.world, entry_of(self.world)
        asked = "" if world.asking is None else world.asking.key
        missing = (asked_key(name) for name in NAMES if name not in self.lengths)
        following = next((key for key in missing if key != asked), "")
        if following:
            label = questions()[following].field.label
            text = _("Next: {length}") if asked else _("Measure: {length}")
            return Foot(main=Button(text.format(length=label.lower()), Ask(following)), entry=entry)
        if entry is not None:
            return Foot(main=Button(_("Done"), Done()), entry=entry)
        return Foot()
