"""Laws that any drive keeps, and the loaded speed against a second solver written on its own."""

from dataclasses import replace
from math import atan, cos, isclose, pi, sin, sqrt
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from logic.drive.flow import Flow, at_full_remote, at_steady_speed
from logic.drive.gearing import (
    belt_speed,
    electrical_angular_speed,
    electrically_limited_speed,
    motor_angular_speed,
    ratio,
    rolling_circumference,
)
from logic.drive.heating import settled_temperature
from logic.drive.limits import energy_per_distance
from logic.drive.motor import conversion, current_meanings, dc_equivalent_current
from logic.drive.performance import acceleration_at, climb_at, steady_speed
from logic.drive.push import Drivetrain, push_curve, top_unloaded_speed
from logic.drive.road import Road, air_drag, load_curve
from logic.errors import InputError
from logic.workings import Given, recording, trace
from tests.loose import put_in

settings.register_profile("drive laws", derandomize=True, deadline=None, max_examples=150)
LAWS = settings.get_profile("drive laws")

RPM = 2.0 * pi / 60.0
TOWPATH = Drivetrain(
    motors=2.0,
    speed_constant=170.0 * RPM,
    winding_resistance=0.045,
    no_load_current=1.5,
    motor_current_limit=45.0,
    battery_current_limit=30.0,
    duty=0.95,
    open_circuit_voltage=36.0,
    pack_resistance=0.11,
    ratio=2.5,
    wheel_diameter=0.100,
    efficiency=0.95,
)
CANAL = Road(
    mass=90.5,
    grade=0.0,
    wind=0.0,
    air_density=1.225,
    gravity=9.80665,
    rolling_coefficient=0.015,
    drag_area=0.60,
)

drives = st.builds(
    Drivetrain,
    motors=st.sampled_from([1.0, 2.0]),
    speed_constant=st.floats(8.0, 40.0),
    winding_resistance=st.floats(0.01, 0.2),
    no_load_current=st.floats(0.0, 3.0),
    motor_current_limit=st.floats(10.0, 80.0),
    battery_current_limit=st.floats(8.0, 400.0),
    duty=st.floats(0.5, 1.0),
    open_circuit_voltage=st.floats(20.0, 59.0),
    pack_resistance=st.one_of(st.floats(0.0, 0.15), st.floats(0.15, 5.0)),
    ratio=st.floats(1.5, 4.5),
    wheel_diameter=st.floats(0.07, 0.2),
    efficiency=st.floats(0.8, 1.0),
)
roads = st.builds(
    Road,
    mass=st.floats(40.0, 130.0),
    grade=st.floats(-0.2, 0.3),
    wind=st.floats(-8.0, 8.0),
    air_density=st.floats(0.9, 1.4),
    gravity=st.just(9.80665),
    rolling_coefficient=st.floats(0.005, 0.04),
    drag_area=st.floats(0.2, 0.9),
)
shares = st.floats(0.0, 1.0)


# A second reading of the physics, from the balance of powers: the current is found by search, not by formula.


def net_force(drive: Drivetrain, road: Road, speed: float) -> float:
    """Return push less load; the current is the largest that breaks none of the three limits."""
    emf = speed / (drive.wheel_diameter / 2.0) * drive.ratio / drive.speed_constant

    def allowed(current: float) -> bool:
        power = drive.motors * (emf * current + drive.winding_resistance * current**2)
        left = drive.open_circuit_voltage**2 - 4.0 * drive.pack_resistance * power
        if left < 0.0:
            return False
        voltage = (drive.open_circuit_voltage + sqrt(left)) / 2.0
        share = (emf + drive.winding_resistance * current) / voltage
        return power / voltage <= drive.battery_current_limit and share <= drive.duty

    low, high = 0.0, drive.motor_current_limit
    if allowed(high):
        low = high
    else:
        for _ in range(60):
            middle = 0.5 * (low + high)
            low, high = (middle, high) if allowed(middle) else (low, middle)
    torque = (low - drive.no_load_current) / drive.speed_constant
    push = drive.motors * torque * drive.ratio * drive.efficiency / (drive.wheel_diameter / 2.0)
    slope = atan(road.grade)
    through_air = speed + road.wind
    sign = 1.0 if through_air >= 0.0 else -1.0
    air = sign * road.air_density * road.drag_area * through_air**2 / 2.0
    weight = road.mass * road.gravity
    return push - air - weight * (road.rolling_coefficient * cos(slope) + sin(slope))


def second_speed(drive: Drivetrain, road: Road, top: float) -> float:
    """Return where the second reading has no net force."""
    return float(brentq(lambda speed: net_force(drive, road, speed), 0.0, top, xtol=1e-12))


def any_drive(dice: Random) -> Drivetrain:
    return Drivetrain(
        motors=dice.choice([1.0, 2.0]),
        speed_constant=dice.uniform(8.0, 40.0),
        winding_resistance=dice.uniform(0.01, 0.2),
        no_load_current=dice.uniform(0.0, 3.0),
        motor_current_limit=dice.uniform(5.0, 80.0),
        battery_current_limit=dice.uniform(5.0, 50.0),
        duty=dice.uniform(0.5, 1.0),
        open_circuit_voltage=dice.uniform(18.0, 59.0),
        pack_resistance=dice.choice([0.0, dice.uniform(0.0, 0.15)]),
        ratio=dice.uniform(1.2, 4.5),
        wheel_diameter=dice.uniform(0.07, 0.2),
        efficiency=dice.uniform(0.8, 1.0),
    )


def any_road(dice: Random) -> Road:
    return Road(
        mass=dice.uniform(40.0, 130.0),
        grade=dice.choice([0.0, dice.uniform(-0.3, 0.4)]),
        wind=dice.choice([0.0, dice.uniform(-12.0, 12.0)]),
        air_density=dice.uniform(0.9, 1.4),
        gravity=9.80665,
        rolling_coefficient=dice.uniform(0.005, 0.04),
        drag_area=dice.uniform(0.2, 0.9),
    )


def test_loaded_speed_against_a_second_solver() -> None:
    dice = Random(36)
    seen = {"meets": 0, "cannot start": 0, "runs past": 0}
    for _ in range(400):
        drive, road = any_drive(dice), any_road(dice)
        ours = steady_speed(drive, road)
        seen[ours.outcome] += 1
        top = drive.duty * drive.open_circuit_voltage * drive.speed_constant / drive.ratio
        top *= drive.wheel_diameter / 2.0
        assert isclose(ours.unloaded, top, rel_tol=1e-12)
        if net_force(drive, road, 0.0) <= 0.0:
            assert ours.outcome == "cannot start"
        elif net_force(drive, road, top) > 0.0:
            assert ours.outcome == "runs past"
        else:
            theirs = second_speed(drive, road, top)
            assert ours.outcome == "meets"
            assert ours.speed == pytest.approx(theirs, rel=1e-7, abs=1e-9)
    assert min(seen.values()) >= 20, seen


def test_steep_hill_cannot_start() -> None:
    """Ours: 45 A x 2 motors push 232 N; 90.5 kg on 40 % weigh 330 N along the road."""
    answer = steady_speed(TOWPATH, replace(CANAL, grade=0.40))
    assert (answer.outcome, answer.speed) == ("cannot start", None)
    assert answer.push == pytest.approx(232.1, abs=0.05)
    assert answer.load > answer.push


def test_descent_runs_past_the_unloaded_speed() -> None:
    answer = steady_speed(TOWPATH, replace(CANAL, grade=-0.20))
    assert (answer.outcome, answer.speed) == ("runs past", None)
    assert answer.load < answer.push < 0.0


def test_gentle_descent_meets_faster_than_the_flat() -> None:
    flat, down = steady_speed(TOWPATH, CANAL), steady_speed(TOWPATH, replace(CANAL, grade=-0.01))
    assert flat.speed is not None
    assert down.speed is not None
    assert flat.speed < down.speed < down.unloaded


@LAWS
@given(drives, st.integers(10, 30), st.integers(32, 72))
def test_more_motor_teeth_are_faster_and_push_less(
    drive: Drivetrain, motor_teeth: int, wheel_teeth: int
) -> None:
    fewer = replace(drive, ratio=ratio(wheel_teeth=float(wheel_teeth), motor_teeth=float(motor_teeth)))
    more = replace(drive, ratio=ratio(wheel_teeth=float(wheel_teeth), motor_teeth=float(motor_teeth + 1)))
    assert top_unloaded_speed(more) > top_unloaded_speed(fewer)
    if push_curve(fewer)(0.0) > 0.0:
        assert push_curve(more)(0.0) < push_curve(fewer)(0.0)


@LAWS
@given(drives, roads, st.floats(1.0, 40.0))
def test_heavier_is_slower_unless_downhill(drive: Drivetrain, road: Road, added: float) -> None:
    level = replace(road, grade=abs(road.grade))
    light, heavy = steady_speed(drive, level), steady_speed(drive, replace(level, mass=level.mass + added))
    if light.speed is None or heavy.speed is None:
        order = ["cannot start", "meets", "runs past"]
        assert order.index(heavy.outcome) <= order.index(light.outcome)
    else:
        assert heavy.speed < light.speed


@LAWS
@given(drives, shares, shares)
def test_push_never_grows_with_speed(drive: Drivetrain, one: float, other: float) -> None:
    push, top = push_curve(drive), top_unloaded_speed(drive)
    slow, fast = sorted((one * top, other * top))
    assert push(fast) <= push(slow) + 1e-9


@LAWS
@given(drives, roads)
def test_meeting_is_a_balance_in_the_bracket(drive: Drivetrain, road: Road) -> None:
    answer = steady_speed(drive, road)
    if answer.speed is not None:
        assert 0.0 < answer.speed <= answer.unloaded
        assert answer.push == pytest.approx(answer.load, abs=1e-6)
        assert acceleration_at(push_curve(drive)(answer.speed), road, answer.speed) == pytest.approx(
            0.0, abs=1e-6
        )


@LAWS
@given(drives, shares, st.sampled_from(current_meanings()))
def test_energy_balance_closes(drive: Drivetrain, share: float, meaning: str) -> None:
    """Battery power = winding heat + shaft power + the motors' own drag, whatever the stated amperes mean."""
    limit = dc_equivalent_current(current=drive.motor_current_limit, conversion=conversion(meaning))
    flow = at_full_remote(replace(drive, motor_current_limit=limit), share * top_unloaded_speed(drive))
    own_drag = drive.no_load_current / drive.speed_constant * flow.angular_speed
    used = drive.motors * (flow.winding_heat + flow.shaft_power + own_drag)
    assert flow.battery_power == pytest.approx(used, rel=1e-9, abs=1e-9)
    sagged = drive.open_circuit_voltage - flow.battery_current * drive.pack_resistance
    assert flow.battery_power == pytest.approx(flow.battery_current * sagged, rel=1e-9, abs=1e-9)
    assert flow.push * flow.speed == pytest.approx(
        drive.motors * flow.shaft_power * drive.efficiency, rel=1e-9, abs=1e-9
    )


@LAWS
@given(drives, shares)
def test_limits_hold_and_the_named_one_is_met(drive: Drivetrain, share: float) -> None:
    flow = at_full_remote(drive, share * top_unloaded_speed(drive))
    sagged = drive.open_circuit_voltage - flow.battery_current * drive.pack_resistance
    duty = (flow.angular_speed / drive.speed_constant + drive.winding_resistance * flow.current) / sagged
    most = 0.5 * drive.open_circuit_voltage
    used = {
        "pack": flow.battery_current * drive.pack_resistance / most,
        "motor current": flow.current / drive.motor_current_limit,
        "battery current": flow.battery_current / drive.battery_current_limit,
        "duty": duty / drive.duty,
    }
    assert all(part <= 1.0 + 1e-9 for part in used.values()), used
    assert flow.limit is not None
    assert used[flow.limit] == pytest.approx(1.0, rel=1e-6)


@LAWS
@given(drives, roads, shares)
def test_steepest_grade_is_held_just(drive: Drivetrain, road: Road, share: float) -> None:
    speed = share * top_unloaded_speed(drive)
    try:
        grade = climb_at(push_curve(drive)(speed), road, speed)
    except InputError as refused:
        assert refused.reason == "beyond the weight"  # noqa: PT017  (a storm or a giant's push; the law is the rest)
        return
    there = replace(road, grade=grade)
    assert push_curve(drive)(speed) == pytest.approx(load_curve(there)(speed), rel=1e-7, abs=1e-6)


@LAWS
@given(drives, roads, shares)
def test_steady_speed_needs_less_than_full_remote(drive: Drivetrain, road: Road, share: float) -> None:
    answer = steady_speed(drive, road)
    if answer.speed is None:
        return
    speed = 0.999 * share * answer.speed
    try:
        held: Flow = at_steady_speed(drive, road, speed)
    except InputError as refused:
        assert refused.reason == "needs the brake"  # noqa: PT017  (downhill or a tailwind)
        assert load_curve(road)(speed) < 0.0
        return
    assert held.limit is None
    assert held.push == pytest.approx(load_curve(road)(speed), rel=1e-9, abs=1e-9)
    assert held.battery_power <= at_full_remote(drive, speed).battery_power * (1.0 + 1e-9)


def test_faster_than_loaded_is_not_reached() -> None:
    answer = steady_speed(TOWPATH, CANAL)
    assert answer.speed is not None
    with pytest.raises(InputError, match="not reached"):
        at_steady_speed(TOWPATH, CANAL, 1.01 * answer.speed)


def test_energy_on_the_canal() -> None:
    """Ours, by hand: 25 km/h on the flat.

    Rolling 13.31 N and air 17.72 N, 215.5 W at the wheels, 226.8 W before the belts. The motors' drag takes
    2 x 1.5 A x 19.50 V = 58.5 W, and 7.32 A heat 2 x 0.045 ohm by 4.8 W: together 290.2 W, 41.8 J/m.
    """
    speed = 25.0 / 3.6
    held = at_steady_speed(TOWPATH, CANAL, speed)
    assert held.push == pytest.approx(13.31 + 17.72, abs=0.02)
    energy = energy_per_distance(battery_power=held.battery_power, speed=speed)
    assert held.battery_power == pytest.approx(290.2, abs=0.1)
    assert energy == pytest.approx(41.8, abs=0.05)


@LAWS
@given(st.floats(-30.0, 30.0), st.floats(-15.0, 15.0))
def test_air_drag_is_odd(speed: float, wind: float) -> None:
    forward = air_drag(air_density=1.2, drag_area=0.5, speed=speed, wind=wind)
    assert forward == -air_drag(air_density=1.2, drag_area=0.5, speed=-speed, wind=-wind)
    assert (forward > 0.0) == (speed + wind > 0.0) or isclose(forward, 0.0, abs_tol=1e-300)


@LAWS
@given(st.floats(100.0, 12000.0), st.floats(1.0, 20.0), st.floats(0.1, 0.7), st.floats(1.0, 5.0))
def test_electrical_limit_turns_back(
    limit: float, pairs: float, circumference: float, gearing: float
) -> None:
    speed = electrically_limited_speed(
        electrical_angular_speed_limit=limit, pole_pairs=pairs, circumference=circumference, ratio=gearing
    )
    angular_speed = motor_angular_speed(speed=speed, circumference=circumference, ratio=gearing)
    assert electrical_angular_speed(angular_speed=angular_speed, pole_pairs=pairs) == pytest.approx(
        limit, rel=1e-12
    )


@LAWS
@given(st.integers(10, 30), st.integers(32, 72), st.floats(0.5, 15.0))
def test_belt_runs_as_fast_on_both_pulleys(motor_teeth: int, wheel_teeth: int, speed: float) -> None:
    """Pitch diameters go with the teeth, so the belt's speed is one, whichever pulley it is read from."""
    circumference = rolling_circumference(wheel_diameter=0.09)
    angular_speed = motor_angular_speed(
        speed=speed,
        circumference=circumference,
        ratio=ratio(wheel_teeth=float(wheel_teeth), motor_teeth=float(motor_teeth)),
    )
    wheel = motor_angular_speed(speed=speed, circumference=circumference, ratio=1.0)
    at_motor = belt_speed(angular_speed=angular_speed, pitch_diameter=motor_teeth * 0.005 / pi)
    assert at_motor == pytest.approx(
        belt_speed(angular_speed=wheel, pitch_diameter=wheel_teeth * 0.005 / pi), rel=1e-12
    )


@pytest.mark.parametrize(
    ("changed", "reason"),
    [
        ({"duty": 1.1}, "range"),
        ({"efficiency": 0.0}, "not positive"),
        ({"motors": -1.0}, "not positive"),
        ({"no_load_current": -0.1}, "below zero"),
        ({"pack_resistance": float("nan")}, "not a number"),
    ],
)
def test_a_drive_that_cannot_be_is_refused(changed: dict[str, Any], reason: str) -> None:
    with pytest.raises(InputError) as refused:
        replace(TOWPATH, **changed)
    assert refused.value.reason == reason
    assert refused.value.field in changed


@pytest.mark.parametrize(
    ("changed", "reason"),
    [
        ({"mass": 0.0}, "not positive"),
        ({"grade": float("inf")}, "not a number"),
        ({"wind": float("nan")}, "not a number"),
        ({"rolling_coefficient": -0.01}, "below zero"),
    ],
)
def test_a_road_that_cannot_be_is_refused(changed: dict[str, Any], reason: str) -> None:
    with pytest.raises(InputError) as refused:
        replace(CANAL, **changed)
    assert refused.value.reason == reason
    assert refused.value.field in changed


def test_a_battery_limit_beyond_the_pack_does_not_limit() -> None:
    """Ours: 36 V over 2 x 0.6 ohm is 30 A at most power; any limit above that gives the push of 30 A."""
    weak = replace(TOWPATH, pack_resistance=0.6, motor_current_limit=400.0)
    at_most = push_curve(replace(weak, battery_current_limit=30.0))
    for limit in (30.1, 60.0, 400.0):
        beyond = replace(weak, battery_current_limit=limit)
        for speed in (0.0, 4.0, 8.0):
            assert push_curve(beyond)(speed) == pytest.approx(at_most(speed), rel=1e-9)
        flow = at_full_remote(beyond, 0.0)
        assert flow.limit == "pack"
        assert flow.battery_power == pytest.approx(36.0**2 / (4.0 * 0.6), rel=1e-9)


def test_a_weak_pack_is_not_pulled_past_its_most_power() -> None:
    """Ours, by hand: 36 V, 0.7 ohm, two motors of 0.045 ohm at standstill.

    The pack gives at most 36**2 / (4 x 0.7) = 462.86 W at half its volts, 231.43 W to each motor. At standstill
    all of it heats the winding: I = sqrt(231.43 / 0.045) = 71.71 A. Full duty would leave 24.6 A.
    """
    weak = replace(TOWPATH, pack_resistance=0.7, motor_current_limit=400.0, battery_current_limit=400.0)
    assert at_full_remote(weak, 0.0).current == pytest.approx(71.71, abs=0.005)


def test_working_of_the_loaded_speed_reaches_every_number_put_in() -> None:
    """Each of the drive's and road's numbers but its own results is an argument of some call in the trace."""
    with recording():
        drive = replace(TOWPATH, **{name: put_in(name, value) for name, value in vars(TOWPATH).items()})
        road = replace(CANAL, **{name: put_in(name, value) for name, value in vars(CANAL).items()})
        answer = steady_speed(drive, road)
    assert answer.speed is not None
    read = {entry.name for entry in trace(answer.speed) if isinstance(entry, Given)}
    assert read == {*vars(drive), *vars(road)}


@pytest.mark.parametrize("net", [0.3, 0.5, 1.0, -0.05])
def test_a_settled_motor_gives_off_all_that_it_gets(net: float) -> None:
    """Heat in the winding at the temperature that was found, and of its drag, is what flows into the air."""
    current, resistance, coefficient, reference, drag, air = 20.0, 0.06, 0.004, 293.15, 8.0, 300.0
    growing = current**2 * resistance * coefficient
    resisted = 1.0 / (net + growing)
    at = settled_temperature(
        current=current,
        resistance=resistance,
        coefficient=coefficient,
        reference=reference,
        drag_heat=drag,
        air=air,
        thermal_resistance=resisted,
        net_cooling=net,
    )
    made = current**2 * resistance * (1.0 + coefficient * (at - reference)) + drag
    assert made == pytest.approx((at - air) / resisted, rel=1e-9)


def test_a_motor_whose_heat_grows_as_fast_as_it_is_cooled_never_settles() -> None:
    with pytest.raises(InputError, match="not positive"):
        settled_temperature(
            current=20.0,
            resistance=0.06,
            coefficient=0.004,
            reference=293.15,
            drag_heat=0.0,
            air=300.0,
            thermal_resistance=1.0,
            net_cooling=0.0,
        )
