"""The brake of a board: what it slows by and how far a stop goes, the same on every page that tells it.

The pack takes back the more power the fuller it is, so the brake is weakest and the way longest on an empty pack.
Every figure here is of that pack: it is the one to be counted on. A full pack may cut the brake out altogether,
which is told apart.
"""

from functools import cached_property

from logic.answers.asked import Asked
from logic.answers.pack_parts import PackParts
from logic.answers.parts import Parts, chosen
from logic.answers.reading import RIDER
from logic.drive.brake import Brake
from logic.drive.grip import grip_of_lightened_axle, grip_of_loaded_axle
from logic.drive.push import Drivetrain
from logic.drive.road import Road, slope_angle
from logic.drive.stopping import deceleration_at, distance_of_stop
from logic.errors import InputError
from logic.pack.limits import braking_voltage
from logic.tables import pick

FROM_SPEED = 20 / 3.6
"""Braking is told from 20 km/h."""

WEAKEST_AT = "empty"
"""Charge at which the pack takes back the least power."""


def axle_grip(asked: Asked, surface: str, road: Road, *, braking: bool) -> float:
    """Return what the driven axle holds on a surface, driving or braking, with the weight shifted by it."""
    behind = asked.choice("ask.axle") == "behind"
    base, to_front = asked("ask.wheelbase"), asked("ask.mass_behind_front")
    if to_front > base:
        raise InputError("ask.mass_behind_front", to_front, "range", low=0.0, high=base, quantity="length")
    lightened = behind == braking
    formula = grip_of_lightened_axle if lightened else grip_of_loaded_axle
    return formula(
        friction=pick("surfaces", name=surface).number("friction"),
        mass=road.mass,
        gravity=road.gravity,
        slope=slope_angle(grade=road.grade),
        distance=to_front if behind else base - to_front,
        wheelbase=base,
        height=asked("ask.mass_height"),
    )


def brake_of(  # noqa: PLR0913  (board and question, and what each page may set apart from the usual)
    parts: Parts,
    asked: Asked,
    *,
    limit: float | None = None,
    surface: str = "dry",
    road: Road | None = None,
    drive: Drivetrain | None = None,
) -> Brake:
    """Return the brake of a board: on its weakest charge, as the controller is set, dry and level unless said."""
    return Brake(
        drive=drive or parts.drive(WEAKEST_AT),
        brake_current_limit=parts.motor_amps("controller.brake_current"),
        regen_current_limit=parts.read("controller.regen_current") if limit is None else limit,
        grip=axle_grip(asked, surface, road or parts.road, braking=True),
    )


class BrakeParts(PackParts):
    """The packs, and the motors that brake into them."""

    @cached_property
    def mass(self) -> float:
        """All that moves."""
        return self.read("load.board_mass") + self.read(RIDER.key)

    @cached_property
    def from_speed(self) -> float:
        """Speed that braking starts from."""
        return chosen("Braking from", FROM_SPEED, "m/s", "speed")

    @cached_property
    def set_current(self) -> float:
        """Braking current into the pack that the controller is set to."""
        current = self.read("controller.regen_current")
        if current <= 0.0:
            raise InputError("controller.regen_current", current, "no braking")
        return current

    def volts_with(self, current: float, charge: str) -> float:
        """Return the volts at the plug while a braking current flows in."""
        return braking_voltage(
            rest_voltage=self.voltage(charge), current=current, resistance=self.pack_resistance
        )

    def slows(self, current: float) -> float:
        """Return the deceleration of a braking current at the speed it starts from, dry and level."""
        return deceleration_at(brake_of(self, self.asked, limit=current), self.road, self.from_speed)

    def stops(self, current: float) -> float:
        """Return the metres to stop with a braking current once the brake is on, dry and level."""
        return distance_of_stop(brake_of(self, self.asked, limit=current), self.road, self.from_speed)
