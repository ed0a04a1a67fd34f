"""Words of the pack answers: labels, hazards, outcomes."""

from logic.answers.hazards import Hazard
from logic.units import GAP
from screens.tongue import _, texts
from screens.words import Style

TEXTS = texts("packs")

ENERGY = TEXTS["energy"]
AT_WORST = _("At 20 km/h, level dry road, motors alone, pack nearly empty. The weakest brake of any charge.")
AFTER_REACTION = _("The longest of any charge, once the brake is on: add the distance while you react.")
"""What a brake's figures hold for, wherever they stand."""

PARTS = TEXTS["parts"]
"""The part that limits first, after "Held by"."""

RANGE = TEXTS["range"]
CHARGING = TEXTS["charging"]
JOINING = TEXTS["joining"]
WIRING = TEXTS["wiring"]
DESCENT = TEXTS["descent"]
CARD = TEXTS["card"]
TEMPERATURES = {"motor temperature": "Motor", "controller temperature": "Controller"}

HAZARDS = TEXTS["hazards"]
"""Sentence of each hazard: what can happen and what to do."""


def hazard_text(hazard: Hazard, style: Style, **more: str) -> str:
    """Return the sentence of a hazard in the person's units."""
    numbers = {name: style.number(value, quantity) for name, value, quantity in hazard.numbers}
    return HAZARDS[hazard.key].format(**numbers, **more)


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


OUTCOMES = TEXTS["outcomes"]

FLIGHT = TEXTS["flight"]
HOPES = TEXTS["hopes"]
"""What a verdict takes for granted as long as nobody said it."""
REASONS = TEXTS["reasons"]
INSTALLED = TEXTS["installed"]
SPARE = TEXTS["spare"]
WIRE = TEXTS["wire"]
