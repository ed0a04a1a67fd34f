"""Contrast of the palettes, as WCAG 2.2 computes it: text at least 7 to 1, marks at least 3 to 1."""

from itertools import product

import pytest

from tests.contrast import COLOURS, THEMES, contrast

PAPERS = ("ground", "panel", "key", "tint")
INKS = ("text", "second", "main", "good", "bad", "trial")
MARKS = ("outline", "main", "bad", "trial", "chart_a", "chart_b", "chart_c")


@pytest.mark.parametrize(
    ("one", "two", "ratio"),
    [
        pytest.param("#000000", "#FFFFFF", 21.0, id="WCAG 2.2 definition of contrast ratio: black on white"),
        pytest.param("#777777", "#FFFFFF", 4.48, id="W3C, Understanding SC 1.4.3: #777777 on white"),
    ],
)
def test_the_measure(one: str, two: str, ratio: float) -> None:
    assert contrast(one, two) == pytest.approx(ratio, abs=0.005)


@pytest.mark.parametrize(("theme", "ink", "paper"), product(THEMES, INKS, PAPERS))
def test_text(theme: str, ink: str, paper: str) -> None:
    assert contrast(COLOURS[theme][ink], COLOURS[theme][paper]) >= 7


@pytest.mark.parametrize("theme", THEMES)
def test_text_on_the_main_colour(theme: str) -> None:
    assert contrast(COLOURS[theme]["over_main"], COLOURS[theme]["main"]) >= 7


@pytest.mark.parametrize(("theme", "mark"), product(THEMES, MARKS))
def test_marks(theme: str, mark: str) -> None:
    assert contrast(COLOURS[theme][mark], COLOURS[theme]["ground"]) >= 3


@pytest.mark.parametrize(("word", "least"), [("danger", 7), ("warning", 4.5), ("caution", 7), ("notice", 7)])
def test_signal_words(word: str, least: float) -> None:
    """Large bold words need 4.5; black on the standard's orange gives 5.3, the most there is."""
    assert contrast(COLOURS["signal"][f"on_{word}"], COLOURS["signal"][word]) >= least


@pytest.mark.parametrize(("theme", "ink"), product(THEMES, ("chart_a", "chart_b", "chart_c", "main")))
def test_colours_that_letter_a_line_are_as_readable_as_text(theme: str, ink: str) -> None:
    assert contrast(COLOURS[theme][ink], COLOURS[theme]["ground"]) >= 7
