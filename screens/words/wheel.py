"""Words of wheel wear and size."""

LABELS = {
    "today": "Wheel today",
    "circumference_today": "Way of one turn",
    "rolled": "Way of one turn, by the marks",
    "change": "Speed and distance against the other",
    "push_change": "Push against the other",
    "top": "Unloaded speed, nominal, today",
    "top_other": "Unloaded speed on the other",
    "push_today": "Push from standstill, today",
    "push_other": "Push on the other",
    "clearance": "Wheel pulley above the ground, today",
    "clearance_other": "Wheel pulley above the ground, other",
}
"""Label of each result."""

HOW = (
    "Across with a calliper, at the narrowest place. Or by rolling: chalk tread and ground, roll ten turns with your "
    "weight on, measure between the marks."
)
LOW = "The wheel pulley comes close to the ground: pebbles and kerbs reach it."
