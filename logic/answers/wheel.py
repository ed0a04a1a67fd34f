"""Wheel wear and size: what the wheel measures today, and what that does to speed, push and clearance."""

from collections.abc import Mapping
from dataclasses import replace
from functools import cached_property

from logic.answers.asked import Asked, Asking
from logic.answers.parts import Parts, standstill
from logic.answers.reading import Item, Reading
from logic.answers.run import Figures, Run, answer
from logic.belt.clearance import ground_clearance
from logic.board import Board, Value
from logic.drive.gearing import rolling_circumference, unloaded_speed
from logic.drive.push import push_curve
from logic.drive.wheel import diameter_of, share_of_change
from logic.si import Metre
from logic.tables import pick
from logic.workings import cited


@cited(
    "pitch_diameter / 2 - differential + flange",
    source="derived tips of the teeth and the flange over them",
    standing="estimate",
)
def pulley_radius(*, pitch_diameter: Metre, differential: Metre, flange: Metre) -> Metre:
    """Return the radius of a pulley with its flange or its belt's back.

    >>> round(pulley_radius(pitch_diameter=0.06366, differential=0.00057, flange=0.0025), 4)
    0.0338
    """
    return pitch_diameter / 2.0 - differential + flange


class WheelParts(Parts):
    """The parts of a board that its wheel bears on, with what was measured."""

    def __init__(self, reading: Reading, asked: Asked) -> None:
        """Take the board from a reading and the question beside it."""
        super().__init__(reading)
        self.asked = asked

    @cached_property
    def rolled(self) -> float:
        """Circumference by the marks on the ground."""
        return self.asked("ask.roll_way") / self.asked("ask.roll_turns")

    @cached_property
    def today(self) -> float:
        """Diameter today: measured across, else from the roll-out, else the board's."""
        if self.asked.value("ask.wheel_measured") is not None:
            return self.asked("ask.wheel_measured")
        if self.asked.value("ask.roll_way") is not None:
            return diameter_of(circumference=self.rolled)
        return self.wheel_diameter

    @cached_property
    def other(self) -> float:
        """Diameter to compare with: the one asked, else the new one, else the board's."""
        if self.asked.value("ask.wheel_other") is not None:
            return self.asked("ask.wheel_other")
        if self.read.board.drive.wheel_diameter_new is not None:
            return self.read("drive.wheel_diameter_new")
        return self.wheel_diameter

    def top(self, diameter: float) -> float:
        """Return the unloaded speed on a wheel, nominal pack."""
        return unloaded_speed(
            voltage=self.voltage("nominal"),
            duty=self.duty,
            speed_constant=self.speed_constant,
            circumference=rolling_circumference(wheel_diameter=diameter),
            ratio=self.ratio,
        )

    def clearance(self, diameter: float) -> float:
        """Return the gap between the wheel pulley and the ground on a wheel."""
        radius = pulley_radius(
            pitch_diameter=self.wheel_pulley,
            differential=self.differential,
            flange=pick("pair_rules", name="flange").number("length"),
        )
        return ground_clearance(wheel_diameter=diameter, radius=radius)


def _push(parts: WheelParts, diameter: float) -> float:
    drive = replace(parts.nominal, wheel_diameter=diameter)
    return push_curve(drive)(standstill())


RESULTS: Figures[WheelParts] = {
    "today": ("length", lambda parts: parts.today),
    "circumference_today": ("length", lambda parts: rolling_circumference(wheel_diameter=parts.today)),
    "rolled": ("length", lambda parts: parts.rolled),
    "change": ("share", lambda parts: share_of_change(diameter=parts.today, other=parts.other)),
    "push_change": ("share", lambda parts: share_of_change(diameter=parts.other, other=parts.today)),
    "top": ("speed", lambda parts: parts.top(parts.today)),
    "top_other": ("speed", lambda parts: parts.top(parts.other)),
    "push_today": ("force", lambda parts: _push(parts, parts.today)),
    "push_other": ("force", lambda parts: _push(parts, parts.other)),
    "clearance": ("length", lambda parts: parts.clearance(parts.today)),
    "clearance_other": ("length", lambda parts: parts.clearance(parts.other)),
}
"""Quantity and computation of each result."""


@answer()
def wheel(board: Board, rider: Value | None, asking: Asking) -> Mapping[str, Item]:
    """Return what the wheel measures and what it does against another diameter."""
    asked = Asked(asking)
    shown = {name: of for name, of in RESULTS.items() if name != "rolled" or asked.value("ask.roll_way")}
    return Run(lambda: WheelParts(Reading(board, rider), asked)).when_read(shown)


def measured(asking: Asking) -> bool:
    """Tell whether a wheel was measured, across or by rolling."""
    asked = Asked(asking)
    return any(asked.value(key) is not None for key in ("ask.wheel_measured", "ask.roll_way"))
