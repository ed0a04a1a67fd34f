"""A small Fourier transform in plain Python, for lengths that are powers of two."""

from cmath import exp
from collections.abc import Sequence
from functools import cache
from math import pi

LEAST = 4
"""At this length the transform is written out; below it there is none."""


@cache
def _turns(length: int) -> list[complex]:
    return [exp(-2j * pi * step / length) for step in range(length // 2)]


def transform(values: Sequence[complex]) -> list[complex]:
    """Return the discrete Fourier transform of complex values.

    Raises ValueError unless their number is a power of two, at least 4.

    >>> [round(abs(x), 9) for x in transform([1.0, 0.0, 0.0, 0.0])]
    [1.0, 1.0, 1.0, 1.0]
    """
    length = len(values)
    if length < LEAST or length & (length - 1):
        raise ValueError(f"{length} is not a power of two from {LEAST}")
    return _transform(values)


def _transform(values: Sequence[complex]) -> list[complex]:
    length = len(values)
    if length == LEAST:
        a, b, c, d = values
        even, odd, less, turned = a + c, b + d, a - c, 1j * (b - d)
        return [even + odd, less - turned, even - odd, less + turned]
    evens = _transform(values[0::2])
    odds = [turn * value for turn, value in zip(_turns(length), _transform(values[1::2]), strict=True)]
    return [a + b for a, b in zip(evens, odds, strict=True)] + [
        a - b for a, b in zip(evens, odds, strict=True)
    ]


def spectrum(values: Sequence[float]) -> list[float]:
    """Return the squared magnitudes of a real signal's bins, from 0 to just below half its rate.

    Two real values go into one complex one, which halves the work. Raises ValueError as `transform` does,
    for half the length.

    >>> [round(x, 9) for x in spectrum([1.0, -1.0, 1.0, -1.0, 1.0, -1.0, 1.0, -1.0])]
    [0.0, 0.0, 0.0, 0.0]
    """
    half = len(values) // 2
    packed = transform([complex(a, b) for a, b in zip(values[0::2], values[1::2], strict=True)])
    turns = _turns(len(values))
    found = []
    for step in range(half):
        here, there = packed[step], packed[-step].conjugate()
        value = here + there - 1j * turns[step] * (here - there)
        found.append((value.real * value.real + value.imag * value.imag) / 4)
    return found
