"""Which belt, does it fit, how does it age, a second time."""

from collections.abc import Sequence
from functools import cached_property, partial
from math import inf, pi, sin, sqrt
from typing import Any

from scipy.interpolate import make_interp_spline
from scipy.optimize import brentq, curve_fit, minimize_scalar

from tests.second.belt import INCH, MM, POUND, RPM, Answer, Belt, Impossible, Numbers, all_told, lines, told
from tests.second.pack import row, table


class Choice(Belt):
    """A belt with the road it drives on."""

    @cached_property
    def ratio(self) -> float:
        return self["drive.wheel_teeth"] / self["drive.motor_teeth"]

    @cached_property
    def steady(self) -> tuple[float, float]:
        """Loaded top speed and the load there, by search."""
        volts = row("chemistry", name=self.text("pack.chemistry"))["nominal_low"] * self["pack.series"]
        motors, ohms, kv = float(self.text("drive.motors")), self["motor.resistance"], self["motor.kv"]
        weak = self["pack.cell_resistance"] * self["pack.series"] / self["pack.parallel"] / self["pack.packs"]
        most, drag, duty = (
            self.amps("controller.motor_current"),
            self["motor.no_load_current"],
            self["controller.duty"],
        )
        drawn = min(self["controller.battery_current"], volts / (2.0 * weak))
        per_ampere = motors / kv * self.ratio * self["load.efficiency"] / (self["drive.wheel_diameter"] / 2.0)
        if self.rider is None:
            self.gap("rider.mass")
        weight = (self["load.board_mass"] + float(self.rider or 0.0)) * 9.80665
        area, rolling = self["load.drag_area"], self["load.rolling"]
        turn = self.ratio / (self["drive.wheel_diameter"] / 2.0)

        def by_duty(emf: float) -> float:
            def less(share: float) -> float:
                return -(share * volts - emf) / (ohms + motors * weak * share**2)

            lowest = minimize_scalar(less, bounds=(0.0, duty), method="bounded", options={"xatol": 1e-12})
            return max(-lowest.fun, -less(duty))

        def push(speed: float) -> float:
            emf = speed * turn / kv
            power = drawn * (volts - drawn * weak) / motors
            battery = brentq(lambda amps: amps * (emf + amps * ohms) - power, 0.0, 1e6)
            return per_ampere * (max(0.0, min(most, battery, by_duty(emf))) - drag)

        def load(speed: float) -> float:
            return weight * rolling + 1.225 / 2.0 * area * speed**2

        top = volts * duty * kv / turn
        if push(0.0) <= load(0.0) or push(top) > load(top):
            raise Impossible
        speed = brentq(lambda speed: push(speed) - load(speed), 0.0, top, xtol=1e-10)
        return float(speed), load(speed)

    @cached_property
    def angular_speed(self) -> float:
        """Of the motor at the loaded top speed, unloaded where that is not known."""
        found = told(lambda: self.steady[0] / (self["drive.wheel_diameter"] / 2.0) * self.ratio)
        return self.unloaded if isinstance(found, str) else found

    def printed_torque(self, angular_speed: float) -> float:
        """Of the small pulley: its teeth, its rotation."""
        profile = self.text("drive.profile")
        printed = lines("belt_ratings", profile=profile)
        counts = [each["teeth"] for each in printed if each["teeth"] <= self.small_teeth]
        if not counts:
            raise Impossible
        line = sorted(
            (each for each in printed if each["teeth"] == max(counts)), key=lambda each: each["angular_speed"]
        )
        speeds = [each["angular_speed"] * RPM for each in line]
        torques = [each["torque"] if "torque" in each else each["gt_torque"] * POUND * INCH for each in line]
        if angular_speed > speeds[-1]:
            raise Impossible
        return float(make_interp_spline(speeds, torques, k=1)(max(angular_speed, speeds[0])))

    def last(self, name: str, column: str, value: float) -> float:
        """Factor of the last row that a value in mm reaches."""
        reached = [
            each["factor"]
            for each in lines(name, profile=self.text("drive.profile"))
            if each[column] <= value + 1e-6
        ]
        if not reached:
            raise Impossible
        return float(reached[-1])

    def rated(self, angular_speed: float) -> float:
        """Rated torque at the motor; its pulley may be the larger one, then the small one turns faster with less."""
        faster = self["drive.motor_teeth"] / self.small_teeth
        _ = self.width_row  # a width that no table reaches has no rating
        return (
            self.printed_torque(angular_speed * faster)
            * faster
            * self.last("belt_width_factors", "width", self.width)
            * self.last("belt_length_factors", "from", self.length / MM)
            * self.mesh_factor
        )

    def by_length(self, name: str, column: str, length: float) -> float:
        for each in table(name):
            if length / MM <= each["up_to"] + 1e-6:
                return float(each[column]) * MM
        raise Impossible

    def lay_on(self, length: float, flanged: str) -> float:
        added = row("belt_flange_travel", pitch=round(self.pitch / MM), flanged=flanged)["added"]
        return self.by_length("belt_travel", "inward", length) + float(added) * MM

    @cached_property
    def smallest(self) -> float:
        faster = self["drive.motor_teeth"] / self.small_teeth
        printed = lines("belt_smallest", profile=self.text("drive.profile"))
        reached = (each for each in printed if self.angular_speed * faster <= each["angular_speed"] * RPM)
        return float(next(reached, printed[-1])["teeth"])


def choice(belt: Choice) -> Numbers:
    def needed() -> float:
        """Power of the road load, of each motor, over its rotation."""
        speed, load = belt.steady
        angular_speed = speed / (belt["drive.wheel_diameter"] / 2.0) * belt.ratio
        return load * speed / belt["load.efficiency"] / float(belt.text("drive.motors")) / angular_speed

    def inwards() -> float:
        return belt.lay_on(belt.length, belt.text("mount.flanged", "none"))

    def outwards() -> float:
        return belt.by_length("belt_travel", "outward", belt.length)

    def tolerance() -> float:
        return belt.by_length("belt_tolerance", "centre", belt.length)

    start = 200.0 * RPM
    return all_told(
        {
            "centre": lambda: belt.own_centre,
            "span": lambda: belt.span,
            "wrap": lambda: belt.wrap,
            "teeth_in_mesh": lambda: belt.mesh,
            "mesh_factor": lambda: belt.mesh_factor,
            "lay_on": inwards,
            "take_up": outwards,
            "tolerance": tolerance,
            "slot_inner": lambda: belt.own_centre - inwards(),
            "slot_outer": lambda: belt.own_centre + tolerance() + outwards(),
            "belt_speed": lambda: belt.angular_speed / (2.0 * pi) * belt.pitch * belt["drive.motor_teeth"],
            "angular_speed_loaded": lambda: belt.angular_speed,
            "rated_start": lambda: belt.rated(start),
            "peak_torque": lambda: belt.torque,
            "used_start": lambda: belt.torque / belt.rated(start),
            "rated_top": lambda: belt.rated(belt.angular_speed),
            "steady_torque": needed,
            "used_top": lambda: needed() / belt.rated(belt.angular_speed),
            "smallest": lambda: belt.smallest,
        }
    )


def wanted_centre(belt: Choice) -> Answer:
    if belt.has("mount.centre_least") and belt.has("mount.centre_most"):
        return (belt["mount.centre_least"] + belt["mount.centre_most"]) / 2.0
    return told(lambda: belt.centre)


def in_stock(belt: Choice, wanted: float) -> list[tuple[int, float, str]]:
    """Teeth, centre and what the mount lacks, of the six belts in stock nearest to a centre."""
    pitch = float(row("belt_profiles", profile=belt.text("drive.profile"))["pitch"]) * MM
    _ = belt.pulleys
    found = []
    for teeth in {
        round(each["length"] * MM / pitch)
        for each in lines("belt_lengths", profile=belt.text("drive.profile"))
    }:
        centre = told(partial(belt.centre_for, teeth * pitch))
        if not isinstance(centre, str):
            found.append((teeth, centre))
    near = sorted(found, key=lambda each: abs(each[1] - wanted))[:6]
    return [(teeth, centre, lacking(belt, teeth * pitch, centre)) for teeth, centre in sorted(near)]


def lacking(belt: Choice, length: float, centre: float) -> str:
    try:
        give = belt.by_length("belt_tolerance", "centre", length)
        out = belt.by_length("belt_travel", "outward", length)
        bare, over = (
            belt.lay_on(length, flanged) for flanged in ("none", belt.text("mount.flanged", "none"))
        )
    except Impossible:
        return ""
    least = belt["mount.centre_least"] if belt.has("mount.centre_least") else 0.0
    most = belt["mount.centre_most"] if belt.has("mount.centre_most") else inf
    if centre - give - bare < least:
        return "in"
    if centre + give + out > most:
        return "out"
    return "laying on" if centre - over < least else ""


def fit(belt: Belt, worn: float) -> Numbers:
    """Heights over the ground and under the deck; the motor stands at the mount's angle from the axle."""

    def back() -> float:
        profile = belt.text("drive.profile")
        kind, section = row("belt_profiles", profile=profile), row("belt_sections", profile=profile)
        pitch_circle = kind["pitch"] * MM * belt["drive.wheel_teeth"] / (2.0 * pi)
        return float(pitch_circle - kind["differential"] * INCH + (section["height"] - section["tooth"]) * MM)

    def axle(less: float) -> float:
        if belt["drive.wheel_diameter"] <= less:
            raise Impossible
        return (belt["drive.wheel_diameter"] - less) / 2.0

    def motor_height() -> float:
        """Over the axle."""
        return belt.centre * sin(belt["mount.angle"])

    def radius() -> float:
        return belt["mount.can_diameter"] / 2.0

    def gap() -> float:
        each = belt["mount.inset"] + belt["mount.plate"] + belt["mount.can_length"]
        return belt["mount.hanger_length"] - each - each

    told_all = all_told(
        {
            "pulley_ground": lambda: axle(0.0) - back(),
            "pulley_ground_worn": lambda: axle(worn) - back(),
            "can_ground": lambda: axle(0.0) + motor_height() - radius(),
            "can_ground_worn": lambda: axle(worn) + motor_height() - radius(),
            "pulley_deck": lambda: belt["mount.deck_height"] - back(),
            "can_deck": lambda: belt["mount.deck_height"] - motor_height() - radius(),
            "can_hanger": lambda: belt.centre - radius() - belt["mount.hanger_width"] / 2.0,
            "motors_gap": gap,
        }
    )
    if not belt.has("drive.motors") or belt.text("drive.motors") != "2":
        del told_all["motors_gap"]
    return told_all


def history(belt: Belt, points: Sequence[tuple[float, float, float]]) -> dict[str, Any]:
    """Way, tension and error of each reading: the line through them, and what it means."""
    numbers: dict[str, Any] = {"falls": False, "now": None}
    if len(points) >= 3 and len({way for way, _, _ in points}) > 1:
        run, tensions, errors = zip(*points, strict=True)
        last = max(run)
        # In units of the whole way, so that both unknowns have one size.
        found, spread = curve_fit(
            lambda share, now, fall: now - fall * share,
            [(way - last) / last for way in run],
            tensions,
            sigma=errors,
            absolute_sigma=True,
        )
        numbers |= {"now": float(found[0]), "fall": float(found[1]) / last}
        numbers["fall_error"] = sqrt(float(spread[1][1])) / last
        numbers["falls"] = numbers["fall"] > numbers["fall_error"]
    numbers["stretch"] = numbers["left"] = "nothing"
    if len(points) > 1:
        lost = points[0][1] - points[-1][1]
        numbers["stretch"] = told(lambda: lost / belt.stiffness * belt.length)
    if numbers["falls"]:
        numbers["left"] = told(lambda: (numbers["now"] - belt.edges[0]) / numbers["fall"])
    return numbers
