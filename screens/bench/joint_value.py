"""One value of a joint, of a look-up or of the person's hex key: a list to choose from, or a number to type."""

from collections.abc import Iterator
from dataclasses import asdict, dataclass, replace
from typing import Any

from logic.answers.joint_options import LOOK_UP, options
from logic.answers.joints import kind_of
from logic.board import Field, Value, field_of, value_from
from logic.fields import ARM
from logic.units import quantities
from screens.acts import Act, Back, Both, Turn
from screens.acts.entering import Write
from screens.acts.keeping import Set, Settle
from screens.asking import number_entry, typed_value
from screens.bench.joint_card import board_of
from screens.blocks import Block, Button, Choice, Line, Option, Words
from screens.page import Foot, Page
from screens.tongue import _
from screens.words import HOW_KNOWN
from screens.words.joints import value_text
from screens.world import World


def joint_value_page(world: World) -> Page:
    """Return the page that asks for `key`: "joints.motor_face.thread", "joints.lookup.thread" or "person.key_arm".

    An option is taken up by its tap, a number by Save; both go back.
    """
    asked = _Asked(world)
    listed = asked.field.kind in ("choice", "named")
    return Page(
        title=asked.field.label,
        blocks=(
            Words(key="help", text=asked.field.help),
            Words(key="now", text=_("Now: {value}.").format(value=asked.shown), tone="second"),
            *asked.standing(),
            *(asked.listed() if listed else ()),
        ),
        foot=Foot() if listed else asked.foot(),
        places=False,
    )


@dataclass(frozen=True)
class _Asked:
    """The value that is asked for, where it is kept, and how it is known."""

    world: World

    @property
    def key(self) -> str:
        return str(self.world.args["key"])

    @property
    def name(self) -> str:
        return self.key.rpartition(".")[2]

    @property
    def field(self) -> Field:
        return ARM if self.key == ARM.key else field_of(self.key)

    @property
    def looking_up(self) -> bool:
        """Whether the value belongs to a look-up and not to the board."""
        return self.key.startswith(f"joints.{LOOK_UP}.")

    @property
    def looked_up(self) -> dict[str, Any]:
        trail = reversed(self.world.trail)
        return next((step.args["values"] for step in trail if step.page == "bench.lookup_card"), {})

    @property
    def value(self) -> Value | None:
        if self.key == ARM.key:
            return self.world.person.key_arm
        if self.looking_up:
            body = self.looked_up.get(self.name)
            return None if body is None else value_from(body)
        return board_of(self.world).value(self.key)

    @property
    def shown(self) -> str:
        if self.value is not None and self.field is ARM:
            return self.world.style.typed(float(self.value.si), ARM.quantity, self.value.typed_unit)
        return value_text(self.name, self.value, self.world.style)

    @property
    def known(self) -> str:
        """How it is known, as said here, else as it stands, else as such a value mostly is."""
        stands = None if self.value is None else self.value.known
        ways = dict(HOW_KNOWN)
        return next(one for one in (self.world.args.get("known"), stands, self.field.known) if one in ways)

    def keep(self, value: Value | None) -> Act:
        """Return the act that keeps the value where it belongs."""
        if self.key == ARM.key:
            return Settle({"key_arm": value})
        if self.looking_up:
            others = {name: body for name, body in self.looked_up.items() if name != self.name}
            return Turn({"values": others if value is None else {**others, self.name: asdict(value)}})
        return Set({self.key: value})

    def take(self, value: Value | None) -> Both:
        """Return the act that keeps a value and goes back; nothing stays typed."""
        return Both((Write(self.typed, ""), Back(), self.keep(value)))

    @property
    def typed(self) -> str:
        return f"value/{self.key}"

    def standing(self) -> Iterator[Block]:
        """Yield how it is known, which a value that stands takes up at once, and the way to take it out."""
        if self.looking_up:
            return
        value, typed = self.value, bool(self.world.typed.get(self.typed))

        def say(known: str) -> Act:
            said = Turn({"known": known})
            return (
                said
                if value is None or typed
                else Both((said, self.keep(replace(value, known=known, on=""))))
            )

        yield Choice(
            key="known",
            label=_("How do you know?"),
            small=True,
            options=tuple(Option(text, say(known), known == self.known) for known, text in HOW_KNOWN),
        )
        if value is not None:
            yield Line(key="out", title=_("Take this value out"), icon="undo", act=self.take(None))

    def listed(self) -> Iterator[Line]:
        """Yield the options, the sizes that this kind of joint often has first."""
        found = list(options(self.field))
        if self.field.table == "threads" and not self.looking_up:
            often = kind_of(self.key.split(".")[1]).cells["sizes"]
            found.sort(key=lambda option: option.key not in often)
        for option in found:
            chosen = self.value is not None and self.value.si == option.key
            yield Line(
                key=option.key,
                title=option.label[0].upper() + option.label[1:],
                icon="tick" if chosen else "",
                chosen=chosen,
                act=self.take(Value(option.key, known=self.known)),
            )

    def foot(self) -> Foot:
        """Return the keypad, and the bar that takes up what is typed."""
        unit = "" if self.value is None else self.value.typed_unit
        unit = unit or quantities()[self.field.quantity].home(self.world.style.system).shown
        found = typed_value(self.world, self.typed, self.field, unit)
        act = None if found is None else self.take(replace(found, known=self.known, on=""))
        save = Button(_("Save"), act, why="" if act else _("Type a value first."))
        return Foot(main=save, entry=number_entry(self.world, self.typed, self.field, unit))
