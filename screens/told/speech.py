"""A page in spoken words: sentences for the ear, units in full."""

from screens.page import Page
from screens.told.lines import told
from screens.words.spoken import spoken


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
