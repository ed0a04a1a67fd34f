"""Words of the units page."""

KINDS = {
    "ask.unit_length": "Length",
    "ask.unit_force": "Force",
    "ask.unit_torque": "Torque",
    "ask.unit_speed": "Speed",
    "ask.unit_energy": "Energy",
    "ask.unit_pressure": "Pressure",
    "ask.unit_temperature": "Temperature",
    "ask.unit_gauge": "Wire gauge",
    "ask.unit_area": "Wire by area",
    "ask.unit_threads": "Threads in an inch",
    "ask.unit_pitch": "Thread pitch",
}
"""Name of each kind."""

LABELS = {
    "gauge": "Gauge, AWG",
    "diameter": "Solid wire, diameter",
    "area": "Cross-section",
    "pitch": "Thread pitch",
    "threads": "Threads in an inch",
}
"""Label of what is not a plain change of unit."""
