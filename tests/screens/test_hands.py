"""A hundred and fifty touches, drags, keys, sizes and restarts of the real app at random. The long form is a benchmark."""

from pathlib import Path

import pytest

from tests.screens.hands import Hands


@pytest.mark.parametrize("seed", range(3))
def test_nothing_fails_wherever_it_is_touched(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, seed: int
) -> None:
    monkeypatch.setenv("HOME", str(tmp_path))
    hands = Hands(tmp_path / "data", seed, demo=seed % 2 == 1)
    hands.steps(50)
    hands.app.stop()
    assert sum(hands.seen.values()) == 50
