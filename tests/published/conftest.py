"""Every test here says its source, and what it compared is what is written down."""

from collections.abc import Iterator

import pytest

from logic.workings import recording
from tests.printed import noting
from tests.validation import FOUND, again, case_of, stale


@pytest.fixture(autouse=True)
def noted(request: pytest.FixtureRequest) -> Iterator[None]:
    """Note what the test compares, and hold it against what VALIDATION.md was written from."""
    mark = next((mark for mark in request.node.iter_markers("source")), None)
    if mark is None:
        pytest.fail("no source: mark it with @source, or with @ours where nothing is printed")
    with recording(), noting() as notes:
        yield
    case = case_of(request.node, mark, notes.said)
    FOUND.append(case)
    if not again() and stale(case):
        pytest.fail("tests/VALIDATION.md is stale: run `uv run python -m tests.write_validation`")
