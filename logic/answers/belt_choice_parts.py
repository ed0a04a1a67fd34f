"""What the choice of a belt rests on: its drive, its ratings and what the mount must reach."""

from functools import cached_property

from logic.answers.belt_parts import BeltParts
from logic.answers.run import Figures
from logic.belt.geometry import mesh_factor, teeth_in_mesh
from logic.belt.rating import (
    length_factor,
    printed_torque,
    rated_torque,
    smallest_suggested,
    width_factor,
)
from logic.belt.travel import centre_tolerance, inward_travel, outward_travel
from logic.drive.gearing import belt_speed, motor_angular_speed, unloaded_angular_speed
from logic.drive.performance import steady_speed
from logic.errors import InputError, Missing, NoFigure
from logic.si import Metre, Newton, NewtonMetre, One, RadianPerSecond
from logic.workings import Given, cited, given

SLOWEST = 200 * 3.141592653589793 / 30
"""Rotation of the first printed column, 200 rpm: it stands for the start."""


@cited("centre + tolerance + travel", source="derived the mount's outer end", standing="derived")
def slot_outer_end(*, centre: Metre, tolerance: Metre, travel: Metre) -> Metre:
    """Centre distance that the mount must reach outwards, for the longest belt of the length.

    >>> round(slot_outer_end(centre=0.067, tolerance=0.0002, travel=0.0008), 4)
    0.068
    """
    return centre + tolerance + travel


@cited(
    "load * wheel_diameter / (2 * ratio * motors * efficiency)",
    source="derived road load back to one motor",
    standing="derived",
)
def torque_for_load(
    *, load: Newton, wheel_diameter: Metre, ratio: One, motors: One, efficiency: One
) -> NewtonMetre:
    """Torque of each motor that holds a road load.

    >>> torque_for_load(load=40.0, wheel_diameter=0.1, ratio=2.5, motors=2.0, efficiency=1.0)
    0.4
    """
    return load * wheel_diameter / (2 * ratio * motors * efficiency)


@cited("motor_teeth / small_teeth", source="derived one belt speed on both pulleys", standing="derived")
def gain_of_small(*, motor_teeth: One, small_teeth: One) -> One:
    """Return the turns of the small pulley for one of the motor: 1 unless the motor carries the larger pulley.

    >>> gain_of_small(motor_teeth=36.0, small_teeth=18.0)
    2.0
    """
    return motor_teeth / small_teeth


@cited("gain * angular_speed", source="derived one belt speed on both pulleys", standing="derived")
def small_angular_speed(*, gain: One, angular_speed: RadianPerSecond) -> RadianPerSecond:
    """Rotation of the small pulley, for which ratings are printed.

    >>> small_angular_speed(gain=2.0, angular_speed=100.0)
    200.0
    """
    return gain * angular_speed


@cited("gain * rated", source="derived one effective pull on both pulleys", standing="derived")
def rated_at_motor(*, gain: One, rated: NewtonMetre) -> NewtonMetre:
    """Torque of the motor at which the small pulley carries its rated torque.

    >>> rated_at_motor(gain=2.0, rated=1.5)
    3.0
    """
    return gain * rated


class ChoiceParts(BeltParts):
    """The parts of a board that choosing a belt rests on."""

    @cached_property
    def gain(self) -> One:
        """Turns of the small pulley for one of the motor."""
        return gain_of_small(motor_teeth=self.motor_teeth, small_teeth=self.small_teeth)

    @cached_property
    def angular_speed(self) -> RadianPerSecond:
        """Rotation of the motor at the loaded top speed, or unloaded while the load is not known."""
        try:
            return motor_angular_speed(
                speed=self.steady[0], circumference=self.circumference, ratio=self.ratio
            )
        except (Missing, InputError):
            return unloaded_angular_speed(
                voltage=self.voltage("nominal"), duty=self.duty, speed_constant=self.speed_constant
            )

    @cached_property
    def steady(self) -> tuple[float, float]:
        """Loaded top speed and the road load there."""
        found = steady_speed(self.nominal, self.road)
        if found.speed is None:
            raise NoFigure("speed", found.outcome, found.outcome)
        return found.speed, found.load

    @cached_property
    def mesh(self) -> float:
        """Share of the rating that the teeth in mesh leave."""
        return mesh_factor(whole_teeth=self.whole_teeth)

    def rated(self, angular_speed: RadianPerSecond) -> NewtonMetre:
        """Return the rated torque of the motor at its angular speed; the small pulley decides, whichever shaft has it."""
        profile = self.profile
        rated = rated_torque(
            printed=printed_torque(
                profile=profile,
                teeth=self.small_teeth,
                angular_speed=small_angular_speed(gain=self.gain, angular_speed=angular_speed),
            ),
            width_factor=width_factor(profile=profile, width=self.belt.width),
            length_factor=length_factor(profile=profile, length=self.belt_length),
            mesh_factor=self.mesh,
        )
        return rated_at_motor(gain=self.gain, rated=rated)

    @cached_property
    def rated_start(self) -> NewtonMetre:
        """Rated torque at the start."""
        return self.rated(given(Given("Slowest printed angular speed", SLOWEST, "rad/s", known="chosen")))

    @cached_property
    def rated_top(self) -> NewtonMetre:
        """Rated torque at the top speed."""
        return self.rated(self.angular_speed)

    @cached_property
    def steady_torque(self) -> NewtonMetre:
        """Torque of each motor that holds the loaded top speed."""
        return torque_for_load(
            load=self.steady[1],
            wheel_diameter=self.wheel_diameter,
            ratio=self.ratio,
            motors=self.motors,
            efficiency=self.read("load.efficiency"),
        )

    @cached_property
    def lay_on(self) -> float:
        """Way the motor must come in for the belt to be laid on."""
        return inward_travel(
            length=self.belt_length,
            pitch=self.pitch,
            flanged=self.read.choice("mount.flanged", "none"),
        )

    @cached_property
    def take_up(self) -> float:
        """Way the motor must go out to tension the belt."""
        return outward_travel(length=self.belt_length)

    @cached_property
    def tolerance(self) -> float:
        """What the belt's own tolerance is worth as centre distance."""
        return centre_tolerance(length=self.belt_length)


def _belt_speed(parts: ChoiceParts) -> float:
    return belt_speed(angular_speed=parts.angular_speed, pitch_diameter=parts.motor_pulley)


def _smallest(parts: ChoiceParts) -> float:
    angular_speed = small_angular_speed(gain=parts.gain, angular_speed=parts.angular_speed)
    return smallest_suggested(profile=parts.read.choice("drive.profile"), angular_speed=angular_speed)


def _outer(parts: ChoiceParts) -> float:
    return slot_outer_end(centre=parts.computed_centre, tolerance=parts.tolerance, travel=parts.take_up)


CHOICE: Figures[ChoiceParts] = {
    "centre": ("length", lambda parts: parts.computed_centre),
    "span": ("length", lambda parts: parts.span),
    "wrap": ("angle", lambda parts: parts.wrap),
    "teeth_in_mesh": ("ratio", lambda parts: teeth_in_mesh(wrap=parts.wrap, teeth=parts.small_teeth)),
    "mesh_factor": ("share", lambda parts: parts.mesh),
    "lay_on": ("length", lambda parts: parts.lay_on),
    "take_up": ("length", lambda parts: parts.take_up),
    "tolerance": ("length", lambda parts: parts.tolerance),
    "slot_inner": (
        "length",
        lambda parts: parts.computed_centre - parts.lay_on,
    ),
    "slot_outer": ("length", _outer),
    "belt_speed": ("belt_speed", _belt_speed),
    "angular_speed_loaded": ("angular_speed", lambda parts: parts.angular_speed),
    "rated_start": ("torque", lambda parts: parts.rated_start),
    "peak_torque": ("torque", lambda parts: parts.torque),
    "used_start": ("share", lambda parts: parts.torque / parts.rated_start),
    "rated_top": ("torque", lambda parts: parts.rated_top),
    "steady_torque": ("torque", lambda parts: parts.steady_torque),
    "used_top": ("share", lambda parts: parts.steady_torque / parts.rated_top),
    "smallest": ("count", _smallest),
}
"""Quantity and computation of each result for the board's own belt."""
