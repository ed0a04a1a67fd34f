"""Files in and out: boards as a person writes them, boards with their log as JSON, and copies of everything."""

from logic.exchange.written import board_from_text, demo_boards

__all__ = ["board_from_text", "demo_boards"]
