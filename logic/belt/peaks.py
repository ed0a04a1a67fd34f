"""The spectrum of a pluck: its levels, the peaks that stand out of the noise, and what is drawn of it."""

from math import cos, log10, pi
from statistics import quantiles

from logic.belt.fourier import spectrum
from logic.si import Hertz

LOWEST, HIGHEST = 40.0, 1300.0
"""Range in which a pitch is looked for, in Hz."""
CLEAN_TO = 1900.0
"""What is above may be folded down from above half the rate."""
SHOWN_TO = 1000.0
"""End of the drawn spectrum."""
POINTS = 4096
RISES = 12
"""The first of so many parts of a pluck fades in: a sudden start spreads each partial over its neighbours."""
STANDS_OUT = 16.0
ROOM = 160.0
"""Energy of a peak over the median of so many Hz around it from which it is a tone and not noise."""


def levels_of(part: list[float], rate: float) -> tuple[list[float], float]:
    """Return the energy of each bin and the bins' width: tapered shortly at the start, long to the end."""
    count = min(len(part), POINTS)
    rise = max(1, count // RISES)
    taper = [
        (0.5 + 0.5 * cos(pi * step / count)) * (0.5 - 0.5 * cos(pi * min(step / rise, 1.0)))
        for step in range(count)
    ]
    padded = [value * weight for value, weight in zip(part, taper, strict=False)]
    return spectrum(padded + [0.0] * (POINTS - count)), rate / POINTS


def peaks_of(levels: list[float], width: float) -> list[tuple[float, Hertz]]:
    """Return the peaks that stand out of the noise, strongest first: (energy, Hz)."""
    first, last = int(LOWEST / width), min(int(CLEAN_TO / width), len(levels) - 1)
    room = max(8, int(ROOM / width))
    # A quarter of the bins of noise lie under 0.288 of its mean, half of them under 0.693; skirts of partials raise
    # the half of a low string's spectrum.
    noises = [
        0.693 / 0.288 * quantiles(levels[begin : begin + room], n=4)[0] for begin in range(first, last, room)
    ]
    found = []
    for index in range(max(first, 2), last):
        here = levels[index]
        if (
            here > STANDS_OUT * noises[(index - first) // room]
            and here > levels[index - 1]
            and here >= levels[index + 1]
            and here >= levels[index - 2]
            and here >= levels[min(index + 2, last)]
        ):
            left, right = levels[index - 1], levels[index + 1]
            shift = 0.5 * (left - right) / (left - 2 * here + right)
            found.append((here, (index + shift) * width))
    return sorted(found, reverse=True)


def drawn(levels: list[float], width: float) -> tuple[tuple[float, float], ...]:
    """Return the spectrum for the drawing: of each two bins the stronger, in dB under the strongest."""
    last = min(int(SHOWN_TO / width), len(levels) - 2)
    top = max(levels[1:last], default=0.0) or 1.0
    return tuple(
        (index * width, max(-60.0, 10 * log10(max(levels[index], levels[index + 1]) / top + 1e-9)))
        for index in range(int(20 / width), last, 2)
    )
