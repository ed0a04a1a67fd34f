"""What the store refuses, one small class for each reason, named for what the person is told."""

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


class NotSaved(Exception):
    """The phone could not write: storage is full, locked or failing. Nothing of the change is in the file."""
