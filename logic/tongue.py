"""The language: every sentence passes through `_`, its numbers put in by name afterwards.

A translation is a compiled catalogue in assets/languages; without one the sentences are shown as they are written. What
is written in tables and lists is said as they are read: `SAID` names the columns.
"""

from collections.abc import Callable
from gettext import NullTranslations, translation
from pathlib import Path
from typing import Any

LANGUAGES = Path(__file__).resolve().parent.parent / "assets" / "languages"

SAID: dict[str, tuple[str, ...]] = {
    "air_rules": ("text",),
    "asked": ("label", "help"),
    "belt_disagree": ("text",),
    "belt_practice": ("label",),
    "belt_ways": ("takes",),
    "belt_wear": ("sign", "look", "causes", "do"),
    "board_fields": ("groups", "label", "help"),
    "care": ("text",),
    "chemistry": ("reason",),
    "controller_card": ("text",),
    "feel": ("change", "does"),
    "friction": ("name",),
    "glossary": ("word", "also", "what", "find"),
    "joining_rules": ("text",),
    "joint_fields": ("label", "help"),
    "joint_kinds": ("name", "words", "order", "again", "reuse", "no_locker", "how"),
    "lookalikes": ("warning",),
    "materials": ("name",),
    "measuring_tools": ("label",),
    "power_up": ("text",),
    "reach_steps": ("step",),
    "spares": ("part", "detail"),
    "threadlocker_grades": ("label", "need", "removal"),
    "threadlocker_places": ("name", "why"),
    "threadlocker_steps": ("step",),
    "threadlocker_surfaces": ("name",),
    "tools": ("socket", "set_screw", "button", "nut"),
    "upkeep_rules": ("name", "why", "never_name", "never_why"),
    "checklists": (
        *("title", "short", "pause", "halt", "halted", "action", "state", "how", "why", "fix", "spoken"),
        *("signs", "fixes", "stop_signs", "hazard", "care", "tool", "options"),
        *("name", "check", "remedy", "words", "text"),
    ),
    "set_ups": ("name", "about"),
    "ways": ("title", "detail"),
    "page_values": ("title", "stop", "first_title", "values_title"),
    "not_found": ("what", "text"),
    "sources": ("note",),
}
"""By file of assets/tables, or by folder or file of assets, the columns whose texts are said as they are read.

A text that also names its row, or is kept in boards and logs, is none of them: it is said where it is shown.
"""

OURS = ("derived", "practice", "memory")
"""Sources that are no print: the place of a row that names one is a sentence of ours."""

SHOWN: dict[str, tuple[str, ...]] = {
    "units": ("shown",),
    "torque_constants": ("meaning",),
    "property_classes": ("strength",),
    "property_grades": ("strength",),
}
"""Columns whose texts name the row or the choice, and are said where they are shown."""

_spoken: list[NullTranslations] = [
    translation("deckhand", str(LANGUAGES), fallback=True) if LANGUAGES.is_dir() else NullTranslations()
]


def speak(language: str) -> None:
    """Take the sentences of a language from now on; those of an unknown one are as they are written."""
    _spoken[0] = translation("deckhand", str(LANGUAGES), [language], fallback=True)


def take(catalogue: NullTranslations) -> None:
    """Take a catalogue that is no file: the made-up language that shows which sentence was never passed through here."""
    _spoken[0] = catalogue


def _(text: str) -> str:
    """Return a sentence in the language that is spoken. Of no words a catalogue would tell who wrote it."""
    return _spoken[0].gettext(text) if text else ""


def said(file: str, page: Any) -> Any:  # noqa: ANN401  (whatever a file holds)
    """Return what a file of assets holds, in the language that is spoken."""
    return page if type(_spoken[0]) is NullTranslations else through(page, SAID.get(file, ()), _)


def through(page: Any, columns: tuple[str, ...], say: Callable[[str], str], source: str = "") -> Any:  # noqa: ANN401
    """Return plain data with each text under some columns put through `say`, and each place of a `source` that is no print.

    >>> through({"row": [{"name": "a", "why": ["b"], "source": "practice", "where": "c"}]}, ("why",), str.upper)
    {'row': [{'name': 'a', 'why': ['B'], 'source': 'practice', 'where': 'C'}]}
    """
    if isinstance(page, list):
        return [through(cell, columns, say, source) for cell in page]
    if not isinstance(page, dict):
        return page
    source = str(page.get("source", source))
    return {
        name: _whole(cell, say)
        if name in columns or (name == "where" and source in OURS)
        else through(cell, columns, say, source)
        for name, cell in page.items()
    }


def _whole(cell: Any, say: Callable[[str], str]) -> Any:  # noqa: ANN401
    if isinstance(cell, dict):
        return {name: _whole(part, say) for name, part in cell.items()}
    return [_whole(part, say) for part in cell] if isinstance(cell, list) else say(cell)
