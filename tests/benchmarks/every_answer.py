"""Asks every answer of boards at the limits of their fields and of boards drawn at random; prints what goes wrong.

Run it with `python -m tests.benchmarks.every_answer 2000`. A second number begins the draws elsewhere; a group of
answers after that asks only those.
"""

import sys
import time
import traceback
from collections import Counter
from random import Random

from tests.every_answer import any_case, boards_at_limits, troubles


def main(count: int, begin: int = 0, wanted: str = "") -> int:
    """Ask and print. Returns 1 when an answer raised or gave what is no number."""
    seen: Counter[str] = Counter()
    first: dict[str, str] = {}
    started = time.perf_counter()
    limits = boards_at_limits() if begin == 0 else ()
    cases = [(f"limit {place}", any_case(Random(place), board)) for place, board in enumerate(limits)]
    names = (f"board {place}" for place in range(begin, begin + count))
    cases += [(name, any_case(Random(name))) for name in names]
    for label, case in cases:
        for name, words, problem in troubles(case, wanted):
            key, told = f"{name}: {words.split('=')[0]}", words
            if problem is not None:
                where = traceback.extract_tb(problem.__traceback__)[-1]
                key = f"{name}: {type(problem).__name__} at {where.filename}:{where.lineno}"
                told = "".join(traceback.format_exception(problem))
            seen[key] += 1
            first.setdefault(key, f"{label}: {told}")
    for key, times in seen.most_common():
        print(f"{times} times {key}\n    first {first[key]}")
    print(
        f"{len(cases)} boards in {time.perf_counter() - started:.0f} s, {sum(seen.values())} troubles of {len(seen)} kinds"
    )
    return int(bool(seen))


if __name__ == "__main__":
    given = sys.argv[1:]
    raise SystemExit(
        main(int(given[0]) if given else 2000, int(given[1]) if given[1:] else 0, " ".join(given[2:]))
    )
