"""What a belt is asked before it can be read where no board is saved: one value after the other, the best known first."""

from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

from logic.answers.reading import Open
from logic.answers.tension import BeltPlan
from screens.acts import Arrive, Both, Turn
from screens.acts.entering import Ask, Done
from screens.asking import entry_of, refused_now, value_line, value_of
from screens.blocks import Block, Button, Picture, Progress, Verdict, Words
from screens.page import Foot, Page
from screens.pictures.belts import belt_print
from screens.showing import fold
from screens.tongue import _
from screens.trying import board_line
from screens.words import label_of, within
from screens.world import World

MORE = (
    "controller.brake_current",
    "drive.service",
    "pack.series",
    "pack.chemistry",
    "drive.span",
    "motor.radial_load",
)
"""What makes the answer better and is not asked first."""


class Step(NamedTuple):
    """One thing that is asked: its values, what it is called, and where one finds it. `known` is one that nobody guesses."""

    keys: tuple[str, ...]
    title: str
    help: str
    known: bool = True


STEPS = (
    Step(
        ("drive.belt_teeth", "drive.profile", "drive.belt_width"),
        _("Belt print"),
        _("As on the belt's back: 280-5M-15. Or count its teeth."),
    ),
    Step(("drive.motor_teeth",), _("Motor pulley"), _("Count its teeth.")),
    Step(("drive.wheel_teeth",), _("Wheel pulley"), _("Count its teeth.")),
    Step(
        ("motor.kv",),
        _("Motor constant (Kv)"),
        _("Printed on the motor: turns a minute for each volt."),
        known=False,
    ),
    Step(
        ("controller.motor_current",),
        _("Motor amps"),
        _("The motor limit that the controller is set to, for one motor."),
        known=False,
    ),
)
KEYS = tuple(key for step in STEPS for key in step.keys)


def open_values(world: World) -> list[str]:
    """Return the keys that are still to be asked, none for a saved board: it has a page of its own."""
    if not world.is_scratch:
        return []
    skipped = world.args.get("skipped", ())
    return [key for key in KEYS if key not in skipped and world.board.value(key) is None]


def belt_first(world: World) -> Page | None:
    """Return the page that asks for what the belt in front lacks; None where it can be read."""
    asked = world.asking.key if world.asking is not None else ""
    if not world.is_scratch or not (asked or open_values(world)):
        return None
    key = asked or open_values(world)[0]
    number = next((place for place, step in enumerate(STEPS) if key in step.keys), len(STEPS))
    step = STEPS[number] if number < len(STEPS) else None
    first = step is not None and key == step.keys[0]
    title = step.title if step is not None and first else label_of(key)
    count = _("{number} of {all}: {title}").format(number=number + 1, all=len(STEPS) + 1, title=title)
    return Page(
        title=_("A belt"),
        crown=Verdict(
            count if step is not None else title,
            step.help if step is not None and first else "",
            key="asked",
            lines=2,
        ),
        blocks=tuple(_blocks(world, number)),
        foot=_foot(world, key, step, title),
        places=False,
        card=key,
    )


def _blocks(world: World, number: int) -> Iterator[Block]:
    states = ["right" if _has(world, step) else "open" for step in STEPS]
    if number < len(STEPS):
        states[number] = "front"
    yield Progress("progress", (*states, "open"), _("Then pull at the belt and read the scale."))
    if number == 0:
        text = _("On the belt's back: 280-5M-15 is 280 mm long, teeth 5 mm apart, 15 mm wide.")
        yield Picture("print", belt_print(), text)
    yield from (value_line(world, key) for key in KEYS if world.board.value(key) is not None)
    if not any(_has(world, step) for step in STEPS):
        yield Words("why", _("Six values tell whether the belt is right."), tone="second")


def _has(world: World, step: Step) -> bool:
    return all(world.board.value(key) is not None for key in step.keys)


def _foot(world: World, key: str, step: Step | None, title: str) -> Foot:
    entry = entry_of(world)
    if entry is None:
        return Foot(main=Button(_("Next: {title}").format(title=within(title)), Ask(key)))
    entry = replace(entry, label=title)
    on = (Done(), Arrive())
    there = value_of(world, key) is not None and not refused_now(world)
    beside: tuple[Button, ...] = ()
    if step is not None and not step.known and not there:
        skipped = [*world.args.get("skipped", ()), key]
        beside = (Button(_("Don't know"), Both((Turn({"skipped": skipped}), *on))),)
    return Foot(
        main=Button(_("Next"), Both(on) if there else None, _("Type a value first.")),
        beside=beside,
        entry=entry,
    )


def belt_lines(world: World, plan: BeltPlan) -> Iterator[Block]:
    """Yield the values that a belt rests on, to be changed: of a saved board only those that stop a depth or a window."""
    if world.is_scratch:
        rows = (value_line(world, key) for key in (*KEYS, *MORE))
        yield from fold(world, "belt values", _("Values of this belt"), lambda: rows)
        return
    stopped = (plan.items["depth"], plan.items["target"])
    keys = [key for item in stopped if isinstance(item, Open) for key in item.missing]
    yield from (board_line(world, key) for key in dict.fromkeys(keys))
