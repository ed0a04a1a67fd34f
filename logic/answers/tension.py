"""Setting a belt by spring scale: what tension it should have, what to pull, and what a pull tells."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from logic.answers.belt_parts import FEWEST_IN_MESH, BeltParts, design_torque
from logic.answers.reading import Item, Reading, Result, attempt
from logic.answers.run import answer
from logic.belt.geometry import mesh_factor, teeth_in_mesh
from logic.belt.pull_reading import read_pull
from logic.belt.running import (
    least_of_manuals,
    most_of_manuals,
    shaft_pull,
    slack_margin,
    slack_torque,
)
from logic.belt.scale import misread_tension, pull_force_locked
from logic.belt.tension import Window, effective_pull
from logic.belt.verdict import CANNOT_TELL, MAY_BE_SLACK, MAY_BE_TIGHT, Verdict, judge, word_of
from logic.belt.verdict import Reading as Measured
from logic.board import Board
from logic.errors import InputError, Missing
from logic.person import Person
from logic.workings import Given, Recorder, fresh, given, recording

__all__ = [
    "CANNOT_TELL",
    "MAY_BE_SLACK",
    "MAY_BE_TIGHT",
    "PLAN",
    "BeltPlan",
    "BeltReading",
    "belt_plan",
    "belt_reading",
    "word_of",
]


@dataclass(frozen=True)
class BeltPlan:
    """What to set a belt to and what to pull, with what deserves a word. Missing parts say what they lack.

    `diameters` are the pitch diameters of motor and wheel pulley, 0 where they are not known; `step` is the
    finest in which the depth can be set.
    """

    items: dict[str, Item]
    depth: float | None
    window: Window | None
    held_down: bool
    over_working: bool
    few_teeth: bool
    diameters: tuple[float, float]
    fault: InputError | None
    step: float
    held_by_bearing: bool = False


@answer()
def belt_plan(board: Board, person: Person, depth: float | None = None) -> BeltPlan:
    """Return the target, its window and the pull at a depth in m; None takes the one these tools read best."""
    with recording() as recorder:
        parts = BeltParts(Reading(board), person, depth)
        items = {
            name: attempt(recorder, name, quantity, partial(compute, parts))
            for name, (quantity, compute) in PLAN.items()
        }
    aim = parts.target if isinstance(items["target"], Result) else None
    return BeltPlan(
        items,
        items["depth"].value if isinstance(items["depth"], Result) else None,
        parts.window if aim is not None else None,
        held_down=aim is not None and aim.held_down,
        over_working=aim is not None and aim.over_working,
        few_teeth=_few_teeth(parts),
        diameters=_diameters(parts),
        fault=_fault(parts),
        step=float(parts.step),
        held_by_bearing=aim is not None and parts.bearing_decides,
    )


def _design_pull(parts: BeltParts) -> float:
    return effective_pull(
        torque=design_torque(service_factor=parts.service, torque=parts.torque),
        pitch_diameter=parts.motor_pulley,
    )


def _locked(parts: BeltParts) -> float:
    return pull_force_locked(
        tension=parts.target.tension, depth=parts.depth, span=parts.span, stiffness=parts.belt.stiffness
    )


def _misread(parts: BeltParts) -> float:
    return misread_tension(
        tension=parts.target.tension,
        depth=parts.depth,
        span=parts.span,
        length=parts.belt_length,
        stiffness=parts.belt.stiffness,
    )


def _slack_torque(parts: BeltParts) -> float:
    return slack_torque(tension=parts.target.tension, pitch_diameter=parts.motor_pulley)


PLAN: dict[str, tuple[str, Callable[[BeltParts], float]]] = {
    "target": ("force", lambda parts: parts.target.tension),
    "floor": ("force", lambda parts: parts.window.floor),
    "ceiling": ("force", lambda parts: parts.window.ceiling),
    "run_in": ("force", lambda parts: parts.window.run_in),
    "depth": ("length", lambda parts: parts.depth),
    "pull_target": ("force", lambda parts: parts.pull(parts.target.tension)),
    "pull_floor": ("force", lambda parts: parts.pull(parts.window.floor)),
    "pull_ceiling": ("force", lambda parts: parts.pull(parts.window.ceiling)),
    "pull_locked": ("force", _locked),
    "misread": ("force", _misread),
    "span": ("length", lambda parts: parts.span),
    "centre": ("length", lambda parts: parts.centre),
    "wrap": ("angle", lambda parts: parts.wrap),
    "teeth_in_mesh": ("ratio", lambda parts: teeth_in_mesh(wrap=parts.wrap, teeth=parts.small_teeth)),
    "mesh_factor": ("share", lambda parts: mesh_factor(whole_teeth=parts.whole_teeth)),
    "slack_torque": ("torque", _slack_torque),
    "slack_margin": (
        "share",
        lambda parts: slack_margin(slack=_slack_torque(parts), torque=parts.torque),
    ),
    "shaft_pull": ("force", lambda parts: shaft_pull(tension=parts.target.tension, wrap=parts.wrap)),
    "least_of_manuals": ("force", lambda parts: least_of_manuals(pull=_design_pull(parts))),
    "most_of_manuals": ("force", lambda parts: most_of_manuals(pull=_design_pull(parts))),
}
"""Quantity and computation of each result of the plan."""


def _few_teeth(parts: BeltParts) -> bool:
    try:
        return parts.whole_teeth < FEWEST_IN_MESH
    except (Missing, InputError):
        return False


def _diameters(parts: BeltParts) -> tuple[float, float]:
    try:
        return parts.motor_pulley, parts.wheel_pulley
    except (Missing, InputError):
        return 0.0, 0.0


def _fault(parts: BeltParts) -> InputError | None:
    try:
        return parts.measured_apart()
    except (Missing, InputError):
        return None


@dataclass(frozen=True)
class BeltReading:
    """What a pull tells: the belt tension with its error, and its place against the window when there is one."""

    tension: Item
    error: Item
    verdict: Verdict | None

    @property
    def known(self) -> bool:
        """Tell whether it is a tension with its error: only that is kept, a pull alone says nothing of a belt."""
        return isinstance(self.tension, Result) and isinstance(self.error, Result)


@answer(pull=15.0)
def belt_reading(board: Board, person: Person, pull: float, depth: float | None = None) -> BeltReading:
    """Return the belt tension of a pull in N at a depth in m, with the error of the person's own tools."""
    with recording() as recorder:
        parts = BeltParts(Reading(board), person, depth)
        force = given(Given("Pull on the scale", fresh(pull), "N", "force", known="measured"))
        tension, error = _measured(recorder, parts, force)
        if not isinstance(tension, Result) or not isinstance(error, Result):
            return BeltReading(tension, error, None)
        try:
            edges = parts.window
        except (Missing, InputError):
            return BeltReading(tension, error, None)
    band = (tension.value - error.value, tension.value + error.value)
    verdict = judge(reading=Measured(tension.value, error.value), floor=edges.floor, ceiling=edges.ceiling)
    return BeltReading(Result("tension", tension.value, "force", band), error, verdict)


def _measured(recorder: Recorder, parts: BeltParts, force: float) -> tuple[Item, Item]:
    found: list[Measured] = []

    def tension() -> float:
        found.append(read_pull(force=force, depth=parts.depth, **parts.tool_errors, **parts.span_and_belt))
        return found[0].tension

    first = attempt(recorder, "tension", "force", tension)
    return first, attempt(recorder, "error", "force", lambda: found[0].error) if found else first
