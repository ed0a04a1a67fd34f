"""What screens show as it stands in a table: advice on packs, names of joints."""

from logic.joints.lookup import kinds
from logic.pack.care import care
from logic.tables import Row


def pack_advice(kind: str) -> tuple[Row, ...]:
    """Return the advice on packs of a kind ("stop", "fire", "charge", "storage"), in order, with its sources.

    Raises InputError for another kind.

    >>> pack_advice("fire")[0].text("signal")
    'DANGER'
    """
    return care(kind)


def joint_name(kind: str) -> str:
    """Return how a kind of joint is called, the kind itself for one that no table names.

    >>> joint_name("of another day")
    'of another day'
    """
    return next((row.text("name") for row in kinds() if row.text("kind") == kind), kind)
