"""A page in words alone: as plain text in lines of one column, and as sentences for the ear, units in full."""

from screens.page import Page
from screens.told.lines import Told, told
from screens.words.spoken import spoken


def as_text(page: Page) -> str:
    """Return what a page says."""
    return "\n".join(line for one in told(page) for line in _lines(one)) + "\n"


def _lines(one: Told) -> list[str]:
    note = f" ({one.note})" if one.note and one.label else ""
    if one.level == 1:
        return [one.text, "=" * len(one.text)]
    if one.level:
        return ["", one.text, "-" * len(one.text), *([one.note] if one.note else [])]
    said = f"{one.label}: {one.text or one.note}{note if one.text else ''}" if one.label else one.text
    return [said, *([one.note] if one.note and not one.label else [])]


def as_speech(page: Page) -> str:
    """Return what is said aloud of a page, its title first."""
    return spoken(
        " ".join(
            _sentence(part) for one in told(page) for part in (*_head(one.label, one.text), one.note) if part
        )
    )


def _head(label: str, text: str) -> tuple[str, ...]:
    return (", ".join(part for part in (label.capitalize() if label.isupper() else label, text) if part),)


def _sentence(text: str) -> str:
    text = text.strip().replace("\n", " ")
    return text if text[-1:] in ".!?:" else f"{text}."
