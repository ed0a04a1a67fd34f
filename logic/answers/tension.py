"""Setting a belt by spring scale: what tension it should have, what to pull, and what a pull tells."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property, partial

from logic.answers.parts import Parts
from logic.answers.reading import Item, Reading, Result, attempt
from logic.answers.run import answer
from logic.belt.catalogue import depth_step, stiffness_error, stiffness_fraction
from logic.belt.geometry import mesh_factor, teeth_in_mesh, whole_teeth_in_mesh
from logic.belt.pull_reading import read_pull
from logic.belt.running import (
    least_of_manuals,
    most_of_manuals,
    shaft_pull,
    slack_margin,
    slack_torque,
    tension_from_shaft_pull,
)
from logic.belt.scale import misread_tension, pull_depth, pull_force, pull_force_locked
from logic.belt.tension import (
    Target,
    Window,
    effective_pull,
    held_by_bearing,
    target,
    tension_swing,
    tight_span,
    window,
)
from logic.belt.verdict import Reading as Measured
from logic.belt.verdict import Verdict, judge
from logic.board import Board
from logic.drive.gearing import belt_speed, unloaded_rotation
from logic.drive.motor import limit_torque
from logic.errors import InputError, Missing
from logic.person import Person
from logic.si import Ampere, NewtonMetre, One
from logic.tables import pick
from logic.workings import Given, Recorder, cited, fresh, given, recording

FEWEST_IN_MESH = 6
"""Below six whole teeth in mesh the belt's rating falls, and the screen says so."""


@cited("max(drive_current, brake_current)", source="derived the larger of two limits", standing="derived")
def peak_current(*, drive_current: Ampere, brake_current: Ampere) -> Ampere:
    """Motor current that the belt must carry: driving or braking, whichever limit is larger.

    >>> peak_current(drive_current=45.0, brake_current=35.0)
    45.0
    """
    return max(drive_current, brake_current)


@cited("service_factor * torque", source="sdpsi-2017 p. T-29")
def design_torque(*, service_factor: One, torque: NewtonMetre) -> NewtonMetre:
    """Torque a belt is chosen for.

    >>> design_torque(service_factor=1.5, torque=2.0)
    3.0
    """
    return service_factor * torque


class BeltParts(Parts):
    """The parts of a board that a belt's tension rests on, and the depth it is pulled to."""

    def __init__(self, reading: Reading, depth: float | None = None) -> None:
        """Take the board from a reading. A depth of None is the one offered first."""
        super().__init__(reading)
        self._depth = depth

    @cached_property
    def depth(self) -> float:
        """Depth of the pull."""
        if self._depth is None:
            return pull_depth(span=self.span, step=depth_step())
        return given(Given("Pull depth", fresh(self._depth), "m", "length", known="measured"))

    @cached_property
    def torque(self) -> float:
        """Most torque that the current limits let through to one belt."""
        return limit_torque(
            torque_constant=self.torque_constant,
            current=peak_current(
                drive_current=self.motor_amps("controller.motor_current"),
                brake_current=self.motor_amps("controller.brake_current"),
            ),
        )

    @cached_property
    def service(self) -> float:
        """Service factor of the drive; the choice is kept as text on the board."""
        return self.read.count("drive.service", "1.3")

    @cached_property
    def target(self) -> Target:
        """Tension to set, per span: held down to the motor bearing's load where that is known."""
        wanted = self.wanted
        if self.read.board.motor.radial_load is None:
            return wanted
        carries = tension_from_shaft_pull(pull=self.read("motor.radial_load"), wrap=self.wrap)
        if carries >= wanted.tension:
            return wanted
        tension = held_by_bearing(tension=wanted.tension, bearing=carries, least=self.belt.least_tension)
        swing = tension_swing(torque=self.torque, pitch_diameter=self.motor_pulley)
        tight = tight_span(tension=tension, swing=swing)
        return replace(
            wanted,
            tension=tension,
            tight=tight,
            over_working=tight > self.belt.working_tension * (1 + 1e-12),
        )

    @property
    def bearing_decides(self) -> bool:
        """Tell whether the motor's bearing held the target down."""
        return self.target.tension < self.wanted.tension

    @cached_property
    def wanted(self) -> Target:
        """Tension that the belt asks for, per span."""
        rotation = unloaded_rotation(
            voltage=self.voltage("nominal"), duty=self.duty, motor_constant=self.motor_constant
        )
        return target(
            belt=self.belt,
            torque=self.torque,
            service_factor=self.service,
            pitch_diameter=self.motor_pulley,
            belt_speed=belt_speed(rotation=rotation, pitch_diameter=self.motor_pulley),
        )

    @cached_property
    def window(self) -> Window:
        """Edges of the window and the marks to set to."""
        return window(target=self.target.tension, least=self.belt.least_tension)

    def pull(self, tension: float) -> float:
        """Return the pull that brings a belt of this tension to the depth."""
        return pull_force(
            tension=tension,
            depth=self.depth,
            span=self.span,
            length=self.belt_length,
            stiffness=self.belt.stiffness,
        )

    @cached_property
    def small_teeth(self) -> float:
        """Teeth of the smaller pulley."""
        return min(self.motor_teeth, self.wheel_teeth)

    @cached_property
    def whole_teeth(self) -> float:
        """Whole teeth in mesh on the small pulley."""
        return whole_teeth_in_mesh(centre=self.centre, teeth=self.small_teeth, **self.pulleys)


@dataclass(frozen=True)
class BeltPlan:
    """What to set a belt to and what to pull, with what deserves a word. Missing parts say what they lack.

    `diameters` are the pitch diameters of motor and wheel pulley, 0 where they are not known.
    """

    items: dict[str, Item]
    depth: float | None
    window: Window | None
    held_down: bool
    over_working: bool
    few_teeth: bool
    diameters: tuple[float, float]
    fault: InputError | None
    held_by_bearing: bool = False


@answer()
def belt_plan(board: Board, depth: float | None = None) -> BeltPlan:
    """Return the target, its window and the pull at a depth in m; None takes the depth offered first."""
    with recording() as recorder:
        parts = BeltParts(Reading(board), depth)
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


@answer(pull=15.0)
def belt_reading(board: Board, person: Person, pull: float, depth: float | None = None) -> BeltReading:
    """Return the belt tension of a pull in N at a depth in m, with the error of the person's own tools."""
    with recording() as recorder:
        parts = BeltParts(Reading(board), depth)
        force = given(Given("Pull on the scale", fresh(pull), "N", "force", known="measured"))
        tension, error = _measured(recorder, parts, person, force)
        if not isinstance(tension, Result) or not isinstance(error, Result):
            return BeltReading(tension, error, None)
        try:
            edges = parts.window
        except (Missing, InputError):
            return BeltReading(tension, error, None)
    band = (tension.value - error.value, tension.value + error.value)
    verdict = judge(reading=Measured(tension.value, error.value), floor=edges.floor, ceiling=edges.ceiling)
    return BeltReading(Result("tension", tension.value, "force", band), error, verdict)


def _measured(recorder: Recorder, parts: BeltParts, person: Person, force: float) -> tuple[Item, Item]:
    found: list[Measured] = []

    def tension() -> float:
        found.append(
            read_pull(
                force=force,
                depth=parts.depth,
                span=parts.span,
                length=parts.belt_length,
                stiffness=parts.belt.stiffness,
                force_error=pick("measuring_tools", name=person.scale).number("scale_error"),
                depth_error=pick("measuring_tools", name=person.depth_tool).number("depth_error"),
                stiffness_error=stiffness_error(
                    fraction=stiffness_fraction(), stiffness=parts.belt.stiffness
                ),
            )
        )
        return found[0].tension

    first = attempt(recorder, "tension", "force", tension)
    return first, attempt(recorder, "error", "force", lambda: found[0].error) if found else first
