"""Times the table of pulley pairs and its ranking: run it with `python -m tests.benchmarks.pairs_table`."""

import time
from collections.abc import Callable

from logic.answers.pairs import best_pairs, pair_table
from logic.board import Value
from logic.drive.options import Wish
from logic.exchange import demo_boards

RIDER = Value(80.0, "measured")
RUNS = 20
TABLE_WITHIN, RANKING_WITHIN = 25.0, 40.0
"""Milliseconds allowed: the table, and the table ranked by a wish: that reads more of each row."""


def best(act: Callable[[], object]) -> tuple[float, float]:
    """Return the best and the usual time of an act in milliseconds."""
    times = []
    for _ in range(RUNS):
        begin = time.perf_counter()
        act()
        times.append((time.perf_counter() - begin) * 1e3)
    return min(times), sorted(times)[RUNS // 2]


def main() -> int:
    """Print both times for each example board. Returns 1 when one is over what is allowed."""
    late = False
    for board in demo_boards():
        table = pair_table(board, RIDER, {})
        made = best(lambda board=board: pair_table(board, RIDER, {}))
        wish = Wish(speed=38 / 3.6, grade=0.15)
        ranked = best(lambda board=board, wish=wish: best_pairs(pair_table(board, RIDER, {}), wish))
        late = late or made[1] > TABLE_WITHIN or ranked[1] > RANKING_WITHIN
        print(
            f"{board.name}: {len(table.pairs)} pairs, table {made[0]:.1f} ms (usual {made[1]:.1f}),"
            f" ranked {ranked[0]:.2f} ms (usual {ranked[1]:.2f})"
        )
    print(f"allowed: table {TABLE_WITHIN:.0f} ms, ranked {RANKING_WITHIN:.0f} ms")
    return int(late)


if __name__ == "__main__":
    raise SystemExit(main())
