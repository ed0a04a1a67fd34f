"""Carrying packs by air: first whether they are marked and tested, then their class by dated rules."""

from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.si import Joule
from logic.tables import Row, raw, rows

ANSWERS = ("yes", "no", "not known")
"""Answers to "is it marked" and "is it tested"."""

ROUNDING = 1e-9
"""Relative slack, so that a pack of exactly 100 Wh belongs to the class up to 100 Wh."""


@frozen
class Edition:
    """The edition of the rules, the day it came into force and the last day it holds, as year-month-day."""

    name: str
    in_force: str
    until: str


@frozen
class Carried:
    """One battery as an airline counts it: its energy, its class and the row of the rules."""

    energy: Joule
    kind: str
    rule: Row


@frozen
class TravelVerdict:
    """What may fly.

    The outcomes are "do not pack", "not as baggage", "operator approval" and "allowed, ask the airline".
    `reasons` say why the first two: first what no label and no test can mend. `card` tells whether there is
    anything to show at a counter.
    """

    outcome: str
    reasons: tuple[str, ...]
    batteries: tuple[Carried, ...]
    card: bool


def edition() -> Edition:
    """Return the edition the rules were read in.

    >>> edition().in_force, edition().until
    ('2026-03-27', '2026-12-31')
    """
    page = raw("air_travel")
    return Edition(page["edition"], page["in_force"], page["until"])


def rules() -> tuple[Row, ...]:
    """Return the rules to read before a flight: texts `key` and `text`, with source and standing."""
    return rows("air_rules")


def air_class(*, energy: Joule) -> Row:
    """Return the row of the class a battery of this energy falls in.

    >>> air_class(energy=100.0 * 3600).text("class")
    'up to 100 Wh'
    >>> air_class(energy=100.1 * 3600).text("class")
    'over 100 to 160 Wh'
    """
    positive(energy=energy)
    for row in rows("air_travel"):
        if "up_to" not in row or energy <= row.cells["up_to"] * (1.0 + ROUNDING):
            return row
    raise AssertionError("the last row of air_travel has no end")


def counted(*, energies: tuple[Joule, ...], joined: bool) -> tuple[Joule, ...]:
    """Return the energies as an airline counts them: packs joined by a lead are one battery (our reading).

    >>> counted(energies=(324000.0, 324000.0), joined=True)
    (648000.0,)
    """
    if not energies:
        raise InputError("energies", energies, "empty")
    for energy in energies:
        positive(energy=energy)
    return (sum(energies),) if joined else energies


def verdict(  # noqa: PLR0913  (six plain questions to the person, each its own)
    *, energies: tuple[Joule, ...], joined: bool, marked: str, tested: str, spares: int, damaged: bool = False
) -> TravelVerdict:
    """Return what may fly: `energies` of each separate pack, `spares` of them not in the board.

    Raises InputError for an answer that is not in ANSWERS and for more spares than packs.

    >>> verdict(energies=(324000.0,), joined=False, marked="yes", tested="not known", spares=0).outcome
    'do not pack'
    """
    for field, answer in (("marked", marked), ("tested", tested)):
        if answer not in ANSWERS:
            raise InputError(field, answer, "unknown answer")
    if not 0 <= spares <= len(energies):
        raise InputError("spares", spares, "range", low=0.0, high=float(len(energies)))
    batteries = tuple(
        Carried(energy, rule.text("class"), rule)
        for energy in counted(energies=energies, joined=joined)
        for rule in (air_class(energy=energy),)
    )
    largest = max(batteries, key=lambda battery: battery.energy)
    too_large = largest.rule.text("installed") == "not as baggage"
    many = not too_large and spares > int(largest.rule.cells["spares"])
    found = (
        ("damaged", damaged, "do not pack"),
        ("over 160 Wh", too_large, "not as baggage"),
        ("not marked", marked != "yes", "do not pack"),
        ("not tested", tested != "yes", "do not pack"),
        ("too many spares", many, "not as baggage"),
    )
    reasons = tuple(reason for reason, wrong, _ in found if wrong)
    outcomes = {outcome for _, wrong, outcome in found if wrong}
    for outcome in ("do not pack", "not as baggage"):
        if outcome in outcomes:
            return TravelVerdict(outcome, reasons, batteries, card=False)
    outcome = "allowed, ask the airline"
    if largest.rule.text("installed") == "operator approval":
        outcome = "operator approval"
    return TravelVerdict(outcome, (), batteries, card=True)
