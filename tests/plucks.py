"""Plucks as a belt makes them, for tests: modes of a stiff damped span, and what a workshop adds."""

import math
import random
from array import array
from dataclasses import dataclass

RATE = 44100


@dataclass(frozen=True)
class Pluck:
    """How a span sounds: its first mode, how stiff it is, how long it rings, where it was plucked.

    `weak` is how many dB the first mode lies under what it would have: a body or a microphone takes it away.
    """

    frequency: float
    decay: float = 0.12
    stiffness: float = 0.001
    place: float = 0.45
    modes: int = 5
    weak: float = 0.0


def pluck(sound: Pluck, seconds: float, rate: int = RATE) -> list[float]:
    """Return a pluck that begins at once. Mode n of a stiff span lies at n f sqrt(1 + B n^2)."""
    total = [0.0] * int(seconds * rate)
    for mode in range(1, sound.modes + 1):
        pitch = mode * sound.frequency * math.sqrt((1 + sound.stiffness * mode**2) / (1 + sound.stiffness))
        if pitch > rate / 2:
            break
        strength = math.sin(mode * math.pi * sound.place) / mode**2
        if mode == 1:
            strength /= 10 ** (sound.weak / 20)
        decay = sound.decay / mode
        turn, fall = (
            complex(math.cos(2 * math.pi * pitch / rate), math.sin(2 * math.pi * pitch / rate)),
            math.exp(-1 / (decay * rate)),
        )
        here, step = complex(0.0, -strength), turn * fall
        for index in range(len(total)):
            total[index] += here.real
            here *= step
            if abs(here) < 1e-5:
                break
    return total


def tone(
    frequency: float, strength: float, seconds: float, phase: float = 0.0, rate: int = RATE
) -> list[float]:
    """Return a steady tone."""
    return [
        strength * math.sin(2 * math.pi * frequency * step / rate + phase)
        for step in range(int(seconds * rate))
    ]


def white(strength: float, seconds: float, dice: random.Random, rate: int = RATE) -> list[float]:
    """Return white noise of a root-mean-square strength."""
    return [dice.gauss(0.0, strength) for _ in range(int(seconds * rate))]


def room(strength: float, seconds: float, dice: random.Random, rate: int = RATE) -> list[float]:
    """Return noise of a room: stronger towards low tones, 3 dB an octave, of a root-mean-square strength."""
    slow = [0.0] * 3
    found = []
    for _ in range(int(seconds * rate)):
        fresh = dice.gauss(0.0, 1.0)
        slow[0] = 0.99765 * slow[0] + 0.0990460 * fresh
        slow[1] = 0.96300 * slow[1] + 0.2965164 * fresh
        slow[2] = 0.57000 * slow[2] + 1.0526913 * fresh
        found.append(sum(slow) + 0.1848 * fresh)
    size = rms(found)
    return [value * strength / size for value in found]


def rms(values: list[float]) -> float:
    """Return the root-mean-square of a signal."""
    return math.sqrt(sum(value * value for value in values) / len(values))


def recorded(  # noqa: PLR0913  (a sound, where it begins, and what lies under it)
    sound: list[float],
    *,
    lead: float,
    seconds: float,
    noise: list[float],
    level: float = 0.4,
    rate: int = RATE,
) -> array:
    """Return 16-bit samples: silence for `lead` seconds, then the sound at a peak level, noise under all."""
    first, count = int(lead * rate), int(seconds * rate)
    peak = max(map(abs, sound))
    signal = [0.0] * count
    for index, value in enumerate(sound[: count - first]):
        signal[first + index] = value / peak * level
    return array(
        "h", [max(-32768, min(32767, round(32767 * (a + b)))) for a, b in zip(signal, noise, strict=True)]
    )


def noise_for(sound: list[float], decibel: float, level: float = 0.4, rate: int = RATE) -> float:
    """Return the strength of a noise that lies so many dB under the first 0.2 s of a pluck."""
    peak = max(map(abs, sound))
    return rms(sound[: int(0.2 * rate)]) / peak * level / 10 ** (decibel / 20)
