"""Shown text turned into words for the ear: units in full, no signs."""

import re

from logic.units import GAP, MINUS, THIN_SPACE
from screens.tongue import texts

UNITS = texts("spoken")["units"]


def spoken(text: str) -> str:
    """Return a text as it is said.

    >>> spoken("Set to 103 N. Depth 1.5 mm.")
    'Set to 103 newtons. Depth 1.5 millimetres.'
    """
    said = text.replace(THIN_SPACE, "").replace(MINUS, "minus ").replace("±", "plus or minus")
    for unit in sorted(UNITS, key=len, reverse=True):
        said = re.sub(
            rf"(?<=\d)[ {GAP}]{re.escape(unit)}(?![\w/·])", f" {UNITS[unit]}", said, flags=re.UNICODE
        )
    return said.replace(GAP, " ")
