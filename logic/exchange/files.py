"""Names of the files that are written, and writing them so that an older one stays until the new one is whole."""

from datetime import datetime
from hashlib import sha256
from pathlib import Path

from logic.board import Board
from logic.store.errors import Full, NoRight, NotSaved

_FULL = (28, 122)
"""ENOSPC and EDQUOT (POSIX errno.h)."""
_LONGEST = 40


def file_name(board: Board, what: str, ending: str, at: datetime) -> str:
    """Return the name of a file about a board. Two boards never share one: four signs of its id stand in it.

    >>> file_name(Board("b1", "Towpath 36"), "log", "csv", datetime(2026, 11, 25))
    'towpath-36-7dc9-log-2026-11-25.csv'
    """
    letters = "".join(letter if letter.isalnum() else "-" for letter in board.name.casefold())
    plain = "-".join(part for part in letters.split("-") if part)[:_LONGEST] or "board"
    mark = sha256(board.id.encode()).hexdigest()[:4]
    return f"{plain}-{mark}-{what}-{at:%Y-%m-%d}.{ending}"


def write_whole(path: Path, data: str | bytes) -> None:
    """Write a file, its folder made if need be; one that is there stays until the new one is whole.

    Raises NoRight, Full, NotSaved.
    """
    part = path.with_name(path.name + ".part")
    try:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        part.write_bytes(data.encode("utf-8") if isinstance(data, str) else data)
        part.replace(path)
    except OSError as problem:
        if isinstance(problem, PermissionError | FileExistsError | NotADirectoryError | IsADirectoryError):
            raise NoRight(str(problem)) from problem
        raise (Full if problem.errno in _FULL else NotSaved)(str(problem)) from problem
    finally:
        if part.is_file():
            part.unlink()
