"""Bench: what the hands are doing to the board; the build, stage by stage, at the stage where it was left."""

from typing import NamedTuple

from logic.checks.lists import build_stages
from logic.log.checks import STOPPED
from screens.acts import Act, Go
from screens.blocks import Button, Line, Progress, Section, Verdict, Words
from screens.page import Foot, Page
from screens.ride.lists import list_state
from screens.search_tool import search_tools
from screens.tongue import _
from screens.ways import leads_to, signs_line, ways_from
from screens.world import World

ICONS = {"right": "ticked", "noted": "cross", "front": "edit", "open": "unticked"}


class Build(NamedTuple):
    """How far the build is: the state of each stage, and the one to go on with."""

    states: dict[str, str]
    onward: str

    @property
    def done(self) -> int:
        """Return how many stages are done."""
        return list(self.states.values()).count("right")

    @property
    def text(self) -> str:
        """Return how many are done, in words."""
        return _("{done} of {count} stages done").format(done=self.done, count=len(self.states))


def build_of(world: World) -> Build:
    """Return how far the build of the board in use is. What is under way goes first."""
    states = {key: _state(world, key) for key in build_stages()}
    begun = [key for key, state in states.items() if state == "front"]
    waiting = [key for key, state in states.items() if state != "right"]
    return Build(states, (begun or waiting or build_stages())[0])


def _state(world: World, key: str) -> str:
    run = world.store.run(world.saved.id, key)
    if run is not None and run.body["answers"]:
        return "front"
    last = world.last("check", list=key)
    if last is None:
        return "open"
    return "noted" if last.body.verdict == STOPPED else "right"


def build_page(world: World) -> Page:
    """Return nine stages with a pause after each; first power and the first re-check are among them."""
    build = build_of(world)
    over = build.done == len(build.states)
    begun = build.states[build.onward] == "front"
    text = _("Go on: {stage}") if begun else _("Begin again: {stage}") if over else _("Begin: {stage}")
    onward = world.checklist(build.onward).title
    return Page(
        title=_("Build"),
        crown=Verdict(build.text, form="right" if over else "plain"),
        blocks=(
            Progress("progress", tuple(build.states.values()), build.text),
            Words("said", _("Each stage ends at a pause: look at it again before the next."), tone="second"),
            *(_line(world, place, key, state) for place, (key, state) in enumerate(build.states.items())),
            Section("beside", _("On its own")),
            *ways_from("bench.build"),
        ),
        foot=Foot(main=Button(text.format(stage=onward), _open(build.onward)), tall=True),
    )


def _line(world: World, place: int, key: str, state: str) -> Line:
    of = world.checklist(key)
    title = of.title if of.title[1:2] == ":" else f"{chr(ord('A') + place)}: {of.title}"
    return Line(key, title, list_state(world, of), icon=ICONS[state], act=_open(key))


def _open(key: str) -> Act:
    return Go("ride.run", {"list": key})


def bench_page(world: World) -> Page:
    """Return the tasks of the bench."""
    build = build_of(world)
    of = world.checklist(build.onward)
    begun = build.states[build.onward] == "front"
    detail = f"{of.title}. {list_state(world, of)}" if begun else f"{build.text}."
    return Page(
        title=_("Bench"),
        blocks=(
            leads_to("bench.build", "bench.build", _("Build, stage by stage"), detail, icon="checklist"),
            *ways_from("bench"),
            signs_line(),
        ),
        chip=True,
        tools=search_tools(),
    )
