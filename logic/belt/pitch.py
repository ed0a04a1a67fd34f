"""The pitch of one pluck in a recording, or the reason why it cannot be told.

The loudest start of a sound is the pluck. What hums steadily before it is taken out of it, the spectrum of
what is left is searched for the lowest strong peak, and that peak is refined by how its phase runs on.
"""

from cmath import exp, phase
from dataclasses import dataclass, replace
from itertools import pairwise
from math import ceil, cos, log10, pi, sin, sqrt
from operator import mul
from statistics import median

from logic.belt.fourier import spectrum
from logic.belt.recording import Recording, clipped_share, energies, slowed
from logic.si import Hertz

LOWEST, HIGHEST = 40.0, 1300.0
"""Range in which a pitch is looked for, in Hz."""
SHOWN_TO = 1000.0
"""End of the drawn spectrum."""
BLOCK = 0.01
"""Seconds of a block of the loudness; two of them hold a whole period of the mains."""
SHORTEST, LONGEST = 0.10, 0.37
"""Least and most seconds of a pluck that are looked at."""
POINTS = 4096
CLIPPED = 0.002
"""Share of samples at the end of the scale from which a recording counts as clipped."""
RISE = 1.5
"""A pluck is louder than what went before by at least this factor in energy."""
STANDS_OUT = 36.0
"""Energy of a peak over the median of the spectrum from which it is a tone and not noise."""
RIVAL = 0.12
"""Energy of a second tone, as a share of the first, from which there are two pitches."""
FLAT, SHARP = 0.02, 0.05
"""How far a harmonic may lie under and, for each order, over its whole multiple."""
SUBHARMONIC = 0.03
"""Energy of a lower tone at half or a third of the strongest from which it is the pitch."""
STEADY = 0.8
"""A tone of which more than this is left in the last third of the pluck is a hum or a whistle."""
FEWEST_STRETCHES = 3
SURE = 0.008
"""Error, as a share of the frequency, above which no answer is given."""


@dataclass(frozen=True)
class Pitch:
    """What was heard. `refusal` is "" when `frequency` can be relied on to within `error`.

    Otherwise it is a reason key: "clipped", "too short", "no pluck", "noise", "two pitches", "steady",
    "unsure" or "out of band". `points` are (Hz, dB under the strongest) for the
    drawing; `rival` is the second tone.
    """

    frequency: Hertz
    error: Hertz
    refusal: str
    points: tuple[tuple[float, float], ...] = ()
    rival: Hertz = 0.0


def pitch(recording: Recording, low: Hertz = 0.0, high: Hertz = 0.0) -> Pitch:
    """Return the pitch of the loudest pluck. `low` and `high` bound where it is expected, 0 for no bounds."""
    if clipped_share(recording) > CLIPPED:
        return Pitch(0.0, 0.0, "clipped")
    signal, rate = slowed(recording)
    found = _pluck(signal, rate)
    if isinstance(found, str):
        return Pitch(0.0, 0.0, found)
    start, end = found
    part = _without_hum(signal, start, end, rate)
    levels, width = _levels(part, rate)
    heard = _heard(part, levels, width, rate, (low, high))
    return replace(heard, points=_drawn(levels, width))


def _pluck(signal: list[float], rate: float) -> tuple[int, int] | str:
    """Return where the loudest pluck begins and ends, or a reason."""
    block = max(1, round(BLOCK * rate))
    loud = energies(signal, block)
    fewest = ceil(SHORTEST / BLOCK) + 1
    if len(loud) <= fewest:
        return "too short"
    floor = sorted(loud)[len(loud) // 5]
    begin = _onset(loud)
    if loud[begin] + loud[begin + 1] < 2 * RISE * max(floor, 1e-14):
        return "no pluck"
    last = begin + 1
    while last < min(len(loud), begin + 1 + round(LONGEST / BLOCK)):
        if last - begin > fewest and loud[last] < max(1.5 * floor, 0.002 * loud[begin]):
            break
        last += 1
    start, end = (begin + 1) * block, last * block
    return (start, end) if end - start >= SHORTEST * rate else "too short"


def _onset(loud: list[float]) -> int:
    """Return the block with which the loudest sound begins: the greatest rise, or the very first block."""
    pairs = [a + b for a, b in pairwise(loud)]
    if pairs[0] > 0.5 * max(pairs):
        return 0
    rises = [after - before for before, after in zip(pairs, pairs[2:], strict=False)]
    return 2 + max(range(len(rises)), key=rises.__getitem__)


def _levels(part: list[float], rate: float) -> tuple[list[float], float]:
    """Return the energy of each bin and the bins' width: full at the start, tapered towards the end."""
    count = min(len(part), POINTS)
    taper = [0.5 + 0.5 * cos(pi * step / count) for step in range(count)]
    padded = [value * weight for value, weight in zip(part, taper, strict=False)]
    return spectrum(padded + [0.0] * (POINTS - count)), rate / POINTS


def _peaks(levels: list[float], width: float) -> list[tuple[float, float]]:
    """Return the peaks that stand out of the noise, strongest first: (energy, Hz)."""
    first, last = int(LOWEST / width), min(int(2 * HIGHEST / width), len(levels) - 1)
    noise = median(levels[first:last])
    found = []
    for index in range(max(first, 2), last):
        here = levels[index]
        if (
            here > STANDS_OUT * noise
            and here > levels[index - 1]
            and here >= levels[index + 1]
            and here >= levels[index - 2]
            and here >= levels[min(index + 2, last)]
        ):
            left, right = levels[index - 1], levels[index + 1]
            shift = 0.5 * (left - right) / (left - 2 * here + right)
            found.append((here, (index + shift) * width))
    return sorted(found, reverse=True)


def _heard(
    part: list[float], levels: list[float], width: float, rate: float, band: tuple[float, float]
) -> Pitch:
    peaks = _peaks(levels, width)
    in_range = [peak for peak in peaks if LOWEST <= peak[1] <= HIGHEST]
    if not in_range:
        return Pitch(0.0, 0.0, "noise")
    energy, tone = in_range[0]
    for share in (3, 2):
        lower = [peak for peak in in_range if abs(peak[1] * share / tone - 1) < 0.03 + 0.04 * (share - 2)]
        if lower and lower[0][0] > SUBHARMONIC * energy:
            energy, tone = lower[0]
            break
    frequency, error, fade = _refined(part, tone, rate)
    rival = _rival(peaks, energy, tone, len(part) / rate)
    if rival:
        return Pitch(frequency, error, "two pitches", rival=rival)
    if fade > STEADY:
        return Pitch(frequency, error, "steady")
    if error > SURE * frequency:
        return Pitch(frequency, error, "unsure")
    low, high = band
    if (low and frequency < low) or (high and frequency > high):
        return Pitch(frequency, error, "out of band")
    return Pitch(frequency, error, "")


def _rival(peaks: list[tuple[float, float]], energy: float, tone: float, seconds: float) -> float:
    """Return a second strong tone that is no harmonic of the first; 0 when there is none.

    A stiff belt's harmonics lie above the whole multiples, the more so the higher they are.
    """
    for strength, other in peaks:
        if strength < RIVAL * energy or abs(other - tone) < 1.2 / seconds:
            continue
        ratio = other / tone
        order = max(1, int(ratio + 0.08))
        if order > 1 and -FLAT < ratio / order - 1 < SHARP * order:
            continue
        return other
    return 0.0


def _refined(part: list[float], tone: float, rate: float) -> tuple[float, float, float]:
    """Return the frequency near `tone`, its error, and how much of it is left in the last third.

    A stretch is a whole number of periods, so that harmonics cancel. Phases are compared over longer and
    longer distances. The error is how far the last three disagree, or what a single fading tone leaves over.
    """
    frequency, error, fade = tone, tone, 0.0
    for _ in range(2):
        block = _block(rate / frequency)
        stretches = _stretches(part, frequency, rate, block)
        if len(stretches) < FEWEST_STRETCHES:
            return frequency, frequency, 0.0
        step = 2 * pi * block / rate
        off, found = 0.0, []
        lag = 1
        while lag <= max(1, len(stretches) // 2):
            total = sum(
                (a.conjugate() * b for a, b in zip(stretches, stretches[lag:], strict=False)), start=0j
            )
            off += phase(total * exp(-1j * step * off * lag)) / (step * lag)
            found.append(off)
            lag *= 2
        last = found[-3:]
        apart = max(last) - min(last) if len(last) > 1 else frequency
        turned = [value * exp(-1j * step * off * index) for index, value in enumerate(stretches)]
        error = max(apart, _left_over(turned, block / rate), 0.0005 * frequency)
        third = len(turned) // 3
        fade = abs(sum(turned[-third:])) / max(abs(sum(turned[:third])), 1e-30)
        frequency += off
    return frequency, error, fade


def _stretches(part: list[float], frequency: float, rate: float, block: int) -> list[complex]:
    """Return the sums, stretch by stretch, of the signal turned back by the frequency."""
    turn = -2j * pi * frequency / rate
    # One turn table for all stretches: the phase of a stretch's start is put in once.
    table = [exp(turn * step) for step in range(block)]
    return [
        exp(turn * begin) * sum(map(mul, part[begin : begin + block], table))
        for begin in range(0, len(part) - block + 1, block)
    ]


def _left_over(turned: list[complex], seconds: float) -> float:
    """Return the error in Hz that comes with what a single fading tone leaves over of the stretches."""
    whole = sum(abs(value) ** 2 for value in turned)
    if whole == 0.0:
        return 0.0
    ratio = sum((a.conjugate() * b).real for a, b in pairwise(turned)) / sum(
        abs(value) ** 2 for value in turned[:-1]
    )
    ratio = min(max(ratio, 0.05), 1.0)
    falls = [ratio**index for index in range(len(turned))]
    size = sum(map(mul, turned, falls)) / sum(map(mul, falls, falls))
    rest = sum(abs(value - size * fall) ** 2 for value, fall in zip(turned, falls, strict=True)) / whole
    middle = sum(index * abs(value) ** 2 for index, value in enumerate(turned)) / whole
    spread = sqrt(sum((index - middle) ** 2 * abs(value) ** 2 for index, value in enumerate(turned)) / whole)
    return sqrt(rest) / (2 * pi * max(spread, 0.3) * seconds)


def _block(period: float) -> int:
    """Return the whole number of samples that is nearest to one to four periods."""
    return min(
        (round(times * period) for times in (1, 2, 3)), key=lambda size: abs(size / period % 1 - 0.5) * -1
    )


def _without_hum(signal: list[float], start: int, end: int, rate: float) -> list[float]:
    """Return the pluck without the steady tones that were there before it."""
    part = signal[start:end]
    block = max(1, round(BLOCK * rate))
    quiet = signal[max(0, start - 2 * block - POINTS) : max(0, start - 2 * block)]
    if len(quiet) < 0.1 * rate:
        return part
    for tone in _steady(quiet, rate):
        part = _less_tone(part, quiet, tone, rate, start - (start - 2 * block - len(quiet)))
    return part


def _steady(quiet: list[float], rate: float) -> list[float]:
    count = len(quiet)
    window = [0.5 - 0.5 * cos(2 * pi * step / count) for step in range(count)]
    padded = [value * weight for value, weight in zip(quiet, window, strict=True)]
    levels = spectrum(padded + [0.0] * (POINTS - count))
    return [tone for _, tone in _peaks(levels, rate / POINTS)[:5]]


def _less_tone(part: list[float], quiet: list[float], tone: float, rate: float, offset: int) -> list[float]:
    """Return `part` less a tone fitted to `quiet`, which begins `offset` samples before it."""
    frequency, _, _ = _refined(quiet, tone, rate)
    turn = 2 * pi * frequency / rate
    count = len(quiet)
    cosine = 2 / count * sum(value * cos(turn * step) for step, value in enumerate(quiet))
    sine = 2 / count * sum(value * sin(turn * step) for step, value in enumerate(quiet))
    return [
        value - cosine * cos(turn * step) - sine * sin(turn * step)
        for step, value in enumerate(part, start=offset)
    ]


def _drawn(levels: list[float], width: float) -> tuple[tuple[float, float], ...]:
    """Return the spectrum for the drawing: of each two bins the stronger, in dB under the strongest."""
    last = min(int(SHOWN_TO / width), len(levels) - 2)
    top = max(levels[1:last], default=0.0) or 1.0
    return tuple(
        (index * width, max(-60.0, 10 * log10(max(levels[index], levels[index + 1]) / top + 1e-9)))
        for index in range(int(20 / width), last, 2)
    )
