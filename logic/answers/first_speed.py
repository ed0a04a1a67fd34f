"""The best top speed that the values so far allow: without load, then with weight, then with limits, then as it is."""

from functools import partial
from typing import Literal

from logic.answers.gearing import top_loaded, top_speed, top_unloaded
from logic.answers.parts import Parts
from logic.answers.reading import RIDER, Item, Open, Result
from logic.answers.rough import RoughParts, RoughRun
from logic.answers.run import answer
from logic.board import Board, Value
from logic.frozen import frozen
from logic.tables import pick

FIRST = ("pack.series", "motor.kv", "drive.motor_teeth", "drive.wheel_teeth", "drive.wheel_diameter")
"""Values that give a first speed, those one reads off the board first."""
WEIGHT = ("load.board_mass", RIDER.key)
"""Values that put the road under it."""
LIMITS = ("controller.battery_current", "pack.parallel")
"""Values that say what controller and pack give."""

Level = Literal["nothing", "without load", "with weight", "with limits"]


@frozen
class FirstSpeed:
    """The best speed so far, how far the values go, and which of them are taken as usual.

    `item` is the speed without load, then the top speed with its band; before that it names the values that are missing.
    `road` is what is left of the speed without load on the road, by the shares in `share`.
    """

    level: Level
    item: Item
    road: Item
    assumed: tuple[str, ...] = ()

    @property
    def share(self) -> tuple[float, float]:
        """Return the least and the most that is left on the road, as shares."""
        row = pick("spreads", name="top speed on the road")
        return float(row.cells["low"]), float(row.cells["high"])


@answer()
def first_speed(board: Board, rider: Value | None) -> FirstSpeed:
    """Return the best top speed that the values so far allow, in m/s."""
    run = RoughRun(board, rider, RoughParts)
    unloaded = run.figure("top_nominal", "speed", partial(top_unloaded, "nominal"))
    road = run.figure("on_road", "speed", _on_the_road)
    lacks = tuple(key for key in FIRST if board.value(key) is None)
    if lacks:
        return FirstSpeed("nothing", Open("top_nominal", missing=lacks), road)
    if rider is None or board.load.board_mass is None or isinstance(unloaded, Open):
        return FirstSpeed("without load", unloaded, road)
    item = run.banded("top_loaded", "speed", top_loaded)
    limited = all(board.value(key) is not None for key in LIMITS)
    return FirstSpeed("with limits" if limited else "with weight", item, road, run.taken)


@answer()
def road_speed(board: Board, rider: Value | None) -> Item:
    """Return the top speed on the road alone: the full answer, else the best that the values so far allow."""
    full = top_speed(board, rider)
    if isinstance(full, Result) or not full.missing:
        return full
    first = first_speed(board, rider)
    return first.road if first.level == "without load" else first.item


def _on_the_road(parts: Parts) -> tuple[float, float]:
    row, speed = pick("spreads", name="top speed on the road"), top_unloaded("nominal", parts)
    return row.number("low") * speed, row.number("high") * speed
