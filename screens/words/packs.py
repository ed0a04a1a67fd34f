"""Words of the pack answers: hazards and times; their labels are in assets/words."""

from logic.answers.hazards import Hazard
from logic.units import GAP
from screens.tongue import texts
from screens.words import Style


def hazard_text(hazard: Hazard, style: Style, **more: str) -> str:
    """Return the sentence of a hazard in the person's units."""
    numbers = {name: style.number(value, quantity) for name, value, quantity in hazard.numbers}
    return texts("packs")["hazards"][hazard.key].format(**numbers, **more)


def about_hours(seconds: float) -> str:
    r"""Return a time as a person says it: to half an hour, below one hour to ten minutes. No line breaks in it.

    >>> about_hours(2.59 * 3600), about_hours(3.1 * 3600), about_hours(0.42 * 3600)
    ('2\xa01/2\xa0h', '3\xa0h', '30\xa0min')
    """
    halves = round(seconds / 1800.0)
    if halves < 2:  # noqa: PLR2004  (two halves of an hour)
        return f"{max(10, 10 * round(seconds / 600.0))}{GAP}min"
    whole = f"{halves // 2}{GAP}1/2" if halves % 2 else f"{halves // 2}"
    return f"{whole}{GAP}h"
