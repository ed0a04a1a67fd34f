"""A recording as numbers: from the bytes of a microphone or of a WAV file to a slower, filtered signal."""

import sys
import wave
from array import array
from dataclasses import dataclass
from io import BytesIO
from itertools import accumulate, repeat
from math import cos, pi, sin
from operator import add

from logic.errors import InputError

LOUDEST = 32767
WORKING_RATE = 5512.5
"""Samples a second that the pitch is looked for in: enough for 600 Hz and its harmonics."""
SLOWED_FROM = 4500.0
"""The rate is halved only where so many samples a second are left."""
TAPS = 10
"""Reach of the filter that halves the rate, in samples to each side."""
SLOWEST, LONGEST = 8000, 10.0
"""Least rate of a recording in Hz, and the most seconds that are looked at."""


@dataclass(frozen=True)
class Recording:
    """Samples of 16 bits, one channel, and how many a second."""

    samples: "array[int]"
    rate: int

    @property
    def seconds(self) -> float:
        """Return how long it is."""
        return len(self.samples) / self.rate


def from_pcm(body: bytes, rate: int) -> Recording:
    """Return the recording of bytes as a microphone gives them: 16 bits, one channel, low byte first.

    Raises InputError for a rate under 8 kHz.
    """
    if rate < SLOWEST:
        raise InputError("rate", rate, "rate too low", low=float(SLOWEST))
    samples = array("h")
    samples.frombytes(body[: len(body) // 2 * 2][: int(LONGEST * rate) * 2])
    if sys.byteorder == "big":
        samples.byteswap()
    return Recording(samples, rate)


def from_wav(body: bytes) -> Recording:
    """Return the recording of a WAV file's bytes; of two channels the first one.

    Raises InputError for what is not a WAV file of 16 bits, or has a rate under 8 kHz.
    """
    try:
        with wave.open(BytesIO(body)) as file:
            if file.getsampwidth() != 2:  # noqa: PLR2004  (bytes of 16 bits)
                raise InputError("file", file.getsampwidth() * 8, "not 16 bits")
            channels, rate = file.getnchannels(), file.getframerate()
            frames = file.readframes(int(LONGEST * rate))
    except (wave.Error, EOFError) as problem:
        raise InputError("file", str(problem), "not a sound file") from problem
    found = from_pcm(frames, rate)
    return found if channels == 1 else Recording(found.samples[::channels], rate)


def slowed(recording: Recording) -> tuple[list[float], float]:
    """Return the signal at about 5.5 kHz, its mean taken off, and its exact rate.

    Down to twice that each new sample is a triangular mean over two steps, which stops what would fold down to near
    0 Hz; a sharper filter then halves the rate, so that nothing above 3.6 kHz is heard below 1.9 kHz, as a partial
    that is none. Only whole-list operations are used; a loop over 44 100 samples is too slow.
    """
    factor = max(1, round(recording.rate / WORKING_RATE / 2))
    samples = recording.samples
    count = len(samples) // factor
    if count == 0:
        return [], recording.rate / factor
    rest: list[int] = [0] * count
    rising: list[int] = [0] * count
    # Summing the running sums from the far end weights the first sample by 1 and the last by `factor`.
    for phase in range(factor - 1, -1, -1):
        rest = list(map(add, rest, samples[phase : count * factor : factor]))
        rising = list(map(add, rising, rest))
    falling = [factor * whole - part for whole, part in zip(rest, rising, strict=True)]
    signal = list(map(add, rising, [*falling[1:], 0]))
    mean = sum(signal) / count
    scale = 1 / (factor * factor * (LOUDEST + 1))
    level = [(value - mean) * scale for value in signal]
    rate = recording.rate / factor
    return (level, rate) if rate < 2 * SLOWED_FROM else (_halved(level), rate / 2)


def _halved(signal: list[float]) -> list[float]:
    """Return every second sample, after what lies above a third of the rate is taken out: a half-band filter."""
    count = (len(signal) + 1) // 2
    room = [0.0] * TAPS
    padded = [*room, *signal, *room]
    found = [0.5 * value for value in signal[::2]]
    for step in range(1, TAPS, 2):
        weight = sin(pi * step / 2) / (pi * step) * (0.5 + 0.5 * cos(pi * step / TAPS))
        before, after = padded[TAPS - step :: 2], padded[TAPS + step :: 2]
        found = [
            value + weight * (left + right)
            for value, left, right in zip(found, before[:count], after[:count], strict=True)
        ]
    return found


def clipped_share(recording: Recording) -> float:
    """Return the share of samples at the end of the scale: above a few in a thousand it is clipped.

    >>> clipped_share(Recording(array("h", [0, 32767, -32768, 5]), 8000))
    0.5
    """
    samples = recording.samples
    full = sum(map(samples.count, (LOUDEST, LOUDEST - 1, -LOUDEST, -LOUDEST - 1)))
    return full / max(len(samples), 1)


def energies(signal: list[float], block: int) -> list[float]:
    """Return the energy of each whole block of a signal."""
    sums = [0.0, *accumulate(map(pow, signal, repeat(2)))]
    return [sums[end] - sums[end - block] for end in range(block, len(sums), block)]
