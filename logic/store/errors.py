"""What the store refuses, one small class for each reason, named for what the person is told."""

import errno
from typing import Final

# ruff: noqa: N818  (a sentence reads better without Error at the end of each name)


class NotAStore(ValueError):
    """The file is not a readable SQLite file, or holds another program's tables. It is left as it was."""


class NewerFile(ValueError):
    """The file, or an entry in it, was written by a newer Deckhand. It is left as it was."""


class UnknownKind(ValueError):
    """No log entry is of this kind."""


class UnknownEntry(ValueError):
    """The log has no entry with this number; a correction or a void is not an entry of its own."""


class UnknownBoard(ValueError):
    """The file has no board with this id."""


class BadReplacement(ValueError):
    """A correction or a void without a fitting row to act on, or another kind that claims to act on one."""


class NoTimeZone(ValueError):
    """A time without its offset from UTC: the log could not say when it was."""


class CannotStore(Exception):
    """The storage would not do what was asked of it. What was saved before is as it was."""


class NotSaved(CannotStore):
    """The storage failed in a way of its own. Nothing of the change is in the file."""


class Full(NotSaved):
    """There is no room left."""


class Busy(NotSaved):
    """Another program holds the file."""


class NoRight(NotSaved):
    """The file, or the folder it is in, may not be read or written."""


class NoFolder(CannotStore):
    """Where the folder of the data, or the file in it, should be there is something else, or it cannot be made."""


class Damaged(CannotStore):
    """The file is Deckhand's and parts of it cannot be read. `logic.store.opening` reads what can be."""


_OF_OS: Final = {errno.EROFS: NoRight, errno.ENOSPC: Full, errno.EDQUOT: Full}


class os_errors:  # noqa: N801  (reads as a statement)
    """What the system raises inside comes out as the project's own error."""

    def __enter__(self) -> None:
        """Go in."""

    def __exit__(self, kind: object, problem: BaseException | None, trace: object) -> None:
        """Raise CannotStore for an OSError."""
        if isinstance(problem, PermissionError):
            raise NoRight(str(problem)) from problem
        if isinstance(problem, FileExistsError | NotADirectoryError | FileNotFoundError | IsADirectoryError):
            raise NoFolder(str(problem)) from problem
        if isinstance(problem, OSError):
            raise _OF_OS.get(problem.errno or 0, NotSaved)(str(problem)) from problem
