"""A start on storage that is damaged, blocked or strange, case by case: `python -m tests.benchmarks.storage [part] [group]`.

`part` takes each so-manieth case. Prints how many cases of each group ended how, what failed and what was lost in silence.
"""

import sys
import tempfile
from collections import Counter
from pathlib import Path

from logic.store import file
from tests.storage import cases, start


def main(part: int, wanted: str = "") -> int:
    """Try the cases; return how many failed or lost something."""
    file.PATIENCE = 50
    seen: dict[str, Counter[str]] = {}
    failed = 0
    for number, case in enumerate(cases()):
        if number % part or wanted not in case.group:
            continue
        with tempfile.TemporaryDirectory() as name:
            folder = Path(name) / "data"
            folder.mkdir()
            case.spoil(folder)
            try:
                found = start(folder)
                word, lost = found.word, found.lost
            except Exception as problem:  # noqa: BLE001  (whatever it is, it is told)
                word, lost = f"FAILED: {type(problem).__name__}", (str(problem)[:200],)
        seen.setdefault(case.group, Counter())[word] += 1
        if lost:
            failed += 1
            print(f"{case.group}: {case.name}: {word}: {', '.join(lost[:3])}", flush=True)
    for group, words in seen.items():
        print(
            f"{group}, {words.total()} cases: "
            + ", ".join(f"{count} {word}" for word, count in words.most_common())
        )
    print(f"{sum(words.total() for words in seen.values())} cases, {failed} failed or lost something")
    return failed


if __name__ == "__main__":
    part, *rest = sys.argv[1:] or ["1"]
    sys.exit(min(1, main(int(part), *rest)))
