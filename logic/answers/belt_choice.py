"""Which belt: the ones in stock near a wanted centre distance, and what the board's own belt can carry."""

from collections.abc import Mapping

from logic.answers.belt_choice_parts import CHOICE, ChoiceParts
from logic.answers.belt_parts import FEWEST_IN_MESH
from logic.answers.reading import Item, Reading, Result
from logic.answers.run import Run, answer
from logic.belt.geometry import centre_distance
from logic.belt.stock import Stock, nearest
from logic.belt.travel import centre_tolerance, inward_travel, outward_travel
from logic.board import Board, Value
from logic.errors import InputError
from logic.frozen import frozen
from logic.si import Metre

__all__ = ["BeltChoice", "BeltRow", "Stock", "belt_choice", "centre_of"]

SHOWN = 6
"""Belts in stock that are listed around the wanted centre."""


@frozen
class BeltRow:
    """One belt in stock: its centre, how far that is from the wanted one, and what the mount lacks for it.

    `lacks`: "" when the mount reaches or is not known, "in" when it stays too far out for the belt at all,
    "out" when it cannot tension it, "laying on" when belt and pulleys must go on together.
    """

    belt: Stock
    centre: Metre
    off: Metre
    lacks: str


@frozen
class BeltChoice:
    """Results of the board's belt by name, the belts in stock, and the notes that deserve a sentence."""

    items: Mapping[str, Item]
    rows: tuple[BeltRow, ...]
    wanted: Metre | None
    in_stock: bool
    few_teeth: bool
    small_pulley: bool
    diameters: tuple[float, float]


@answer()
def belt_choice(board: Board, rider: Value | None, wanted: Metre | None = None) -> BeltChoice:
    """Return the board's belt and the belts in stock around a wanted centre distance in m.

    None takes the middle of the mount's travel, else the measured centre, else that of the board's belt.
    """
    run = Run(lambda: ChoiceParts(Reading(board, rider)))
    items = run.when_read(CHOICE)
    aim = wanted if wanted is not None else run.view(_middle, None)
    rows = () if aim is None else run.view(lambda parts: _rows(parts, aim), ())
    small = items["smallest"]
    return BeltChoice(
        items,
        rows,
        aim,
        in_stock=_in_stock(board, rows),
        few_teeth=run.view(lambda parts: parts.whole_teeth < FEWEST_IN_MESH, otherwise=False),
        small_pulley=isinstance(small, Result)
        and run.view(lambda parts: parts.small_teeth < small.value, otherwise=False),
        diameters=run.view(lambda parts: (parts.motor_pulley, parts.wheel_pulley), (0.0, 0.0)),
    )


@answer()
def centre_of(board: Board) -> Item:
    """Return the centre distance of the board's belt alone."""
    return Run(lambda: ChoiceParts(Reading(board))).figure("centre", *CHOICE["centre"])


def _middle(parts: ChoiceParts) -> float:
    mount = parts.read.board.mount
    if mount.centre_least is not None and mount.centre_most is not None:
        return (float(mount.centre_least.si) + float(mount.centre_most.si)) / 2
    return parts.centre


def _rows(parts: ChoiceParts, wanted: float) -> tuple[BeltRow, ...]:
    pulleys = parts.pulleys
    rows = []
    for belt in nearest(profile=parts.read.choice("drive.profile"), wanted=wanted, count=SHOWN, **pulleys):
        centre = centre_distance(length=belt.length, **pulleys)
        lacks = _lacks(parts.read.board, belt, centre, parts.pitch)
        rows.append(BeltRow(belt, centre, centre - wanted, lacks))
    return tuple(rows)


def _lacks(board: Board, belt: Stock, centre: float, pitch: float) -> str:
    least, most = board.mount.centre_least, board.mount.centre_most
    flanged = board.mount.flanged
    try:
        tolerance = centre_tolerance(length=belt.length)
        out = outward_travel(length=belt.length)
        bare = inward_travel(length=belt.length, pitch=pitch, flanged="none")
        over = inward_travel(
            length=belt.length, pitch=pitch, flanged=str(flanged.si) if flanged is not None else "none"
        )
    except InputError:
        return ""
    if least is not None and centre - tolerance - bare < float(least.si):
        return "in"
    if most is not None and centre + tolerance + out > float(most.si):
        return "out"
    if least is not None and centre - over < float(least.si):
        return "laying on"
    return ""


def _in_stock(board: Board, rows: tuple[BeltRow, ...]) -> bool:
    teeth = board.drive.belt_teeth
    return teeth is not None and any(row.belt.teeth == teeth.si for row in rows)
