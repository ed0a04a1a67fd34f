"""Questions answered without a keypad: a grade by the phone, and lengths of a screw that were one setting once."""

from dataclasses import replace

from logic.answers.asked import questions
from logic.answers.incline import grade_of
from logic.answers.reach import NAMES, asked_key
from logic.board import Value, value_from
from logic.errors import InputError
from screens.acts.entering import Put
from screens.acts.outside import Tilt, Tilted
from screens.tongue import _
from screens.update import does
from screens.update.entering import put
from screens.update.moving import ARRIVALS
from screens.words import refusal
from screens.world import World

BEFORE = "reach"
DIGITS = 3
"""A grade is kept to a tenth of a per cent: the phone lies no better."""


def arrive(world: World) -> World:
    """Carry over what was kept before."""
    before = world.store.get(BEFORE)
    if before is None:
        return world
    values = {name: value_from(body) for name, body in before["lengths"].items() if name in NAMES}
    values |= {
        name: Value(before[was])
        for name, was in (("thread", "size"), ("metal", "metal"), ("behind", "behind"))
    }
    for name, value in values.items():
        field = questions()[asked_key(name)].field
        if field.kind != "choice" or any(value.si == option.key for option in field.options):
            world = put(world, Put(asked_key(name), value, "question"))
    world.store.put(BEFORE, None)
    return world


ARRIVALS["bench.reach"] = arrive


@does(Tilt)
def tilt(world: World, act: Tilt) -> World:
    """Leave it to the phone, and say that it feels."""
    changed = world.turned(_tilt=_("Hold still."))
    return replace(changed, out=(*changed.out, act))


@does(Tilted)
def tilted(world: World, act: Tilted) -> World:
    """Answer the question with what was felt, or say why it cannot be."""
    if act.gravity is None:
        return world.turned(_tilt=act.sentence)
    grade = round(grade_of(act.gravity), DIGITS)
    try:
        world = put(world, Put(act.key, Value(grade), "question"))
    except InputError as problem:
        return world.turned(_tilt=refusal(problem, world.style))
    return world.turned(
        _tilt=_("Taken from this phone: {grade}").format(grade=world.style.number(grade, "share"))
    )
