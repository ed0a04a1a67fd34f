"""20,000 touches, drags, keys, sizes, themes and restarts of the real app: `python -m tests.benchmarks.hands [steps] [begin]`.

Prints what failed, which pages were seen, and the memory after the first and the last quarter.
"""

import gc
import os
import sys
import tempfile
from collections import Counter
from pathlib import Path

import tests.screens.conftest  # noqa: F401  (Kivy is set up there)
from tests.screens.hands import Hands

EACH = 250


def memory() -> float:
    """Return the memory of this process, in MB."""
    gc.unfreeze()
    gc.collect()
    pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / 1e6


def main(steps: int, begin: int = 0) -> int:
    """Let one after the other do 250 things; return how many met a fault."""
    failed, seen = 0, Counter[str]()
    rounds = range(begin, begin + steps // EACH)
    held: list[float] = []
    for seed in rounds:
        with tempfile.TemporaryDirectory() as folder:
            os.environ["HOME"] = folder
            hands = Hands(Path(folder) / "data", seed, demo=seed % 2 == 1)
            try:
                hands.steps(EACH)
            except Exception as problem:  # noqa: BLE001  (whatever it is, it is told)
                failed += 1
                print(
                    f"seed {seed}: {type(problem).__name__}: {problem}",
                    *hands.did[-6:],
                    sep="\n    ",
                    flush=True,
                )
            seen += hands.seen
            hands.app.stop()
            # Of one that met a fault nothing may be left that hears of the next one's theme.
            del hands
        held.append(memory())
    quarter = held[len(held) // 4], held[-1]
    print(f"{seen.total()} things done, {len(seen)} pages seen, {failed} faults")
    print(
        f"memory {quarter[0]:.0f} MB after a quarter, {quarter[1]:.0f} MB at the end: {quarter[1] / quarter[0]:.2f}"
    )
    return failed


if __name__ == "__main__":
    sys.exit(min(1, main(*map(int, sys.argv[1:] or ["20000"]))))
