"""Words of speed and push."""

CHARGE = {"full": "full", "nominal": "nominal", "empty": "empty"}

LABELS = {
    "meeting_full": "Top speed, full pack",
    "meeting_nominal": "Top speed, nominal pack",
    "meeting_empty": "Top speed, empty pack",
    "time_20": "From standstill to {20}",
    "time_30": "From standstill to {30}",
    "way_20": "Way until {20}",
    "way_30": "Way until {30}",
    "push": "Push at {speed}",
    "load": "Road load at {speed}",
    "acceleration": "Acceleration at {speed}",
    "climb": "Steepest climb at {speed}",
    "current": "Motor amps, each motor, full remote",
    "battery_current": "Battery amps, whole board, full remote",
    "heat": "Heat of one winding, full remote",
    "efficiency": "From pack to road, full remote",
    "rotation": "Motor at {speed}",
    "steady_current": "Motor amps, each motor, held steady",
    "steady_battery": "Battery amps, whole board, held steady",
    "steady_heat": "Heat of one winding, held steady",
    "per_distance": "Energy on the way, held steady",
    "grip": "Push that tyre and balance hold, dry",
    "grip_wet": "Push that tyre and balance hold, wet",
    "erpm_speed": "Speed at the controller's electrical limit",
}
"""Label of each result; {speed} is the asked speed."""

LIMITS = {
    "motor current": "motor amps",
    "battery current": "battery amps",
    "duty": "duty",
    "pack": "the most the pack can give",
    "electrical rpm": "electrical rpm",
    "tyre grip": "tyre grip",
}
"""What rules the push."""
