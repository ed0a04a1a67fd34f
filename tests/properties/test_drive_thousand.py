"""A thousand random boards against scipy, from a second writing of the physics: each figure within 0.1 %."""

from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from math import atan, cos, exp, sin, sqrt
from random import Random
from typing import Any

import pytest
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from logic.drive.brake import Brake, brake_curve, current_curve, motor_curve
from logic.drive.coast import coasting_time, rolling_from_distance, rolling_from_time
from logic.drive.fit import Sample, fitted
from logic.drive.flow import at_full_remote, at_steady_speed
from logic.drive.heating import net_cooling, settled_temperature, time_to_temperature
from logic.drive.options import Terms, option
from logic.drive.performance import climb_at, steady_speed
from logic.drive.push import Drivetrain, push_curve
from logic.drive.quick import quick_brake, quick_load, quick_push, quick_ruler, quick_top
from logic.drive.road import Road, load_curve
from logic.drive.start import distance_to_speed, start, time_to_speed
from logic.drive.stopping import distance_of_stop
from logic.errors import InputError
from logic.workings import recording
from screens.words.figures import OUTCOMES

BOARDS = 1000
WITHIN = 1e-3


def any_drive(dice: Random) -> Drivetrain:
    """One board in eight has limits so high that they never bind."""
    free = dice.random() < 0.125
    return Drivetrain(
        motors=dice.choice([1.0, 2.0]),
        speed_constant=dice.uniform(8.0, 40.0),
        winding_resistance=dice.uniform(0.01, 0.2),
        no_load_current=dice.uniform(0.0, 3.0),
        motor_current_limit=5000.0 if free else dice.uniform(5.0, 80.0),
        battery_current_limit=100.0 if free else dice.uniform(5.0, 50.0),
        duty=dice.uniform(0.5, 1.0),
        open_circuit_voltage=dice.uniform(18.0, 59.0),
        pack_resistance=0.0 if free else dice.choice([0.0, dice.uniform(0.0, 0.15), dice.uniform(0.15, 3.0)]),
        ratio=dice.uniform(1.2, 4.5),
        wheel_diameter=dice.uniform(0.07, 0.2),
        efficiency=dice.uniform(0.8, 1.0),
    )


def any_road(dice: Random) -> Road:
    return Road(
        mass=dice.uniform(40.0, 130.0),
        grade=dice.choice([0.0, 0.0, dice.uniform(-0.3, 0.4)]),
        wind=dice.choice([0.0, dice.uniform(-12.0, 12.0)]),
        air_density=dice.uniform(0.9, 1.4),
        gravity=9.80665,
        rolling_coefficient=dice.uniform(0.005, 0.04),
        drag_area=dice.uniform(0.2, 0.9),
    )


def any_brake(drive: Drivetrain, dice: Random) -> Brake:
    return Brake(
        drive=drive,
        brake_current_limit=dice.uniform(5.0, 60.0),
        regen_current_limit=dice.uniform(0.5, 30.0),
        grip=dice.uniform(40.0, 400.0),
    )


# The second writing: forces from powers, in another order and another form than the code under test.


def second_push(drive: Drivetrain, speed: float) -> float:
    turning = 2.0 * speed / drive.wheel_diameter * drive.ratio
    emf = turning / drive.speed_constant

    def from_plug(amps: float) -> float:
        share = (drive.open_circuit_voltage - amps * drive.pack_resistance) * amps / drive.motors
        return 2.0 * share / (emf + sqrt(emf**2 + 4.0 * drive.winding_resistance * share))

    taken = drive.battery_current_limit
    if 2.0 * taken * drive.pack_resistance > drive.open_circuit_voltage:
        taken = 0.5 * drive.open_circuit_voltage / drive.pack_resistance
    by_battery = from_plug(taken)
    # At the pack's most power its volts are half: the duty that this takes is let out, or it is not.
    half = 0.5 * drive.open_circuit_voltage
    most = from_plug(half / drive.pack_resistance) if drive.pack_resistance else 0.0
    if most and emf + most * drive.winding_resistance <= drive.duty * half:
        by_duty = most
    else:
        by_duty = (drive.duty * drive.open_circuit_voltage - emf) / (
            drive.winding_resistance + drive.duty * drive.duty * drive.motors * drive.pack_resistance
        )
    current = min(drive.motor_current_limit, by_battery, by_duty)
    torque = (max(current, 0.0) - drive.no_load_current) / drive.speed_constant
    return drive.motors * torque * drive.ratio * drive.efficiency / (0.5 * drive.wheel_diameter)


def second_load(road: Road, speed: float) -> float:
    angle, air = atan(road.grade), speed + road.wind
    weight = road.mass * road.gravity
    drag = road.air_density * road.drag_area * air**2 / 2.0
    return weight * (sin(angle) + road.rolling_coefficient * cos(angle)) + (drag if air > 0.0 else -drag)


def second_brake(brake: Brake, speed: float) -> float:
    drive = brake.drive
    emf = 2.0 * speed / drive.wheel_diameter * drive.ratio / drive.speed_constant
    taken = brake.regen_current_limit
    most = taken * (drive.open_circuit_voltage + taken * drive.pack_resistance) / drive.motors
    current = brake.brake_current_limit
    if emf * current - drive.winding_resistance * current**2 > most:
        current = 2.0 * most / (emf + sqrt(emf**2 - 4.0 * drive.winding_resistance * most))
    torque = current / drive.speed_constant
    return min(brake.grip, drive.motors * torque * drive.ratio / (0.5 * drive.wheel_diameter))


def second_top(drive: Drivetrain) -> float:
    turning = drive.duty * drive.open_circuit_voltage * drive.speed_constant
    return turning / drive.ratio * drive.wheel_diameter / 2.0


def outcome(act: Callable[..., Any], *given: Any, **named: Any) -> tuple[Any, str]:
    """Return what a figure is, or the key of the sentence in its place; the sentence is there and no number."""
    try:
        return act(*given, **named), ""
    except InputError as problem:
        key = problem.reason
    assert OUTCOMES[key].endswith(".")
    return None, key


def close(ours: float, theirs: float) -> bool:
    return abs(ours - theirs) <= WITHIN * abs(theirs) + 1e-9


def test_speed_push_and_climb_of_a_thousand_boards() -> None:
    dice = Random(1000)
    seen: Counter[str] = Counter()
    for _ in range(BOARDS):
        drive, road = any_drive(dice), any_road(dice)
        top = second_top(drive)
        at = dice.uniform(0.0, top)
        steady = steady_speed(drive, road)
        seen[steady.outcome] += 1
        seen["limits never bind"] += drive.motor_current_limit == 5000.0
        assert close(steady.unloaded, top)
        assert close(push_curve(drive)(0.0), second_push(drive, 0.0))
        assert abs(push_curve(drive)(at) - second_push(drive, at)) < 1e-3 * abs(second_push(drive, 0.0))
        if steady.speed is None:
            net = [second_push(drive, speed) - second_load(road, speed) for speed in (0.0, top)]
            assert net[0] <= 0.0 if steady.outcome == "cannot start" else net[1] > 0.0
            assert OUTCOMES[steady.outcome].endswith(".")
        else:
            theirs = brentq(lambda v: second_push(drive, v) - second_load(road, v), 0.0, top)  # noqa: B023  (used at once)
            assert close(steady.speed, theirs)
        climb, key = outcome(climb_at, push_curve(drive)(0.0), road, 0.0)
        if climb is None:
            seen[key] += 1
            assert second_push(drive, 0.0) > 0.9 * road.mass * road.gravity
            continue
        grade = brentq(
            lambda g: second_push(drive, 0.0) - second_load(replace(road, grade=g), 0.0),  # noqa: B023  (used at once)
            -50.0,
            1000.0,
        )
        assert close(climb, grade) or abs(climb - grade) < 1e-9
    for wanted in ("meets", "cannot start", "runs past", "beyond the weight", "limits never bind"):
        assert seen[wanted] >= 20, seen


def test_starts_of_a_thousand_boards() -> None:
    dice = Random(30)
    seen: Counter[str] = Counter()
    for _ in range(BOARDS):
        drive, road = any_drive(dice), any_road(dice)
        speed = dice.uniform(0.3, 0.95) * second_top(drive)
        asked = {
            "tractive_force": push_curve(drive),
            "road_load": load_curve(road),
            "mass": road.mass,
            "speed": speed,
        }
        time, key = outcome(time_to_speed, **asked)
        if time is None:
            seen[key] += 1
            assert key == "never reached"
            assert min(second_push(drive, v) - second_load(road, v) for v in (0.0, speed)) <= 1e-6
            continue
        way = distance_to_speed(**asked)
        seen["reached"] += 1

        def rate(v: float, drive: Drivetrain = drive, road: Road = road) -> float:
            return road.mass / (second_push(drive, v) - second_load(road, v))

        corners = _corners(drive, speed)
        theirs, _ = quad(rate, 0.0, speed, points=corners, limit=200)
        assert close(time, theirs)
        theirs, _ = quad(lambda v, rate=rate: v * rate(v), 0.0, speed, points=corners, limit=200)
        assert close(way, theirs)
    assert min(seen["reached"], seen["never reached"]) >= 100, seen


def _corners(drive: Drivetrain, speed: float) -> list[float] | None:
    """Return the speeds at which one limit hands over to another, for scipy to break its integral at."""
    steps = [speed * step / 400 for step in range(401)]
    slopes = [second_push(drive, b) - second_push(drive, a) for a, b in pairwise(steps)]
    jumps = [(abs(slopes[place + 1] - slopes[place]), steps[place + 1]) for place in range(len(slopes) - 1)]
    return [at for _, at in sorted(jumps)[-2:]]


def test_a_simulated_run_against_the_integrator() -> None:
    """Ours: 40 starts stepped in time by scipy until the speed is reached."""
    dice = Random(8)
    done = 0
    while done < 40:
        drive, road = any_drive(dice), replace(any_road(dice), grade=0.0, wind=0.0)
        steady = steady_speed(drive, road)
        if steady.speed is None:
            continue
        speed = 0.8 * steady.speed

        def reached(_: float, state: list[float], speed: float = speed) -> float:
            return state[0] - speed

        reached.terminal = True  # type: ignore[attr-defined]
        run = solve_ivp(
            lambda _, state, drive=drive, road=road: [
                (second_push(drive, state[0]) - second_load(road, state[0])) / road.mass,
                state[0],
            ],
            (0.0, 1e4),
            [0.0, 0.0],
            events=reached,
            rtol=1e-8,
            atol=1e-9,
            max_step=0.5,
        )
        ours = start(drive, road, speed)
        assert close(ours.time, float(run.t_events[0][0]))
        assert close(ours.way, float(run.y_events[0][0][1]))
        done += 1


def test_energy_balance_along_a_run() -> None:
    """Battery power = heat + road power + kinetic gain, to rounding, at each point and over the whole start."""
    dice = Random(5)
    for _ in range(60):
        drive, road = any_drive(dice), any_road(dice)
        push, load = push_curve(drive), load_curve(road)
        for share in range(11):
            speed = second_top(drive) * share / 10.0
            flow = at_full_remote(drive, speed)
            heat = drive.motors * flow.winding_heat
            heat += drive.motors * drive.no_load_current / drive.speed_constant * flow.angular_speed
            heat += drive.motors * flow.shaft_power - flow.push * speed
            gain = road.mass * speed * (push(speed) - load(speed)) / road.mass
            size = abs(flow.battery_power) + abs(heat) + abs(load(speed) * speed)
            assert abs(flow.battery_power - heat - load(speed) * speed - gain) < 1e-9 * size + 1e-9
        steady = steady_speed(drive, road)
        if steady.speed is not None:
            run = start(drive, road, 0.9 * steady.speed)
            parts = run.windings + run.motor_drag + run.belts + run.road + run.motion
            assert run.pack == pytest.approx(parts, rel=1e-9)
            assert run.motion == pytest.approx(0.5 * road.mass * (0.9 * steady.speed) ** 2, rel=1e-9)


def test_stops_of_a_thousand_boards() -> None:
    dice = Random(81)
    seen: Counter[str] = Counter()
    for _ in range(BOARDS):
        drive, road = any_drive(dice), any_road(dice)
        brake, speed = any_brake(drive, dice), dice.uniform(1.0, 14.0)
        way, key = outcome(distance_of_stop, brake, road, speed)
        if way is None:
            seen[key] += 1
            assert key == "does not stop"
            lowest = min(
                second_brake(brake, speed * step / 200) + second_load(road, speed * step / 200)
                for step in range(201)
            )
            assert lowest <= 1.0
            continue
        seen["stops"] += 1
        theirs, _ = quad(
            lambda v, brake=brake, road=road: (
                road.mass * v / (second_brake(brake, v) + second_load(road, v))
            ),
            0.0,
            speed,
            limit=400,
            epsrel=1e-6,
        )
        assert close(way, theirs)
    assert min(seen["stops"], seen["does not stop"]) >= 50, seen


def test_steady_currents_of_a_thousand_boards() -> None:
    dice = Random(66)
    seen: Counter[str] = Counter()
    for _ in range(BOARDS):
        drive, road = any_drive(dice), any_road(dice)
        speed = dice.uniform(0.1, 0.9) * second_top(drive)
        flow, key = outcome(at_steady_speed, drive, road, speed)
        if flow is None:
            seen[key] += 1
            net = second_push(drive, speed) - second_load(road, speed)
            assert key == "needs the brake" if second_load(road, speed) < 0.0 else net < 0.0
            continue
        seen["held"] += 1
        emf = 2.0 * speed / drive.wheel_diameter * drive.ratio / drive.speed_constant
        force = brentq(
            lambda amps, drive=drive, road=road, speed=speed: (
                drive.motors
                * (amps - drive.no_load_current)
                / drive.speed_constant
                * drive.ratio
                * drive.efficiency
                / (0.5 * drive.wheel_diameter)
                - second_load(road, speed)
            ),
            -1e4,
            1e4,
        )
        assert close(flow.current, force)
        assert close(flow.winding_heat, force**2 * drive.winding_resistance)
        power = drive.motors * force * (emf + force * drive.winding_resistance)
        assert close(flow.battery_power, power)
    for wanted in ("held", "not reached", "needs the brake"):
        assert seen[wanted] >= 50, seen


def test_quick_curves_are_the_cited_ones() -> None:
    dice = Random(2)
    for _ in range(BOARDS):
        drive, road = any_drive(dice), any_road(dice)
        brake, speed = any_brake(drive, dice), dice.uniform(0.0, 15.0)
        assert quick_push(drive)(speed) == pytest.approx(push_curve(drive)(speed), rel=1e-9, abs=1e-9)
        assert quick_load(road)(speed) == pytest.approx(load_curve(road)(speed), rel=1e-9, abs=1e-9)
        assert quick_brake(brake)(speed) == pytest.approx(brake_curve(brake)(speed), rel=1e-9, abs=1e-9)
        held = current_curve(brake)(speed) < brake.brake_current_limit
        motors = "pack takes back" if held else "motor brake current"
        rules = "tyre grip" if motor_curve(brake)(speed) >= brake.grip else motors
        assert quick_ruler(brake)(speed) == rules
        assert quick_top(drive) == pytest.approx(second_top(drive), rel=1e-12)


def test_a_search_takes_the_quick_curves_and_tells_the_cited_ones(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[float] = []

    def counted(drive: Drivetrain) -> Callable[[float], float]:
        cited = push_curve(drive)

        def push(speed: float) -> float:
            asked.append(float(speed))
            return cited(speed)

        return push

    monkeypatch.setattr("logic.drive.performance.push_curve", counted)
    dice, met = Random(3), 0
    while met < 50:
        drive, road = any_drive(dice), any_road(dice)
        asked.clear()
        with recording():
            steady = steady_speed(drive, road)
            if steady.speed is None:
                continue
            met += 1
            # Once: where it was found, for the working.
            assert asked == [float(steady.speed)]
            assert steady.push == pytest.approx(float(steady.load), rel=1e-7, abs=1e-6)


def test_rows_of_the_table_are_the_figures() -> None:
    dice = Random(17)
    for _ in range(200):
        drive, road = any_drive(dice), replace(any_road(dice), grade=0.0, wind=0.0)
        brake = any_brake(drive, dice)
        terms = Terms(
            drive=drive,
            road=road,
            reference=replace(road, grade=0.1),
            reference_speed=4.0,
            brake=brake,
            constant_spread=0.0,
        )
        row = option(terms, 16, 40)
        geared = replace(drive, ratio=2.5)
        steady = steady_speed(geared, road)
        assert (row.outcome, row.loaded is None) == (steady.outcome, steady.speed is None)
        if steady.speed is not None and row.loaded is not None:
            assert row.loaded == pytest.approx(steady.speed, rel=1e-9)
            assert row.stop == pytest.approx(
                distance_of_stop(replace(brake, drive=geared), road, steady.speed), rel=1e-6
            )


def test_warming_against_the_integrator() -> None:
    dice = Random(80)
    seen: Counter[str] = Counter()
    for _ in range(BOARDS):
        current, resistance = dice.uniform(1.0, 80.0), dice.uniform(0.01, 0.2)
        thermal, capacity = dice.uniform(0.3, 4.0), dice.uniform(80.0, 900.0)
        air, begin, limit = dice.uniform(260.0, 310.0), dice.uniform(280.0, 340.0), dice.uniform(345.0, 400.0)
        drag, coefficient, reference = dice.uniform(0.0, 20.0), 0.00393, 293.15
        cooling = net_cooling(
            thermal_resistance=thermal, current=current, resistance=resistance, coefficient=coefficient
        )
        settled = settled_temperature(
            current=current,
            resistance=resistance,
            coefficient=coefficient,
            reference=reference,
            drag_heat=drag,
            air=air,
            thermal_resistance=thermal,
            net_cooling=cooling,
        )

        def warming(
            hot: float, c: tuple[float, ...] = (current, resistance, thermal, capacity, air, drag)
        ) -> float:
            heat = c[0] ** 2 * c[1] * (1.0 + 0.00393 * (hot - 293.15))
            return (heat + c[5] - (hot - c[4]) / c[2]) / c[3]

        time, key = outcome(
            time_to_temperature,
            heat_capacity=capacity,
            net_cooling=cooling,
            settled=settled,
            start=begin,
            limit=limit,
        )
        if time is None:
            seen[key] += 1
            assert min(warming(begin), warming(limit)) <= 1e-9
            continue
        seen["runs away" if cooling < 0.0 else "warms"] += 1
        theirs, _ = quad(lambda hot, warming=warming: 1.0 / warming(hot), begin, limit)
        assert close(time, theirs)
    assert min(seen["warms"], seen["runs away"], seen["stays below"]) >= 50, seen


@pytest.mark.parametrize("rolling", [0.008, 0.015, 0.03])
def test_a_coast_gives_its_rolling_coefficient_back(rolling: float) -> None:
    shared = {"air_density": 1.225, "drag_area": 0.6, "mass": 90.0, "gravity": 9.80665}

    def stands(_: float, state: list[float]) -> float:
        return state[0]

    stands.terminal = True  # type: ignore[attr-defined]
    run = solve_ivp(
        lambda _, state: [-(rolling * 9.80665 + 0.5 * 1.225 * 0.6 * state[0] ** 2 / 90.0), state[0]],
        (0.0, 500.0),
        [6.0, 0.0],
        events=stands,
        rtol=1e-9,
        atol=1e-9,
    )
    time, way = float(run.t_events[0][0]), float(run.y_events[0][0][1])
    assert rolling_from_distance(speed=6.0, distance=way, **shared) == pytest.approx(rolling, rel=1e-4)
    assert rolling_from_time(speed=6.0, end=0.0, time=time, **shared) == pytest.approx(rolling, rel=1e-4)
    assert coasting_time(rolling=rolling, speed=6.0, end=0.0, **shared) == pytest.approx(time, rel=1e-4)


TRUE_ROLLING, TRUE_AREA = 0.017, 0.55
CANAL = Road(
    mass=90.5,
    grade=0.0,
    wind=0.0,
    air_density=1.225,
    gravity=9.80665,
    rolling_coefficient=TRUE_ROLLING,
    drag_area=TRUE_AREA,
)
TOWPATH = Drivetrain(
    motors=2.0,
    speed_constant=17.802358370342162,
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


def invented(dice: Random, count: int, noise: float) -> list[Sample]:
    """Return rides of the true coefficients, their energy off by a share."""
    speeds = [dice.uniform(3.0, 9.5) for _ in range(count)]
    return [
        Sample(
            speed=speed,
            energy_per_distance=at_steady_speed(TOWPATH, CANAL, speed).battery_power
            / speed
            * (1.0 + dice.gauss(0.0, noise)),
        )
        for speed in speeds
    ]


def fit(samples: list[Sample]) -> tuple[bool, bool]:
    found = fitted(TOWPATH, samples, mass=90.5, gravity=9.80665, air_density=1.225)
    return found.rolling.holds(TRUE_ROLLING), found.drag_area.holds(TRUE_AREA)


def test_rides_without_noise_give_the_coefficients_back() -> None:
    found = fitted(TOWPATH, invented(Random(1), 5, 0.0), mass=90.5, gravity=9.80665, air_density=1.225)
    assert found.rolling.value == pytest.approx(TRUE_ROLLING, rel=1e-9)
    assert found.drag_area.value == pytest.approx(TRUE_AREA, rel=1e-9)
    assert found.scatter < 1e-9


@pytest.mark.parametrize("count", [5, 8, 20])
def test_the_band_holds_the_truth_nine_times_in_ten(count: int) -> None:
    hits = [fit(invented(Random(f"{count} {seed}"), count, 0.05)) for seed in range(200)]
    assert sum(rolling for rolling, _ in hits) >= 180
    assert sum(area for _, area in hits) >= 180


def test_rides_all_alike_are_refused() -> None:
    ride = invented(Random(1), 1, 0.0)[0]
    with pytest.raises(InputError) as refused:
        fit([ride] * 6)
    assert refused.value.reason == "too alike"
    with pytest.raises(InputError) as refused:
        fit([ride] * 3)
    assert refused.value.reason == "too few rides"


def test_a_warmed_motor_settles_where_it_should() -> None:
    """Ours: 20 W at 1.5 K/W without a rise of resistance settle 30 K above the air, half way in 0.69 time constants."""
    time = time_to_temperature(
        heat_capacity=270.0, net_cooling=1 / 1.5, settled=323.0, start=293.0, limit=308.0
    )
    assert time == pytest.approx(270.0 * 1.5 * 0.6931471805599453)
    assert exp(-time / (270.0 * 1.5)) == pytest.approx(0.5)
