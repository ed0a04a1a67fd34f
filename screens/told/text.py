"""A page as plain text: in lines of one column, so that nothing depends on the width of a letter."""

from screens.page import Page
from screens.told.lines import Told, told


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
