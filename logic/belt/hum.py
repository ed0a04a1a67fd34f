"""What hums or whistles steadily before a pluck, and the pluck without it."""

from cmath import exp, phase
from collections.abc import Sequence
from itertools import accumulate, repeat
from math import ceil, cos, pi, sqrt
from operator import mul

from logic.belt.fourier import spectrum
from logic.belt.peaks import POINTS, peaks_of
from logic.frozen import frozen
from logic.si import Hertz

TONES = 6
"""So many of the strongest steady tones are taken out."""
BESIDE = 4.0
"""Hz to each side of a hum that may be its own."""
LEFT = 0.04
"""Share of a hum that is always allowed for: mains wander between the quiet and the pluck."""

FALLS, STAYS = 0.5, 0.85
"""What is left in the last third of a tone that dies away, and of one that does not."""


@frozen
class Hum:
    """A steady tone: its frequency, its size and phase at the start of the quiet, what may be left of its size."""

    frequency: Hertz
    size: complex
    left: float


def hums_of(quiet: Sequence[float], rate: float) -> list[Hum]:
    """Return the strongest steady tones of what sounded before a pluck."""
    count = len(quiet)
    levels = spectrum([*map(mul, quiet, _window(count)), *repeat(0.0, POINTS - count)])
    rest, found = list(quiet), []
    for _, tone in peaks_of(levels, rate / POINTS)[:TONES]:
        frequency = _read(rest, tone, rate)
        size = _size(rest, frequency, rate)
        rest = without(rest, [Hum(frequency, size, 0.0)], rate)
        found.append((frequency, size))
    # Noise shifts the frequency that is read, and the shift grows on the way to the middle of the pluck.
    noise = 10 * sqrt(3 * sum(map(mul, rest, rest))) / count
    return [Hum(frequency, size, max(LEFT * abs(size), noise)) for frequency, size in found]


def without(part: Sequence[float], hums: Sequence[Hum], rate: float, offset: int = 0) -> list[float]:
    """Return `part`, which begins `offset` samples after the quiet began, without the hums."""
    kept = list(part)
    for hum in hums:
        turn = 2j * pi * hum.frequency / rate
        run = accumulate(repeat(exp(turn), len(kept) - 1), mul, initial=hum.size * exp(turn * offset))
        kept = [value - hummed.real for value, hummed in zip(kept, run, strict=True)]
    return kept


def less_left(levels: list[float], width: float, hums: Sequence[Hum], count: int) -> list[float]:
    """Return the spectrum without what may be left of the hums: a partial no stronger is not told from it."""
    kept = list(levels)
    for hum in hums:
        middle, reach = round(hum.frequency / width), ceil(BESIDE / width)
        around = range(max(0, middle - reach), min(len(levels), middle + reach + 1))
        # The taper of a pluck halves the sum, and half of a real tone lies at each side of 0 Hz.
        if max((levels[index] for index in around), default=0.0) < (hum.left * min(count, POINTS) / 4) ** 2:
            for index in around:
                kept[index] = 0.0
    return kept


def less_steady(
    part: Sequence[float], peaks: Sequence[tuple[float, Hertz]], rate: float
) -> list[tuple[float, Hertz]]:
    """Return the peaks of a sound without those that stay while the strongest dies away: (energy, Hz)."""
    third = len(part) // 3

    def stays(frequency: Hertz) -> float:
        first, last = (
            abs(_size(part[begin : begin + third], frequency, rate)) for begin in (0, len(part) - third)
        )
        return last / max(first, 1e-30)

    if not peaks or stays(peaks[0][1]) > FALLS:
        return list(peaks)
    return [peak for peak in peaks if peak == peaks[0] or stays(peak[1]) < STAYS]


def _window(count: int) -> list[float]:
    return [0.5 - 0.5 * cos(2 * pi * (step + 0.5) / count) for step in range(count)]


def _size(signal: Sequence[float], frequency: Hertz, rate: float) -> complex:
    """Return the size and phase of a tone at the start of a signal; a smooth window keeps other tones out."""
    back = accumulate(repeat(exp(-2j * pi * frequency / rate), len(signal) - 1), mul, initial=1 + 0j)
    return 4 / len(signal) * sum(map(mul, map(mul, signal, _window(len(signal))), back), start=0j)


def _read(signal: Sequence[float], tone: Hertz, rate: float) -> Hertz:
    """Return the frequency near `tone`, by how its phase runs on from the first two thirds to the last two."""
    lag = len(signal) // 3
    frequency = tone
    for _ in range(2):
        first, last = (_size(signal[begin : begin + 2 * lag], frequency, rate) for begin in (0, lag))
        run_on = phase(last * first.conjugate() * exp(-2j * pi * frequency / rate * lag))
        frequency += run_on * rate / (2 * pi * lag)
    return frequency
