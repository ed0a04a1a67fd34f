"""A few hundred spoilt things of each kind; the long form is tests/benchmarks/fuzz.py."""

import pytest

from tests.fuzz import TARGETS, fuzz

FEW = {"board": 40}
"""Fewer of what costs more. The short form of the store's file is in tests/store/test_opening.py."""


@pytest.mark.parametrize("target", [name for name in TARGETS if name != "store file"])
def test_what_is_spoilt_is_read_or_refused(target: str) -> None:
    count = FEW.get(target, 300)
    seen = fuzz(target, range(count))
    assert seen.total() == count
    assert seen["refused"], "nothing was spoilt enough to be refused"
    assert seen["read"], "nothing was spoilt little enough to be read"
