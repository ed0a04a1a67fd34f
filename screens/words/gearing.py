"""Words of the gearing answers."""

ITEMS = {
    "top_loaded": "Top speed, loaded",
    "top_full": "Unloaded, full pack",
    "top_nominal": "Unloaded, nominal pack",
    "top_empty": "Unloaded, empty pack",
    "push_start": "Push from standstill",
    "push_at": "Push at {speed}",
    "climb_start": "Steepest climb, from standstill",
    "climb_at": "Steepest climb at {speed}",
    "ratio": "Gear ratio",
    "circumference": "Wheel circumference",
    "angular_speed_at": "Motor at {speed}",
    "electrical_at": "Electrical speed at {speed}",
    "belt_speed_at": "Belt at {speed}",
    "torque_constant": "Torque constant",
}
"""Label of each result; {speed} is the chosen speed."""
