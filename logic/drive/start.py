"""From standstill to a speed: time, way, and where the energy of the pack goes meanwhile."""

from logic.drive.flow import at_full_remote
from logic.drive.integral import integral
from logic.drive.motor import torque_constant
from logic.drive.push import Drivetrain, push_curve
from logic.drive.road import Road, load_curve
from logic.errors import NoFigure, positive
from logic.frozen import frozen
from logic.si import ForceCurve, Joule, Kilogram, Metre, MetrePerSecond, Second
from logic.workings import method


def _spare(tractive_force: ForceCurve, road_load: ForceCurve, at: float) -> float:
    spare = tractive_force(at) - road_load(at)
    if spare <= 0.0:
        raise NoFigure("speed", at, "never reached", high=at, quantity="speed")
    return spare


@method(
    "time = integral of mass / (push - load) from standstill to the speed, by Simpson's rule with halved steps",
    source="derived force = mass x acceleration",
    at="speed",
)
def time_to_speed(
    *, tractive_force: ForceCurve, road_load: ForceCurve, mass: Kilogram, speed: MetrePerSecond
) -> Second:
    """Return the time from standstill to a speed at full remote; turning parts are left out.

    Raises InputError ("never reached") when push and load meet at or below the speed, and unless mass and speed
    are positive.

    >>> round(time_to_speed(tractive_force=lambda _: 190.0, road_load=lambda _: 10.0, mass=90.0, speed=6.0), 9)
    3.0
    """
    positive(mass=mass, speed=speed)
    return integral(lambda at: (mass / _spare(tractive_force, road_load, at),), 0.0, speed)[0]


@method(
    "way = integral of mass * speed / (push - load) from standstill to the speed,"
    " by Simpson's rule with halved steps",
    source="derived force = mass x acceleration, along the way",
    at="speed",
)
def distance_to_speed(
    *, tractive_force: ForceCurve, road_load: ForceCurve, mass: Kilogram, speed: MetrePerSecond
) -> Metre:
    """Return the way from standstill to a speed at full remote. Raises InputError as `time_to_speed` does.

    >>> round(distance_to_speed(tractive_force=lambda _: 190.0, road_load=lambda _: 10.0, mass=90.0, speed=6.0), 9)
    9.0
    """
    positive(mass=mass, speed=speed)
    return integral(lambda at: (mass * at / _spare(tractive_force, road_load, at),), 0.0, speed)[0]


@frozen(kw_only=True)
class Start:
    """A start at full remote. Energies in J: what the pack's plug gave, and what became of it.

    `pack` = `windings` + `motor_drag` + `belts` + `road` + `motion`, to rounding.
    """

    time: Second
    way: Metre
    pack: Joule
    windings: Joule
    motor_drag: Joule
    belts: Joule
    road: Joule
    motion: Joule


def start(drive: Drivetrain, road: Road, speed: MetrePerSecond) -> Start:
    """Return the start from standstill to a speed. Raises InputError as `time_to_speed` does."""
    positive(speed=speed)
    push, load = push_curve(drive), load_curve(road)
    constant = torque_constant(speed_constant=drive.speed_constant)

    def rates(at: float) -> tuple[float, ...]:
        flow = at_full_remote(drive, at)
        # Each metre a second gained takes this many seconds.
        weight = road.mass / _spare(push, load, at)
        shafts = drive.motors * flow.shaft_power
        return tuple(
            weight * rate
            for rate in (
                1.0,
                at,
                flow.battery_power,
                drive.motors * flow.winding_heat,
                drive.motors * constant * drive.no_load_current * flow.angular_speed,
                shafts - flow.push * at,
                load(at) * at,
                (push(at) - load(at)) * at,
            )
        )

    time, way, pack, windings, motor_drag, belts, on_road, motion = integral(rates, 0.0, speed)
    return Start(
        time=time,
        way=way,
        pack=pack,
        windings=windings,
        motor_drag=motor_drag,
        belts=belts,
        road=on_road,
        motion=motion,
    )
