"""What is heard of a belt: a recording becomes a pluck of the page in front."""

from dataclasses import replace
from typing import TYPE_CHECKING

from logic.errors import InputError
from screens.acts.outside import Heard, Listen, OpenSound
from screens.tongue import _
from screens.update import does
from screens.update.files import place
from screens.update.moving import ARRIVALS
from screens.words import refusal
from screens.world import World

if TYPE_CHECKING:
    from logic.answers.belt_sound import Recording

PAGE = "bench.sound"
LARGEST = 50_000_000
"""Bytes of the largest file that is opened."""


@does(Listen)
def listen(world: World, act: Listen) -> World:
    """Leave it to the phone, and say that it listens."""
    changed = world.turned(_listening=True, _told=_("Listening: pluck now, once."))
    return replace(changed, out=(*changed.out, act))


@does(Heard)
def heard(world: World, act: Heard) -> World:
    """Find the pitch of a recording and add it to the plucks where it can be relied on.

    Nothing is added once another page is in front: a pluck belongs to the belt it was made for.
    """
    if world.trail[-1].page != PAGE:
        return world
    world = world.turned(_listening=None)
    return world.turned(_told=act.sentence) if act.recording is None else _plucked(world, act.recording)


@does(OpenSound)
def open_sound(world: World, act: OpenSound) -> World:
    """Read a file; what is wrong with it is said."""
    if world.trail[-1].page != PAGE:
        return world
    from logic.answers.belt_sound import from_wav  # noqa: PLC0415  (nobody plucks at the start)

    path = place(act.path)
    try:
        if not path.is_file():
            return world.turned(_told=_("There is no file at this path."))
        if path.stat().st_size > LARGEST:
            return world.turned(_told=_("This file is too large: a few seconds are enough."))
        recording = from_wav(path.read_bytes())
    except InputError as problem:
        return world.turned(_told=refusal(problem, world.style))
    except (OSError, ValueError):
        return world.turned(_told=_("This file cannot be read."))
    return _plucked(world.turned(open_file=None), recording)


def arrive(world: World) -> World:
    """Listen to nothing any more: what was recorded while another page was in front is lost."""
    return world.turned(_listening=None, _told=None) if world.args.get("_listening") else world


ARRIVALS[PAGE] = arrive


def _plucked(world: World, recording: "Recording") -> World:
    from logic.answers.belt_sound import pitch, sound_plan  # noqa: PLC0415  (nobody plucks at the start)

    board = world.board if world.is_scratch else world.saved
    found = pitch(recording, *world.kept(sound_plan, board, world.person).band)
    if found.refusal:
        return world.turned(_pitch=found, _told=found.refusal)
    # Pitch and error alone: a run of plucks is there again when the app was ended in the middle of it.
    plucks = [*world.args.get("heard", ()), [found.frequency, found.error]]
    return world.turned(heard=plucks, _pitch=found, _told=None)
