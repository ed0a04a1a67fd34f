"""Log entries in words: the line of the list, the lines of the entry's own page."""

from collections.abc import Iterator
from typing import Any

from logic.answers.spares import joint_name
from logic.answers.tension import word_of
from logic.board import board_fields
from logic.store import Record
from logic.units import GAP
from screens.words import Style, label_of
from screens.words.checks import check_text, check_tone, seconds_text
from screens.words.tension import tension_text, with_error

KINDS = {
    "": "All",
    "ride": "Rides",
    "check": "Checks",
    "tension": "Tension",
    "tightening": "Joints",
    "work": "Work",
    "belt_fitted": "New belts",
    "note": "Notes",
    "board_changed": "Changes",
    "snooze": "Put off",
}
"""What a filter is called, by the kind of entry it shows."""

ICONS = {
    "ride": "road",
    "tension": "gauge",
    "tightening": "bench",
    "work": "bench",
    "belt_fitted": "drive",
    "note": "edit",
    "board_changed": "swap",
    "snooze": "clock",
}


def entry_words(record: Record, style: Style) -> tuple[str, str, str]:
    """Return title, detail and picture of an entry."""
    body = record.body
    when = f"{record.at:%Y-%m-%d %H:%M}"
    icon = check_tone(body) if record.kind == "check" else ICONS.get(record.kind, "")
    title = {
        "ride": lambda: f"Ride: {ride_text(body, style)}",
        "check": lambda: f"{body.get('title', 'Check')}: {check_text(body)}",
        "tension": lambda: f"Tension, {body.get('belt', '')} belt: {tension_text(record, style)}",
        "tightening": lambda: f"Joint: {joint_name(str(body.get('joint', '')))}",
        "work": lambda: f"Work: {body.get('note', '')}",
        "belt_fitted": lambda: f"New {body.get('belt', '')} belt",
        "note": lambda: str(body.get("note", "")),
        "board_changed": lambda: f"Board changed: {', '.join(label_of(key) for key in body.get('changes', {}))}",
        "snooze": lambda: f"Put off: {body.get('name', body.get('rule', ''))}",
    }[record.kind]()
    extra = []
    if record.kind == "check" and "seconds" in body:
        extra.append(seconds_text(body["seconds"]) + (", fast" if body.get("fast") else ""))
        if body.get("breaks"):
            extra.append("interrupted")
    if record.kind == "snooze" and body.get("reason"):
        extra.append(str(body["reason"]))
    if record.kind not in ("work", "note") and body.get("note"):
        extra.append(str(body["note"]))
    if record.corrected_by is not None:
        extra.append("corrected")
    return title, ". ".join([when, *extra]), icon


def ride_text(body: dict[str, Any], style: Style) -> str:
    """Return a ride on one line."""
    parts = []
    if body.get("distance"):
        parts.append(style.number(body["distance"], "distance"))
    if body.get("energy"):
        parts.append(style.number(body["energy"], "energy"))
    if body.get("volts_before") and body.get("volts_after"):
        parts.append(
            f"{style.number(body['volts_before'], 'voltage')} to {style.number(body['volts_after'], 'voltage')}"
        )
    parts += [word for word in ("crash", "wet") if body.get(word)]
    return ", ".join(parts) or "no figures"


def entry_lines(record: Record, style: Style) -> Iterator[tuple[str, str]]:
    """Yield the figures of an entry, a label and a value each."""
    body = record.body
    if record.kind == "ride":
        yield from _ride_lines(body, style)
    elif record.kind == "check":
        yield from _check_lines(body)
    elif record.kind == "tension":
        yield from _tension_lines(body, style)
    elif record.kind == "board_changed":
        yield from _change_lines(body, style)
    else:
        for key, value in body.items():
            if key != "note" and isinstance(value, str | int | float) and value != "":
                yield key.replace("_", " ").capitalize(), _plain(value, style)
    if body.get("note"):
        yield "Note", str(body["note"])


def _plain(value: str | float, style: Style) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return value if isinstance(value, str) else style.plain(float(value))


def _ride_lines(body: dict[str, Any], style: Style) -> Iterator[tuple[str, str]]:
    for key, label, quantity in (
        ("distance", "Distance", "distance"),
        ("energy", "Energy used", "energy"),
        ("volts_before", "Volts before", "voltage"),
        ("volts_after", "Volts after", "voltage"),
    ):
        if body.get(key) is not None:
            yield label, style.number(body[key], quantity)
    if body.get("energy") and body.get("distance"):
        yield (
            "Energy for each distance",
            style.number(body["energy"] / body["distance"], "energy_per_distance"),
        )
    yield "Crash", "yes" if body.get("crash") else "no"
    yield "Wet", "yes" if body.get("wet") else "no"


def _check_lines(body: dict[str, Any]) -> Iterator[tuple[str, str]]:
    yield "Verdict", check_text(body)
    yield "List", f"{body.get('title', '')}, version {body.get('version', 1)}"
    if "seconds" in body:
        yield "Took", seconds_text(body["seconds"]) + (", fast" if body.get("fast") else "")
    if body.get("breaks"):
        yield "Interrupted", f"{body['breaks']} times" if body["breaks"] > 1 else "once"
    for key, value in body.get("values", {}).items():
        yield key.replace("_", " ").capitalize(), value if isinstance(value, str) else f"{value:g}{GAP}V"
    values = len(body.get("board", {}))
    yield "Saved with it", f"{values} {'value' if values == 1 else 'values'} of the board"


def _tension_lines(body: dict[str, Any], style: Style) -> Iterator[tuple[str, str]]:
    if body.get("pull") is not None:
        yield "Pull", str(style.shown(body["pull"], "force", unit=body.get("unit", "")))
    if body.get("depth") is not None:
        yield "Depth", style.number(body["depth"], "length")
    if body.get("tension") is not None:
        yield "Belt tension", with_error(body["tension"], body.get("error"), style)
    if body.get("floor") is not None and body.get("ceiling") is not None:
        yield "Window", f"{style.number(body['floor'], 'force')} to {style.number(body['ceiling'], 'force')}"
    if word_of(body):
        yield "Verdict", word_of(body)


def _change_lines(body: dict[str, Any], style: Style) -> Iterator[tuple[str, str]]:
    for key, change in body.get("changes", {}).items():
        yield (
            label_of(key),
            f"{_value(key, change.get('was'), style)} to {_value(key, change.get('is'), style)}",
        )


def _value(key: str, value: dict[str, Any] | None, style: Style) -> str:
    field = board_fields().get(key)
    if value is None or field is None:
        return "not set"
    if field.kind == "choice":
        return field.option(str(value["si"])).label
    return style.typed(float(value["si"]), field.quantity, value.get("typed_unit", ""))
