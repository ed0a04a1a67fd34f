"""WAV files of all makes: what is sound is read, what is not is refused at once.

Layout: Microsoft and IBM, Multimedia Programming Interface and Data Specifications 1.0 (RIFF, WAVE); Microsoft,
WAVEFORMATEXTENSIBLE.
"""

import random
from array import array

import pytest

from logic.belt.pitch import pitch
from logic.belt.recording import LONGEST, Recording, clipped_share, from_wav
from logic.errors import InputError

TONE = array("h", [(place * 917) % 20000 - 10000 for place in range(4000)])
PCM_NAME = bytes.fromhex("0100000000001000800000aa00389b71")


def chunk(name: bytes, content: bytes, size: int | None = None) -> bytes:
    stated = len(content) if size is None else size
    return name + stated.to_bytes(4, "little") + content + b"\0" * (len(content) % 2)


def form(tag: int = 1, channels: int = 1, rate: int = 44100, bits: int = 16, more: bytes = b"") -> bytes:
    frame = channels * bits // 8
    said = [(tag, 2), (channels, 2), (rate, 4), (rate * frame % 2**32, 4), (frame, 2), (bits, 2)]
    return b"".join(number.to_bytes(size, "little") for number, size in said) + more


def riff(*chunks: bytes, size: int | None = None) -> bytes:
    body = b"WAVE" + b"".join(chunks)
    return b"RIFF" + (len(body) if size is None else size).to_bytes(4, "little") + body


def extensible(name: bytes = PCM_NAME) -> bytes:
    return form(0xFFFE, more=(22).to_bytes(2, "little") + (16).to_bytes(2, "little") + bytes(4) + name)


SOUND = TONE.tobytes()


@pytest.mark.parametrize(
    "body",
    [
        riff(chunk(b"fmt ", form()), chunk(b"data", SOUND)),
        riff(chunk(b"fmt ", form()), chunk(b"data", SOUND), size=0),
        riff(chunk(b"fmt ", form()), chunk(b"data", SOUND, size=2**32 - 1), size=2**32 - 1),
        riff(chunk(b"LIST", b"odd"), chunk(b"fmt ", form(more=bytes(2))), chunk(b"data", SOUND)),
        riff(chunk(b"fmt ", extensible()), chunk(b"fact", bytes(4)), chunk(b"data", SOUND)),
        riff(chunk(b"fmt ", form()), chunk(b"data", SOUND + b"x")),
    ],
    ids=["plain", "no length", "4 GB lengths", "a note first", "extensible", "half a sample"],
)
def test_what_is_sound_is_read(body):
    found = from_wav(body)
    assert (found.samples, found.rate) == (TONE, 44100)


def test_of_several_channels_the_first_is_taken():
    both = array("h", [sample for value in TONE for sample in (value, 1, -1)])
    assert from_wav(riff(chunk(b"fmt ", form(channels=3)), chunk(b"data", both.tobytes()))).samples == TONE


def test_no_more_is_looked_at_than_the_longest_recording():
    sound = array("h", [5]) * (2 * int(LONGEST) * 8000)
    assert from_wav(riff(chunk(b"fmt ", form(rate=8000)), chunk(b"data", sound.tobytes()))).seconds == LONGEST


@pytest.mark.parametrize(
    ("body", "reason"),
    [
        (b"", "not a sound file"),
        (riff(), "not a sound file"),
        (riff(chunk(b"data", SOUND)), "not a sound file"),
        (riff(chunk(b"fmt ", form())), "not a sound file"),
        (riff(chunk(b"fmt ", form())[:-4]), "not a sound file"),
        (riff(chunk(b"fmt ", form()), chunk(b"data", b"")), "not a sound file"),
        (riff(chunk(b"fmt ", form(channels=0)), chunk(b"data", SOUND)), "not a sound file"),
        (riff(chunk(b"fmt ", form(rate=2**32 - 1)), chunk(b"data", SOUND)), "not a sound file"),
        (b"RIFX" + riff(chunk(b"fmt ", form()), chunk(b"data", SOUND))[4:], "not a sound file"),
        (riff(chunk(b"fmt ", form(bits=8)), chunk(b"data", SOUND)), "not 16 bits"),
        (riff(chunk(b"fmt ", form(bits=24)), chunk(b"data", SOUND)), "not 16 bits"),
        (riff(chunk(b"fmt ", form(tag=3, bits=32)), chunk(b"data", SOUND)), "not 16 bits"),
        (riff(chunk(b"fmt ", extensible(b"\3" + PCM_NAME[1:])), chunk(b"data", SOUND)), "not 16 bits"),
        (riff(chunk(b"fmt ", form(0xFFFE)), chunk(b"data", SOUND)), "not 16 bits"),
        (riff(chunk(b"fmt ", form(rate=4000)), chunk(b"data", SOUND)), "rate too low"),
        (riff(chunk(b"fmt ", form(rate=0)), chunk(b"data", SOUND)), "rate too low"),
    ],
)
def test_what_is_not_is_refused(body, reason):
    with pytest.raises(InputError) as refused:
        from_wav(body)
    assert refused.value.reason == reason


def test_random_bytes_are_read_or_refused():
    dice = random.Random(11)
    whole = riff(chunk(b"LIST", b"note"), chunk(b"fmt ", extensible()), chunk(b"data", SOUND))
    for _ in range(2_000):
        body = bytearray(whole[: dice.randint(0, 200)] + whole[-dice.randint(1, 400) :])
        for _ in range(dice.randint(0, 6)):
            body[dice.randrange(min(len(body), 90))] = dice.choice([0, 1, 2, 16, 127, 128, 255])
        try:
            pitch(from_wav(bytes(body)))
        except InputError:
            continue


@pytest.mark.parametrize(
    ("samples", "share"), [((), 0.0), ((32767,), 1.0), ((-32768, 0), 0.5), ((32765, -32766), 0.0)]
)
def test_the_share_of_clipped_samples_is_of_all_of_them(samples, share):
    assert clipped_share(Recording(array("h", samples), 8000)) == share
