"""Drawings that explain a joint, by the name under which the tables of joints and of checks ask for them."""

from logic.board import Board
from screens.blocks import Block, Picture, Words
from screens.pictures.tightening import bearing_order, cross_pattern, set_screw_on_flat
from screens.tongue import _

USUAL, LEAST, MOST = 4, 3, 6
"""Screws of a pattern where the board does not tell, and how many are drawn."""
STACK = _("1 washer, 2 bearing, 3 spacer, 4 bearing, 5 washer, 6 nut. The spacer carries the nut's push.")
FLAT = _("The first set screw stands square on the flat, the second after it.")
CROSS = _("Opposite screws follow each other: all snug, then half, then the full setting.")


def explained(name: str, board: Board, joint: str) -> tuple[Block, ...]:
    """Return the drawing of a name, and what its numbers mean where the page does not say so; nothing for another name."""
    if name == "cross":
        return (Picture(key="cross", strokes=cross_pattern(pattern(board, joint)), text=CROSS),)
    if name == "set screw":
        return (Picture(key="set screw", strokes=set_screw_on_flat(), text=FLAT),)
    if name == "bearings":
        legend = Words(key="stack", text=STACK, tone="second")
        return (Picture(key="bearings", strokes=bearing_order(), text=STACK), legend)
    return ()


def pattern(board: Board, joint: str) -> int:
    """Return how many screws one pattern has: those of the joint, or half of them where both sides have their own."""
    value = board.joint(joint).count if joint else None
    count = 0 if value is None else int(float(value.si))
    halves = (count, count // 2 if count % 2 == 0 else 0)
    return next((one for one in halves if LEAST <= one <= MOST), USUAL)
