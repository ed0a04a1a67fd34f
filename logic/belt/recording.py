"""A recording as numbers: from the bytes of a microphone or of a WAV file to a slower, filtered signal."""

import sys
from array import array
from collections.abc import Iterator
from itertools import accumulate, repeat
from math import cos, pi, sin
from operator import add
from struct import Struct

from logic.errors import InputError
from logic.frozen import frozen

LOUDEST = 32767
WORKING_RATE = 5512.5
"""Samples a second that the pitch is looked for in: enough for 600 Hz and its harmonics."""
SLOWED_FROM = 4500.0
"""The rate is halved only where so many samples a second are left."""
TAPS = 10
"""Reach of the filter that halves the rate, in samples to each side."""
SLOWEST, LONGEST = 8000, 10.0
"""Least rate of a recording in Hz, and the most seconds that are looked at."""
FASTEST = 384_000
"""Highest rate in Hz that converters are sold with (common practice, no source)."""


@frozen
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
    """Return the recording of a WAV file's bytes; of several channels the first one.

    Raises InputError for what is not a WAV file of 16 bits, or has a rate under 8 kHz. A length of the sound that is
    left open, as recorders do that were cut off, counts to the end of the file.
    """
    form, data = b"", b""
    for name, part in _chunks(body):
        if name == b"fmt ":
            form = part
        elif name == b"data":
            data = part
            break
    if len(form) < _FORM.size or not data:
        raise InputError("file", len(body), "not a sound file")
    tag, channels, rate, _, frame, bits = _FORM.unpack_from(form)
    if tag == _EXTENSIBLE:
        tag = int.from_bytes(form[24:26], "little") if form[26:40] == _GUID_END else 0
    if tag != _PCM or bits != 16:  # noqa: PLR2004  (bits of a sample)
        raise InputError("file", bits, "not 16 bits")
    if channels == 0 or frame != 2 * channels or rate > FASTEST:
        raise InputError("file", channels, "not a sound file")
    whole = len(data) // frame * frame
    found = from_pcm(data[:whole], rate * channels) if rate >= SLOWEST else from_pcm(b"", rate)
    return Recording(found.samples[::channels], rate)


_FORM = Struct("<HHIIHH")
"""Tag, channels, rate, bytes a second, bytes of a frame, bits of a sample (Microsoft's WAVEFORMATEX)."""
_PCM, _EXTENSIBLE = 1, 0xFFFE
_GUID_END = bytes.fromhex("000000001000800000AA00389B71")
"""What follows the tag in the name of a sub-format (WAVEFORMATEXTENSIBLE, KSDATAFORMAT_SUBTYPE_PCM)."""


def _chunks(body: bytes) -> Iterator[tuple[bytes, bytes]]:
    """Yield name and content of each part of a RIFF file; the last may be cut short."""
    if body[:4] != b"RIFF" or body[8:12] != b"WAVE":
        return
    place = 12
    while place + 8 <= len(body):
        size = int.from_bytes(body[place + 4 : place + 8], "little")
        yield body[place : place + 4], body[place + 8 : place + 8 + size]
        place += 8 + size + size % 2


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
