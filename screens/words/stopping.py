"""Words of stopping and descents."""

SURFACE = {"dry": "dry", "wet": "wet", "loose": "loose or wet paint"}
REACTION = {"design": "2.5 s to react", "alert": "0.75 s, alert"}

LABELS = {
    **{
        f"stop_{surface}_{reaction}": f"{SURFACE[surface].capitalize()}, {REACTION[reaction]}"
        for surface in SURFACE
        for reaction in REACTION
    },
    "deceleration": "Deceleration at that speed, dry",
    "grip_dry": "Most the tyre holds, dry",
    "grip_wet": "Most the tyre holds, wet",
    "grip_loose": "Most the tyre holds, loose",
    "held_descent": "Steepest descent held at that speed",
    "into_pack": "Battery amps into the pack, whole board",
    "slows_as_set": "Brake as set slows by, at 20 km/h",
    "stop_as_set": "Stop from 20 km/h, brake as set",
    "cells_limit": "What the cells take for long, whole board",
    "slows_within_cells": "Within the cells' limit slows by, at 20 km/h",
    "stop_within_cells": "Stop from 20 km/h, within the cells' limit",
    "plug_voltage": "Volts at the plug while braking",
    "room": "Amps that lift it to full, whole board",
}
"""Label of each result."""

RULERS = {
    "motor brake current": "the motors' brake current",
    "pack takes back": "what the pack may take back",
    "tyre grip": "the tyre's grip",
}
"""What holds the brake down."""

RUNS_ON = "This slope is stronger than the brake: the board does not stop on it. Do not ride down it; walk."
CUTS_OUT = "Braking lifts {pack} above full charge: the brake may cut out at once. Ride some charge off before you need it."
THIS_PACK, FULL_PACK = "this pack", "a full pack"
ANY_CHARGE = "Pack nearly empty: the longest way of any charge."
