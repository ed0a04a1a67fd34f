"""One value of a joint, of a look-up or of the person's hex key: a list to choose from, or a number to type."""

from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from logic.answers.joint_options import LOOK_UP, options
from logic.answers.joints import kind_of
from logic.board import Value, field_of, value_from
from logic.fields import ARM, Field
from screens.acts import Act, Back, Turn
from screens.acts.keeping import Set, Settle
from screens.asked_value import AskedValue
from screens.bench.joint_card import board_of
from screens.blocks import Words
from screens.page import Foot, Page
from screens.tongue import _
from screens.words import begun
from screens.words.joints import value_text
from screens.world import World


def joint_value_page(world: World) -> Page:
    """Return the page that asks for `key`: "joints.motor_face.thread", "joints.lookup.thread" or "person.key_arm".

    An option is taken up by its tap, a number by Save; both go back.
    """
    key = str(world.args["key"])
    asked = _asked(world, key)
    field, value = asked.field, asked.value
    shown = value_text(key.rpartition(".")[2], value, world.style)
    if field is ARM and value is not None:
        shown = world.style.typed(float(value.si), ARM.quantity, value.typed_unit)
    listed = field.kind in ("choice", "named")
    return Page(
        title=field.label,
        blocks=(
            Words("help", field.help),
            Words("now", _("Now: {value}.").format(value=shown), tone="second"),
            *(() if _looking_up(key) else (asked.how_known(),)),
            *(() if _looking_up(key) or value is None else (asked.out(),)),
            *(asked.listed(_options(key, field)) if listed else ()),
        ),
        foot=Foot() if listed else asked.foot(),
        places=False,
    )


def _looking_up(key: str) -> bool:
    """Tell whether a value belongs to a look-up and not to the board."""
    return key.startswith(f"joints.{LOOK_UP}.")


def _asked(world: World, key: str) -> AskedValue:
    """Return what is asked for, and where it is kept."""
    name, back = key.rpartition(".")[2], (Back(),)
    if key == ARM.key:
        return AskedValue(
            world,
            ARM,
            world.person.key_arm,
            f"value/{key}",
            lambda value, _more: Settle({"key_arm": value}),
            back,
        )
    if not _looking_up(key):
        value = board_of(world).value(key)
        return AskedValue(
            world, field_of(key), value, f"value/{key}", lambda value, _more: Set({key: value}), back
        )
    trail = reversed(world.trail)
    values: dict[str, Any] = next(
        (step.args["values"] for step in trail if step.page == "bench.lookup_card"), {}
    )
    others = {other: body for other, body in values.items() if other != name}

    def keep(value: Value | None, _more: Mapping[str, Value]) -> Act:
        return Turn({"values": others if value is None else {**others, name: asdict(value)}})

    stands = value_from(values[name]) if name in values else None
    return AskedValue(world, field_of(key), stands, f"value/{key}", keep, back)


def _options(key: str, field: Field) -> list[tuple[str, str]]:
    """Return the options, the sizes that this kind of joint often has first."""
    found = [(option.key, begun(option.label)) for option in options(field)]
    if field.table == "threads" and not _looking_up(key):
        often = kind_of(key.split(".")[1]).cells["sizes"]
        found.sort(key=lambda option: option[0] not in often)
    return found
