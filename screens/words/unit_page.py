"""Words of the units page."""

from screens.tongue import _

KINDS = {
    "ask.unit_length": _("Length"),
    "ask.unit_force": _("Force"),
    "ask.unit_torque": _("Torque"),
    "ask.unit_speed": _("Speed"),
    "ask.unit_energy": _("Energy"),
    "ask.unit_pressure": _("Pressure"),
    "ask.unit_temperature": _("Temperature"),
    "ask.unit_gauge": _("Wire gauge"),
    "ask.unit_area": _("Wire by area"),
    "ask.unit_threads": _("Threads in an inch"),
    "ask.unit_pitch": _("Thread pitch"),
}
"""Name of each kind."""

LABELS = {
    "gauge": _("Gauge, AWG"),
    "diameter": _("Solid wire, diameter"),
    "area": _("Cross-section"),
    "pitch": _("Thread pitch"),
    "threads": _("Threads in an inch"),
}
"""Label of what is not a plain change of unit."""
