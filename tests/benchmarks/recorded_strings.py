"""How the pitch of recorded plucked strings is heard. Run by hand: `uv run python -m tests.benchmarks.recorded_strings`.

The strings are the samples of a General MIDI sound font, played without any effect: install one of Debian's packages
(fluid-soundfont-gm, timgm6mb-soundfont) and its player (fluidsynth). Nothing of them is kept here. The reach of
partials was set on keys an even number above the lowest, without the instruments of `UNSEEN`: `... 4 1` plays keys
that were left out. Bars: right to 1 % in 90 of a hundred at 20 dB of noise, in 75 at 10 dB, and no answer more than
2 % off.
"""

import random
import shutil
import struct
import subprocess
import sys
import tempfile
import wave
from array import array
from collections import Counter
from collections.abc import Callable, Iterator
from itertools import product
from pathlib import Path

from logic.belt.pitch import pitch
from logic.belt.recording import Recording
from tests.plucks import noise_for, recorded, room, tone, white

FONTS = Path("/usr/share/sounds/sf2")
STRINGS = {
    24: "nylon strings",
    25: "steel strings",
    26: "jazz strings",
    27: "clean strings",
    28: "muted strings",
    32: "double bass",
    33: "bass, fingers",
    34: "bass, plectrum",
    45: "violins, plucked",
    46: "harp",
    104: "sitar",
    105: "banjo",
    106: "shamisen",
    107: "koto",
}
"""Places in the General MIDI list of sounds that are plucked strings."""
SEVERAL = 45
"""The violins are a section: several strings at once, up to a semitone apart, and rightly refused by most."""
UNSEEN = (25, 33, 46, 105)
"""Instruments that were left out when the reach of partials was set; `*` marks them."""
LOWEST, HIGHEST = 31, 74
"""Keys from 49 to 587 Hz."""
RATE, LEAD, LONG, EACH = 22050, 0.25, 0.85, 3.0
RIGHT, WRONG = 0.01, 0.02
BARS = {20: 0.90, 10: 0.75}


def frequency_of(key: int) -> float:
    """Return the frequency of a key in equal temperament, the 69th being 440 Hz."""
    return 440.0 * 2 ** ((key - 69) / 12)


def song(program: int, keys: list[int]) -> bytes:
    """Return a standard MIDI file that plays the keys one by one, `EACH` seconds apart."""
    events = bytes([0, 0xC0, program])
    for key in keys:
        # At the usual 120 beats a minute a second is 960 ticks: 1200 sounding, 1680 silent.
        events += bytes([0, 0x90, key, 110, 0x89, 0x30, 0x80, key, 0, 0x8D, 0x10, 0x90, key, 0])
    events += bytes([0, 0xFF, 0x2F, 0])
    return b"MThd" + struct.pack(">IHHH", 6, 0, 1, 480) + b"MTrk" + struct.pack(">I", len(events)) + events


def played(font: Path, program: int, keys: list[int]) -> Iterator[tuple[int, list[float]]]:
    """Yield each key with its sound from the moment it is struck."""
    with tempfile.TemporaryDirectory() as folder:
        tune, sound = Path(folder, "tune.mid"), Path(folder, "tune.wav")
        tune.write_bytes(song(program, keys))
        command = [
            "fluidsynth", "-ni", "-R", "0", "-C", "0", "-g", "0.5", "-r", str(RATE), "-O", "s16", "-T", "wav",
            "-F", str(sound), str(font), str(tune),
        ]  # fmt: skip
        subprocess.run(command, check=True, capture_output=True)  # noqa: S603  (Debian's player, our tune)
        with wave.open(str(sound)) as file:
            samples = array("h", file.readframes(file.getnframes()))[:: file.getnchannels()]
    for number, key in enumerate(keys):
        start = round(number * EACH * RATE)
        found = [float(value) for value in samples[start : start + round((LONG - LEAD) * RATE)]]
        if found and max(map(abs, found)) > 50.0:
            yield key, found


def hum(strength: float, seconds: float, dice: random.Random, rate: int) -> list[float]:
    """Return hum of the mains with three harmonics, of about a root-mean-square strength."""
    parts = [
        tone(50.0 * order, 1.2 * strength / order, seconds, dice.uniform(0, 6), rate) for order in (1, 2, 3)
    ]
    return [sum(values) for values in zip(*parts, strict=True)]


KINDS: dict[str, Callable[..., list[float]]] = {"even": white, "room": room, "hum": hum}


def results(fonts: list[Path], keys: list[int]) -> Iterator[tuple[int, str, str, int, str]]:
    """Yield, of each sound in each noise: its place in the list, its name, the noise, its dB, and how it was told."""
    dice = random.Random(1)
    for font, program in product(fonts, STRINGS):
        name = f"{font.stem} {STRINGS[program]}{'*' * (program in UNSEEN)}"
        for key, sound in played(font, program, keys):
            for kind, decibel in product(KINDS, BARS):
                noise = KINDS[kind](noise_for(sound, decibel, rate=RATE), LONG, dice, RATE)
                samples = recorded(sound, lead=LEAD, seconds=LONG, noise=noise, rate=RATE)
                found, true = pitch(Recording(samples, RATE)), frequency_of(key)
                off = abs(found.frequency / true - 1)
                word = found.refusal or ("right" if off < RIGHT else "near" if off < WRONG else "WRONG")
                if word == "WRONG":
                    print(f"  {name} key {key}, {kind} {decibel} dB: {found.frequency:.1f} for {true:.1f} Hz")
                yield program, name, kind, decibel, word


def main(step: int = 3, first: int = 0) -> None:
    """Print what share is right, refused and wrong, by noise and by sound: each `step` keys from `first` on."""
    fonts = [font for font in sorted(FONTS.glob("*.sf2")) if not font.is_symlink()]
    if not fonts or shutil.which("fluidsynth") is None:
        print("Skipped: no sound font under /usr/share/sounds/sf2, or no fluidsynth to play one.")
        return
    by_noise: dict[tuple[str, int], Counter[str]] = {}
    alone: dict[tuple[str, int], Counter[str]] = {}
    by_sound: dict[str, Counter[str]] = {}
    for program, name, kind, decibel, word in results(fonts, list(range(LOWEST + first, HIGHEST + 1, step))):
        by_noise.setdefault((kind, decibel), Counter())[word] += 1
        by_sound.setdefault(name, Counter())[word] += 1
        if program != SEVERAL:
            alone.setdefault((kind, decibel), Counter())[word] += 1
    for (kind, decibel), words in by_noise.items():
        one = alone[kind, decibel]
        print(
            f"{kind:5} {decibel} dB: right {words['right'] / words.total():.0%} (bar {BARS[decibel]:.0%}) of"
            f" {words.total()}, {one['right'] / one.total():.0%} without the violins; {dict(words)}"
        )
    for name, words in by_sound.items():
        print(f"{name:32} {dict(words)}")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
