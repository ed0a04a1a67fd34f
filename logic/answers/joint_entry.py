"""The log entry of a joint that was tightened, made from its card."""

from logic.answers.joints import JointCard
from logic.answers.reading import Result
from logic.log import Tightening


def tightening(  # noqa: PLR0913  (what can be said of a joint)
    card: JointCard,
    *,
    torque: float | None,
    tool: str,
    locker: str | None = None,
    by: str = "",
    note: str = "",
    looked: bool = False,
) -> Tightening:
    """Return the entry: what was set with what tool, in N·m, beside what the card said; its locker unless given."""
    limit = card.items["wrench_ceiling"]
    grade = "none" if card.locker is None else card.locker.grade
    return Tightening(
        joint=card.key,
        torque=torque,
        setting=card.torque,
        ceiling=limit.value if isinstance(limit, Result) else None,
        tool=tool,
        locker=grade if locker is None else locker,
        by=by,
        note=note,
        looked=looked,
    )
