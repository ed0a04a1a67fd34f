"""The grade of a hill by the phone itself: asked of it, and put where the question of a grade is answered."""

from dataclasses import replace

from logic.answers.incline import grade_of
from logic.board import Value
from logic.errors import InputError
from screens.acts.entering import Put
from screens.acts.outside import Tilt, Tilted
from screens.tongue import _
from screens.update import does
from screens.update.entering import put
from screens.words import refusal
from screens.world import World

DIGITS = 3
"""A grade is kept to a tenth of a per cent: the phone lies no better."""


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
