"""What is asked for at a belt: forces and depths, with their limits."""

from typing import Any

from logic.board import Field

FORCE: dict[str, Any] = {"quantity": "force", "low": 0.05, "high": 2000.0}
DEPTH: dict[str, Any] = {"quantity": "length", "low": 0.0001, "high": 0.03}


def asked(key: str, label: str, limits: dict[str, Any]) -> Field:
    """Return a field that belongs to a page and not to the board."""
    return Field(key, label, "number", 0, "", **limits)
