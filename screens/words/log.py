"""Log entries in words: the line of the list, the lines of the entry's own page."""

from collections.abc import Callable, Iterator
from dataclasses import fields

from logic import log
from logic.answers.spares import joint_name
from logic.answers.tension_entry import word_of
from logic.board import Value, board_fields
from logic.store import Record
from screens.tongue import _, texts
from screens.words import Style, begun, label_of, span, within
from screens.words.checks import check_text, check_tone, seconds_text
from screens.words.tension import SAID, SIDES, tension_text, with_error

KINDS = texts("log")["kinds"]
"""What a filter is called, by the kind of entry it shows."""
FIELDS = texts("log")["fields"]
"""What a figure is called, by its name in the entry; one without words, as the rule that is put off, is not shown."""

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
    said = record.body
    icon = check_tone(said) if isinstance(said, log.Check) else ICONS.get(record.kind, "")
    title = TITLES[type(said)](record, style)
    extra = [f"{record.at:%Y-%m-%d %H:%M}"]
    if isinstance(said, log.Check) and said.seconds is not None:
        extra += [_took(said), *([_("interrupted")] if said.breaks else [])]
    if isinstance(said, log.Snooze) and said.reason:
        extra.append(said.reason)
    if isinstance(said, log.Unread):
        extra.append(_("Kept as it is"))
    if not isinstance(said, log.Work | log.Note) and said.note:
        extra.append(said.note)
    if record.corrected_by is not None:
        extra.append(_("corrected"))
    return title, ". ".join(extra), icon


TITLES: dict[type[log.Entry], Callable[[Record, Style], str]] = {
    log.Ride: lambda record, style: _("Ride: {ride}").format(ride=ride_text(record.body, style)),
    log.Check: lambda record, _style: f"{record.body.title}: {within(check_text(record.body, ', '))}",
    log.Tension: lambda record, style: _("Tension, {belt} belt: {tension_text}").format(
        belt=SIDES[record.body.belt], tension_text=tension_text(record, style)
    ),
    log.Tightening: lambda record, _style: _("Joint: {joint}").format(joint=joint_name(record.body.joint)),
    log.Work: lambda record, _style: _("Work: {note}").format(note=record.body.note),
    log.BeltFitted: lambda record, _style: _("New {belt} belt").format(belt=SIDES[record.body.belt]),
    log.Note: lambda record, _style: record.body.note,
    log.BoardChanged: lambda record, _style: _("Board changed: {list}").format(
        list=", ".join(map(label_of, record.body.changes))
    ),
    log.Snooze: lambda record, _style: _("Put off: {what}").format(what=record.body.name or record.body.rule),
    log.Unread: lambda record, _style: f"{KINDS.get(record.kind, 'Entry')}: {unread_text(record.body)}",
}
"""The title of each kind of entry."""


def unread_text(said: log.Unread) -> str:
    """Return why an entry is not shown."""
    return _("Written by a later version") if said.later else _("Could not be read")


def ride_text(ride: log.Ride, style: Style) -> str:
    """Return a ride on one line."""
    parts = []
    if ride.distance:
        parts.append(style.number(ride.distance, "distance"))
    if ride.energy:
        parts.append(style.number(ride.energy, "energy"))
    if ride.volts_before and ride.volts_after:
        parts.append(
            span(style.number(ride.volts_before, "voltage"), style.number(ride.volts_after, "voltage"))
        )
    parts += [word for word, was in ((_("crash"), ride.crash), (_("wet"), ride.wet)) if was]
    return ", ".join(parts) or _("no figures")


def _took(check: log.Check) -> str:
    return seconds_text(check.seconds or 0.0) + (_(", fast") if check.fast else "")


def entry_lines(record: Record, style: Style) -> Iterator[tuple[str, str]]:
    """Yield the figures of an entry, a label and a value each."""
    said = record.body
    if isinstance(said, log.Ride):
        yield from _ride_lines(said, style)
    elif isinstance(said, log.Check):
        yield from _check_lines(said, style)
    elif isinstance(said, log.Tension):
        yield from _tension_lines(said, style)
    elif isinstance(said, log.BoardChanged):
        for key, change in said.changes.items():
            yield label_of(key), span(_value(key, change.was, style), _value(key, change.now, style))
    elif isinstance(said, log.Unread):
        yield unread_text(said), _("It is kept as it is, and counts for nothing until it can be read.")
        yield _("As it is kept"), record.text
    else:
        yield from _plain_lines(said, style)
    if said.note:
        yield _("Note"), said.note


def _plain_lines(said: log.Entry, style: Style) -> Iterator[tuple[str, str]]:
    for one in fields(said):
        value = getattr(said, one.name)
        if one.name in FIELDS and isinstance(value, str | int | float) and value != "":
            yield FIELDS[one.name], _plain(one.name, value, style)


def _plain(name: str, value: str | float, style: Style) -> str:
    if isinstance(value, bool):
        return _("yes") if value else _("no")
    if isinstance(value, str):
        words = {"belt": SIDES, "tool": texts("joints")["tools"], "locker": texts("joints")["grades"]}
        return joint_name(value) if name == "joint" else words.get(name, {}).get(value, value)
    return style.number(float(value), "torque")


def _ride_lines(ride: log.Ride, style: Style) -> Iterator[tuple[str, str]]:
    for value, label, quantity in (
        (ride.distance, _("Distance"), "distance"),
        (ride.energy, _("Energy used"), "energy"),
        (ride.volts_before, _("Volts before"), "voltage"),
        (ride.volts_after, _("Volts after"), "voltage"),
        (ride.energy_per_distance, _("Energy for each distance"), "energy_per_distance"),
    ):
        if value is not None:
            yield label, style.number(value, quantity)
    for label, was in ((_("Crash"), ride.crash), (_("Wet"), ride.wet)):
        yield label, _("yes") if was else _("no")


def _check_lines(check: log.Check, style: Style) -> Iterator[tuple[str, str]]:
    yield _("Verdict"), check_text(check)
    yield _("List"), _("{title}, version {number}").format(title=check.title, number=check.version)
    if check.seconds is not None:
        yield _("Took"), _took(check)
    if check.breaks:
        yield (
            _("Interrupted"),
            _("{count} times").format(count=check.breaks) if check.breaks > 1 else _("once"),
        )
    for key, value in check.values.items():
        yield (
            FIELDS.get(key, begun(key.replace("_", " "))),
            value if isinstance(value, str) else style.typed(float(value), "voltage"),
        )
    values = len(check.board)
    counted = _("{count} value of the board") if values == 1 else _("{count} values of the board")
    yield _("Saved with it"), counted.format(count=values)


def _tension_lines(said: log.Tension, style: Style) -> Iterator[tuple[str, str]]:
    if said.pull is not None:
        yield _("Pull"), str(style.shown(said.pull, "force", unit=said.unit))
    if said.depth is not None:
        yield _("Depth"), style.number(said.depth, "length")
    if said.tension is not None:
        yield _("Belt tension"), with_error(said.tension, said.error, style)
    if said.floor is not None and said.ceiling is not None:
        yield _("Right from"), span(style.number(said.floor, "force"), style.number(said.ceiling, "force"))
    if word_of(said):
        yield _("Verdict"), SAID[word_of(said)]


def _value(key: str, value: Value | None, style: Style) -> str:
    field = board_fields().get(key)
    if value is None or field is None:
        return _("not set")
    if field.kind == "choice":
        return next((one.label for one in field.options if one.key == value.si), str(value.si))
    if isinstance(value.si, str):
        return value.si
    return style.typed(value.si, field.quantity, value.typed_unit)
