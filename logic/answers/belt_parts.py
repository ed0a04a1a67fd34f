"""What a belt's tension rests on: the board's parts, the person's tools, and the depth a span is pulled to."""

from dataclasses import replace
from functools import cached_property

from logic.answers.parts import Parts
from logic.answers.reading import Reading
from logic.belt.best_depth import best_depth
from logic.belt.catalogue import stiffness_fraction
from logic.belt.geometry import whole_teeth_in_mesh
from logic.belt.running import tension_from_shaft_pull
from logic.belt.scale import pull_force
from logic.belt.tension import Target, Window, held_by_bearing, target, tension_swing, window
from logic.drive.gearing import belt_speed, unloaded_angular_speed
from logic.drive.motor import limit_torque
from logic.errors import InputError, Missing
from logic.person import Person
from logic.si import Ampere, Metre, Newton, NewtonMetre, One, Volt
from logic.tables import pick
from logic.workings import Given, cited, given

FINEST_STEP = 0.0001
"""Depths are offered in the steps the tool shows, but never finer than a tenth of a millimetre."""

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


def assumed(name: str, quantity: str, value: float, unit: str) -> float:
    """Return a number that stands in until the board says, under the row of the table that says why."""
    row = pick("belt_practice", name=name)
    return given(
        Given(
            row.text("label"),
            value,
            unit,
            quantity,
            known="assumed",
            standing=row.standing,
            source=row.source,
            where=row.where,
        )
    )


class BeltParts(Parts):
    """The parts of a board that a belt's tension rests on, and the depth it is pulled to."""

    def __init__(self, reading: Reading, person: Person | None = None, depth: float | None = None) -> None:
        """Take the board from a reading and the tools from the person; a depth of None is the best one.

        Without a person the tools are the usual ones: for answers that pull at nothing.
        """
        super().__init__(reading)
        self.person = person or Person()
        self._depth = depth

    @cached_property
    def depth(self) -> float:
        """Depth of the pull."""
        if self._depth is None:
            return self.best
        return given(Given("Pull depth", float(self._depth), "m", "length", known="measured"))

    @cached_property
    def step(self) -> Metre:
        """Step in which a depth can be set with the tool in the hand."""
        return max(self.depth_error, FINEST_STEP)

    @cached_property
    def best(self) -> Metre:
        """Depth at which these tools tell the target best, or the belt's least tension while it has none."""
        try:
            tension = self.target.tension
        except (Missing, InputError):
            tension = self.belt.least_tension
        return best_depth(
            tension=tension,
            step=self.step,
            working=self.belt.working_tension,
            **self.tool_errors,
            **self.span_and_belt,
        )

    @cached_property
    def force_error(self) -> Newton:
        """Limit of the scale's error."""
        return pick("measuring_tools", name=self.person.scale).number("scale_error")

    @cached_property
    def depth_error(self) -> Metre:
        """Limit of the depth's error."""
        return pick("measuring_tools", name=self.person.depth_tool).number("depth_error")

    @cached_property
    def stiffness_error(self) -> Newton:
        """Limit of the stiffness's error."""
        return stiffness_fraction() * self.belt.stiffness

    @property
    def tool_errors(self) -> dict[str, float]:
        """Limits of what a pull is measured with, and of the belt's own stiffness."""
        return {
            "force_error": self.force_error,
            "deflection_error": self.depth_error,
            "stiffness_error": self.stiffness_error,
        }

    @cached_property
    def span_and_belt(self) -> dict[str, float]:
        """Span, belt length and stiffness."""
        return {"span": self.span, "length": self.belt_length, "stiffness": self.belt.stiffness}

    @cached_property
    def torque(self) -> float:
        """Most torque that the current limits let through to one belt."""
        return limit_torque(
            torque_constant=self.torque_constant,
            current=peak_current(drive_current=self.drive_amps, brake_current=self.brake_amps),
        )

    @cached_property
    def drive_amps(self) -> Ampere:
        """Limit of the motor's current while it drives."""
        return self.motor_amps("controller.motor_current")

    @cached_property
    def brake_amps(self) -> Ampere:
        """Limit of the motor's current while it brakes; until it is set, the one while it drives."""
        if self.read.board.controller.brake_current is not None:
            return self.motor_amps("controller.brake_current")
        return assumed("braking", "current", float(self.drive_amps), "A")

    @cached_property
    def volts(self) -> Volt:
        """Volts of the pack that the belt's top speed comes from; those of a usual pack until its cells are known."""
        if self.read.board.pack.series is not None:
            return self.voltage("nominal")
        return assumed(
            "usual pack", "voltage", float(pick("belt_practice", name="usual pack").cells["volts"]), "V"
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
        tight = tension + swing
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
        angular_speed = unloaded_angular_speed(
            voltage=self.volts, duty=self.duty, speed_constant=self.speed_constant
        )
        return target(
            belt=self.belt,
            torque=self.torque,
            service_factor=self.service,
            pitch_diameter=self.motor_pulley,
            belt_speed=belt_speed(angular_speed=angular_speed, pitch_diameter=self.motor_pulley),
        )

    @cached_property
    def window(self) -> Window:
        """Edges of the window and the marks to set to."""
        return window(target=self.target.tension, least=self.belt.least_tension)

    def pull(self, tension: float) -> float:
        """Return the pull that brings a belt of this tension to the depth."""
        return pull_force(tension=tension, deflection=self.depth, **self.span_and_belt)

    @cached_property
    def small_teeth(self) -> float:
        """Teeth of the smaller pulley."""
        return min(self.motor_teeth, self.wheel_teeth)

    @cached_property
    def whole_teeth(self) -> float:
        """Whole teeth in mesh on the small pulley."""
        return whole_teeth_in_mesh(centre=self.centre, teeth=self.small_teeth, **self.pulleys)
