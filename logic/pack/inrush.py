"""The spark at the plug: the controller's capacitors, and the resistor that fills them first."""

from logic.errors import positive
from logic.si import Ampere, Farad, Joule, Ohm, One, Second, Volt, Watt
from logic.workings import cited


@cited("capacitance * voltage**2 / 2", source="openstax-physics section 19.7, energy stored in capacitors")
def capacitor_energy(*, capacitance: Farad, voltage: Volt) -> Joule:
    """Return the energy in a charged capacitor; a resistor that fills it turns as much into heat.

    >>> round(capacitor_energy(capacitance=1000e-6, voltage=42.0), 2)
    0.88
    """
    positive(capacitance=capacitance, voltage=voltage)
    return capacitance * voltage**2 / 2.0


@cited("voltage / resistance", source="derived Ohm's law at the first instant", standing="derived")
def inrush_current(*, voltage: Volt, resistance: Ohm) -> Ampere:
    """Return the current at the first instant: into the bare loop, or through a pre-charge resistor.

    The wire's inductance rounds the peak off, so the bare figure is an upper bound.

    >>> round(inrush_current(voltage=42.0, resistance=0.05))
    840
    """
    positive(voltage=voltage, resistance=resistance)
    return voltage / resistance


@cited("time_constants * resistance * capacitance", source="ti-tiduf73 pre-charge time")
def precharge_time(*, time_constants: One, resistance: Ohm, capacitance: Farad) -> Second:
    """Return how long to wait on a pre-charge resistor; five time constants leave under 1 % of the voltage.

    >>> round(precharge_time(time_constants=5, resistance=10.0, capacitance=2000e-6), 2)
    0.1
    """
    positive(time_constants=time_constants, resistance=resistance, capacitance=capacitance)
    return time_constants * resistance * capacitance


@cited("voltage**2 / resistance", source="derived Joule's law", standing="derived")
def precharge_power(*, voltage: Volt, resistance: Ohm) -> Watt:
    """Return the heat in the resistor at the first instant; left on a shorted controller it stays that high.

    >>> round(precharge_power(voltage=42.0, resistance=10.0), 1)
    176.4
    """
    positive(voltage=voltage, resistance=resistance)
    return voltage**2 / resistance
