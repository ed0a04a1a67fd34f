"""Stopping and descents: how far a stop goes, what the tyre and the pack allow, and what holds the brake down."""

from collections.abc import Mapping
from dataclasses import field, replace
from functools import cached_property, partial
from itertools import accumulate, pairwise

from logic.answers.asked import Asked, Asking
from logic.answers.braking import WEAKEST_AT, BrakeParts, axle_grip, brake_of
from logic.answers.reading import Item, Reading
from logic.answers.run import Figures, Points, Run, answer
from logic.board import Board, Value, faults
from logic.drive.brake import (
    Brake,
    Ruler,
    brake_curve,
    braking_power,
    current_curve,
    current_taken_back,
)
from logic.drive.gearing import motor_angular_speed
from logic.drive.motor import back_emf
from logic.drive.performance import steepest_grade
from logic.drive.push import Drivetrain
from logic.drive.quick import quick_brake, quick_load, quick_ruler
from logic.drive.road import Road, air_drag_at
from logic.drive.stopping import (
    deceleration_at,
    distance_of_stop,
    held_back,
    reaction_distance,
    stop_distance,
    way_between,
)
from logic.errors import InputError
from logic.frozen import frozen
from logic.pack.limits import braking_voltage, cells_limit, current_to_full, may_cut_out
from logic.tables import pick

SURFACES = ("dry", "wet", "loose")
REACTIONS = ("design", "alert")

STRETCHES = 120
"""Speeds between standstill and the asked one at which what rules is looked up."""


class StopParts(BrakeParts):
    """The parts of a board that a stop rests on, with what was asked."""

    @cached_property
    def speed(self) -> float:
        """Speed at which there is a reason to stop."""
        return self.asked("ask.stop_speed")

    @cached_property
    def slope_road(self) -> Road:
        """The road with the slope under it."""
        return replace(self.road, grade=self.asked("ask.stop_grade"))

    def volts(self, charge: str) -> float:
        """Return the volts of the pack before the stop: those asked, or of the charge that is worst for a figure."""
        if self.asked.value("ask.rest_voltage") is None:
            return self.voltage(charge)
        return self.asked("ask.rest_voltage")

    @cached_property
    def fullest(self) -> float:
        """Volts at which the brake may cut out: those asked, or full."""
        return self.volts("full")

    @cached_property
    def braking_drive(self) -> Drivetrain:
        """The drive at the volts that were asked, or at the charge at which the way is longest."""
        return replace(self.drive(WEAKEST_AT), open_circuit_voltage=self.volts(WEAKEST_AT))

    @cached_property
    def cells_limit(self) -> float:
        """Current into the pack that the cells allow for long."""
        return cells_limit(
            cell_limit=self.read("pack.cell_charge_current"),
            parallel=self.read("pack.parallel"),
            packs=self.read("pack.packs"),
        )

    def brake(self, surface: str) -> Brake:
        """Return the brake on a surface and the slope under it."""
        return brake_of(self, self.asked, surface=surface, road=self.slope_road, drive=self.braking_drive)

    @cached_property
    def _ways(self) -> dict[str, float]:
        return {}

    def braking_way(self, surface: str) -> float:
        """Return the way from the asked speed, once it brakes: the same however fast one reacts."""
        if surface not in self._ways:
            self._ways[surface] = distance_of_stop(self.brake(surface), self.slope_road, self.speed)
        return self._ways[surface]


@frozen
class Stretch:
    """Speeds over which one thing holds the brake down."""

    low: float
    high: float
    ruler: Ruler


@frozen
class Stopping:
    """Results by name, what does not fit together, and what is told beside them when it is read."""

    items: Mapping[str, Item]
    faults: tuple[InputError, ...]
    run: Run[StopParts] = field(compare=False, repr=False)

    @cached_property
    def stretches(self) -> tuple[Stretch, ...]:
        """Return what rules where on a dry road, from standstill up."""
        return self.run.view(_stretches, ())

    @cached_property
    def cuts_out(self) -> bool:
        """Tell whether the pack may cut the brake out at once."""
        return self.run.view(_cuts_out, otherwise=False)

    @cached_property
    def curves(self) -> dict[str, Points]:
        """Return the whole way of a stop over speed on each surface, with the design reaction.

        Empty while something is missing; a surface on which it does not stop is left out.
        """
        curves = {surface: self.run.view(partial(_stop_curve, surface), ()) for surface in SURFACES}
        return {surface: points for surface, points in curves.items() if points}


@answer()
def stopping(board: Board, rider: Value | None, asking: Asking) -> Stopping:
    """Return everything the stopping screen shows. What cannot be given says what stands in its way."""
    run = Run(lambda: StopParts(Reading(board, rider), Asked(asking)))
    return Stopping(run.when_read({**STOPS, **RESULTS}), faults(board), run)


@answer()
def stop_alone(board: Board, rider: Value | None, asking: Asking) -> Item:
    """Return the dry stop with the design reaction alone: what the list of numbers shows."""
    run = Run(lambda: StopParts(Reading(board, rider), Asked(asking)))
    return run.figure("stop_dry_design", *STOPS["stop_dry_design"])


def _stop(parts: StopParts, surface: str, reaction: str) -> float:
    return stop_distance(
        reaction=reaction_distance(
            speed=parts.speed, reaction_time=pick("reaction", name=reaction).number("time")
        ),
        braking=parts.braking_way(surface),
    )


STOPS: Figures[StopParts] = {
    f"stop_{surface}_{reaction}": ("way", partial(_stop, surface=surface, reaction=reaction))
    for surface in SURFACES
    for reaction in REACTIONS
}
"""Quantity and computation of the whole way of each stop."""


def _into_pack(parts: StopParts) -> float:
    brake, drive = parts.brake("dry"), parts.braking_drive
    emf = back_emf(
        angular_speed=motor_angular_speed(
            speed=parts.speed, circumference=parts.circumference, ratio=parts.ratio
        ),
        speed_constant=parts.speed_constant,
    )
    power = braking_power(
        motors=drive.motors,
        current=current_curve(brake)(parts.speed),
        back_emf=emf,
        winding_resistance=drive.winding_resistance,
    )
    return current_taken_back(
        power=power,
        open_circuit_voltage=drive.open_circuit_voltage,
        pack_resistance=drive.pack_resistance,
    )


def _held_descent(parts: StopParts) -> float:
    road = parts.road
    return steepest_grade(
        tractive_force=held_back(force=brake_curve(parts.brake("dry"))(parts.speed)),
        air_drag=air_drag_at(road, parts.speed),
        mass=road.mass,
        gravity=road.gravity,
        rolling_coefficient=road.rolling_coefficient,
    )


def _plug_voltage(parts: StopParts) -> float:
    return braking_voltage(
        rest_voltage=parts.fullest, current=parts.set_current, resistance=parts.pack_resistance
    )


def _room(parts: StopParts) -> float:
    return current_to_full(
        full_voltage=parts.voltage("full"), rest_voltage=parts.fullest, resistance=parts.pack_resistance
    )


RESULTS: Figures[StopParts] = {
    "deceleration": (
        "acceleration",
        lambda parts: deceleration_at(parts.brake("dry"), parts.slope_road, parts.speed),
    ),
    **{
        f"grip_{surface}": (
            "acceleration",
            partial(
                lambda surface, parts: (
                    axle_grip(parts.asked, surface, parts.slope_road, braking=True) / parts.slope_road.mass
                ),
                surface,
            ),
        )
        for surface in SURFACES
    },
    "held_descent": ("share", _held_descent),
    "into_pack": ("current", _into_pack),
    "slows_as_set": ("acceleration", lambda parts: parts.slows(parts.set_current)),
    "stop_as_set": ("way", lambda parts: parts.stops(parts.set_current)),
    "cells_limit": ("current", lambda parts: parts.cells_limit),
    "slows_within_cells": ("acceleration", lambda parts: parts.slows(parts.cells_limit)),
    "stop_within_cells": ("way", lambda parts: parts.stops(parts.cells_limit)),
    "plug_voltage": ("voltage", _plug_voltage),
    "room": ("current", _room),
}
"""Quantity and computation of each result after the stops."""


def _stretches(parts: StopParts) -> tuple[Stretch, ...]:
    ruler, top = quick_ruler(parts.brake("dry")), parts.speed
    found: list[Stretch] = []
    for step in range(STRETCHES):
        low, high = top * step / STRETCHES, top * (step + 1) / STRETCHES
        what = ruler(0.5 * (low + high))
        if found and found[-1].ruler == what:
            found[-1] = replace(found[-1], high=high)
        else:
            found.append(Stretch(low, high, what))
    return tuple(found)


def _cuts_out(parts: StopParts) -> bool:
    return may_cut_out(
        rest_voltage=parts.fullest,
        current=parts.set_current,
        resistance=parts.pack_resistance,
        full_voltage=parts.voltage("full"),
    )


CURVE_POINTS = 14
"""Points of each curve of the chart."""


def _stop_curve(surface: str, parts: StopParts) -> Points:
    brake, road = quick_brake(parts.brake(surface)), quick_load(parts.slope_road)
    time, mass = pick("reaction", name="design").number("time"), parts.slope_road.mass
    speeds = [1.3 * parts.speed * step / CURVE_POINTS for step in range(CURVE_POINTS + 1)]
    # A stop from one speed goes on as the stop from the speed below it.
    ways = accumulate(way_between(brake, road, mass, span, parts=2) for span in pairwise(speeds))
    return tuple((speed, speed * time + way) for speed, way in zip(speeds[1:], ways, strict=True))
