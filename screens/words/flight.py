"""Words of packs on a flight: the arithmetic of a pack, and the text to send."""

from logic.answers.carrying import Flight, PackCard
from logic.units import GAP
from screens.words import Style
from screens.words.packs import FLIGHT, INSTALLED, REASONS, SPARE

CONTACTS = "Every connector covered, each pack in its own pouch."


def watt_hours(energy: float, style: Style) -> str:
    """Return an energy as an airline reads it: one decimal, never rounded past an edge.

    >>> watt_hours(160.1 * 3600, Style())
    '160.1'
    """
    return style.shown(energy, "energy", digits=4, unit="Wh").number


def arithmetic(card: PackCard, style: Style) -> str:
    """Return volts times amp-hours of a pack, "" while they are not known."""
    if not card.voltage:
        return ""
    volts, charge = style.number(card.voltage, "voltage"), style.number(card.capacity, "charge")
    return f"{volts} × {charge} = {style.number(card.voltage * card.capacity, 'energy', 4)}"


def counted(flight: Flight) -> str:
    """Return how many packs the large figure stands for."""
    count = len(flight.cards)
    if flight.joined:
        return f"{count} packs joined, counted as one"
    return "One pack" if count == 1 else f"{count} packs, each"


def large_energy(flight: Flight) -> float:
    """Return the energy that counts for one battery, in J."""
    return sum(card.energy for card in flight.cards) if flight.joined else flight.cards[0].energy


def lines(flight: Flight, chemistry: str, style: Style) -> list[str]:
    """Return what stands under the large figure on the counter card."""
    card = flight.cards[0]
    sums = arithmetic(card, style)
    loose = min(flight.loose, len(flight.cards))
    place = (
        "In the board."
        if not loose
        else "Loose, in the cabin."
        if loose == len(flight.cards)
        else f"{loose} loose, in the cabin."
    )
    return [
        f"Lithium-ion, {chemistry}" if chemistry else "Lithium-ion",
        f"One pack: {sums}" if sums else "",
        "Marked on the case. Tested to UN 38.3.",
        f"{place} {CONTACTS}",
        "The board is off and cannot start by accident.",
    ]


def verdict_lines(flight: Flight) -> list[str]:
    """Return what the verdict means, in sentences."""
    verdict = flight.verdict
    if verdict is None:
        return []
    found = [REASONS[reason] for reason in verdict.reasons]
    rule = max(verdict.batteries, key=lambda battery: battery.energy).rule
    if verdict.card:
        found += [
            INSTALLED[rule.text("installed")],
            SPARE[rule.text("spare")].format(spares=int(rule.cells["spares"])),
        ]
    if flight.joined:
        found.append("Joined by a lead they count as one: our reading of the rules. Take them apart.")
    return found


def as_text(flight: Flight, board: str, chemistry: str, style: Style) -> str:
    """Return the card as a text to send, with the edition of the rules."""
    verdict = flight.verdict
    head = FLIGHT[verdict.outcome] if verdict is not None else ""
    return "\n".join(
        part
        for part in (
            f"Packs of an electric board ({board})",
            f"{counted(flight)}: {watt_hours(large_energy(flight), style)}{GAP}Wh",
            *lines(flight, chemistry, style),
            *verdict_lines(flight),
            f"{head}. Rules read: {flight.edition.name}, in force {flight.edition.in_force}.",
            "Question to the airline: will you carry this board and these packs? An answer in writing is wanted.",
        )
        if part
    )
