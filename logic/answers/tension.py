"""Setting a belt by spring scale: what tension it should have, what to pull, and what a pull tells."""

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import TypeVar

from logic.answers.belt_parts import FEWEST_IN_MESH, BeltParts, design_torque
from logic.answers.reading import Item, Reading, Result
from logic.answers.run import Figures, Run, answer
from logic.belt.geometry import mesh_factor, teeth_in_mesh
from logic.belt.pull_reading import read_pull
from logic.belt.running import (
    least_of_manuals,
    most_of_manuals,
    shaft_pull,
    slack_torque,
)
from logic.belt.scale import misread_tension, pull_force_locked
from logic.belt.tension import Window, effective_pull
from logic.belt.verdict import (
    BeltVerdict,
    Measured,
    judge,
    slack_at_least,
)
from logic.board import Board
from logic.errors import InputError
from logic.frozen import frozen
from logic.person import Person
from logic.workings import Given, given

Belt = TypeVar("Belt", bound=BeltParts)


@frozen
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
    run = Run(lambda: BeltParts(Reading(board), person, depth))
    items = run.figures(PLAN)
    chosen = items["depth"]
    return BeltPlan(
        items,
        float(chosen.value) if isinstance(chosen, Result) else None,
        run.view(lambda parts: parts.window, None),
        held_down=run.view(lambda parts: parts.target.held_down, otherwise=False),
        over_working=run.view(lambda parts: parts.target.over_working, otherwise=False),
        few_teeth=run.view(lambda parts: parts.whole_teeth < FEWEST_IN_MESH, otherwise=False),
        diameters=run.view(lambda parts: (parts.motor_pulley, parts.wheel_pulley), (0.0, 0.0)),
        fault=run.view(BeltParts.measured_apart, None),
        step=run.plain.step,
        held_by_bearing=run.view(lambda parts: parts.bearing_decides, otherwise=False),
    )


def _design_pull(parts: BeltParts) -> float:
    return effective_pull(
        torque=design_torque(service_factor=parts.service, torque=parts.torque),
        pitch_diameter=parts.motor_pulley,
    )


def _locked(parts: BeltParts) -> float:
    return pull_force_locked(
        tension=parts.target.tension, deflection=parts.depth, span=parts.span, stiffness=parts.belt.stiffness
    )


def _misread(parts: BeltParts) -> float:
    return misread_tension(
        tension=parts.target.tension,
        deflection=parts.depth,
        span=parts.span,
        length=parts.belt_length,
        stiffness=parts.belt.stiffness,
    )


def _slack_torque(parts: BeltParts) -> float:
    return slack_torque(tension=parts.target.tension, pitch_diameter=parts.motor_pulley)


PLAN: Figures[BeltParts] = {
    "target": ("force", lambda parts: parts.target.tension),
    "least": ("force", lambda parts: parts.belt.least_tension),
    "floor": ("force", lambda parts: parts.window.floor),
    "ceiling": ("force", lambda parts: parts.window.ceiling),
    "run_in": ("force", lambda parts: parts.window.run_in),
    "depth": ("length", lambda parts: parts.depth),
    "pull_target": ("force", lambda parts: parts.pull(parts.target.tension)),
    "pull_least": ("force", lambda parts: parts.pull(parts.belt.least_tension)),
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
    "slack_margin": ("share", lambda parts: _slack_torque(parts) / parts.torque),
    "shaft_pull": ("force", lambda parts: shaft_pull(tension=parts.target.tension, wrap=parts.wrap)),
    "least_of_manuals": ("force", lambda parts: least_of_manuals(pull=_design_pull(parts))),
    "most_of_manuals": ("force", lambda parts: most_of_manuals(pull=_design_pull(parts))),
}
"""Quantity and computation of each result of the plan."""


@frozen
class BeltReading:
    """What a pull tells: the belt tension with its error, and its place against the window when there is one."""

    tension: Item
    error: Item
    verdict: BeltVerdict | None

    @property
    def known(self) -> bool:
        """Tell whether it is a tension with its error: only that is kept, a pull alone says nothing of a belt."""
        return isinstance(self.tension, Result) and isinstance(self.error, Result)


@answer(pull=15.0)
def belt_reading(board: Board, person: Person, pull: float, depth: float | None = None) -> BeltReading:
    """Return the belt tension of a pull in N at a depth in m, with the error of the person's own tools."""
    return pulled(belt_run(board, person, depth), pull)


def belt_run(board: Board, person: Person, depth: float | None = None) -> Run[BeltParts]:
    """Return what every pull on a belt rests on, for `pulled`: kept, it is read once and not at each digit."""
    return Run(lambda: BeltParts(Reading(board), person, depth))


def pulled(run: Run[BeltParts], pull: float) -> BeltReading:
    """Return what a pull in N tells, as `belt_reading`."""
    return judged(run, partial(one_pull, "Pull on the scale", pull))


def one_pull(name: str, pull: float, parts: BeltParts) -> Measured:
    """Return what a pull by the scale tells, with the errors of the person's own tools."""
    return read_pull(
        force=put_in(name, pull), deflection=parts.depth, **parts.tool_errors, **parts.span_and_belt
    )


def put_in(name: str, force: float) -> float:
    """Return a force that was measured."""
    return given(Given(name, float(force), "N", "force", known="measured"))


def judged(run: Run[Belt], read: Callable[[Belt], Measured]) -> BeltReading:
    """Return a reading with its error and its place in the window."""
    found: list[Measured] = []

    def tension(parts: Belt) -> float:
        found.append(read(parts))
        return found[0].tension

    whole = run.figure("tension", "force", tension)
    if not isinstance(whole, Result):
        return BeltReading(whole, whole, None)
    # How the error was made is a working of its own.
    value, error = float(found[0].tension), float(found[0].error)
    measured = Measured(value, error)
    verdict = run.view(
        lambda parts: judge(reading=measured, floor=parts.window.floor, ceiling=parts.window.ceiling), None
    ) or run.view(lambda parts: slack_at_least(reading=measured, least=parts.belt.least_tension), None)
    return BeltReading(
        replace(whole, band=(value - error, value + error)),
        run.figure("error", "force", lambda _: found[0].error),
        verdict,
    )
