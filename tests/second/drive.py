"""The drive of a board, worked out a second time: limits found by search, ways and times added up by quadrature.

Nothing is taken from logic but the board's values; printed tables are read as data, in their printed units. A page is a
dictionary of results by name, in SI: a number, a pair (value, band), or a `Gap` that says why there is none.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property, partial
from itertools import pairwise
from math import acos, atan, cos, floor, pi, sin, sqrt, tan
from statistics import median
from typing import Any

from scipy.integrate import quad
from scipy.optimize import brentq

from logic.board import Board
from tests.second.pack import AIR, GRAVITY, ICE, row, table

KMH = 1.0 / 3.6
FEWEST = 3
"""Rides before anything is learnt of them."""
INCH = 0.0254
MEANING = {"six-step": 1.0, "sine peak": sqrt(3.0) / 2.0, "sine rms": sqrt(1.5)}
"""DC amperes of one stated motor ampere."""
STANDS_IN = {
    "load.rolling": "rolling_coefficient",
    "load.drag_area": "drag_area",
    "load.efficiency": "efficiency",
    "controller.duty": "duty",
    "pack.window": "window",
}
"""What the road's table says of a value that a board leaves out."""

Asked = Mapping[str, float | str]
Page = dict[str, Any]


class NoNumberError(Exception):
    """There is no such number, for this reason."""


@dataclass(frozen=True)
class Gap:
    """No number: a value is missing (its key), or it cannot be (the reason)."""

    missing: str = ""
    refused: str = ""


def page(results: Mapping[str, Callable[[], Any]]) -> Page:
    """Work out what can be, and say why the rest cannot."""
    found: Page = {}
    for name, compute in results.items():
        try:
            found[name] = compute()
        except KeyError as missing:
            found[name] = Gap(missing=str(missing.args[0]))
        except NoNumberError as reason:
            found[name] = Gap(refused=str(reason))
    return found


class Setup:
    """A board, its rider and what was asked, with the physics of its drive."""

    def __init__(
        self, board: Board, rider: float, asked: Asked, over: Mapping[str, float] | None = None
    ) -> None:
        self.board, self.rider, self.asked, self.over = board, rider, asked, over or {}

    def __getitem__(self, key: str) -> float:
        if key in self.over:
            return self.over[key]
        value = self.board.value(key)
        if value is not None:
            return float(value.si)
        if key in STANDS_IN:
            return float(next(line[STANDS_IN[key]] for line in table("road") if STANDS_IN[key] in line))
        raise KeyError(key)

    def text(self, key: str) -> str:
        value = self.board.value(key)
        if value is None:
            raise KeyError(key)
        return str(value.si)

    def has(self, key: str) -> bool:
        return key in self.over or self.board.value(key) is not None

    def ask(self, key: str) -> float:
        return float(self.asked[f"ask.{key}"])

    def other(self, key: str, si: float) -> "Setup":
        """The same with another value, known as well as the board's own."""
        return Setup(self.board, self.rider, self.asked, {**self.over, key: si})

    # The motor and what it is geared to.

    @cached_property
    def motors(self) -> int:
        return int(self.text("drive.motors"))

    @cached_property
    def meaning(self) -> float:
        return (
            MEANING[self.text("controller.current_meaning")]
            if self.has("controller.current_meaning")
            else 1.0
        )

    @cached_property
    def gear(self) -> float:
        """Radians of the motor for each metre of the road."""
        return self["drive.wheel_teeth"] / self["drive.motor_teeth"] * 2.0 / self["drive.wheel_diameter"]

    @cached_property
    def newtons(self) -> float:
        """Force at the road for each ampere of each motor, without losses."""
        return self.motors * self.gear / self["motor.kv"]

    def volts(self, charge: str) -> float:
        kind = row("chemistry", name=self.text("pack.chemistry"))
        return float(self["pack.series"] * kind["nominal_low" if charge == "nominal" else charge])

    @cached_property
    def pack_ohms(self) -> float:
        strings = self["pack.parallel"] * self["pack.packs"]
        return self["pack.cell_resistance"] * self["pack.series"] / strings

    def described(self) -> None:
        """A drive is told of as a whole: no figure of it while one of its values is missing."""
        for key in (
            "motor.kv", "motor.resistance", "motor.no_load_current", "controller.motor_current",
            "controller.battery_current", "drive.wheel_teeth", "drive.motor_teeth", "drive.wheel_diameter",
        ):  # fmt: skip
            _ = self[key]
        _ = self.motors, self.pack_ohms, self.volts("full")

    def limits(self, speed: float, charge: str = "nominal") -> tuple[float, str]:
        """The most amperes of one motor at a speed, and what holds them down."""
        self.described()
        emf, ohms = speed * self.gear / self["motor.kv"], self["motor.resistance"]
        rest, inside, count = self.volts(charge), self.pack_ohms, self.motors
        drawn, weak = self["controller.battery_current"], rest / (2.0 * inside)
        most = min(drawn, weak) * (rest - min(drawn, weak) * inside)
        duty, limit = self["controller.duty"], self["controller.motor_current"] * self.meaning

        def power(amps: float) -> float:
            return count * amps * (emf + amps * ohms)

        def over_power(amps: float) -> float:
            return power(amps) / most - 1.0

        def over_duty(amps: float) -> float:
            sagged = (rest + sqrt(max(0.0, rest * rest - 4.0 * inside * power(amps)))) / 2.0
            return (emf + amps * ohms) / sagged - duty

        if over_duty(0.0) >= 0.0:
            return 0.0, "duty"
        if max(over_power(limit), over_duty(limit)) <= 0.0:
            return limit, "motor current"
        # Up to the most power the duty that is needed rises with the current.
        by_power = brentq(over_power, 0.0, limit, xtol=1e-12) if over_power(limit) > 0.0 else limit
        if over_duty(by_power) > 0.0:
            return brentq(over_duty, 0.0, by_power, xtol=1e-12), "duty"
        return by_power, "battery current" if drawn <= weak else "pack"

    def push(self, speed: float, charge: str = "nominal") -> float:
        amps, _ = self.limits(speed, charge)
        return (amps - self["motor.no_load_current"]) * self.newtons * self["load.efficiency"]

    def unloaded(self, charge: str) -> float:
        return self.volts(charge) * self["controller.duty"] * self["motor.kv"] / self.gear

    # The road.

    @cached_property
    def mass(self) -> float:
        return self["load.board_mass"] + self.rider

    def air(self, speed: float, wind: float = 0.0) -> float:
        return 0.5 * AIR * self["load.drag_area"] * (speed + wind) * abs(speed + wind)

    def slope(self, grade: float) -> float:
        """Weight and rolling along the road."""
        angle = atan(grade)
        return self.mass * GRAVITY * (sin(angle) + self["load.rolling"] * cos(angle))

    def load(self, speed: float, grade: float = 0.0, wind: float = 0.0) -> float:
        return self.slope(grade) + self.air(speed, wind)

    def steepest(self, left: float) -> float:
        """The grade on which weight and rolling are as strong as a force."""
        peak = pi / 2.0 - atan(self["load.rolling"])

        def spare(angle: float) -> float:
            return self.mass * GRAVITY * (sin(angle) + self["load.rolling"] * cos(angle)) - left

        if spare(-pi / 2.0) >= 0.0 or spare(peak) < 0.0:
            raise NoNumberError("beyond the weight")
        return tan(brentq(spare, -pi / 2.0, peak, xtol=1e-14))

    def climb(self, speed: float, wind: float = 0.0) -> float:
        return self.steepest(self.push(speed) - self.air(speed, wind))

    def top(self, charge: str = "nominal", grade: float = 0.0, wind: float = 0.0) -> float:
        """Where push and load meet."""
        end = self.unloaded(charge)

        def spare(speed: float) -> float:
            return self.push(speed, charge) - self.load(speed, grade, wind)

        if spare(0.0) <= 0.0:
            raise NoNumberError("cannot start")
        if spare(end) > 0.0:
            raise NoNumberError("runs past")
        return brentq(spare, 0.0, end, xtol=1e-10)

    def start(self, speed: float, grade: float, wind: float, *, way: bool) -> float:
        """Time or way from standstill to a speed."""

        def spare(at: float) -> float:
            return self.push(at) - self.load(at, grade, wind)

        if spare(0.0) <= 0.0:
            raise NoNumberError("cannot start")
        if spare(speed) <= 0.0:
            raise NoNumberError("never reached")
        found, _ = quad(
            lambda at: self.mass * (at if way else 1.0) / spare(at), 0.0, speed, limit=200, epsrel=1e-5
        )
        return float(found)

    def battery(self, amps: float, speed: float, charge: str = "nominal") -> tuple[float, float]:
        """Power and current of the pack's plug at amperes of one motor."""
        emf = speed * self.gear / self["motor.kv"]
        power = self.motors * amps * (emf + amps * self["motor.resistance"])
        rest, inside = self.volts(charge), self.pack_ohms
        most = rest / (2.0 * inside)
        if power >= most * (rest - most * inside):
            return power, most
        return power, brentq(lambda drawn: drawn * (rest - drawn * inside) - power, 0.0, most, xtol=1e-13)

    def steady(self, speed: float, grade: float = 0.0, wind: float = 0.0) -> float:
        """Amperes of one motor that hold a speed."""
        self.described()
        force = self.load(speed, grade, wind)
        amps = force / self["load.efficiency"] / self.newtons + self["motor.no_load_current"]
        if amps < 0.0:
            raise NoNumberError("needs the brake")
        if amps > self.limits(speed)[0] * (1.0 + 1e-9):
            raise NoNumberError("not reached")
        return amps

    def each_metre(self, speed: float, grade: float = 0.0, wind: float = 0.0) -> float:
        """Energy of the cells for each metre, their own heat included."""
        _, drawn = self.battery(self.steady(speed, grade, wind), speed)
        return drawn * self.volts("nominal") / speed

    # The brake.

    def grip(self, surface: str, grade: float = 0.0, *, braking: bool) -> float:
        """The most force of the driven axle: its own load follows the force until one of two ends is met."""
        friction = row("surfaces", name=surface)["friction"]
        weight = self.mass * GRAVITY * cos(atan(grade))
        base, front, height = self.ask("wheelbase"), self.ask("mass_behind_front"), self.ask("mass_height")
        if front > base:
            raise NoNumberError("range")
        behind = self.asked["ask.axle"] == "behind"
        share = front / base if behind else 1.0 - front / base
        # Braking throws the weight forward, driving throws it back.
        shift = height / base * (1.0 if braking is not behind else -1.0)

        def slips(force: float) -> float:
            return force - friction * (weight * share + force * shift)

        def lifts(force: float) -> float:
            return force * shift - weight * (1.0 - share)

        ends = [friction * weight]
        ends += [
            brentq(end, 0.0, friction * weight) for end in (slips, lifts) if end(friction * weight) > 0.0
        ]
        return min(ends)

    def into_pack(self, limit: float, rest: float) -> float:
        """Power of one motor that the pack takes back."""
        return limit * (rest + limit * self.pack_ohms) / self.motors

    def brake_amps(self, speed: float, limit: float, rest: float) -> float:
        self.described()
        emf, ohms = speed * self.gear / self["motor.kv"], self["motor.resistance"]
        amps, taken = self["controller.brake_current"] * self.meaning, self.into_pack(limit, rest)

        def sent(current: float) -> float:
            return current * (emf - current * ohms) - taken

        if sent(amps) <= 0.0:
            return amps
        return brentq(sent, 0.0, min(amps, emf / (2.0 * ohms)), xtol=1e-13)

    def brake(self, speed: float, limit: float, rest: float, grip: float) -> float:
        return min(self.brake_amps(speed, limit, rest) * self.newtons, grip)

    def stop(self, speed: float, limit: float, rest: float, grip: float, grade: float = 0.0) -> float:
        """The way from a speed to standstill once the brake is on."""
        amps, ohms = self["controller.brake_current"] * self.meaning, self["motor.resistance"]
        # Above this speed the pack takes back less than the motors would send: the force may jump here.
        bend = (self.into_pack(limit, rest) / amps + amps * ohms) * self["motor.kv"] / self.gear
        points = {0.0, speed, *(at for at in (bend * (1.0 - 1e-9), bend * (1.0 + 1e-9)) if 0.0 < at < speed)}

        def free(at: float) -> float:
            return self.brake_amps(at, limit, rest) * self.newtons - grip

        if bend < speed and free(bend * (1.0 + 1e-9)) > 0.0 > free(speed):
            points.add(brentq(free, bend * (1.0 + 1e-9), speed))
        ends = sorted(points)

        def force(at: float) -> float:
            return self.brake(at, limit, rest, grip) + self.load(at, grade)

        steps = [low + (high - low) * part / 40.0 for low, high in pairwise(ends) for part in range(41)]
        if min(force(at) for at in steps) <= 0.0:
            raise NoNumberError("does not stop")
        return float(
            sum(
                quad(lambda at: self.mass * at / force(at), low, high, epsrel=1e-7)[0]
                for low, high in pairwise(ends)
            )
        )

    def slows(self, limit: float, speed: float = 20.0 * KMH, *, stop: bool) -> float:
        """Deceleration, or way to standstill, with a braking current on an empty pack, dry and level."""
        self.described()
        _, rest, grip = self["controller.brake_current"], self.volts("empty"), self.grip("dry", braking=True)
        if stop:
            return self.stop(speed, limit, rest, grip)
        return (self.brake(speed, limit, rest, grip) + self.load(speed)) / self.mass

    @property
    def regen(self) -> float:
        current = self["controller.regen_current"]
        if current <= 0.0:
            raise NoNumberError("no braking")
        return current

    def weakest(self, way: str) -> tuple[float, str]:
        """The least limit in the path of a current, and the part that has it."""
        cell, bms, controller = {
            "drive": (
                "pack.cell_discharge_current",
                "pack.bms_discharge_current",
                "controller.battery_current",
            ),
            "brake": ("pack.cell_charge_current", "pack.bms_charge_current", "controller.regen_current"),
            "burst": ("pack.cell_brake_current", "pack.bms_charge_current", "controller.regen_current"),
        }[way]
        if way == "burst" and not self.has(cell):
            cell = "pack.cell_charge_current"
        parts = {
            "cell": (cell, "pack.parallel", "pack.packs"),
            "bms": (bms, "pack.packs"),
            "fuse": ("pack.fuse",),
            "connector": ("pack.connector_current",),
            "controller": (controller,),
        }
        found = []
        for part, keys in parts.items():
            if all(self.has(key) for key in keys):
                amps = 1.0
                for key in keys:
                    amps *= self[key]
                if part != "controller" or amps > 0.0:
                    found.append((amps, part))
        if not found:
            raise KeyError(cell)
        return min(found, key=lambda each: each[0])

    # Energy.

    def usable(self, kelvin: float) -> float:
        cells = self["pack.series"] * self["pack.parallel"] * self["pack.packs"]
        kept = [
            (line["temperature"] + ICE, line["value"]) for line in table("range") if line["name"] == "cold"
        ]
        share = kept[-1][1]
        for (cold, less), (warm, more) in pairwise(kept):
            if cold <= kelvin <= warm:
                share = less + (more - less) * (kelvin - cold) / (warm - cold)
        cell = self["pack.cell_capacity"] * row("chemistry", name=self.text("pack.chemistry"))["nominal_low"]
        return float(cells * cell * self["pack.window"] * share)

    def reach(self, speed: float, grade: float = 0.0) -> Any:
        """The modelled range, with the band that road and air leave open."""

        def of(setup: Setup) -> float:
            return setup.usable(setup.ask("cells_at")) / setup.each_metre(speed, grade)

        ends = []
        for end in ("high", "low"):
            line, setup = row("range_spread", end=end), self
            for key in ("load.rolling", "load.drag_area"):
                value = self.board.value(key)
                if value is None or value.known != "measured":
                    setup = setup.other(key, line[key.removeprefix("load.")])
            ends.append(setup)
        usual = of(self)
        try:
            low, high = (of(end) for end in ends)
        except NoNumberError:
            return usual
        return (usual, (low, high)) if low < high else usual

    # The belt.

    @property
    def profile(self) -> dict[str, Any]:
        return row("belt_profiles", profile=self.text("drive.profile"))

    def pulley(self, key: str) -> float:
        """Pitch diameter."""
        return float(self.profile["pitch"] / 1000.0 * self[f"drive.{key}_teeth"] / pi)

    @property
    def belt_load(self) -> float:
        # Until a brake limit is set, the one for driving stands for both.
        brake = (
            "controller.brake_current" if self.has("controller.brake_current") else "controller.motor_current"
        )
        amps = max(self["controller.motor_current"], self[brake]) * self.meaning
        _, pulley = self["motor.kv"], self.pulley("motor")
        self.belt_width()
        line = row("belt_working", profile=self.text("drive.profile"))
        working = line["working_tension"] * self["drive.belt_width"] * 1000.0 / line["width"]
        return float(amps / self["motor.kv"] * 2.0 / pulley / working)

    def belt_width(self) -> None:
        """A width is trusted from two thirds of the narrowest printed one to 1.2 times the widest."""
        name = self.text("drive.profile")
        printed = [line["width"] / 1000.0 for line in table("belt_tension") if line["profile"] == name]
        if not min(printed) * 2.0 / 3.0 <= self["drive.belt_width"] <= max(printed) * 1.2:
            raise NoNumberError("range")

    @property
    def centre(self) -> float:
        if self.has("drive.centre"):
            return self["drive.centre"]
        length = self.profile["pitch"] / 1000.0 * self["drive.belt_teeth"]
        return centre_of(length, self.pulley("motor"), self.pulley("wheel"))

    @property
    def electrical(self) -> float:
        return self.volts("full") * self["controller.duty"] * self["motor.kv"] * self["motor.pole_pairs"]


def centre_of(length: float, one: float, two: float) -> float:
    """Two straight spans and what goes round both pulleys make the belt."""
    small, large = sorted((one, two))

    def spare(centre: float) -> float:
        half = acos((large - small) / (2.0 * centre))
        return 2.0 * centre * sin(half) + small * half + large * (pi - half) - length

    touching = (small + large) / 2.0
    if spare(touching) > 0.0:
        raise NoNumberError("belt too short for the pulleys")
    return brentq(spare, touching, length, xtol=1e-14)


def by_kv(setup: Setup, compute: Callable[[Setup], float]) -> Any:
    """A number with the band that a printed Kv leaves open: 10 % to either side."""
    middle, kv = compute(setup), setup.board.value("motor.kv")
    if kv is None or kv.known == "measured":
        return middle
    try:
        ends = [compute(setup.other("motor.kv", float(kv.si) * off)) for off in (0.9, 1.1)]
    except (KeyError, NoNumberError):
        return middle
    return middle, (min(middle, *ends), max(middle, *ends))


def gearing(setup: Setup, speed: float) -> Page:
    return page(
        {
            "top_loaded": lambda: by_kv(setup, lambda each: each.top()),
            **{
                f"top_{charge}": partial(
                    lambda charge: by_kv(setup, lambda each: each.unloaded(charge)), charge
                )
                for charge in ("full", "nominal", "empty")
            },
            "push_start": lambda: setup.push(0.0),
            "push_at": lambda: setup.push(speed),
            "climb_start": lambda: setup.climb(0.0),
            "climb_at": lambda: setup.climb(speed),
            "ratio": lambda: setup["drive.wheel_teeth"] / setup["drive.motor_teeth"],
            "circumference": lambda: pi * setup["drive.wheel_diameter"],
            "angular_speed_at": lambda: speed * setup.gear,
            "electrical_at": lambda: speed * setup.gear * setup["motor.pole_pairs"],
            "belt_speed_at": lambda: speed * setup.gear * setup.pulley("motor") / 2.0,
            "torque_constant": lambda: setup.meaning / setup["motor.kv"],
        }
    )


def pushing(setup: Setup) -> Page:
    speed, grade, wind = setup.ask("speed"), setup.ask("grade"), setup.ask("wind")

    def full() -> float:
        setup.described()
        if speed > setup.unloaded("nominal"):
            raise NoNumberError("not reached")
        return setup.limits(speed)[0]

    def efficiency() -> float:
        power, _ = setup.battery(full(), speed)
        if power <= 0.0:
            raise NoNumberError("not positive")
        return setup.push(speed) * speed / power

    def erpm() -> float:
        return setup["controller.erpm_limit"] / setup["motor.pole_pairs"] / setup.gear

    found: dict[str, Callable[[], Any]] = {
        **{
            name: partial(
                lambda charge: by_kv(setup, lambda each: each.top(charge, grade, wind)), charge
            )
            for name, charge in (
                ("top_loaded", "nominal"), ("top_loaded_full", "full"), ("top_loaded_empty", "empty"),
            )
        },
        **{
            f"{what}_{kmh}": partial(setup.start, kmh * KMH, grade, wind, way=what == "way")
            for what in ("time", "way")
            for kmh in (20, 30)
        },
        "push_at": lambda: setup.push(speed),
        "load": lambda: setup.load(speed, grade, wind),
        "acceleration": lambda: (setup.push(speed) - setup.load(speed, grade, wind)) / setup.mass,
        "climb_at": lambda: setup.climb(speed, wind),
        "full_current": full,
        "full_battery": lambda: setup.battery(full(), speed)[1],
        "full_heat": lambda: full() ** 2 * setup["motor.resistance"],
        "efficiency": efficiency,
        "angular_speed_at": lambda: full() * 0.0 + speed * setup.gear,
        "steady_current": lambda: setup.steady(speed, grade, wind),
        "steady_battery": lambda: setup.battery(setup.steady(speed, grade, wind), speed)[1],
        "steady_heat": lambda: setup.steady(speed, grade, wind) ** 2 * setup["motor.resistance"],
        "per_distance": lambda: setup.each_metre(speed, grade, wind),
        "drive_grip": lambda: setup.grip("dry", grade, braking=False),
        "drive_grip_wet": lambda: setup.grip("wet", grade, braking=False),
    }  # fmt: skip
    if setup.has("controller.erpm_limit"):
        found["erpm_speed"] = erpm
    return page(found)


def stop_from_top(setup: Setup) -> float:
    """The way from the loaded top speed; what is wrong with the brake is told first."""
    setup.described()
    limit, _ = setup["controller.regen_current"], setup["controller.brake_current"]
    setup.grip("dry", braking=True)
    return setup.slows(limit, setup.top(), stop=True)


def pair(setup: Setup) -> Page:
    grade, speed = setup.ask("climb_grade"), setup.ask("climb_speed")

    def mesh() -> float:
        small, large = sorted((setup.pulley("motor"), setup.pulley("wheel")))
        teeth = min(setup["drive.motor_teeth"], setup["drive.wheel_teeth"])
        return acos((large - small) / (2.0 * setup.centre)) / pi * teeth

    return page(
        {
            "top_loaded": lambda: by_kv(setup, lambda each: each.top()),
            "top_full": lambda: by_kv(setup, lambda each: each.unloaded("full")),
            "ratio": lambda: setup["drive.wheel_teeth"] / setup["drive.motor_teeth"],
            "push_start": lambda: setup.push(0.0),
            "climb_start": lambda: setup.climb(0.0),
            "climb_heat": lambda: setup.steady(speed, grade) ** 2 * setup["motor.resistance"],
            "stop": lambda: stop_from_top(setup),
            "angular_speed_loaded": lambda: setup.top() * setup.gear,
            "electrical": lambda: setup.electrical,
            "erpm_margin": lambda: 1.0 - setup.electrical / setup["controller.erpm_limit"],
            "belt_load": lambda: setup.belt_load,
            "belt": lambda: setup["drive.belt_teeth"],
            "centre": lambda: setup.centre,
            "teeth_in_mesh": mesh,
        }
    )


def rules(setup: Setup, speed: float) -> str:
    """What holds the push down at full remote, the tyre and the electrical rpm among it."""
    cap, keys = None, ("controller.erpm_limit", "motor.pole_pairs")
    if all(setup.has(key) for key in keys):
        cap = setup["controller.erpm_limit"] / setup["motor.pole_pairs"] / setup.gear
    if cap is not None and speed > cap:
        return "electrical rpm"
    if setup.push(speed) > setup.grip("dry", setup.ask("grade"), braking=False):
        return "tyre grip"
    return setup.limits(speed)[1]


def brake_rules(setup: Setup, speed: float) -> str:
    """What holds the brake down on a dry road."""
    rest = setup.ask("rest_voltage") if "ask.rest_voltage" in setup.asked else setup.volts("empty")
    amps = setup.brake_amps(speed, setup["controller.regen_current"], rest)
    if amps * setup.newtons >= setup.grip("dry", setup.ask("stop_grade"), braking=True):
        return "tyre grip"
    limit = setup["controller.brake_current"] * setup.meaning
    return "motor brake current" if amps >= limit else "pack takes back"


def compared(setup: Setup) -> Page:
    of_pair, of_push = pair(setup), pushing(setup)
    names = ("ratio", "push_start", "climb_start", "climb_heat", "stop", "electrical", "belt_load")
    page_of = {name: of_pair[name] for name in ("top_loaded", "top_full", *names)}
    page_of |= {name: of_push[name] for name in ("time_20", "time_30", "per_distance")}
    # Side by side there is one number each: what Kv leaves open is the same for both.
    return {name: found[0] if isinstance(found, tuple) else found for name, found in page_of.items()}


def stopping(setup: Setup) -> Page:
    speed, grade = setup.ask("stop_speed"), setup.ask("stop_grade")

    def rest(charge: str) -> float:
        return setup.ask("rest_voltage") if "ask.rest_voltage" in setup.asked else setup.volts(charge)

    def brake() -> tuple[float, float, float]:
        setup.described()
        _ = setup["controller.brake_current"]
        return setup["controller.regen_current"], rest("empty"), setup.grip("dry", grade, braking=True)

    def stop(surface: str, reaction: str) -> float:
        limit, volts, _ = brake()
        grip = setup.grip(surface, grade, braking=True)
        return speed * row("reaction", name=reaction)["time"] + setup.stop(speed, limit, volts, grip, grade)

    def back() -> float:
        limit, volts, _ = brake()
        amps = setup.brake_amps(speed, limit, volts)
        emf = speed * setup.gear / setup["motor.kv"]
        power = max(0.0, setup.motors * amps * (emf - amps * setup["motor.resistance"]))
        return brentq(
            lambda current: current * (volts + current * setup.pack_ohms) - power, 0.0, power / volts + 1e-9
        )

    def cells() -> float:
        return setup["pack.cell_charge_current"] * setup["pack.parallel"] * setup["pack.packs"]

    return page(
        {
            **{
                f"stop_{surface}_{reaction}": partial(stop, surface, reaction)
                for surface in ("dry", "wet", "loose")
                for reaction in ("design", "alert")
            },
            "deceleration": lambda: (setup.brake(speed, *brake()) + setup.load(speed, grade)) / setup.mass,
            **{
                f"grip_{surface}": partial(
                    lambda surface: setup.grip(surface, grade, braking=True) / setup.mass, surface
                )
                for surface in ("dry", "wet", "loose")
            },
            "held_descent": lambda: held_descent(setup, speed, brake()),
            "into_pack": back,
            "slows_as_set": lambda: setup.slows(setup.regen, stop=False),
            "stop_as_set": lambda: setup.slows(setup.regen, stop=True),
            "cells_limit": cells,
            "slows_within_cells": lambda: setup.slows(cells(), stop=False),
            "stop_within_cells": lambda: setup.slows(cells(), stop=True),
            "plug_voltage": lambda: rest("full") + setup.regen * setup.pack_ohms,
            "room": lambda: max(0.0, setup.volts("full") - rest("full")) / setup.pack_ohms,
            "cuts out": lambda: rest("full") + setup.regen * setup.pack_ohms > setup.volts("full"),
        }
    )


def held_descent(setup: Setup, speed: float, brake: tuple[float, float, float]) -> float:
    return setup.steepest(-setup.brake(speed, *brake) - setup.air(speed))


def ranged(setup: Setup, rides: list[tuple[float, float, float]]) -> Page:
    """Range; rides are metres, joules and metres per second."""
    speed, grade = setup.ask("range_speed"), setup.ask("range_grade")

    def learnt() -> tuple[float, tuple[float, float]]:
        if len(rides) < FEWEST:
            raise NoNumberError("too few rides")
        spent = sorted(joules / metres for metres, joules, _ in rides)
        usual = median(spent)
        half = max(
            2.0 * 1.4826 * median(abs(each - usual) for each in spent),
            row("range", name="least spread")["value"] * usual,
        )
        return usual, (max(usual - half, usual / 2.0), usual + half)

    def taught() -> tuple[float, tuple[float, float]]:
        usual, (low, high) = learnt()
        ridden = median(each for *_, each in rides)
        share = setup.each_metre(speed, grade) / setup.each_metre(ridden)
        return usual * share, (low * share, high * share)

    def best() -> Any:
        try:
            usual, (low, high) = taught()
        except NoNumberError:
            return setup.reach(speed, grade)
        charge = setup.usable(setup.ask("cells_at"))
        return charge / usual, (charge / high, charge / low)

    def cold() -> float:
        try:
            spent, _ = taught()
        except NoNumberError:
            spent = setup.each_metre(speed, grade)
        return setup.usable(ICE) / spent

    found: dict[str, Callable[[], Any]] = {
        "range": best,
        "range_modelled": lambda: setup.reach(speed, grade),
        "usable": lambda: setup.usable(setup.ask("cells_at")),
        "per_distance": lambda: setup.each_metre(speed, grade),
        "range_cold": cold,
        "per_distance_learnt": learnt,
        "steady_power": lambda: setup.battery(setup.steady(speed, grade), speed)[0],
        "steady_battery": lambda: setup.battery(setup.steady(speed, grade), speed)[1],
        "steady_heat": lambda: setup.steady(speed, grade) ** 2 * setup["motor.resistance"],
        "per_distance_carried": taught,
    }
    return page(found)


def wheel(setup: Setup) -> Page:
    def today() -> float:
        if "ask.wheel_measured" in setup.asked:
            return setup.ask("wheel_measured")
        if "ask.roll_way" in setup.asked:
            return setup.ask("roll_way") / setup.ask("roll_turns") / pi
        return setup["drive.wheel_diameter"]

    def other() -> float:
        if "ask.wheel_other" in setup.asked:
            return setup.ask("wheel_other")
        return setup[
            "drive.wheel_diameter_new" if setup.has("drive.wheel_diameter_new") else "drive.wheel_diameter"
        ]

    def on(diameter: float) -> Setup:
        _ = setup["drive.wheel_diameter"]
        return setup.other("drive.wheel_diameter", diameter)

    def clear(diameter: float) -> float:
        tips = setup.pulley("wheel") / 2.0 - setup.profile["differential"] * INCH
        return diameter / 2.0 - tips - row("pair_rules", name="flange")["length"] / 1000.0

    def top(diameter: float) -> float:
        turning = setup.volts("nominal") * setup["controller.duty"] * setup["motor.kv"]
        return turning * setup["drive.motor_teeth"] / setup["drive.wheel_teeth"] * diameter / 2.0

    return page(
        {
            "today": today,
            "circumference_today": lambda: pi * today(),
            "rolled": lambda: setup.ask("roll_way") / setup.ask("roll_turns"),
            "change": lambda: today() / other() - 1.0,
            "push_change": lambda: other() / today() - 1.0,
            "top": lambda: top(today()),
            "top_other": lambda: top(other()),
            "push_today": lambda: on(today()).push(0.0),
            "push_other": lambda: on(other()).push(0.0),
            "clearance": lambda: clear(today()),
            "clearance_other": lambda: clear(other()),
        }
    )


def bench(setup: Setup) -> Page:
    def ohms() -> float:
        return setup.ask("bench_voltage") / setup.ask("bench_current")

    def known_ohms() -> float:
        both = "ask.bench_voltage" in setup.asked and "ask.bench_current" in setup.asked
        return ohms() if both else setup["motor.resistance"]

    def kv() -> float:
        turning, duty = setup.ask("spin_rotation"), setup.ask("spin_duty")
        emf = duty * setup.ask("spin_voltage") - setup["motor.no_load_current"] * known_ohms()
        if emf <= 0.0:
            raise NoNumberError("no such motor")
        return turning / emf

    def known_kv() -> float:
        both = "ask.spin_rotation" in setup.asked and "ask.spin_voltage" in setup.asked
        return kv() if both else setup["motor.kv"]

    def pairs() -> float:
        if setup.ask("magnets") % 2.0:
            raise NoNumberError("odd magnets")
        return setup.ask("magnets") / 2.0

    return page(
        {
            "kv": kv,
            "resistance": ohms,
            "pole_pairs": pairs,
            **{
                f"constant {name}": partial(lambda factor: factor / known_kv(), factor)
                for name, factor in MEANING.items()
            },
        }
    )


def braking(setup: Setup) -> Page:
    """What the pages of packs and of descents tell of the brake."""
    return page(
        {
            f"{what}_{how}": partial(
                lambda limit, stop: setup.slows(limit(), stop=stop), limit, what == "stop"
            )
            for what in ("slows", "stop")
            for how, limit in (
                ("as_set", lambda: setup.regen),
                ("for_long", lambda: setup.weakest("brake")[0]),
                ("burst", lambda: setup.weakest("burst")[0]),
            )
        }
    )


def card(setup: Setup) -> Page:
    """What to set in the controller; `held` are the parts that hold a limit down."""

    def limit(way: str) -> tuple[float, str]:
        _ = setup["controller.battery_current"] if way == "drive" else setup.regen
        return setup.weakest(way)

    def held(way: str) -> str:
        part = limit(way)[1]
        return "" if part == "controller" else part

    low = row("low_voltage", name=setup.text("pack.chemistry")) if setup.has("pack.chemistry") else None

    def volts(end: str) -> float:
        if low is None:
            raise KeyError("pack.chemistry")
        return float(low[end] * setup["pack.series"])

    found: dict[str, Callable[[], Any]] = {
        "motor_drive": lambda: setup["controller.motor_current"],
        "motor_brake": lambda: setup["controller.brake_current"],
        "slows_for_long": lambda: setup.slows(limit("brake")[0], stop=False),
        "stop_for_long": lambda: setup.slows(limit("brake")[0], stop=True),
        "low_start": lambda: volts("start"),
        "low_end": lambda: volts("end"),
        "full": lambda: setup.volts("full"),
    }
    for way in ("drive", "brake", *(["burst"] if setup.has("pack.cell_brake_current") else [])):
        found[f"limit_{way}"] = partial(lambda way: limit(way)[0], way)
        found[f"limit_{way}_each"] = partial(lambda way: limit(way)[0] / setup.motors, way)
        found[f"held {way}"] = partial(held, way)
    return page(found)


def option(setup: Setup) -> Page:
    """One row of the table of pairs, its teeth already on the board."""
    grade, speed = setup.ask("climb_grade"), setup.ask("climb_speed")

    def spread() -> Any:
        found = by_kv(setup, lambda each: each.top())
        return found[1] if isinstance(found, tuple) else None

    return page(
        {
            "unloaded": lambda: setup.unloaded("nominal"),
            "loaded": lambda: setup.top(),
            "spread": spread,
            "push": lambda: setup.push(0.0),
            "climb": lambda: setup.climb(0.0),
            "heat": lambda: setup.steady(speed, grade) ** 2 * setup["motor.resistance"],
            "stop": lambda: stop_from_top(setup),
            "limit": lambda: setup.limits(setup.top())[1],
            "belt_load": lambda: setup.belt_load,
            "electrical": lambda: setup.electrical,
            "erpm_margin": lambda: 1.0 - setup.electrical / setup["controller.erpm_limit"],
        }
    )


def whole_teeth(setup: Setup, centre: float) -> int:
    """Whole teeth in mesh on the small pulley, by the handbook's approximate wrap."""
    small, large = sorted((setup.pulley("motor"), setup.pulley("wheel")))
    teeth = min(setup["drive.motor_teeth"], setup["drive.wheel_teeth"])
    return floor(teeth * (0.5 - (large - small) / (6.0 * centre)))


def largest_wheel(setup: Setup) -> int:
    """Most teeth of a wheel pulley that clears the ground with its flange."""
    room = setup["drive.wheel_diameter"] / 2.0
    room -= sum(row("pair_rules", name=name)["length"] for name in ("ground clearance", "flange")) / 1000.0
    pitch, above = setup.profile["pitch"] / 1000.0, setup.profile["differential"] * INCH
    teeth = 0
    while pitch * (teeth + 1) / (2.0 * pi) - above <= room:
        teeth += 1
    return teeth
