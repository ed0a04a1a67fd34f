"""A value that has a page of its own: how it is known, its options or the keypad for it, and what keeps it."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from functools import cached_property

from logic.board import Value
from logic.fields import Field
from logic.frozen import frozen
from screens.acts import Act, Both, Turn
from screens.acts.entering import Write
from screens.asking import number_entry, read_entry
from screens.blocks import Button, Choice, Line, Option
from screens.page import Foot
from screens.tongue import _
from screens.words import HOW_KNOWN
from screens.words.typed import not_used
from screens.world import World

CHOSEN = ("chosen", _("Chosen"))
"""Offered where a value of a trial was kept: what one picks is no guess."""


def with_refused(world: World, row: Line, typed: str) -> Line:
    """Return the row of a value, with what was typed for it and could not be used."""
    refused = not_used(world.typed.get(typed, ""))
    return replace(row, detail=refused, bad=True) if refused else row


@frozen
class AskedValue:
    """What is asked for, and the value that stands.

    `typed` is the key under which its text is typed. `keep` makes the act that keeps a value, with others that stand in the
    same print; `first` and `then` come before and after it.
    """

    world: World
    field: Field
    value: Value | None
    typed: str
    keep: Callable[[Value | None, Mapping[str, Value]], Act]
    first: tuple[Act, ...] = ()
    then: tuple[Act, ...] = ()

    @cached_property
    def ways(self) -> dict[str, str]:
        """Return how it can be known."""
        kept = self.value is not None and self.value.known == CHOSEN[0]
        return dict((*HOW_KNOWN, CHOSEN) if kept else HOW_KNOWN)

    @cached_property
    def known(self) -> str:
        """Return how it is known, as said here, else as it stands, else as such a value mostly is."""
        key, said = self.world.args.get("known", ("", ""))
        stands = None if self.value is None else self.value.known
        order = (said if key == self.field.key else "", stands, self.field.known)
        return next(one for one in order if one in self.ways)

    def how_known(self) -> Choice:
        """Return how it is known, which a value that stands takes up at once."""
        value, typed = self.value, bool(self.world.typed.get(self.typed))

        def say(known: str) -> Act:
            said = Turn({"known": (self.field.key, known)})
            if value is None or typed:
                return said
            return Both((said, self.keep(replace(value, known=known, on=""), {})))

        options = tuple(Option(text, say(known), known == self.known) for known, text in self.ways.items())
        return Choice("known", _("How do you know?"), options, small=True)

    def listed(self, options: Iterable[tuple[str, str]]) -> Iterator[Line]:
        """Yield the options by key and text: one is taken up by its tap."""
        for key, text in options:
            chosen = self.value is not None and self.value.si == key
            act = self.take(Value(key, known=self.known))
            yield Line(key, text, icon="tick" if chosen else "", chosen=chosen, act=act)

    def out(self) -> Line:
        """Return the row that takes the value out."""
        return Line("out", _("Take this value out"), icon="undo", act=self.take(None))

    def foot(self, *beside: Button) -> Foot:
        """Return the keypad, and the bar that takes up what is typed and what else it says."""
        world, typed = self.world, "" if self.value is None else self.value.typed_unit
        unit = world.units.get(self.typed, world.style.unit(self.field.quantity, typed))
        found = read_entry(world, world.typed.get(self.typed, ""), self.field, unit).found
        act = None
        if found is not None:
            # They stand in the same print.
            others = {key: replace(one, known="label") for key, one in found.others}
            act = self.take(replace(found.value, known=self.known, on=""), others)
        return Foot(
            main=Button(_("Save"), act, why="" if act else _("Type a value first.")),
            beside=beside,
            entry=number_entry(world, self.typed, self.field, unit),
        )

    def take(self, value: Value | None, others: Mapping[str, Value] | None = None) -> Both:
        """Return the act that keeps a value and goes on."""
        return self.gone_on(self.keep(value, others or {}))

    def gone_on(self, act: Act) -> Both:
        """Return an act with the way on; nothing stays typed."""
        return Both((Write(self.typed, ""), *self.first, act, *self.then))
