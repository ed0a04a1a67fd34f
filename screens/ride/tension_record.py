"""What a tension check by scale writes into the log."""

from typing import Any

from logic.answers.reading import Result
from logic.answers.tension import BeltPlan, BeltReading
from logic.board import Value
from logic.person import Person


def tension_body(
    side: str, pull: Value, plan: BeltPlan, reading: BeltReading | None, person: Person
) -> dict[str, Any]:
    """Return the body of the entry: the pull with its depth, what it tells, the window then, the tools."""
    measured = reading is not None and isinstance(reading.tension, Result)
    window = plan.window
    return {
        "belt": side,
        "method": "scale",
        "pull": float(pull.si),
        "unit": pull.typed_unit,
        "depth": plan.depth,
        "tension": reading.tension.value if measured else None,
        "error": reading.error.value if measured and isinstance(reading.error, Result) else None,
        "floor": window.floor if window else None,
        "ceiling": window.ceiling if window else None,
        "target": window.new_low if window else None,
        "word": reading.verdict.word if measured and reading.verdict else "",
        "scale": person.scale,
        "depth_tool": person.depth_tool,
    }
