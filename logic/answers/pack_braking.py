"""What a braking current does: deceleration and metres to stop, by the motors alone on the level."""

from functools import cached_property

from logic.answers.pack_parts import PackParts
from logic.answers.parts import chosen, moving_mass
from logic.answers.reading import RIDER
from logic.drive.motor import limit_torque
from logic.drive.push import wheel_push
from logic.errors import InputError, positive
from logic.pack.limits import braking_deceleration, braking_voltage
from logic.si import Ampere, Kilogram, Metre, MetrePerSecond, MetrePerSecondSquared, Newton, One, Volt, Watt
from logic.workings import cited

FROM_SPEED = 20 / 3.6
"""Braking is told from 20 km/h."""


@cited("voltage * current / efficiency", source="derived power into the pack", standing="derived")
def braking_power(*, voltage: Volt, current: Ampere, efficiency: One) -> Watt:
    """Return the power taken from the wheels by a current into the pack.

    >>> braking_power(voltage=40.0, current=8.0, efficiency=0.8)
    400.0
    """
    positive(voltage=voltage, current=current, efficiency=efficiency)
    return voltage * current / efficiency


@cited("min(by_pack, most_force / mass)", source="derived the smaller of two limits", standing="derived")
def deceleration(
    *, by_pack: MetrePerSecondSquared, most_force: Newton, mass: Kilogram
) -> MetrePerSecondSquared:
    """Return what a pack's current gives, at most what the motors' brake current gives.

    >>> deceleration(by_pack=1.0, most_force=300.0, mass=100.0)
    1.0
    """
    positive(mass=mass)
    return min(by_pack, most_force / mass)


@cited("min(speed, power / force)", source="derived power = force x speed", standing="derived")
def corner_speed(*, speed: MetrePerSecond, power: Watt, force: Newton) -> MetrePerSecond:
    """Return the speed below which the motors limit and no longer the pack.

    >>> corner_speed(speed=6.0, power=400.0, force=200.0)
    2.0
    """
    positive(speed=speed, power=power, force=force)
    return min(speed, power / force)


@cited(
    "mass * (speed**3 - corner**3) / (3 * power) + mass * corner**2 / (2 * force)",
    source="derived work of a constant power, then of a constant force",
    standing="derived",
)
def stop_distance(
    *, mass: Kilogram, speed: MetrePerSecond, corner: MetrePerSecond, power: Watt, force: Newton
) -> Metre:
    """Return the metres to stop: constant power down to `corner`, then constant force. Grip is not asked.

    >>> stop_distance(mass=90.0, speed=6.0, corner=2.0, power=400.0, force=200.0)
    16.5
    """
    positive(mass=mass, speed=speed, power=power, force=force)
    if not 0.0 <= corner <= speed:
        raise InputError("corner", corner, "range", low=0.0, high=speed)
    return mass * (speed**3 - corner**3) / (3.0 * power) + mass * corner**2 / (2.0 * force)


class BrakeParts(PackParts):
    """The packs, and the motors that brake into them."""

    @cached_property
    def mass(self) -> float:
        """All that moves."""
        return moving_mass(board_mass=self.read("load.board_mass"), rider_mass=self.read(RIDER.key))

    @cached_property
    def from_speed(self) -> float:
        """Speed that braking starts from."""
        return chosen("Braking from", FROM_SPEED, "m/s", "speed")

    @cached_property
    def efficiency(self) -> float:
        """From wheel to pack: the belts alone, so that the deceleration is the least to be counted on."""
        return self.read("load.efficiency")

    @cached_property
    def brake_force(self) -> float:
        """Push at the wheels that the motors' brake current gives at most."""
        torque = limit_torque(
            torque_constant=self.torque_constant, current=self.motor_amps("controller.brake_current")
        )
        return wheel_push(
            motors=self.motors,
            torque=torque,
            ratio=self.ratio,
            efficiency=self.efficiency,
            wheel_diameter=self.wheel_diameter,
        )

    def volts_with(self, current: float, charge: str = "nominal") -> float:
        """Return the volts at the plug while a braking current flows in."""
        return braking_voltage(
            rest_voltage=self.voltage(charge), current=current, resistance=self.pack_resistance
        )

    def slows(self, current: float) -> float:
        """Return the deceleration of a braking current at the speed it starts from."""
        by_pack = braking_deceleration(
            voltage=self.volts_with(current),
            current=current,
            efficiency=self.efficiency,
            mass=self.mass,
            speed=self.from_speed,
        )
        return deceleration(by_pack=by_pack, most_force=self.brake_force, mass=self.mass)

    def stops(self, current: float) -> float:
        """Return the metres to stop with a braking current, once the brake is on."""
        power = braking_power(voltage=self.volts_with(current), current=current, efficiency=self.efficiency)
        corner = corner_speed(speed=self.from_speed, power=power, force=self.brake_force)
        return stop_distance(
            mass=self.mass, speed=self.from_speed, corner=corner, power=power, force=self.brake_force
        )
