"""The frame around what the keyboard is on is seen: at least 3 to 1 against what it stands on, as WCAG 2.2 1.4.11 asks."""

import pytest

from screens.paper.scale import Look
from screens.paper.sheet import Box, Laid, Touch
from screens.paper.view import RING
from tests.contrast import THEMES, contrast, shade
from tests.pages.states import names, states
from tests.pages.test_layout import laids


def under(touch: Touch, laid: Laid) -> set[str]:
    """Return the tones that the middles of the four sides of a frame stand on."""
    left, right = touch.x + RING, touch.x + touch.width - RING
    top, foot = touch.y + RING, touch.y + touch.height - RING
    middle, half = (left + right) / 2, (top + foot) / 2
    found = set()
    for x, y in ((left, half), (right, half), (middle, top), (middle, foot)):
        tone = "ground"
        for mark in laid.marks:
            inside = (
                isinstance(mark, Box)
                and mark.fill
                and mark.x <= x <= mark.x + mark.width
                and mark.y <= y <= mark.y + mark.height
            )
            tone = mark.fill if inside else tone
        found.add(tone)
    return found


@pytest.mark.parametrize("name", names())
def test_the_frame_is_told_from_what_it_stands_on_in_every_theme(name: str) -> None:
    pairs = set()
    for what, page in states(name):
        for part, laid in laids(page, 1200, 900, Look().scale):
            pairs |= {
                (tone, touch.on, f"{what} {part} {touch.name}")
                for touch in laid.touches
                for tone in under(touch, laid)
            }
    assert pairs
    seen = {(tone, on): where for tone, on, where in pairs}
    pale = [
        f"{theme} {where}: {on} on {tone} is {ratio:.1f}"
        for theme in THEMES
        for (tone, on), where in seen.items()
        if (ratio := contrast(shade(tone, theme), shade(on, theme))) < 3
    ]
    assert pale == []
