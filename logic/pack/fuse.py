"""The fuse in the pack's lead: above what the ride asks, below what the wire stands."""

from math import log
from typing import Annotated

from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.pack.cells import short_circuit_current
from logic.si import Ampere, Kelvin, Ohm, Second, SquareMetre, Volt
from logic.tables import pick
from logic.workings import cited


@frozen
class FuseChoice:
    """A rating between `low` and `high`, for at least `voltage` DC, able to break `interrupt`.

    `fits` is False when the wire cannot carry what the ride asks: no fuse helps, take thicker wire.
    """

    low: Ampere
    high: Ampere
    voltage: Volt
    interrupt: Ampere
    fits: bool


def fuse_choice(
    *,
    peak_current: Ampere,
    riding: Ampere,
    wire_limit: Ampere,
    full_voltage: Volt,
    resistance: Ohm,
) -> FuseChoice:
    """Return the range of ratings of a fuse in the pack's lead, its voltage and what it must break.

    `peak_current` is the controller's battery limit: a fuse at or below it would take the brakes away.
    `riding` is the root-mean-square current, which may load a fuse to 75 %. `wire_limit` is what the wire
    carries for as long as one likes where it lies. The maker's time-current curve decides; compare it with
    `time_to_heat`.

    >>> choice = fuse_choice(
    ...     peak_current=10.0, riding=6.0, wire_limit=12.5, full_voltage=42.0, resistance=0.125)
    >>> choice.low, choice.high, choice.interrupt, choice.fits
    (10.0, 12.5, 336.0, True)
    """
    positive(
        peak_current=peak_current, wire_limit=wire_limit, full_voltage=full_voltage, resistance=resistance
    )
    load = pick("wire_practice", name="fuse load").number("value")
    low = max(peak_current, riding / load)
    interrupt = short_circuit_current(voltage=full_voltage, resistance=resistance)
    return FuseChoice(low, wire_limit, full_voltage, interrupt, fits=low < wire_limit)


@cited(
    "(constant * area / current)**2 * log((end - zero) / (start - zero))",
    source="iec-60949 adiabatic short-circuit current, turned round for the time",
)
def time_to_heat(  # noqa: PLR0913  (the formula's own six figures)
    *,
    constant: Annotated[float, "A*s**0.5/m**2"],
    area: SquareMetre,
    current: Ampere,
    start: Kelvin,
    end: Kelvin,
    zero: Kelvin,
) -> Second:
    """Return the time a current takes to heat a wire from `start` to `end` if no heat leaves it.

    Meant for shorts of up to 5 s; a fuse must open sooner. `zero` is where the resistance would vanish.

    >>> time = time_to_heat(constant=226e6, area=3.31e-6, current=336.0, start=333.15, end=473.15, zero=38.65)
    >>> round(time, 2)
    1.93
    """
    positive(constant=constant, area=area, current=current, zero=zero)
    if not zero < start <= end:
        raise InputError("start", start, "range", low=zero, high=end)
    return (constant * area / current) ** 2 * log((end - zero) / (start - zero))
