"""20,000 things done at random: `python -m tests.benchmarks.monkey [steps]`. Prints what was seen and what failed."""

import sys
import tempfile
from collections import Counter
from pathlib import Path

from tests.monkey import Monkey

EACH = 500


def main(steps: int) -> int:
    """Let one after the other do 500 things; return how many met a fault."""
    failed, seen = 0, Counter[str]()
    for seed in range(steps // EACH):
        with tempfile.TemporaryDirectory() as folder:
            monkey = Monkey(Path(folder), seed, demo=seed % 2 == 1)
            try:
                monkey.steps(EACH)
            except Exception as problem:  # noqa: BLE001  (whatever it is, it is told)
                failed += 1
                print(f"seed {seed}: {type(problem).__name__}: {problem}", *monkey.did[-6:], sep="\n    ")
            seen += monkey.seen
            monkey.reader.close()
    print(f"{sum(seen.values())} pages read, {len(seen)} different ones, {failed} faults")
    return failed


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 20_000))
