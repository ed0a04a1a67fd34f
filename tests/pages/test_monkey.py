"""Two thousand things done at random in the pages, from nothing and from the example boards. The long form is a benchmark."""

from pathlib import Path

import pytest

from tests.monkey import Monkey


@pytest.mark.parametrize("seed", range(8))
def test_nothing_fails_whatever_is_touched(tmp_path: Path, seed: int) -> None:
    monkey = Monkey(tmp_path, seed, demo=seed % 2 == 1)
    monkey.steps(250)
    assert len(monkey.seen) > 3
    monkey.reader.close()
