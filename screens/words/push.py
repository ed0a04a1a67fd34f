"""Words of speed and push."""

CHARGE = {"full": "full", "nominal": "nominal", "empty": "empty"}

LABELS = {
    "top_loaded_full": "Top speed, full pack",
    "top_loaded": "Top speed, nominal pack",
    "top_loaded_empty": "Top speed, empty pack",
    "time_20": "From standstill to {20}",
    "time_30": "From standstill to {30}",
    "way_20": "Distance until {20}",
    "way_30": "Distance until {30}",
    "push_at": "Push at {speed}",
    "load": "Road load at {speed}",
    "acceleration": "Acceleration at {speed}",
    "climb_at": "Steepest climb at {speed}",
    "full_current": "Motor amps, each motor, full throttle",
    "full_battery": "Battery amps, whole board, full throttle",
    "full_heat": "Heat of one winding, full throttle",
    "efficiency": "From pack to road, full throttle",
    "angular_speed_at": "Motor at {speed}",
    "steady_current": "Motor amps, each motor, held steady",
    "steady_battery": "Battery amps, whole board, held steady",
    "steady_heat": "Heat of one winding, held steady",
    "per_distance": "Energy on the way, held steady",
    "drive_grip": "Push that tyre and balance hold, dry",
    "drive_grip_wet": "Push that tyre and balance hold, wet",
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
