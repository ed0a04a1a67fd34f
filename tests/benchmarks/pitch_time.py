"""How long the pitch of a second of sound takes. Run by hand: `uv run python -m tests.benchmarks.pitch_time`.

The bar is 40 ms of processor time for one second at 44.1 kHz on the machine of a desk.
"""

import random
from statistics import median
from time import process_time

from logic.belt.pitch import pitch
from logic.belt.recording import Recording, slowed
from tests.plucks import Pluck, noise_for, pluck, recorded, tone, white

BAR = 0.040


def main() -> None:
    """Print the time of each recording, and of slowing it down alone."""
    dice = random.Random(1)
    times = []
    for frequency in (50.0, 123.0, 355.0, 600.0):
        sound = pluck(Pluck(frequency), 0.75)
        hum = tone(50.0, 0.02, 1.0)
        noise = [a + b for a, b in zip(white(noise_for(sound, 10), 1.0, dice), hum, strict=True)]
        recording = Recording(recorded(sound, lead=0.25, seconds=1.0, noise=noise), 44100)
        begin = process_time()
        slowed(recording)
        half = process_time() - begin
        runs = []
        for _ in range(9):
            begin = process_time()
            found = pitch(recording)
            runs.append(process_time() - begin)
        times.append(median(runs))
        print(
            f"{frequency:5.0f} Hz: {1000 * median(runs):5.1f} ms, {1000 * half:4.1f} of it to slow it down;"
            f" heard {found.frequency:.2f} Hz {found.refusal}"
        )
    print(f"slowest {1000 * max(times):.1f} ms, bar {1000 * BAR:.0f} ms")


if __name__ == "__main__":
    main()
