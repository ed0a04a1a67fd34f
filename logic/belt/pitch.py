"""The pitch of one pluck in a recording, or the reason why it cannot be told.

The loudest start of a sound is the pluck. What hums steadily before it is taken out of it, the spectrum of
what is left is searched for the lowest strong peak, and that peak is refined by how its phase runs on.
"""

from cmath import exp, phase
from dataclasses import dataclass, replace
from itertools import combinations, pairwise
from math import ceil, cos, log10, pi, sin, sqrt
from operator import mul
from statistics import quantiles

from logic.belt.fourier import spectrum
from logic.belt.partials import Series, series
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
RISES = 12
"""The first of so many parts of a pluck fades in: a sudden start spreads each partial over its neighbours."""
STANDS_OUT = 16.0
ROOM = 160.0
"""Energy of a peak over the median of so many Hz around it from which it is a tone and not noise."""
STEADY = 0.8
"""A tone of which more than this is left in the last third of the pluck is a hum or a whistle."""
THERE = 0.2
"""A tone that was there before the pluck with this share of its strength is no pluck's."""
BESIDE = 4.0
"""Hz to each side of a hum that may be its own."""
TOLD_BY = 6
"""The pitch is read from partials up to this order."""
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
    quiet = _before(signal, start, rate)
    part, hums = _without_hum(signal, quiet, start, end, rate)
    levels, width = _levels(part, rate)
    heard = _heard(part, quiet, _less_hum(levels, width, hums, len(part)), width, rate, (low, high))
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
    """Return the energy of each bin and the bins' width: tapered shortly at the start, long to the end."""
    count = min(len(part), POINTS)
    rise = max(1, count // RISES)
    taper = [
        (0.5 + 0.5 * cos(pi * step / count)) * (0.5 - 0.5 * cos(pi * min(step / rise, 1.0)))
        for step in range(count)
    ]
    padded = [value * weight for value, weight in zip(part, taper, strict=False)]
    return spectrum(padded + [0.0] * (POINTS - count)), rate / POINTS


def _peaks(levels: list[float], width: float) -> list[tuple[float, float]]:
    """Return the peaks that stand out of the noise, strongest first: (energy, Hz)."""
    first, last = int(LOWEST / width), min(int(2 * HIGHEST / width), len(levels) - 1)
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


def _heard(  # noqa: PLR0913  (a pluck, what was before it, its spectrum and where it is expected)
    part: list[float],
    quiet: list[float],
    levels: list[float],
    width: float,
    rate: float,
    band: tuple[float, float],
) -> Pitch:
    peaks = _peaks(levels, width)
    found = series(peaks, LOWEST, HIGHEST)
    if found is None:
        return Pitch(0.0, 0.0, "noise")
    one, clear = found
    frequency, error, fade = _of_partials(part, one, rate)
    if one.rival:
        return Pitch(frequency, error, "two pitches", rival=one.rival)
    if fade > STEADY and _was_there(part, quiet, one, rate):
        return Pitch(frequency, error, "steady")
    if error > SURE * frequency or not clear or not one.grounded:
        return Pitch(frequency, error, "unsure")
    low, high = band
    if (low and frequency < low) or (high and frequency > high):
        return Pitch(frequency, error, "out of band")
    return Pitch(frequency, error, "")


def _of_partials(part: list[float], one: Series, rate: float) -> tuple[float, float, float]:
    """Return the fundamental, its error, and how much is left of it in the last third.

    A partial of order n of a stiff span lies at n f sqrt(1 + B n^2): of the two strongest low partials each
    divided by its order, a line over the order's square gives the fundamental at 1. Where the fundamental itself
    is read as well, it is taken.
    """
    strongest = sorted(one.partials, key=lambda order: -one.partials[order][0])
    low = sorted([order for order in strongest if 1 < order <= TOLD_BY][:3])
    period = rate / one.fundamental
    read = {
        order: _refined(part, one.partials[order][1], rate, period)
        for order in (1, *low)
        if order in one.partials
    }
    best = read.get(1, (one.fundamental, one.fundamental, 0.0))
    for near, far in combinations(low, 2):
        (first, first_error, fade), (second, second_error, _) = read[near], read[far]
        reach = (near**2 - 1) / (far**2 - near**2)
        bent = max(0.0, (second / far - first / near) * reach)
        error = first_error / near * (1 + reach) + second_error / far * reach
        if error < best[1]:
            best = (first / near - bent, error, fade)
    return best


def _was_there(part: list[float], quiet: list[float], one: Series, rate: float) -> bool:
    """Tell whether the strongest partial sounded before the pluck, or nothing is known of before."""
    if len(quiet) < SHORTEST * rate:
        return True
    turn = -2j * pi * max(one.partials.values())[1] / rate

    def strength(signal: list[float]) -> float:
        return abs(sum(value * exp(turn * step) for step, value in enumerate(signal))) / len(signal)

    return strength(quiet) > THERE * strength(part[: len(quiet)])


def _refined(part: list[float], tone: float, rate: float, period: float = 0.0) -> tuple[float, float, float]:
    """Return the frequency near `tone`, its error, and how much of it is left in the last third.

    A stretch is a whole number of periods, of the tone or of the fundamental in `period`, so that the other
    partials cancel. Phases are compared over longer and
    longer distances. The error is how far the last three disagree, or what a single fading tone leaves over.
    """
    frequency, error, fade = tone, tone, 0.0
    for _ in range(2):
        block = _block(period or rate / frequency)
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


def _before(signal: list[float], start: int, rate: float) -> list[float]:
    """Return what sounded before the pluck."""
    end = max(0, start - 2 * max(1, round(BLOCK * rate)))
    return signal[max(0, end - POINTS) : end]


def _without_hum(
    signal: list[float], quiet: list[float], start: int, end: int, rate: float
) -> tuple[list[float], list[tuple[float, float]]]:
    """Return the pluck without the steady tones that were there before it, and these: (Hz, amplitude)."""
    part, hums = signal[start:end], []
    if len(quiet) < SHORTEST * rate:
        return part, []
    block = max(1, round(BLOCK * rate))
    for tone in _steady(quiet, rate):
        part, strength = _less_tone(part, quiet, tone, rate, 2 * block + len(quiet))
        hums.append((tone, strength))
    return part, hums


def _less_hum(levels: list[float], width: float, hums: list[tuple[float, float]], count: int) -> list[float]:
    """Return the spectrum without what may be left of a hum: no partial is told from it where it is no stronger."""
    kept = list(levels)
    for tone, strength in hums:
        middle, reach = round(tone / width), ceil(BESIDE / width)
        around = range(max(0, middle - reach), min(len(levels), middle + reach + 1))
        if max((levels[index] for index in around), default=0.0) < (strength * min(count, POINTS) / 2) ** 2:
            for index in around:
                kept[index] = 0.0
    return kept


def _steady(quiet: list[float], rate: float) -> list[float]:
    count = len(quiet)
    window = [0.5 - 0.5 * cos(2 * pi * step / count) for step in range(count)]
    padded = [value * weight for value, weight in zip(quiet, window, strict=True)]
    levels = spectrum(padded + [0.0] * (POINTS - count))
    return [tone for _, tone in _peaks(levels, rate / POINTS)[:5]]


def _less_tone(
    part: list[float], quiet: list[float], tone: float, rate: float, offset: int
) -> tuple[list[float], float]:
    """Return `part` less a tone fitted to `quiet`, which begins `offset` samples before it, and its amplitude."""
    frequency, _, _ = _refined(quiet, tone, rate)
    turn = 2 * pi * frequency / rate
    count = len(quiet)
    cosine = 2 / count * sum(value * cos(turn * step) for step, value in enumerate(quiet))
    sine = 2 / count * sum(value * sin(turn * step) for step, value in enumerate(quiet))
    return [
        value - cosine * cos(turn * step) - sine * sin(turn * step)
        for step, value in enumerate(part, start=offset)
    ], sqrt(cosine * cosine + sine * sine)


def _drawn(levels: list[float], width: float) -> tuple[tuple[float, float], ...]:
    """Return the spectrum for the drawing: of each two bins the stronger, in dB under the strongest."""
    last = min(int(SHOWN_TO / width), len(levels) - 2)
    top = max(levels[1:last], default=0.0) or 1.0
    return tuple(
        (index * width, max(-60.0, 10 * log10(max(levels[index], levels[index + 1]) / top + 1e-9)))
        for index in range(int(20 / width), last, 2)
    )
