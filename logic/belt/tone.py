"""How exactly the frequency of one tone is read: by how its phase runs on from stretch to stretch."""

from cmath import exp, phase
from itertools import pairwise
from math import pi, sqrt
from operator import mul

FEWEST_STRETCHES = 3


def refined(part: list[float], tone: float, rate: float, period: float = 0.0) -> tuple[float, float, float]:
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
