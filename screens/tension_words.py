"""A recorded tension in words, for every page that shows one."""

from datetime import datetime

from logic.store import Record
from screens.words import WORDS, Style


def ago(then: datetime, now: datetime) -> str:
    """Return how long ago something was, in the words one would use."""
    days = (now.date() - then.astimezone(now.tzinfo).date()).days
    if days == 0:
        minutes = int((now - then).total_seconds() // 60)
        return "just now" if minutes < 1 else f"{minutes} min ago" if minutes < 60 else f"today, {then:%H:%M}"  # noqa: PLR2004
    return "yesterday" if days == 1 else f"{days} days ago"


def tension_text(record: Record, style: Style) -> str:
    """Return a recorded tension with its error and its verdict."""
    body = record.body
    if body.get("tension") is None:
        return f"pull {style.number(body['pull'], 'force')}"
    text = style.number(body["tension"], "force")
    word = WORDS.get(body.get("word", ""), "").lower()
    return f"{text} ± {style.number(body['error'], 'force')}" + (f", {word}" if word else "")
