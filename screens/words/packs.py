"""Words of the pack answers: labels, hazards, outcomes."""

from logic.answers.hazards import Hazard
from logic.units import GAP
from screens.words import Style

ENERGY = {
    "energy": "Energy of all packs",
    "energy_each": "Energy of one pack",
    "full": "Full",
    "nominal": "Nominal",
    "empty": "Empty",
    "capacity": "Amp-hours, all packs",
    "resistance": "Resistance, all packs",
    "resistance_power": "Resistance if these are power cells",
    "resistance_energy": "Resistance if these are energy cells",
    "limit_drive": "Most amps, drive",
    "limit_brake": "Most amps, brake, for long",
    "limit_burst": "Most amps, brake, about 10 s",
    "slows_as_set": "Brake as set slows by",
    "stop_as_set": "Stop from {speed}, brake as set",
    "slows_for_long": "Long-run limit slows by",
    "stop_for_long": "Stop from {speed}, long-run limit",
    "slows_burst": "10 s limit slows by",
    "stop_burst": "Stop from {speed}, 10 s limit",
    "full_braking": "Volts when a full pack brakes",
    "sag": "Sag at {current}",
    "loaded_voltage": "Volts at {current}, nominal pack",
    "pack_heat": "Heat in the packs at {current}",
    "cell_current": "Each cell at {current}",
    "short": "Dead short, full pack",
    "cells_mass": "Bare cells",
    "packs_mass": "Finished packs, about",
}
AT_WORST = "At 20 km/h, level dry road, motors alone, pack nearly empty. The weakest brake of any charge."
AFTER_REACTION = "The longest of any charge, once the brake is on: add the way of the reaction."
"""What a brake's figures hold for, wherever they stand."""

PARTS = {
    "cell": "the cells",
    "bms": "the BMS",
    "fuse": "the fuse",
    "connector": "the connector",
    "controller": "the controller",
}
"""The part that limits first, after "Held by"."""

RANGE = {
    "range": "Range",
    "usable": "Energy for riding",
    "per_distance": "Energy on the way at {speed}",
    "range_modelled": "Range, modelled at {speed}",
    "range_cold": "The same with cells at {cold}",
    "per_distance_carried": "Learnt, at {speed} and this climb",
    "per_distance_learnt": "Learnt from the log, as ridden",
    "steady_battery": "Battery amps, whole board",
    "steady_power": "Power from the pack",
    "steady_heat": "Heat of one winding",
}
CHARGING = {
    "most": "Charger, at most",
    "cell_amps": "Each cell gets",
    "rate": "Charge rate",
    "time": "Time on the charger",
    "full": "Charger volts for these packs",
    "missing": "To put in",
    "refill": "Energy to put in",
    "wall": "From the wall socket",
    "heat": "Heat in the pack while charging",
}
JOINING = {
    "allowed": "Join below a difference of",
    "apart": "Measured difference",
    "joining_current": "Amps at the instant of joining, at most",
    "joining_heat": "Heat at that instant, at most",
    "moved": "Charge that moves over",
    "heat_in_all": "Heat until both are level",
    "settles": "Level after about",
    "charge_limit": "Charge limit of the lower pack",
    "loop": "Resistance of the loop, low end",
    "capacity_joined": "Amp-hours of the board's packs",
    "full_in_series": "Both in series, full",
}
WIRING = {
    "fuse": "Fuse",
    "riding": "Riding current, root mean square",
    "closed_low": "This wire in a closed deck, careful figure",
    "closed_high": "This wire in a closed deck, high figure",
    "free_low": "This wire in free air, careful figure",
    "free_high": "This wire in free air, high figure",
    "gauge": "Gauge (AWG)",
    "per_length": "Resistance of one wire, warm, at most",
    "drop": "Volts lost at the battery limit, at most",
    "wire_heat": "Heat in one wire, riding, at most",
    "short_at_end": "Dead short at the end of the lead",
    "stands_short": "The wire stands that short for",
    "spark_energy": "Energy of the spark",
    "spark_current": "Amps at bare contact, at most",
    "precharge_time": "Hold the resistor on, at least",
    "precharge_current": "Amps through the resistor, first instant",
    "precharge_power": "Heat in the resistor, first instant",
    "full": "Meter shows at most",
    "empty": "Meter shows at least",
}
DESCENT = {
    "drop_back": "Drop this charge can take back",
    "volts": "Volts when the brake goes on",
    "full": "Full charge",
    "to_full": "Brake amps that just reach full volts",
    "room": "Room left in the packs",
    "comes_back": "Energy that comes back on this hill, at most",
    "slows_as_set": "Brake as set slows by",
    "stop_as_set": "Stop from {speed}, brake as set",
}
CARD = {
    "limit_drive_each": "Battery amps, drive, each controller",
    "limit_brake_each": "Battery amps, brake, each controller",
    "motor_drive": "Motor amps, drive, each motor",
    "motor_brake": "Motor amps, brake, each motor",
    "limit_drive": "Battery amps, drive, whole board",
    "limit_brake": "Battery amps, brake, whole board",
    "slows_for_long": "The motors alone slow by",
    "stop_for_long": "The motors alone stop from {speed} in",
    "limit_burst_each": "Brake for about 10 s only, each controller",
    "limit_burst": "Brake for about 10 s only, whole board",
    "low_start": "Low voltage: hold back from",
    "low_end": "Low voltage: stop at",
    "full": "Full pack",
}
TEMPERATURES = {"motor temperature": "Motor", "controller temperature": "Controller"}

HAZARDS = {
    "pack out": "This pack is out of use: {sign}. It can burn at any moment. Do not charge, ride, join or carry it.",
    "charger other series": (
        "Wrong charger: made for another cell count. Cells can burst and burn. Unplug it. Right: {low} to {high}."
    ),
    "charger other chemistry": (
        "Wrong charger: made for another chemistry. Cells can burst and burn. Unplug it. Right: {low} to {high}."
    ),
    "charger too high": (
        "Wrong charger: too many volts for these cells. They can burst and burn. Unplug it. Right: {low} to {high}."
    ),
    "charger too low": (
        "Wrong charger: its volts fit no pack like this. Wrong parts can burn. Unplug it. Right: {low} to {high}."
    ),
    "charger leaves part full": (
        "A charger of fewer volts leaves these packs part full and their cells unbalanced. Full takes {low} to {high}."
    ),
    "charging over any limit": (
        "Each cell gets {asked}, more than cells usually stand. It can overheat and burn."
        " Use fewer amps, or enter the limit on its sheet."
    ),
    "charging over cell limit": (
        "Each cell gets {asked}, its limit is {allowed}. It can overheat and burn. Use a charger of fewer amps."
    ),
    "charging below freezing": (
        "Cells below freezing: charging plates metal inside and can start a fire later. Warm the pack indoors first."
    ),
    "charging hot": "Cells too hot to charge. They can fail and burn. Let the pack cool below 40 °C first.",
    "charging cold": "Cold cells, 0 to 5 °C: charge slowly, or warm the pack first. Fast charging harms them.",
    "charging warm": "Warm cells: let the pack cool first. Heat while charging ages and swells them.",
    "look at the cell sheet": "Each cell gets {asked}, more than is usual. Look at the charge limit on its sheet.",
    "charger over BMS": "The charger gives more than the BMS lets in: it will open and charging stops.",
    "series differ": (
        "Cell counts differ: joined in parallel, one pack drives the other until it burns. Do not join them."
    ),
    "chemistry differs": "Chemistries differ: joined, one pack overcharges the other until it burns. Do not join them.",
    "difference too large": (
        "{asked} apart, {allowed} at most. Joining drives a current that can start a fire. Charge both full first."
    ),
    "amp-hours differ": (
        "Amp-hours differ: in series the smaller pack is driven backwards and can burn. Do not join them."
    ),
    "charge differs": (
        "{asked} apart, {allowed} at most: in series the lower pack is driven backwards and can burn. Charge both full."
    ),
    "volts outside the pack": (
        "A reading lies outside {low} to {high}. A harmed pack can burn. Measure again; do not join such a pack."
    ),
    "series lead": (
        "A series lead across packs already in parallel is a dead short. It burns. Take the parallel lead off first."
    ),
    "series over the controller": (
        "{asked} full, the controller stands {allowed}. It can burst while riding. Do not join them in series."
    ),
    "bms opens first": (
        "The BMS can open at {allowed}, the controller asks {asked}. Brakes are gone then. Set the controller lower."
    ),
    "fuse opens first": (
        "The fuse can open at {allowed}, the controller asks {asked}. Brakes are gone then. Set the controller lower."
    ),
    "over cell limit": (
        "The cells stand {allowed} in all, the controller asks {asked}. They can overheat. Set the controller lower."
    ),
    "over connector limit": (
        "The connector stands {allowed}, the controller asks {asked}. It can melt while riding. Set the controller lower."
    ),
    "braking bms opens first": (
        "Braking at {asked} can open the BMS at {allowed}. Brakes are gone then. Set the brake lower."
    ),
    "braking fuse opens first": (
        "Braking at {asked} can open the fuse at {allowed}. Brakes are gone then. Set the brake lower."
    ),
    "braking over cell limit": (
        "The cells take {allowed} in all, the brake gives {asked}. They can fail and burn. Set the brake lower."
    ),
    "braking over connector limit": (
        "The connector stands {allowed}, the brake gives {asked}. It can melt. Set the brake lower."
    ),
    "full pack cuts out": "Full pack: the brake lifts the volts above full charge and may cut out at once.",
    "may cut out at once": (
        "At this charge the brake lifts the volts above full: it may cut out at once. Start lower, or walk down."
    ),
    "full before the bottom": (
        "The packs are full before the bottom: the brake may cut out on the hill. Start with less charge, or walk."
    ),
    "start lower": "There is room, but long hills are better begun at 90 % charge or less.",
    "wire too thin": "The lead is too thin for {asked} in a closed deck. Its insulation can melt. Take thicker wire.",
    "no fuse fits": (
        "No fuse fits: the ride needs {low}, the wire carries {high} in a closed deck and can burn."
        " Thicker wire or fewer amps."
    ),
    "fuse above the wire": (
        "The fuse of {asked} is above what the wire carries in a closed deck, {allowed}. It can burn."
        " Take a smaller fuse."
    ),
}
"""Sentence of each hazard, at most 25 words: what can happen and what to do."""


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


OUTCOMES = {
    "no braking": "No current may go back into the pack: the motors do not brake.",
    "too few rides": "Not yet: three rides with a distance and energy or volts teach it.",
}

FLIGHT = {
    "do not pack": "Do not pack it",
    "not as baggage": "Not as baggage",
    "operator approval": "Only with the airline's approval",
    "allowed, ask the airline": "May fly, ask the airline",
}
HOPES = {
    "pack.packs": "Counted as one pack.",
    "pack.marked": "If the Wh are printed on its case.",
    "pack.tested": "If it is tested to UN 38.3.",
    "ask.carried": "If the packs are apart, not joined by a lead.",
    "ask.loose": "If all of them stay in the board.",
}
"""What a verdict takes for granted as long as nobody said it."""
REASONS = {
    "damaged": "A damaged pack must not fly.",
    "not marked": "The watt-hours are not marked on the pack, or it is not known whether they are.",
    "not tested": "It is not tested to UN 38.3, or it is not known whether it is.",
    "over 160 Wh": "A pack over 160\u00a0Wh is not carried as baggage, in the board or loose.",
    "too many spares": "Too many loose packs of this size for one person.",
}
INSTALLED = {
    "cabin preferred": "In the board: cabin or checked, cabin preferred.",
    "operator approval": "In the board: with the airline's approval.",
    "not as baggage": "In the board: not as baggage.",
}
SPARE = {
    "cabin only": "Loose: cabin only, at most {spares} a person.",
    "operator approval, cabin only": "Loose: cabin only, with approval, at most {spares} a person.",
    "not as baggage": "Loose: not as baggage.",
}
WIRE = {
    "cool": "This wire stays cool on such a ride, even in a closed deck.",
    "warm in a closed deck": "This wire gets warm in a closed deck on such a ride.",
    "too thin": "This wire is too thin for such a ride in a closed deck.",
}
