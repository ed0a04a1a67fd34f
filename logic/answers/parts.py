"""The board seen by each subject: its drive, its road and its belt, read once for one answer."""

from collections.abc import Callable
from functools import cached_property

from logic.answers.reading import RIDER, Reading
from logic.belt.catalogue import Belt, belt
from logic.belt.geometry import centre_distance, length_of_teeth, pitch_diameter, span_length, wrap_angle
from logic.drive.gearing import ratio, rolling_circumference
from logic.drive.motor import conversion, dc_equivalent_current, torque_constant
from logic.drive.push import Drivetrain, push_curve
from logic.drive.road import Road, standard
from logic.errors import InputError
from logic.pack.cells import Chemistry, chemistry, pack_resistance, pack_voltage
from logic.tables import pick
from logic.workings import Given, given

CHARGES = ("full", "nominal", "empty")


def chosen(name: str, value: float, unit: str, quantity: str) -> float:
    """Record a number that the person chose for this answer only, and return it."""
    return given(Given(name, float(value), unit, quantity, known="chosen"))


def standstill() -> float:
    """Record standstill as the speed asked about."""
    return chosen("Speed", 0.0, "m/s", "speed")


class Parts:
    """Everything an answer may need of a board. Each part is read at first use and then shared by the results."""

    def __init__(self, reading: Reading) -> None:
        """Take the board from a reading."""
        self.read = reading

    @cached_property
    def motor_teeth(self) -> float:
        """Teeth of the motor pulley."""
        return self.read("drive.motor_teeth")

    @cached_property
    def wheel_teeth(self) -> float:
        """Teeth of the wheel pulley."""
        return self.read("drive.wheel_teeth")

    @cached_property
    def ratio(self) -> float:
        """Turns of the motor for one of the wheel."""
        return ratio(wheel_teeth=self.wheel_teeth, motor_teeth=self.motor_teeth)

    @cached_property
    def wheel_diameter(self) -> float:
        """Wheel diameter as it is now."""
        return self.read("drive.wheel_diameter")

    @cached_property
    def circumference(self) -> float:
        """Way of one turn of the wheel."""
        return rolling_circumference(wheel_diameter=self.wheel_diameter)

    @cached_property
    def speed_constant(self) -> float:
        """Kv in SI."""
        return self.read("motor.kv")

    @cached_property
    def torque_constant(self) -> float:
        """Kt of one DC-equivalent ampere."""
        return torque_constant(speed_constant=self.speed_constant)

    @cached_property
    def motors(self) -> float:
        """Count of motors; the choice is kept as text on the board."""
        return self.read.count("drive.motors")

    @cached_property
    def duty(self) -> float:
        """Largest duty."""
        return self.read("controller.duty")

    @cached_property
    def conversion(self) -> float:
        """DC-equivalent amperes of one stated motor ampere."""
        return conversion(self.read.choice("controller.current_meaning", "six-step"))

    def motor_amps(self, key: str) -> float:
        """Return a stated motor-current limit in DC-equivalent amperes."""
        return dc_equivalent_current(current=self.read(key), conversion=self.conversion)

    @cached_property
    def series(self) -> float:
        """Cells in series."""
        return self.read("pack.series")

    @cached_property
    def chemistry(self) -> Chemistry:
        """Volts of one cell."""
        return chemistry(self.read.choice("pack.chemistry"))

    def voltage(self, charge: str) -> float:
        """Return the volts of the pack at rest: "full", "nominal" or "empty"."""
        return pack_voltage(cell_voltage=getattr(self.chemistry, charge), series=self.series)

    @cached_property
    def pack_resistance(self) -> float:
        """Resistance of the packs together."""
        return pack_resistance(
            cell_resistance=self.read("pack.cell_resistance"),
            series=self.series,
            parallel=self.read("pack.parallel"),
            packs=self.read("pack.packs"),
        )

    @cached_property
    def winding_resistance(self) -> float:
        """Winding of one motor, line to line."""
        return self.read("motor.resistance")

    @cached_property
    def no_load_current(self) -> float:
        """Current of one motor that turns free."""
        return self.read("motor.no_load_current")

    @cached_property
    def _drive_but_voltage(self) -> dict[str, float]:
        return {
            "motors": self.motors,
            "speed_constant": self.speed_constant,
            "winding_resistance": self.winding_resistance,
            "no_load_current": self.no_load_current,
            "motor_current_limit": self.motor_amps("controller.motor_current"),
            "battery_current_limit": self.read("controller.battery_current"),
            "duty": self.duty,
            "pack_resistance": self.pack_resistance,
            "ratio": self.ratio,
            "wheel_diameter": self.wheel_diameter,
            "efficiency": self.read("load.efficiency"),
        }

    def drive(self, charge: str) -> Drivetrain:
        """Return the drive at a charge of the pack."""
        return Drivetrain(open_circuit_voltage=self.voltage(charge), **self._drive_but_voltage)

    @cached_property
    def nominal(self) -> Drivetrain:
        """The drive at the nominal charge."""
        return self.drive("nominal")

    @cached_property
    def push(self) -> Callable[[float], float]:
        """Push at full remote by the speed, at the nominal charge."""
        return push_curve(self.nominal)

    @cached_property
    def starting_push(self) -> float:
        """Push at standstill."""
        return self.push(standstill())

    @cached_property
    def road(self) -> Road:
        """A level road without wind."""
        return Road(
            air_density=standard("air_density"),
            gravity=standard("gravity"),
            mass=self.read("load.board_mass") + self.read(RIDER.key),
            rolling_coefficient=self.read("load.rolling"),
            drag_area=self.read("load.drag_area"),
            grade=chosen("Grade", 0.0, "1", "share"),
            wind=chosen("Headwind", 0.0, "m/s", "speed"),
        )

    @cached_property
    def profile(self) -> str:
        """Name of the belt's profile."""
        return self.read.choice("drive.profile")

    @cached_property
    def pitch(self) -> float:
        """Pitch of the belt's profile, whatever its width."""
        return pick("belt_profiles", profile=self.profile).number("pitch")

    @cached_property
    def differential(self) -> float:
        """Pitch line above the tips of the teeth."""
        return pick("belt_profiles", profile=self.profile).number("differential")

    @cached_property
    def belt(self) -> Belt:
        """Figures of the belt."""
        return belt(profile=self.profile, width=self.read("drive.belt_width"))

    @cached_property
    def motor_pulley(self) -> float:
        """Pitch diameter of the motor pulley."""
        return pitch_diameter(pitch=self.pitch, teeth=self.motor_teeth)

    @cached_property
    def wheel_pulley(self) -> float:
        """Pitch diameter of the wheel pulley."""
        return pitch_diameter(pitch=self.pitch, teeth=self.wheel_teeth)

    @cached_property
    def pulleys(self) -> dict[str, float]:
        """Both pitch diameters, sorted by size."""
        small, large = sorted((self.motor_pulley, self.wheel_pulley))
        return {"small": small, "large": large}

    @cached_property
    def belt_length(self) -> float:
        """Pitch length of the belt."""
        return length_of_teeth(pitch=self.pitch, teeth=self.read("drive.belt_teeth"))

    @cached_property
    def computed_centre(self) -> float:
        """Centre distance that follows from belt and pulleys."""
        return centre_distance(length=self.belt_length, **self.pulleys)

    @cached_property
    def centre(self) -> float:
        """Centre distance: the measured one, or the one that follows."""
        if self.read.board.drive.centre is not None:
            return self.read("drive.centre")
        return self.computed_centre

    @cached_property
    def span(self) -> float:
        """Free span: the measured one, or the one that follows from the centre distance."""
        if self.read.board.drive.span is not None:
            return self.read("drive.span")
        return span_length(centre=self.centre, **self.pulleys)

    @cached_property
    def wrap(self) -> float:
        """Wrap on the small pulley."""
        return wrap_angle(centre=self.centre, **self.pulleys)

    def measured_apart(self) -> InputError | None:
        """Return what is wrong when a measured centre or span is more than a millimetre from what follows."""
        drive = self.read.board.drive
        computed = {"drive.centre": self.computed_centre}
        computed["drive.span"] = span_length(centre=self.computed_centre, **self.pulleys)
        for key, value in (("drive.centre", drive.centre), ("drive.span", drive.span)):
            if value is not None and abs(float(value.si) - computed[key]) > MILLIMETRE:
                return InputError(key, value.si, "measured apart", computed[key], computed[key], "length")
        return None


MILLIMETRE = 0.001
"""A measured centre or span further than this from the computed one deserves a second look."""
