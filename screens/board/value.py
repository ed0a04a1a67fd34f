"""One value of the board or the rider: what to measure and where, the number, and how it is known.

In the guided entry the next value that is missing comes by itself.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from logic.answers.first_speed import first_speed
from logic.answers.reading import RIDER, Result
from logic.board import Value, board_fields
from logic.fields import Field
from logic.glossary import word_of
from screens.acts import Act, Back, Both, Turn
from screens.acts.boards import NotKnown
from screens.acts.entering import Write
from screens.acts.keeping import Set, Settle
from screens.asking import number_entry, read_entry
from screens.blocks import Block, Button, Choice, Line, Option, Picture, Words
from screens.board.guide import Guide, guide, written
from screens.page import Foot, Page
from screens.pictures.asked import picture_of
from screens.saved_board import untried
from screens.showing import figure
from screens.tongue import _
from screens.ways import leads_to
from screens.words import HOW_KNOWN
from screens.words.typed import value_words
from screens.world import World

CHOSEN = ("chosen", _("Chosen"))
"""Offered where a value of a trial was kept: what one picks is no guess."""


def value_page(world: World) -> Page:
    """Return the page that asks for `key`; `guided` for the next one that is missing, of the `rest` when that is said."""
    if not world.args.get("guided"):
        return _Asked(world, str(world.args["key"])).page()
    way = guide(world, rest=bool(world.args.get("rest")), skipped=tuple(world.args.get("skipped", ())))
    return _Asked(world, way.open[0], way).page() if way.open else _end(world, way)


def _end(world: World, way: Guide) -> Page:
    """Return the end of a round: what it was, and the rest."""
    rest = len(guide(world, rest=True).open)
    first = not world.args.get("rest")
    said = (
        _("That is enough for first answers.") if first and not way.skipped else _("Nothing more is asked.")
    )
    if way.skipped:
        one, more = _("1 skipped. It stays open."), _("{count} skipped. They stay open.")
        said = one if len(way.skipped) == 1 else more.format(count=len(way.skipped))
    on = Button(_("Ask for the other {count}").format(count=rest), Turn({"rest": True, "skipped": None}))
    done = Button(_("Done"), Back())
    return Page(
        title=_("{number} of {all}").format(number=way.count - len(way.skipped), all=way.count),
        crown=_so_far(world, row=False),
        blocks=(Words(key="said", text=said, role="title"),),
        foot=Foot(main=done, beside=(on,)) if first and rest else Foot(main=done),
        places=False,
        card="end",
    )


def _first_sentence(text: str) -> tuple[str, str]:
    """Return the one line of help that is always in sight, and the rest."""
    first, stop, more = text.partition(". ")
    return first + stop.strip(), more


def _so_far(world: World, *, row: bool) -> Block | None:
    """Return the best top speed that the values so far allow, None before there is one."""
    first = world.kept(first_speed, written(world), world.person.rider)
    if not isinstance(first.item, Result):
        return None
    holds = {"without load": _("without load, about"), "with weight": _("loaded, about")}
    return figure(
        world, first.item, _("Top speed so far"), detail=holds.get(first.level, _("loaded")), row=row
    )


@dataclass(frozen=True)
class _Asked:
    """The value that is asked for, and how it is known."""

    world: World
    key: str
    way: Guide | None = None

    @property
    def field(self) -> Field:
        return RIDER if self.key == RIDER.key else board_fields()[self.key]

    @cached_property
    def value(self) -> Value | None:
        return self.world.person.rider if self.field is RIDER else written(self.world).value(self.key)

    @property
    def typed(self) -> str:
        return f"board/{self.key}"

    @property
    def known(self) -> str:
        """How it is known, as said here, else as it stands, else as such a value mostly is."""
        said = self.world.args.get("known", ("", ""))
        stands = None if self.value is None else self.value.known
        ways = dict(self.ways)
        return next(
            one for one in (said[1] if said[0] == self.key else "", stands, self.field.known) if one in ways
        )

    @property
    def ways(self) -> tuple[tuple[str, str], ...]:
        kept = self.value is not None and self.value.known == CHOSEN[0]
        return (*HOW_KNOWN, CHOSEN) if kept else HOW_KNOWN

    def page(self) -> Page:
        guided, choosing = self.way, self.field.kind == "choice"
        first, more = _first_sentence(self.field.help)
        place = _("{number} of {all}").format(number=guided.place, all=guided.count) if guided else ""
        return Page(
            title=place or self.field.label,
            blocks=(
                *((Words(key="label", text=self.field.label, role="title", bold=True),) if guided else ()),
                Words(key="help", text=first),
                *self.standing(),
                *(self.options() if choosing else ()),
                *self.without(),
                *self.so_far(),
                *self.picture(),
                *((Words(key="more", text=more, tone="second"),) if more else ()),
                *self.meaning(),
            ),
            foot=Foot(beside=self.skip()) if choosing else self.number(),
            places=False,
            card=self.key,
        )

    def so_far(self) -> Iterator[Block]:
        found = _so_far(self.world, row=True) if self.way else None
        if found is not None:
            yield found

    def picture(self) -> Iterator[Block]:
        found = picture_of(self.key)
        if found is not None:
            yield Picture(key="picture", strokes=found, text=_("Where it is found."))

    def meaning(self) -> Iterator[Block]:
        """Yield the way to the word of the trade that names this value."""
        word = word_of(self.key)
        if word is not None:
            title = _("What it means: {word}").format(word=word.name)
            yield leads_to("meaning", "glossary", title, icon="question", word=word.key)

    def standing(self) -> Iterator[Block]:
        """Yield what stands and how it is known, which a value that stands takes up at once."""
        value, typed = self.value, bool(self.world.typed.get(self.typed))
        if value is not None:
            shown = value_words(self.field, value, self.world.style)
            text = _("Now: {value}, {known}.").format(value=shown, known=value.known)
            yield Words(key="now", text=text, tone="second")
        elif self.field.stand_in:
            yield Words(key="now", text=_("Not set: a usual value is assumed."), tone="second")

        def say(known: str) -> Act:
            said = Turn({"known": (self.key, known)})
            return (
                said
                if value is None or typed
                else Both((said, self.keep(replace(value, known=known, on=""))))
            )

        options = tuple(Option(text, say(known), known == self.known) for known, text in self.ways)
        yield Choice(key="known", label=_("How do you know?"), options=options, small=True)

    def options(self) -> Iterator[Line]:
        for option in self.field.options:
            chosen = self.value is not None and self.value.si == option.key
            act = self.take(Value(option.key, known=self.known))
            yield Line(
                key=option.key, title=option.label, icon="tick" if chosen else "", chosen=chosen, act=act
            )

    def without(self) -> Iterator[Line]:
        """Yield what can be said in place of a value."""
        if self.value is not None:
            yield Line(key="out", title=_("Take this value out"), icon="undo", act=self.take(None))
        else:
            act = self.gone_on(NotKnown(self.key))
            yield Line(key="unknown", title=_("Don't know"), detail=_("It is not asked for again."), act=act)

    def number(self) -> Foot:
        """Return the keypad, and the bar that takes up what is typed and what else it says."""
        world, value = untried(self.world), self.value
        typed = "" if value is None else value.typed_unit
        unit = world.units.get(self.typed, world.style.unit(self.field.quantity, typed))
        found = read_entry(world, world.typed.get(self.typed, ""), self.field, unit).found
        act = None
        if found is not None:
            # They stand in the same print.
            others = {key: replace(one, known="label") for key, one in found.others}
            act = self.take(replace(found.value, known=self.known, on=""), others)
        return Foot(
            main=Button(_("Save"), act, why="" if act else _("Type a value first.")),
            beside=self.skip(),
            entry=number_entry(world, self.typed, self.field, unit),
        )

    def skip(self) -> tuple[Button, ...]:
        """Return the way on to the next value without this one."""
        skipped = (*self.world.args.get("skipped", ()), self.key)
        return (Button(_("Skip"), Turn({"skipped": skipped})),) if self.way else ()

    def keep(self, value: Value | None, others: dict[str, Value] | None = None) -> Act:
        """Return the act that keeps the value where it belongs."""
        return Settle({"rider": value}) if self.field is RIDER else Set({self.key: value, **(others or {})})

    def take(self, value: Value | None, others: dict[str, Value] | None = None) -> Act:
        """Return the act that keeps a value and goes on."""
        return self.gone_on(self.keep(value, others))

    def gone_on(self, act: Act) -> Act:
        """Return an act with the way on: nothing stays typed, and the next value comes by itself, or the page before."""
        written_out = Write(self.typed, "")
        return Both((written_out, act)) if self.way else Both((written_out, act, Back()))
