"""A recorded tension in words, for every page that shows one."""

from datetime import datetime

from logic.store import Record
from screens.words import Style

ITEMS = {
    "target": "Belt tension to set",
    "floor": "Window from",
    "ceiling": "Window to",
    "run_in": "Mark for a run-in belt",
    "depth": "Pull depth",
    "pull_target": "Pull for the target",
    "pull_floor": "Pull at the floor",
    "pull_ceiling": "Pull at the ceiling",
    "pull_locked": "Pull if both pulleys were held",
    "misread": "It would be read as",
    "span": "Free span",
    "centre": "Centre distance",
    "wrap": "Wrap on the small pulley",
    "teeth_in_mesh": "Teeth in mesh",
    "mesh_factor": "Rating left by the teeth in mesh",
    "slack_torque": "Slack span hangs loose from",
    "slack_margin": "That over the most torque",
    "shaft_pull": "Pull on the shaft",
    "least_of_manuals": "Least of the manuals",
    "most_of_manuals": "Most of the manuals",
    "tension": "Belt tension, each span",
    "error": "Known to within",
}
"""Label of each result."""

WORDS = {"slack": "SLACK", "in window": "IN WINDOW", "tight": "TIGHT"}

CERTAINTY = {
    "surely": "Surely: the whole band lies outside the window.",
    "inside": "The whole band lies inside the window.",
    "may be slack": "It may be slack: the band reaches below the window.",
    "may be tight": "It may be tight: the band reaches above the window.",
    "cannot tell": "Cannot tell yet: the band reaches past both edges. Pull deeper, or read the depth with a finer tool.",
}

MOVES = {
    "slack": "Move the motor a little away from the wheel, turn, measure again.",
    "in window": "",
    "tight": "Move the motor a little towards the wheel, turn, measure again.",
}


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
