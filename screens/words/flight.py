"""Words of packs on a flight: the arithmetic of a pack, and the text to send."""

from logic.answers.carrying import Flight, PackCard
from logic.units import GAP
from screens.tongue import _, texts
from screens.words import Style

CONTACTS = _("Every connector covered, each pack in its own pouch.")
OFF = _("The board is off and cannot start by accident.")


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


def confirmed(card: PackCard, style: Style) -> str:
    """Return the arithmetic where it gives the very figure on the label, else "": a counter reads one figure."""
    same = watt_hours(card.voltage * card.capacity, style) == watt_hours(card.energy, style)
    return arithmetic(card, style) if same else ""


def rules_read(flight: Flight, today: str) -> str:
    """Return which rules were read, until when they hold, and on a later day that they are over."""
    held = flight.edition
    over = "" if today <= held.until else _(" They are over: ask the airline for those of today.")
    return _("Rules read: {name}, in force {in_force} to {until}.{over}").format(
        name=held.name, in_force=held.in_force, until=held.until, over=over
    )


def place(flight: Flight) -> str:
    """Return where the packs are and how they are kept there, "" while it was not entered."""
    if flight.loose is None:
        return ""
    loose, count = min(flight.loose, len(flight.cards)), len(flight.cards)
    if loose == count:
        return _("Loose, in the cabin. {contacts}").format(contacts=CONTACTS)
    return (
        _("In the board. {off}").format(off=OFF)
        if not loose
        else _("{loose} loose, in the cabin. {contacts} {off}").format(
            loose=loose, contacts=CONTACTS, off=OFF
        )
    )


def counted(flight: Flight) -> str:
    """Return how many packs the large figure stands for."""
    count = len(flight.cards)
    if flight.joined:
        return _("{count} packs joined, counted as one").format(count=count)
    return _("One pack") if count == 1 else _("{count} packs, each").format(count=count)


def large_energy(flight: Flight) -> float:
    """Return the energy that counts for one battery, in J."""
    return sum(card.energy for card in flight.cards) if flight.joined else flight.cards[0].energy


def lines(flight: Flight, chemistry: str, style: Style, today: str) -> list[str]:
    """Return what stands under the large figure on the counter card: what was entered, and nothing more."""
    sums = confirmed(flight.cards[0], style)
    return [
        _("Lithium-ion, {chemistry}").format(chemistry=chemistry) if chemistry else _("Lithium-ion"),
        _("One pack: {sums}").format(sums=sums) if sums else "",
        _("Marked on the case. Tested to UN 38.3."),
        place(flight),
        rules_read(flight, today),
    ]


def verdict_lines(flight: Flight, style: Style, *, by_cells: bool = False) -> list[str]:
    """Return what the best verdict means and what it takes for granted, in sentences.

    `by_cells` says that no watt-hours were entered from the label: those of the cells stand in.
    """
    verdict = flight.best
    if verdict is None:
        return []
    known = {
        "over 160 Wh": not by_cells,
        "not marked": flight.marked == "no",
        "not tested": flight.tested == "no",
    }
    energy = watt_hours(max(battery.energy for battery in verdict.batteries), style)
    sure, open_ = texts("packs")["reasons"], texts("packs")["reasons_open"]
    found = [
        (sure if known.get(reason, True) else open_)[reason].format(energy=energy)
        for reason in verdict.reasons
    ]
    if verdict.card and flight.hopes:
        found.append(
            _("Only if {hopes}.").format(
                hopes="; ".join(texts("packs")["hopes"][key] for key in flight.hopes)
            )
        )
    if flight.joined:
        found.append(_("Joined by a lead they count as one: our reading of the rules. Take them apart."))
    return found


def where_lines(flight: Flight) -> list[str]:
    """Return where packs of this size may be carried, nothing for those that may not."""
    verdict = flight.best
    if verdict is None or not verdict.card:
        return []
    rule = max(verdict.batteries, key=lambda battery: battery.energy).rule
    spares = int(rule.cells["spares"])
    return [
        texts("packs")["installed"][rule.text("installed")],
        texts("packs")["spare"][rule.text("spare")].format(spares=spares),
    ]


def as_text(flight: Flight, board: str, chemistry: str, style: Style, today: str) -> str:
    """Return the card as a text to send, with the edition of the rules."""
    verdict = flight.verdict
    head = texts("packs")["flight"][verdict.outcome] if verdict is not None else ""
    return "\n".join(
        part
        for part in (
            _("Packs of an electric board ({board})").format(board=board),
            f"{counted(flight)}: {watt_hours(large_energy(flight), style)}{GAP}Wh",
            *lines(flight, chemistry, style, today),
            *verdict_lines(flight, style),
            *where_lines(flight),
            f"{head}.",
            texts("packs")["said"]["airline"],
        )
        if part
    )
