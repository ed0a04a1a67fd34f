"""How a run that only writes pictures ends when it cannot go on: a sentence, and an exit status of its own."""

import errno
import signal
import sys
from collections.abc import Callable
from pathlib import Path
from types import FrameType

NO_FOLDER, FULL, NOT_WRITTEN = 20, 21, 22
"""Exit statuses: the folder cannot be, the disk is full, a picture cannot be written for another reason."""
INTERRUPTED, TERMINATED = 128 + signal.SIGINT, 128 + signal.SIGTERM
"""As a shell tells of a program that a signal ended."""


class TerminatedError(BaseException):
    """The system asked the program to end. No walk to a scene may take it for a fault of a page."""


def guarded(folder: Path, write: Callable[[], int]) -> int:
    """Return the exit status of a run that writes into a folder; say in a sentence why it ended early."""
    before = {number: signal.signal(number, _ended) for number in (signal.SIGINT, signal.SIGTERM)}
    try:
        return write()
    except OSError as problem:
        status, said = _cause(folder, problem)
    except KeyboardInterrupt:
        status, said = INTERRUPTED, f"Stopped. What was written is in {folder}."
    except TerminatedError:
        status, said = TERMINATED, f"Ended by the system. What was written is in {folder}."
    finally:
        _asked.clear()
        for number, handler in before.items():
            signal.signal(number, handler)
    print(said, file=sys.stderr)
    return status


def _cause(folder: Path, problem: OSError) -> tuple[int, str]:
    if problem.errno in (errno.ENOSPC, errno.EDQUOT):
        return FULL, f"The disk of {folder} is full: free some space and start again."
    if not folder.is_dir():
        return NO_FOLDER, f"{folder} cannot be a folder: name another one."
    return NOT_WRITTEN, f"{problem.filename or folder} cannot be written: {problem.strerror or problem}."


_asked: list[BaseException] = []
"""What a signal asked for: the next picture raises it. A callback inside Kivy would swallow it, and say so at length."""


def _ended(number: int, _frame: FrameType | None) -> None:
    _asked.append(TerminatedError() if number == signal.SIGTERM else KeyboardInterrupt())
    if len(_asked) > 1:
        # Whoever asks again does not want to wait for a picture.
        raise _asked[0]


def keep_picture(path: Path, data: bytes) -> None:
    """Write a picture whole, or leave none behind. Raises OSError, and what a signal asked for meanwhile."""
    if _asked:
        raise _asked[0]
    try:
        path.write_bytes(data)
    except BaseException:
        if path.is_file() or path.is_symlink():
            path.unlink()
        raise
