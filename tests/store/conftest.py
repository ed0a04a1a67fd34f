"""A store on a real file, with a clock that a test can move."""

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from datetime import datetime, timedelta, timezone
from pathlib import Path

import pytest

from logic.store import Store

CANAL_TIME = timezone(timedelta(hours=1))


class Clock:
    """Stands still until it is moved."""

    def __init__(self) -> None:
        """Start on the demo day, an hour ahead of UTC."""
        self.now = datetime(2026, 11, 25, 9, 30, tzinfo=CANAL_TIME)

    def __call__(self) -> datetime:
        """Give the time now."""
        return self.now

    def move(self, **by: float) -> None:
        """Go forward."""
        self.now += timedelta(**by)


@pytest.fixture
def clock() -> Clock:
    """Give a clock for the store and the test."""
    return Clock()


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Give the place of the file; a mark in the name has to survive being part of an address."""
    return tmp_path / "deck hand #1?.db"


@pytest.fixture
def store(path: Path, clock: Clock) -> Iterator[Store]:
    """Give an open store."""
    with Store(path, clock) as opened:
        yield opened


@pytest.fixture
def reopened(path: Path, clock: Clock, store: Store) -> Iterator[Callable[[], Store]]:
    """Give a function that closes the store and opens its file anew: only what is on the disk comes back."""
    opened = [store]

    def reopen() -> Store:
        opened[-1].close()
        opened.append(Store(path, clock))
        return opened[-1]

    yield reopen
    opened[-1].close()


@pytest.fixture
def raw(path: Path) -> Callable[..., list[tuple[object, ...]]]:
    """Give a function that runs one statement on the file by a connection of its own."""

    def run(statement: str, *values: object) -> list[tuple[object, ...]]:
        with closing(sqlite3.connect(path, isolation_level=None)) as connection:
            return connection.execute(statement, values).fetchall()

    return run
