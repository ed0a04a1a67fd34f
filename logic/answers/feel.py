"""Parts that decide how a board rides: wheels, bushings, trucks, deck and riser."""

from functools import cached_property

from logic.answers.asked import Asked, Asking
from logic.answers.belt_fit import FIT, ClearanceParts
from logic.answers.parts import chosen
from logic.answers.reading import RIDER, Item, Open, Reading, Result
from logic.answers.run import Band, Figures, Run, answer
from logic.board import Board, Value
from logic.drive.road import standard
from logic.drive.steering import (
    bite_lean,
    biting_edge,
    deck_over_ground,
    fastest_in_turn,
    gap_at_lean,
    gap_over_wheel,
    push_over_edge,
    steer_angle,
    turn_radius,
    turning_circle,
)
from logic.drive.wheel import share_of_change
from logic.frozen import frozen
from logic.tables import Row, pick, rows

LARGER = 0.010
"""How much larger a wheel is compared with."""

PARTS = ("wheels", "bushings", "trucks", "deck")
"""Parts of which it is told what a change does, in order."""


class FeelParts(ClearanceParts):
    """The parts of a board that its ride rests on, with what is asked about them."""

    def __init__(self, reading: Reading, asked: Asked) -> None:
        """Take the board from a reading and the questions beside it."""
        super().__init__(reading, 0.0)
        self.asked = asked

    @cached_property
    def lean(self) -> float:
        """The lean that is asked about."""
        return self.asked("ask.lean")

    def steer(self, axle: str) -> float:
        """Return how far an axle steers at that lean."""
        return steer_angle(pivot=self.asked(f"ask.pivot_{axle}"), lean=self.lean)

    @cached_property
    def radius(self) -> float:
        """The circle at that lean."""
        return turn_radius(
            wheelbase=self.asked("ask.wheelbase"), front=self.steer("front"), rear=self.steer("rear")
        )

    @cached_property
    def height(self) -> dict[str, float]:
        """What the deck stands on."""
        return {
            "deck_height": self.read("mount.deck_height"),
            "riser": self.asked("ask.riser"),
            "wheel_diameter": self.wheel_diameter,
        }

    @cached_property
    def gap(self) -> float:
        """Deck over the wheel, board level."""
        return gap_over_wheel(**self.height)

    @cached_property
    def edge(self) -> float:
        """Where deck and wheel meet first."""
        return biting_edge(
            deck_width=self.asked("ask.deck_width"),
            track=self.asked("ask.track"),
            wheel_width=self.asked("ask.wheel_width"),
        )

    @cached_property
    def larger(self) -> float:
        """A wheel that is a little larger."""
        return self.wheel_diameter + chosen("Larger by", LARGER, "m", "length")

    def fastest(self, surface: str) -> float:
        """Return the speed at which the wheels slide out of that circle."""
        return fastest_in_turn(
            friction=pick("surfaces", name=surface).number("friction"),
            gravity=standard("gravity"),
            radius=self.radius,
        )

    @cached_property
    def bushing(self) -> Band:
        """Hardness that suits the rider's mass."""
        mass = self.read(RIDER.key)
        row = next(one for one in rows("bushings") if one.cells["least"] <= mass < one.cells["most"])
        row = row.found_by(mass)
        return row.number("low"), row.number("high")


RESULTS: Figures[FeelParts] = {
    "radius": ("way", lambda parts: parts.radius),
    "circle": ("way", lambda parts: turning_circle(radius=parts.radius, track=parts.asked("ask.track"))),
    "bite": ("angle", lambda parts: bite_lean(gap=parts.gap, edge=parts.edge)),
    "gap_lean": ("length", lambda parts: gap_at_lean(gap=parts.gap, edge=parts.edge, lean=parts.lean)),
    "gap": ("length", lambda parts: parts.gap),
    "turn_dry": ("speed", lambda parts: parts.fastest("dry")),
    "turn_wet": ("speed", lambda parts: parts.fastest("wet")),
    "bushing": ("ratio", lambda parts: parts.bushing),
    "edge_push": (
        "share",
        lambda parts: push_over_edge(wheel_diameter=parts.wheel_diameter, edge=parts.asked("ask.edge")),
    ),
    "edge_larger": (
        "share",
        lambda parts: push_over_edge(wheel_diameter=parts.larger, edge=parts.asked("ask.edge")),
    ),
    "larger_speed": (
        "share",
        lambda parts: share_of_change(diameter=parts.larger, other=parts.wheel_diameter),
    ),
    "larger_push": (
        "share",
        lambda parts: share_of_change(diameter=parts.wheel_diameter, other=parts.larger),
    ),
    "steer_front": ("angle", lambda parts: parts.steer("front")),
    "steer_rear": ("angle", lambda parts: parts.steer("rear")),
    "deck_ground": ("length", lambda parts: deck_over_ground(**parts.height)),
    "pulley_ground": FIT["pulley_ground"],
    "motors_gap": FIT["motors_gap"],
}
"""Quantity and computation of each result."""


@frozen
class Feel:
    """Results by name. `bites` tells of the lean that is asked about, None while it is not known.

    `bushing` is "softer", "harder" or "suits" for what is fitted against what suits the rider, "" while either is not known.
    """

    items: dict[str, Item]
    bites: bool | None
    bushing: str


@answer()
def feel(board: Board, rider: Value | None, asking: Asking) -> Feel:
    """Return what wheels, bushings, trucks and deck do to the ride of a board."""
    shown = dict(RESULTS)
    if len(board.sides) < 2:  # noqa: PLR2004  (two motors on one hanger)
        del shown["motors_gap"]
    items = Run(lambda: FeelParts(Reading(board, rider), Asked(asking))).figures(shown)
    return Feel(items, _bites(items), _bushing(items["bushing"], asking))


def _bites(items: dict[str, Item]) -> bool | None:
    left = items["gap_lean"]
    if isinstance(left, Open):
        return False if left.outcome == "clear of the wheels" else None
    return float(left.value) <= 0.0


def _bushing(suits: Item, asking: Asking) -> str:
    fitted = Asked(asking).value("ask.bushing_hardness")
    if not isinstance(suits, Result) or suits.band is None or fitted is None:
        return ""
    low, high = suits.band
    return "softer" if float(fitted.si) < low else "harder" if float(fitted.si) > high else "suits"


def changes(part: str) -> tuple[Row, ...]:
    """Return what changes of a part do to a ride: common practice."""
    return tuple(row for row in rows("feel") if row.text("part") == part)
