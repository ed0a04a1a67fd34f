"""A screw in its hole, cut open, to scale: head, washers, plate, thread, and what lies behind the hole.

Screw, thread and windings differ by form and by at least 3:1 from what they lie on; the metals differ by their hatching.
"""

from collections.abc import Iterator, Mapping

from logic.answers.joint_guide import diameter_of
from screens.pictures.hatching import BROKEN, PAIRS, SINGLE, hatches
from screens.pictures.strokes import Arc, Arrow, Disc, Fill, Label, Path, Picture, Point, Stroke, box, frame
from screens.tongue import _
from screens.words import Style

HEAD, HEAD_WIDE, HALF, BEHIND = 1.0, 0.8, 1.3, 0.8
"""In diameters: height and half the width of a head, half the height of the metal, and the depth shown behind the hole."""
CLEAR = 0.56
"""Half of a clearance hole, in diameters."""
CUT, SCREW, THREAD, WINDING, PAST = "text", "text", "ground", "trial", "bad"
"""Tones of outlines, of the screw, of the thread on it, of the windings, and of what reaches too far."""


def reach_picture(  # noqa: PLR0913  (what is drawn)
    thread: str,
    lengths: Mapping[str, float],
    style: Style,
    *,
    engaged: float,
    room: float,
    metal: str,
    through: bool,
) -> Picture:
    """Return the cut of a screw whose five lengths (m) are known; `engaged` and `room` are what the reach comes to."""
    wide = diameter_of(thread)
    face = lengths["washers"] + lengths["plate"]
    end, tip = face + lengths["hole_depth"], lengths["screw_length"]
    tapped, half = face + lengths["thread_depth"], HALF * wide
    strokes: list[Stroke] = [
        *_metal(wide, lengths["washers"], face, end, metal),
        *(_windings(end, wide) if through else _bottom(end, wide)),
        *_thread(face, tapped, wide, CUT),
        *_screw(wide, tip, end, min(tip, tapped), face),
        *_lengths(style, face, min(tip, tapped), tip, end, half, engaged=engaged, room=room, through=through),
    ]
    right = max(tip, end + BEHIND * wide)
    # Texts stand above and below the cut, in the margins.
    return Picture(
        tuple(strokes),
        (-HEAD * wide, -half * 1.12, right, half * 1.12),
        height=150.0,
        margins=(8.0, 30.0, 32.0, 30.0),
    )


def hatching(metal: str) -> str:
    """Return how a metal is hatched.

    >>> hatching("6061-T6"), hatching("steel"), hatching("PA66")
    ('single', 'pairs', 'broken')
    """
    return PAIRS if metal == "steel" else BROKEN if metal in ("brass", "PA66") else SINGLE


def _metal(wide: float, washers: float, face: float, end: float, metal: str) -> Iterator[Stroke]:
    """Yield washers (steel), plate and motor face, above and below the hole."""
    parts = (
        (0.0, washers, CLEAR, HALF * 0.8, PAIRS, True),
        (washers, face, CLEAR, HALF, SINGLE, True),
        (face, end, 0.5, HALF, hatching(metal), False),
    )
    for start, stop, gap, depth, kind, rising in parts:
        if stop <= start:
            continue
        for low, high in ((gap * wide, depth * wide), (-depth * wide, -gap * wide)):
            yield from hatches((start, low), (stop, high), wide * 0.22, kind=kind, rising=rising)
            yield frame(box(start, low, stop, high), CUT, 2.0)


def _screw(wide: float, tip: float, end: float, held: float, face: float) -> Iterator[Stroke]:
    """Yield head and shank, the thread that holds cut into them, and what is past the end striped."""
    radius, head = wide / 2, HEAD * wide
    yield Fill(box(-head, -HEAD_WIDE * wide, 0.0, HEAD_WIDE * wide), SCREW)
    yield Fill(box(-head, -0.35 * wide, -head * 0.45, 0.35 * wide), THREAD)
    yield Fill(box(0.0, -radius, min(tip, end), radius), SCREW)
    if held > face:
        yield from _thread(face, held, wide * 0.86, THREAD)
    if tip > end:
        yield Fill(box(end, -radius, tip, radius), PAST)
        yield from (
            Path(stripe.points, THREAD, 2.0)
            for stripe in hatches((end, -radius), (tip, radius), wide * 0.3, rising=False)
        )


def _thread(start: float, stop: float, wide: float, tone: str) -> Iterator[Path]:
    """Yield the teeth of a thread, above and below."""
    pitch = wide * 0.2
    count = int((stop - start) / pitch + 1e-6)
    for side in (0.5, -0.5):
        points: list[Point] = []
        for tooth in range(count):
            x = start + tooth * pitch
            points += [(x, side * wide), (x + pitch / 2, side * wide * 0.8)]
        if count:
            yield Path((*points, (start + count * pitch, side * wide)), tone, 1.5)


def _windings(end: float, wide: float) -> Iterator[Stroke]:
    """Yield wires cut across: rings with a dot."""
    radius, count = wide * 0.2, 5
    for place in range(count):
        centre = (end + radius * 1.8, (place - (count - 1) / 2) * wide * 0.5)
        yield Arc(centre, radius, tone=WINDING, width=2.0)
        yield Disc(centre, 2.0, WINDING)


def _bottom(end: float, wide: float) -> Iterator[Stroke]:
    """Yield the closed bottom of a hole."""
    lower, upper = (end, -HALF * wide), (end + BEHIND * wide * 0.6, HALF * wide)
    yield from hatches(lower, upper, wide * 0.22, rising=False)
    yield frame(box(*lower, *upper), CUT, 2.0)


def _lengths(  # noqa: PLR0913  (places along the screw)
    style: Style,
    face: float,
    held: float,
    tip: float,
    end: float,
    half: float,
    *,
    engaged: float,
    room: float,
    through: bool,
) -> Iterator[Stroke]:
    """Yield the marked lengths: plate, and what is left or too much, above; the thread that holds below.

    A text that finds no room is left out: the page says the same in its rows.
    """
    above, below = half * 1.12, -half * 1.12
    yield Arrow((0.0, above), (face, above), CUT, 1.0, both=True)
    yield Label(style.number(face, "length"), (face / 2, above), ("t", "lt"))
    if tip > face and room:
        left = room >= 0
        said = (_("{length} free") if left else _("{length} too far")).format(
            length=style.number(abs(room), "length")
        )
        start, stop = min(tip, tip + room), max(tip, tip + room)
        tone = CUT if left else PAST
        yield Path(((start, above), (stop, above)), tone, 3.0)
        yield Label(said, ((start + stop) / 2, above), ("t", "rt", "lt"), tone=tone, bold=True)
    if held > face:
        holds = _("{length} holds").format(length=style.number(engaged, "length"))
        yield Arrow((face, below), (held, below), CUT, 1.0, both=True)
        yield Label(holds, ((face + held) / 2, below), ("b", "lb"), bold=True)
    behind = _("windings") if through else _("bottom")
    yield Label(behind, (end, below), ("rb", "b", "r"), tone=WINDING if through else CUT)
