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
    "set_deceleration": "As the controller is set, from 20 km/h",
    "set_way": "Braking way from 20 km/h, as set",
    "cells_limit": "What the cells take for long, whole board",
    "cells_deceleration": "Within the cells' limit, from 20 km/h",
    "cells_way": "Braking way from 20 km/h, within the cells' limit",
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
CUTS_OUT = (
    "Braking lifts this pack above full charge: the brake may cut out at once. "
    "Ride some charge off before you need it."
)
