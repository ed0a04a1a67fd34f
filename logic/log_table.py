"""The log as a plain table for other programs: ISO dates, point decimals, units in the heads."""

import csv
import io
from collections.abc import Iterable, Mapping

from logic.store import Record
from logic.units import factor

COLUMNS = (
    ("distance", "distance [km]", "km", "m"),
    ("energy", "energy [Wh]", "W*h", "J"),
    ("volts_before", "before [V]", "V", "V"),
    ("volts_after", "after [V]", "V", "V"),
    ("tension", "tension [N]", "N", "N"),
    ("error", "error [N]", "N", "N"),
    ("pull", "pull [N]", "N", "N"),
    ("depth", "depth [mm]", "mm", "m"),
    ("torque", "torque [N·m]", "N*m", "N*m"),
)
"""Figures of the entries: field of the entry, head of the column, unit shown and unit inside."""

WORDS = (
    ("belt", "belt"),
    ("joint", "joint"),
    ("title", "list"),
    ("verdict", "verdict"),
    ("word", "belt is"),
    ("note", "note"),
)
FLAGS = ("crash", "wet")


def log_table(records: Iterable[Record], boards: Mapping[str, str]) -> str:
    """Return the entries as comma-separated text, a head line first; `boards` names each board by its id.

    The last column holds the whole entry as it is kept, so that nothing is lost: also what cannot be read.
    """
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    heads = [head for _, head, _, _ in COLUMNS]
    writer.writerow(
        ["entry", "board", "at", "kind", *heads, *[head for _, head in WORDS], *FLAGS, "corrected", "body"]
    )
    for record in records:
        said = record.body
        numbers = [_number(getattr(said, key, None), unit, si) for key, _, unit, si in COLUMNS]
        words = [_cell(getattr(said, key, "")) for key, _ in WORDS]
        flags = ["yes" if getattr(said, key, False) else "" for key in FLAGS]
        writer.writerow(
            [
                record.id,
                _cell(boards.get(record.board, record.board)),
                record.at.isoformat(timespec="seconds"),
                _cell(record.kind),
                *numbers,
                *words,
                *flags,
                "yes" if record.corrected_by is not None else "",
                _cell(record.text),
            ]
        )
    return out.getvalue()


def _number(value: object, unit: str, si: str) -> str:
    if not isinstance(value, int | float):
        return ""
    return f"{value / factor(unit, si):.6g}"


def _cell(text: object) -> str:
    """Return a text that a spreadsheet takes for one: what begins like a formula gets a quote before it.

    >>> _cell("=1+1"), _cell("belt")
    ("'=1+1", 'belt')
    """
    said = str(text)
    return f"'{said}" if said[:1] in ("=", "+", "-", "@", "\t", "\r") else said
