"""The pitch of one pluck in a recording, or the reason why it cannot be told.

The loudest start of a sound is the pluck. What hums steadily before it is taken out of it, and which peaks of the
spectrum of what is left are partials of one string tells its fundamental, which is read by how its phase runs on.
"""

from cmath import exp
from dataclasses import replace
from itertools import combinations, pairwise
from math import ceil, pi

from logic.belt.hum import hums_of, less_left, less_steady, without
from logic.belt.partials import MOST, Series, series
from logic.belt.peaks import HIGHEST, LOWEST, POINTS, drawn, levels_of, peaks_of
from logic.belt.recording import Recording, clipped_share, energies, slowed
from logic.belt.tone import refined
from logic.frozen import frozen
from logic.si import Hertz

BLOCK = 0.01
"""Seconds of a block of the loudness; two of them hold a whole period of the mains."""
SHORTEST, LONGEST = 0.10, 0.37
"""Least and most seconds of a pluck that are looked at."""
CLIPPED = 0.002
"""Share of samples at the end of the scale from which a recording counts as clipped."""
RISE = 1.5
"""A pluck is louder than what went before by at least this factor in energy."""
STEADY = 0.8
"""A tone of which more than this is left in the last third of the pluck is a hum or a whistle."""
THERE = 0.2
"""A tone that was there before the pluck with this share of its strength is no pluck's."""
TOLD_BY = 8
"""The pitch is read from partials up to this order."""
ALIKE = 0.006
"""The fundamental and what its partials tell of it differ by no more than this share beyond their errors."""
SURE = 0.008
"""Error, as a share of the frequency, above which no answer is given."""


@frozen
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
    hums = hums_of(quiet, rate) if len(quiet) >= SHORTEST * rate else []
    part = without(signal[start:end], hums, rate, len(quiet) + 2 * _block(rate))
    levels, width = levels_of(part, rate)
    heard = _heard(
        part, without(quiet, hums, rate), less_left(levels, width, hums, len(part)), width, rate, (low, high)
    )
    return replace(heard, points=drawn(levels, width))


def _block(rate: float) -> int:
    return max(1, round(BLOCK * rate))


def _pluck(signal: list[float], rate: float) -> tuple[int, int] | str:
    """Return where the loudest pluck begins and ends, or a reason."""
    block = _block(rate)
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


def _heard(  # noqa: PLR0913  (a pluck, what was before it, its spectrum and where it is expected)
    part: list[float],
    quiet: list[float],
    levels: list[float],
    width: float,
    rate: float,
    band: tuple[float, float],
) -> Pitch:
    peaks = peaks_of(levels, width)
    if len(quiet) < SHORTEST * rate:
        peaks = less_steady(part, peaks[:MOST], rate)
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
        order: refined(part, one.partials[order][1], rate, period)
        for order in (1, *low)
        if order in one.partials
    }
    first_of_all = best = read.get(1, (one.fundamental, one.fundamental, 0.0))
    for near, far in combinations(low, 2):
        (first, first_error, fade), (second, second_error, _) = read[near], read[far]
        reach = (near**2 - 1) / (far**2 - near**2)
        bent = max(0.0, (second / far - first / near) * reach)
        error = first_error / near * (1 + reach) + second_error / far * reach
        if error < best[1]:
            best = (first / near - bent, error, fade)
    if 1 in read and abs(best[0] - first_of_all[0]) > best[1] + first_of_all[1] + ALIKE * best[0]:
        return best[0], abs(best[0] - first_of_all[0]), best[2]
    return best


def _was_there(part: list[float], quiet: list[float], one: Series, rate: float) -> bool:
    """Tell whether the strongest partial sounded before the pluck, or nothing is known of before."""
    if len(quiet) < SHORTEST * rate:
        return True
    turn = -2j * pi * max(one.partials.values())[1] / rate

    def strength(signal: list[float]) -> float:
        return abs(sum(value * exp(turn * step) for step, value in enumerate(signal))) / len(signal)

    return strength(quiet) > THERE * strength(part[: len(quiet)])


def _before(signal: list[float], start: int, rate: float) -> list[float]:
    """Return what sounded before the pluck."""
    end = max(0, start - 2 * _block(rate))
    return signal[max(0, end - POINTS) : end]
