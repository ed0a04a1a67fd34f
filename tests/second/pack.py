"""The answers about packs, worked out a second time: plain sums, integrals in place of closed forms, roots by search.

Nothing is taken from logic but the board's values. Printed tables are read as data, in their printed units.
A function returns numbers by the name of the answer's result, in SI, a pair where it is a band; a name is left out where
a value is missing.
"""

import tomllib
from collections.abc import Callable, Mapping
from functools import cache
from math import atan, cos, inf, log, pi, sin, sqrt, tan
from pathlib import Path
from typing import Any

from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from logic.board import Board

TABLES = Path(__file__).parents[2] / "assets" / "tables"
HOUR = 3600.0
ICE = 273.15
GRAVITY = 9.80665
AIR = 1.225

Numbers = dict[str, Any]
Asked = Mapping[str, float | str]


@cache
def table(name: str) -> list[dict[str, Any]]:
    return tomllib.loads((TABLES / f"{name}.toml").read_text())["row"]


@cache
def row(table_name: str, /, **cells: object) -> dict[str, Any]:
    (found,) = [
        each for each in table(table_name) if all(each.get(key) == cell for key, cell in cells.items())
    ]
    return found


class Pack:
    """The packs of a board with their usual sums; a missing value raises KeyError."""

    def __init__(self, board: Board) -> None:
        self.board = board
        self.series = self["pack.series"]
        self.wide = self["pack.parallel"]
        self.count = self["pack.packs"]
        kind = row("chemistry", name=self.text("pack.chemistry"))
        self.volts = {"nominal": kind["nominal_low"], "full": kind["full"], "empty": kind["empty"]}

    def __getitem__(self, key: str) -> float:
        value = self.board.value(key)
        if value is None:
            raise KeyError(key)
        return float(value.si)

    def text(self, key: str, otherwise: str = "") -> str:
        value = self.board.value(key)
        return otherwise if value is None else str(value.si)

    def has(self, key: str) -> bool:
        return self.board.value(key) is not None

    def at(self, charge: str) -> float:
        """Volts of a string at rest."""
        return sum([self.volts[charge]] * int(self.series))

    def ohms(self, cell: float, packs: float) -> float:
        """Each string is `series` cells in a row; strings conduct side by side."""
        return 1.0 / (self.wide * packs / (self.series * cell))

    @property
    def least_ohms_of_a_cell(self) -> float:
        value = self.board.value("pack.cell_resistance")
        if value is None:
            return min(each["resistance_low"] for each in table("cell_kinds")) / 1000.0
        share = (
            1.0
            if value.known == "measured"
            else row("pack_practice", name="resistance not measured")["share"]
        )
        return float(value.si) * share

    def least(self, way: str) -> float:
        """Least of the limits in the path of the current, whole board."""
        cell, bms, controller = {
            "drive": ("cell_discharge_current", "bms_discharge_current", "battery_current"),
            "brake": ("cell_charge_current", "bms_charge_current", "regen_current"),
            "burst": ("cell_brake_current", "bms_charge_current", "regen_current"),
        }[way]
        found = [
            self[key] * factor
            for key, factor in (
                (f"pack.{cell}", self.wide * self.count),
                (f"pack.{bms}", self.count),
                ("pack.fuse", 1.0),
                ("pack.connector_current", 1.0),
                (f"controller.{controller}", 1.0),
            )
            if self.has(key) and self[key] > 0.0
        ]
        return min(found)


def known(results: Mapping[str, Callable[[], Any]]) -> Numbers:
    """Work out what can be; leave out what lacks a value."""
    numbers: Numbers = {}
    for name, compute in results.items():
        try:
            numbers[name] = compute()
        except KeyError:
            continue
    return numbers


def energy(board: Board, asked: Asked) -> Numbers:
    pack = Pack(board)
    cells = pack.series * pack.wide * pack.count

    def amps() -> float:
        return float(asked["ask.current"]) if "ask.current" in asked else pack["controller.battery_current"]

    def ohms() -> float:
        return pack.ohms(pack["pack.cell_resistance"], pack.count)

    def of_a_cell() -> float:
        return pack.volts["nominal"] * pack["pack.cell_capacity"]

    return known(
        {
            "energy": lambda: cells * of_a_cell(),
            "energy_each": lambda: cells / pack.count * of_a_cell(),
            "full": lambda: pack.at("full"),
            "nominal": lambda: pack.at("nominal"),
            "empty": lambda: pack.at("empty"),
            "capacity": lambda: pack["pack.cell_capacity"] * pack.wide * pack.count,
            "resistance": ohms,
            "limit_drive": lambda: pack.least("drive"),
            "limit_brake": lambda: pack.least("brake"),
            "limit_burst": lambda: pack.least("burst"),
            "full_braking": lambda: pack.at("full") + pack["controller.regen_current"] * ohms(),
            "sag": lambda: amps() * ohms(),
            "loaded_voltage": lambda: pack.at("nominal") - amps() * ohms(),
            "pack_heat": lambda: amps() ** 2 * ohms(),
            "cell_current": lambda: amps() / (pack.wide * pack.count),
            "short": lambda: pack.at("full") / ohms(),
            "cells_mass": lambda: cells * pack["pack.cell_mass"],
            "packs_mass": lambda: (
                1.2 * cells * pack["pack.cell_mass"],
                1.4 * cells * pack["pack.cell_mass"],
            ),
        }
    )


def hours_of_charging(rate: float, tail: float, end: float, start: float, target: float) -> float:
    """Add up the time of each small charge: the current is the charger's until the cells take less.

    Rates are per hour, `tail` is in hours.
    """

    def current(charge: float) -> float:
        return min(rate, end + (1.0 - charge) / tail)

    bend = min(max(1.0 - tail * (rate - end), start), target)
    return sum(
        quad(lambda charge: 1.0 / current(charge), low, high)[0]
        for low, high in ((start, bend), (bend, target))
    )


def charging(board: Board, asked: Asked) -> Numbers:
    pack = Pack(board)
    packs = pack.count if asked["ask.charged"] == "joined" else 1.0
    start, target = float(asked["ask.charge"]), float(asked["ask.target"])

    def rate() -> float:
        return pack["pack.charger_current"] / (pack.wide * packs) / pack["pack.cell_capacity"] * HOUR

    def hours(name: str) -> float:
        line = row("charge_tail", name=name)
        return hours_of_charging(rate(), line["tail"], line["end"], start, target)

    def put_in() -> float:
        cells = pack.series * pack.wide * packs
        return (target - start) * cells * pack.volts["nominal"] * pack["pack.cell_capacity"]

    def most() -> float:
        half = row("cell_kinds", kind="energy")["usual_charge"] / HOUR
        each = (
            pack["pack.cell_charge_current"]
            if pack.has("pack.cell_charge_current")
            else half * pack["pack.cell_capacity"]
        )
        bms = pack["pack.bms_charge_current"] if pack.has("pack.bms_charge_current") else inf
        return packs * min(each * pack.wide, bms)

    def wall(end: str) -> float:
        left = 1.0
        for line in table("charge_losses"):
            left *= line[end]
        return put_in() / left

    return known(
        {
            "most": most,
            "cell_amps": lambda: pack["pack.charger_current"] / (pack.wide * packs),
            "rate": lambda: rate() / HOUR,
            "full": lambda: pack.at("full"),
            "missing": lambda: (target - start) * pack["pack.cell_capacity"] * pack.wide * packs,
            "refill": put_in,
            "heat": lambda: pack["pack.charger_current"] ** 2
            * pack.ohms(pack["pack.cell_resistance"], packs),
            "time": lambda: (HOUR * hours("usual"), (HOUR * hours("short"), HOUR * hours("long"))),
            "wall": lambda: (wall("high"), wall("low")),
        }
    )


def joining(board: Board, asked: Asked) -> Numbers:
    """Two packs in parallel, the second like the first but for what was asked."""
    first = Pack(board)
    changed = board
    for key, field in (
        ("ask.second_parallel", "pack.parallel"),
        ("ask.second_capacity", "pack.cell_capacity"),
        ("ask.second_resistance", "pack.cell_resistance"),
    ):
        if key in asked:
            value = changed.value(field)
            assert value is not None
            changed = changed.with_value(field, type(value)(float(asked[key]), "guess"))
    second = Pack(changed)
    leads = float(asked["ask.joining_leads"])
    apart = abs(float(asked["ask.first_volts"]) - float(asked["ask.second_volts"]))
    line = row("joining", name=first.text("pack.chemistry"))
    least = leads + sum(pack.ohms(pack.least_ohms_of_a_cell, 1.0) for pack in (first, second))
    usual = leads + sum(pack.ohms(pack["pack.cell_resistance"], 1.0) for pack in (first, second))
    # Coulombs for each volt of one pack; both in a row as the charge sees them.
    stores = [
        pack["pack.cell_capacity"] * pack.wide / (line["swing"] * pack.series) for pack in (first, second)
    ]
    store = 1.0 / sum(1.0 / each for each in stores)
    limit = min(pack["pack.cell_charge_current"] * pack.wide for pack in (first, second))
    # Heat: the power apart**2 / R dies away with twice the speed of the current; its integral.
    heat, _ = quad(lambda time: apart**2 / usual * 2.718281828459045 ** (-2.0 * time), 0.0, inf)
    return {
        "allowed": min(line["difference"] * first.series, limit * least),
        "apart": apart,
        "joining_current": apart / least,
        "joining_heat": apart**2 / least,
        "moved": apart * store,
        "heat_in_all": heat * usual * store,
        "settles": usual * store * log(1.0 / row("pack_practice", name="settled")["share"]),
        "charge_limit": limit,
        "loop": least,
        "capacity_joined": first["pack.cell_capacity"] * first.wide * first.count,
    }


def wiring(board: Board, asked: Asked) -> Numbers:
    pack = Pack(board)
    peak, area, length = (
        pack["controller.battery_current"],
        pack["pack.lead_area"] * 1e6,
        pack["pack.lead_length"],
    )
    share, cruise = float(asked["ask.peak_share"]), float(asked["ask.cruise"])
    riding = sqrt(share * peak * peak + (1.0 - share) * cruise * cruise)
    copper, strands = row("wire_constants", name="copper"), row("wire_constants", name="fine strands")
    warm = 1.0 + copper["coefficient"] * (float(asked["ask.wire_at"]) - ICE - copper["reference"])
    metre = copper["resistivity"] * warm / area
    most = metre * strands["excess"]
    loop = pack.ohms(pack["pack.cell_resistance"], pack.count) + 2.0 * metre * length
    short = pack.at("full") / loop
    skin = row("insulation", name=pack.text("pack.lead_insulation", "XLPE"))
    heat = row("wire_constants", name="copper short")
    ends = [skin[end] - heat["zero"] for end in ("steady", "short")]
    # The heat of a square millimetre, per kelvin, rises with 1 / its resistance: K^2 dT / (T + 234.5), added up.
    stands, _ = quad(lambda kelvin: (heat["constant"] / 1e6) ** 2 / kelvin, *ends)
    printed = next(line for line in table("wire_ampacity") if line["area"] <= area * 1.001)
    air = [printed[column] for column in ("chassis", "nec") if column in printed]
    half = row("wire_practice", name="closed deck")["value"]
    farads, ohms, full = pack["controller.capacitance"], float(asked["ask.precharge"]), pack.at("full")
    thick = sqrt(4.0 * area / pi)
    gauge = brentq(lambda number: 0.127 * 92.0 ** ((36.0 - number) / 39.0) - thick, -20.0, 60.0)
    return {
        "riding": riding,
        "closed_low": half * printed["ptfe"],
        "closed_high": half * max(air),
        "free_low": min(air),
        "free_high": max(air),
        "gauge": gauge,
        "per_length": most,
        "drop": peak * most * 2.0 * length,
        "wire_heat": riding**2 * most,
        "short_at_end": short,
        "stands_short": stands * (area / short) ** 2,
        "spark_energy": quad(lambda volts: farads * volts, 0.0, full)[0],
        "spark_current": full / loop,
        "precharge_time": 5.0 * ohms * farads,
        "precharge_current": full / ohms,
        "precharge_power": full**2 / ohms,
        "fuse": (max(peak, riding / row("wire_practice", name="fuse load")["value"]), half * printed["ptfe"]),
        "full": full,
        "empty": pack.at("empty"),
    }


def carrying(board: Board, asked: Asked, *, damaged: bool = False) -> Numbers:
    """The figures, and the outcome in words."""
    pack = Pack(board)
    labelled = pack.has("pack.marked_energy")
    marked = pack.text("pack.marked", "yes" if labelled else "not known")
    if labelled:
        each = pack["pack.marked_energy"]
    elif marked == "yes":
        return {}
    else:
        each = pack.volts["nominal"] * pack.series * pack["pack.cell_capacity"] * pack.wide
    joined = pack.count > 1 and asked["ask.carried"] == "joined"
    counted = (each * pack.count if joined else each) / HOUR
    loose = min(float(asked["ask.loose"]), pack.count)
    if damaged or marked != "yes" or pack.text("pack.tested") != "yes":
        outcome = "do not pack"
    elif counted > 160.0 * (1.0 + 1e-9) or (counted > 100.0 * (1.0 + 1e-9) and loose > 2):
        outcome = "not as baggage"
    else:
        outcome = "operator approval" if counted > 100.0 * (1.0 + 1e-9) else "allowed, ask the airline"
    return {"each": each, "all_joined": each * pack.count, "outcome": outcome}


def descent(board: Board, rider: float, asked: Asked) -> Numbers:
    pack = Pack(board)
    ohms = pack.ohms(pack["pack.cell_resistance"], pack.count)
    mass = pack["load.board_mass"] + rider
    back = row("descent", name="recovery")["value"]
    start = float(asked["ask.start_charge"])
    rest = (1.0 - start) * pack.at("empty") + start * pack.at("full")
    cells = pack.series * pack.wide * pack.count
    room = (1.0 - start) * cells * pack.volts["nominal"] * pack["pack.cell_capacity"]
    metre = mass * GRAVITY * back
    return {
        "drop_back": room / metre,
        "volts": rest + pack["controller.regen_current"] * ohms,
        "full": pack.at("full"),
        "to_full": max(pack.at("full") - rest, 0.0) / ohms,
        "room": room,
        "comes_back": metre * float(asked["ask.drop"]),
    }


def stand_in(pack: Pack, key: str, cell: str) -> float:
    return pack[key] if pack.has(key) else float(next(line[cell] for line in table("road") if cell in line))


def hold(board: Board, rider: float, asked: Asked) -> Numbers:
    """A motor on a climb: the balance of heat searched for, its warming stepped through in time."""
    pack = Pack(board)
    constant = 1.0 / pack["motor.kv"]
    radius = pack["drive.wheel_diameter"] / 2.0
    turns = pack["drive.wheel_teeth"] / pack["drive.motor_teeth"]
    gain = float(pack.text("drive.motors")) * turns * stand_in(pack, "load.efficiency", "efficiency") / radius
    weight = (pack["load.board_mass"] + rider) * GRAVITY
    rolling, drag_area = (
        stand_in(pack, key, cell)
        for key, cell in (("load.rolling", "rolling_coefficient"), ("load.drag_area", "drag_area"))
    )
    speed, idle, ohms = (
        float(asked["ask.hold_speed"]),
        pack["motor.no_load_current"],
        pack["motor.resistance"],
    )
    air, limit, begin = (float(asked[f"ask.{each}_temperature"]) for each in ("air", "limit", "start"))
    leaving = float(asked["ask.thermal_resistance"])
    copper = row("heating", name="copper")
    stuff = float(asked["ask.motor_mass"]) * row("heating", name="motor")["specific_heat"]

    def load(angle: float) -> float:
        return weight * (sin(angle) + rolling * cos(angle)) + AIR / 2.0 * drag_area * speed**2

    amps = load(atan(float(asked["ask.hold_grade"]))) / gain / constant + idle
    drag = constant * idle * speed / radius * turns

    def copper_heat(current: float, kelvin: float) -> float:
        return current**2 * ohms * (1.0 + copper["coefficient"] * (kelvin - ICE - copper["reference"]))

    def gained(kelvin: float) -> float:
        return copper_heat(amps, kelvin) + drag - (kelvin - air) / leaving

    numbers: Numbers = {
        "climb_current": amps,
        "climb_heat": amps**2 * ohms,
        "heat_hot": copper_heat(amps, limit),
        "drag": drag,
    }
    if gained(1e7) < 0.0:
        numbers["settled"] = brentq(gained, 1.0, 1e7, xtol=1e-9)

    def reached(_: float, kelvin: list[float]) -> float:
        return kelvin[0] - limit

    reached.terminal = True  # type: ignore[attr-defined]
    found = solve_ivp(
        lambda _, kelvin: [gained(kelvin[0]) / stuff],
        (0.0, 1e6),
        [begin],
        method="LSODA",
        events=reached,
        rtol=1e-9,
        atol=1e-7,
    )
    if found.t_events[0].size:
        numbers["hold_time"] = float(found.t_events[0][0])
    meaning = {"six-step": 1.0, "sine peak": sqrt(0.75), "sine rms": sqrt(1.5)}
    most = pack["controller.motor_current"] * meaning[pack.text("controller.current_meaning", "six-step")]

    def left(current: float) -> float:
        return (limit - air) / leaving - drag - copper_heat(current, limit)

    if left(0.0) > 0.0:
        held = min(brentq(left, 0.0, 1e5), most)
        push = constant * (held - idle) * gain
        steepest = pi / 2.0 - atan(rolling)
        numbers["held"] = held
        if load(-pi / 2.0 + 1e-6) < push < load(steepest):
            numbers["held_grade"] = tan(brentq(lambda angle: load(angle) - push, -pi / 2.0 + 1e-6, steepest))
    return numbers
