"""Gives the pages on a folder of their own."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.pages.reader import Reader


@pytest.fixture
def pages(tmp_path: Path) -> Iterator[Reader]:
    """Give the pages on the example boards, Towpath 36 in use."""
    reader = Reader(tmp_path)
    yield reader
    reader.close()


@pytest.fixture
def bare(tmp_path: Path) -> Iterator[Reader]:
    """Give the pages without any board."""
    reader = Reader(tmp_path, demo=False)
    yield reader
    reader.close()
