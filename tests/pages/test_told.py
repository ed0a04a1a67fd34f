"""Any page told without a screen: as text, as HTML with its pictures, as words for the ear; nothing that is shown is lost."""

import re
from dataclasses import replace
from xml.etree import ElementTree as ET

import pytest

from screens import blocks as b
from screens.acts.outside import HandOn, ReadOut, Share
from screens.blocks import Button
from screens.page import Page
from screens.pictures.strokes import Path, Picture
from screens.told.html import as_html
from screens.told.lines import has_answer
from screens.told.text import as_speech, as_text
from screens.told.tools import with_tools
from tests.pages.reader import Reader

GAP = "\u00a0"
LINE = Picture((Path(((0.0, 0.0), (1.0, 1.0))),), (0.0, 0.0, 1.0, 1.0))
PAGE = Page(
    title="A belt",
    crown=b.Verdict(key="verdict", word="SLACK", text="Scale reads 0.9 kg", form=b.WRONG),
    blocks=(
        b.Section(key="figures", title="Figures", note="Rough: rider is a guess"),
        b.FigureRow(key="target", label="Target", number="108", unit="N", change="+3 N", detail="per span"),
        b.Line(key="wheel", title="Wheel", value="97 mm", detail="measured"),
        b.Line(key="way", title="Only a way on"),
        b.Picture(key="picture", strokes=LINE, text="The drive <to scale>"),
        b.Notice(key="danger", word="danger", text="The belt can slip."),
        b.Fold(key="all", title="All figures"),
        b.Fold(key="more", title="Values", open=True),
        b.Words(key="words", text="Set it.\nThen ride."),
    ),
)


def test_text_has_each_thing_on_a_line_of_its_own() -> None:
    assert as_text(PAGE).splitlines() == [
        "A belt",
        "======",
        "SLACK",
        "Scale reads 0.9 kg",
        "",
        "Figures",
        "-------",
        "Rough: rider is a guess",
        "Target: 108 N (+3 N. per span)",
        "Wheel: 97 mm (measured)",
        "The drive <to scale>",
        "DANGER: The belt can slip.",
        "",
        "Values",
        "------",
        "Set it.",
        "Then ride.",
    ]


def test_html_has_the_pictures_inside_and_nothing_from_outside() -> None:
    page = as_html(PAGE)
    assert "<svg" in page
    assert "The drive &lt;to scale&gt;" in page
    assert "<script" not in page
    assert "http" not in page.replace("http://www.w3.org/2000/svg", "")
    body = page.partition("<body>")[2].partition("</body>")[0].replace("<br>", "<br/>")
    ET.fromstring(f"<body>{body}</body>")  # noqa: S314  (our own text)


def test_speech_says_units_in_full_and_ends_its_sentences() -> None:
    assert as_speech(PAGE).startswith(
        "A belt. SLACK. Scale reads 0.9 kilograms. Figures. Rough: rider is a guess. Target, 108 newtons."
    )
    gearing = Page(
        title="Speed",
        crown=b.Figure(key="top", label="Top speed", number="38", unit=""),
        blocks=(b.Words(key="w", text=f"Set to 103{GAP}N"),),
    )
    assert as_speech(gearing) == "Speed. Top speed, 38. Set to 103 newtons."


@pytest.mark.parametrize("name", ["ride.tension", "numbers.gearing", "numbers.packs", "numbers.charging"])
def test_what_a_page_shows_is_told_in_every_way(pages: Reader, name: str) -> None:
    page = pages.open(name).page
    assert has_answer(page)
    plain = re.sub(r"<[^>]+>", " ", as_html(page))
    shown = [one for one in (page.crown, *page.blocks) if isinstance(one, b.Figure | b.FigureRow | b.Verdict)]
    assert shown
    for one in shown:
        number = one.word if isinstance(one, b.Verdict) else one.number
        assert number in as_text(page)
        assert number in plain
    assert page.title in as_speech(page)
    assert GAP not in as_speech(page)


def test_the_ways_to_hand_a_page_on_are_not_told_with_it(pages: Reader) -> None:
    page = pages.open("numbers.gearing").page
    assert as_text(with_tools(page, hears=False)) == as_text(page)


def test_a_page_without_an_answer_has_none_to_hand_on() -> None:
    assert not has_answer(Page(title="Empty", blocks=(b.Words(key="words", text="Nothing here."),)))


def test_share_is_on_every_page_with_an_answer_and_comes_once() -> None:
    (share,) = with_tools(PAGE, hears=False).tools
    assert (share.text, share.act) == ("Share", HandOn())
    own = replace(PAGE, tools=(Button("Send it", Share("A belt", "108 N"), icon="send"),))
    assert with_tools(own, hears=False).tools == own.tools
    assert [one.act for one in with_tools(PAGE, hears=True).tools] == [HandOn(), ReadOut()]
    assert with_tools(replace(PAGE, chip=True), hears=True).tools == ()
