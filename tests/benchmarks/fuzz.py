"""Spoilt input at random: `python -m tests.benchmarks.fuzz [cases] [begin]`. Prints what was read, refused, and what failed."""

import sys
import time
from collections import Counter

from tests.fuzz import TARGETS, fuzz


def main(cases: int, begin: int = 0) -> int:
    """Try so many cases of each kind, of files of data a hundredth of it; return how many failed."""
    failed = 0
    for target in TARGETS:
        seen, faults = Counter[str](), 0
        started = time.process_time()
        count = max(1, cases // 100) if target == "store file" else cases
        for case in range(begin, begin + count):
            try:
                seen += fuzz(target, range(case, case + 1))
            except Exception as problem:  # noqa: BLE001  (whatever it is, it is told)
                faults += 1
                if faults <= 5:
                    print(f"    {target}, case {case}: {type(problem).__name__}: {problem}")
        took = time.process_time() - started
        print(
            f"{target}: {seen['read']} read, {seen['refused']} refused, {faults} failed, {took:.0f} s",
            flush=True,
        )
        failed += faults
    return failed


if __name__ == "__main__":
    sys.exit(min(1, main(*map(int, sys.argv[1:] or ["100000"]))))
