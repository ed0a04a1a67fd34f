"""Motor from the bench: Kv, resistance and pole pairs from what was measured, and what an ampere means."""

from functools import cached_property, partial

from logic.answers.asked import Asked, Asking
from logic.answers.reading import Item, Reading, Result
from logic.answers.run import Figures, Run, answer
from logic.board import Board, board_fields
from logic.drive.bench import (
    mixing_error,
    pole_pairs_from_magnets,
    speed_constant_from_spin,
)
from logic.drive.motor import conversion, current_meanings, torque_constant, torque_constant_stated
from logic.errors import InputError
from logic.frozen import frozen
from logic.workings import unrecorded

BOARD_KEY = {"kv": "motor.kv", "resistance": "motor.resistance", "pole_pairs": "motor.pole_pairs"}
"""Field of the board that a measured result can be laid over."""


class BenchMotorParts:
    """What was measured, and what the board knows beside it."""

    def __init__(self, reading: Reading, asked: Asked) -> None:
        """Take the board from a reading and the measurements beside it."""
        self.read, self.asked = reading, asked

    @cached_property
    def resistance(self) -> float:
        """Resistance line to line."""
        return self.asked("ask.bench_voltage") / self.asked("ask.bench_current")

    @cached_property
    def known_resistance(self) -> float:
        """The measured resistance, else the board's."""
        if self.asked.value("ask.bench_voltage") and self.asked.value("ask.bench_current"):
            return self.resistance
        return self.read("motor.resistance")

    @cached_property
    def kv(self) -> float:
        """Kv of the spin."""
        return speed_constant_from_spin(
            angular_speed=self.asked("ask.spin_rotation"),
            voltage=self.asked("ask.spin_voltage"),
            duty=self.asked("ask.spin_duty"),
            no_load_current=self.read("motor.no_load_current"),
            winding_resistance=self.known_resistance,
        )

    @cached_property
    def known_kv(self) -> float:
        """The measured Kv, else the board's."""
        if self.asked.value("ask.spin_rotation") and self.asked.value("ask.spin_voltage"):
            return self.kv
        return self.read("motor.kv")

    def constant(self, meaning: str) -> float:
        """Return the torque of one ampere of a meaning."""
        return torque_constant_stated(
            torque_constant=torque_constant(speed_constant=self.known_kv), conversion=conversion(meaning)
        )


RESULTS: Figures[BenchMotorParts] = {
    "kv": ("speed_constant", lambda parts: parts.kv),
    "resistance": ("resistance", lambda parts: parts.resistance),
    "pole_pairs": (
        "count",
        lambda parts: pole_pairs_from_magnets(magnets=parts.asked("ask.magnets")),
    ),
    **{
        f"constant {meaning}": (
            "torque_constant",
            partial(lambda meaning, parts: parts.constant(meaning), meaning),
        )
        for meaning in ("six-step", "sine peak", "sine rms")
    },
}
"""Quantity and computation of each result."""


@answer()
def bench_motor(board: Board, asking: Asking) -> dict[str, Item]:
    """Return what the bench tells of a motor."""
    return Run(lambda: BenchMotorParts(Reading(board), Asked(asking))).figures(RESULTS)


@frozen
class Mixing:
    """The error of taking amperes of one meaning for another, as a share."""

    meant: str
    taken: str
    error: float


def mixings() -> tuple[Mixing, ...]:
    """Return every way to mix two meanings, the worst first."""
    with unrecorded():
        found = [
            Mixing(meant, taken, mixing_error(taken=conversion(taken), meant=conversion(meant)))
            for meant in current_meanings()
            for taken in current_meanings()
            if taken != meant
        ]
    return tuple(sorted(found, key=lambda mix: -abs(mix.error)))


def to_lay_over(board: Board, items: dict[str, Item]) -> dict[str, float]:
    """Return the measured values that the board does not have yet, by the key of their field."""
    found = {}
    for name, key in BOARD_KEY.items():
        item, present = items[name], board.value(key)
        if not isinstance(item, Result) or (present is not None and present.si == item.value):
            continue
        try:
            board_fields()[key].check(item.value)
        except InputError:
            continue
        found[key] = item.value
    return found
