"""Does it fit: pulley and motor over the ground and under the deck, two motors on one hanger."""

from functools import cached_property

from logic.answers.belt_parts import BeltParts
from logic.answers.parts import chosen
from logic.answers.reading import Item, Reading, Result
from logic.answers.run import Figures, Run, answer
from logic.belt.clearance import (
    belt_back_radius,
    can_deck_clearance,
    can_ground_clearance,
    gap_between_motors,
    ground_clearance,
    hanger_clearance,
    worn_wheel,
)
from logic.belt.geometry import outside_diameter, pitch_diameter
from logic.board import Board
from logic.frozen import frozen
from logic.si import Metre
from logic.tables import pick
from logic.workings import cited


@cited("thickness / 2", source="derived half of it on each side", standing="derived")
def half_thickness(*, thickness: Metre) -> Metre:
    """Half of a hanger's thickness.

    >>> half_thickness(thickness=0.022)
    0.011
    """
    return thickness / 2


class ClearanceParts(BeltParts):
    """The parts of a board that clearances rest on."""

    def __init__(self, reading: Reading, worn: float) -> None:
        """Take the board from a reading, and what the wheel may lose in diameter."""
        super().__init__(reading)
        self._worn = worn

    @cached_property
    def belt_back(self) -> Metre:
        """Radius of the belt's back on the wheel pulley; flanges stand higher."""
        profile = self.read.choice("drive.profile")
        kind, section = pick("belt_profiles", profile=profile), pick("belt_sections", profile=profile)
        outside = outside_diameter(
            pitch_diameter=pitch_diameter(pitch=kind.number("pitch"), teeth=self.wheel_teeth),
            differential=kind.number("differential"),
        )
        return belt_back_radius(
            outside_diameter=outside,
            back=section.number("height") - section.number("tooth"),
        )

    @cached_property
    def worn_wheel(self) -> Metre:
        """Wheel after the wear asked about."""
        return worn_wheel(
            wheel_diameter=self.wheel_diameter, worn=chosen("Wear of the wheel", self._worn, "m", "length")
        )

    @cached_property
    def can(self) -> Metre:
        """Diameter of the motor's can."""
        return self.read("mount.can_diameter")

    @cached_property
    def angle(self) -> float:
        """Tilt of the mount above the horizontal."""
        return self.read("mount.angle")

    def can_to_ground(self, wheel: Metre) -> Metre:
        """Return the gap under the can for a wheel."""
        return can_ground_clearance(
            wheel_diameter=wheel, centre=self.centre, angle=self.angle, can_diameter=self.can
        )


def _gap(parts: ClearanceParts) -> float:
    return gap_between_motors(
        hanger_length=parts.read("mount.hanger_length"),
        inset=parts.read("mount.inset"),
        plate=parts.read("mount.plate"),
        can_length=parts.read("mount.can_length"),
    )


def _hanger(parts: ClearanceParts) -> float:
    return hanger_clearance(
        centre=parts.centre,
        can_diameter=parts.can,
        hanger_radius=half_thickness(thickness=parts.read("mount.hanger_width")),
    )


def _can_deck(parts: ClearanceParts) -> float:
    return can_deck_clearance(
        deck_height=parts.read("mount.deck_height"),
        centre=parts.centre,
        angle=parts.angle,
        can_diameter=parts.can,
    )


def _pulley_deck(parts: ClearanceParts) -> float:
    return parts.read("mount.deck_height") - parts.belt_back


FIT: Figures[ClearanceParts] = {
    "pulley_ground": (
        "length",
        lambda parts: ground_clearance(wheel_diameter=parts.wheel_diameter, radius=parts.belt_back),
    ),
    "pulley_ground_worn": (
        "length",
        lambda parts: ground_clearance(wheel_diameter=parts.worn_wheel, radius=parts.belt_back),
    ),
    "can_ground": ("length", lambda parts: parts.can_to_ground(parts.wheel_diameter)),
    "can_ground_worn": ("length", lambda parts: parts.can_to_ground(parts.worn_wheel)),
    "pulley_deck": ("length", _pulley_deck),
    "can_deck": ("length", _can_deck),
    "can_hanger": ("length", _hanger),
    "motors_gap": ("length", _gap),
}
"""Quantity and computation of each clearance."""

ONLY_TWO = ("motors_gap",)
"""Clearances that have a meaning with two motors only."""


@frozen
class BeltFit:
    """Clearances by name; `tight` names those below zero, the first of which is the answer."""

    items: dict[str, Item]
    tight: tuple[str, ...]
    narrowest: str


@answer(worn=0.005)
def belt_fit(board: Board, worn: Metre) -> BeltFit:
    """Return every clearance of a board; `worn` in m is what the wheel may lose of its diameter."""
    shown = FIT if len(board.sides) > 1 else {name: of for name, of in FIT.items() if name not in ONLY_TWO}
    items = Run(lambda: ClearanceParts(Reading(board), worn)).figures(shown)
    given = {name: item.value for name, item in items.items() if isinstance(item, Result)}
    return BeltFit(
        items,
        tuple(name for name, value in given.items() if value <= 0.0),
        min(given, key=lambda name: given[name], default=""),
    )


@answer(worn=0.005)
def narrowest_gap(board: Board, worn: Metre) -> Result | None:
    """Return the narrowest of the gaps that can be told, None when there is none."""
    fit = belt_fit(board, worn)
    item = fit.items.get(fit.narrowest)
    return item if isinstance(item, Result) else None
