"""The real app is killed up to a tenth of a second after it showed that something is saved, then opened again.

`python -m tests.benchmarks.kills [kills]` prints how many lost what they had shown.
"""

import sys
import tempfile
from pathlib import Path
from random import Random

from tests.screens.conftest import Session
from tests.screens.test_kill import CASES, kill_after


def main(kills: int) -> int:
    """Kill and look; return how many lost something."""
    lost = 0
    for number in range(kills):
        walk, look = CASES[number % len(CASES)]
        with tempfile.TemporaryDirectory() as name:
            kill_after(Path(name), walk, wait=Random(number).uniform(0.0, 0.1))
            app = Session(Path(name))
            try:
                app.front.place("ride")
                app.settle()
                look(app)
            except Exception as problem:  # noqa: BLE001  (whatever it is, it is told)
                lost += 1
                print(f"kill {number}, {look.__name__}: {type(problem).__name__}: {problem}")
            app.stop()
    print(f"{kills} kills, {lost} lost something")
    return lost


if __name__ == "__main__":
    sys.exit(min(1, main(int(sys.argv[1]) if len(sys.argv) > 1 else 1000)))
