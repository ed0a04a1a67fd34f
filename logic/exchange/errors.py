"""Why a file is not taken in, one small class for each cause. Nothing is changed then."""

# ruff: noqa: N818  (a sentence reads better without Error at the end of each name)


class NotTaken(ValueError):
    """A file from outside that cannot be taken in."""


class TooLarge(NotTaken):
    """The file is larger than any that the app writes."""


class TooDeep(NotTaken):
    """Lists within lists, deeper than any file of ours."""


class Broken(NotTaken):
    """The file is cut short, or is no JSON at all."""


class Foreign(NotTaken):
    """The file is whole, and something else."""


class Later(NotTaken):
    """The file was written by a later version of the app."""
