"""Words of consumption, of rides that tell about drag, and of coasting."""

LABELS = {
    "per_distance": "Energy on the way at {speed}",
    "range_modelled": "Range, modelled at {speed}",
    "usable": "Energy for riding",
    "steady_power": "Power from the pack",
    "steady_battery": "Battery amps, whole board",
    "steady_heat": "Heat of one winding",
    "rolling": "Rolling coefficient from rides",
    "drag_area": "Drag area from rides",
    "by_distance": "Rolling coefficient, by distance",
    "by_time": "Rolling coefficient, by time",
}
"""Label of each result."""

FROM_BOARD = "Rolling coefficient {rolling} and drag area {area}: {known}."
ASSUMED = "assumed, until rides or a coast tell better"
ENTERED = "entered on the board"
NOT_CLEAR = (
    "These rides do not tell the two apart: the band of one reaches zero. Ride some slower and some faster."
)
LEVEL = "Hills, stops and wind read as drag. Level rides at a steady speed tell most."
