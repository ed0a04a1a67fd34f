"""Screw reach: five lengths, a verdict, the cut to scale with its words, what was kept before. Cases done by hand."""

from itertools import pairwise, product

import pytest
from kivy.metrics import dp

from logic.answers.reach import NAMES, asked_key
from logic.board import Value
from screens.acts.entering import Ask, Put
from screens.blocks import PLAIN, RIGHT, UNSURE, WRONG, Notice
from screens.paper.picture import lay
from screens.pictures.hatching import BROKEN, PAIRS, SINGLE, THIN, hatches
from screens.pictures.reach import CUT, PAST, SCREW, THREAD, WINDING, hatching, reach_picture
from screens.pictures.strokes import Arc, Fill, Label, Path, Picture
from screens.words import Style
from tests.pages.reader import Reader
from tests.pages.test_layout import SCALES, SIZES, faults, laids
from tests.screens.test_contrast import COLOURS, THEMES, contrast

M4 = {"screw_length": 0.014, "plate": 0.007, "washers": 0.001, "thread_depth": 0.0065, "hole_depth": 0.007}


def cut(*, room: float = 0.001, metal: str = "6061-T6", through: bool = True, **more: float) -> Picture:
    return reach_picture(
        "M4", {**M4, **more}, Style(), engaged=0.006, room=room, metal=metal, through=through
    )


def labels(picture: Picture) -> set[str]:
    return {one.text for one in picture.strokes if isinstance(one, Label)}


def enter(pages: Reader, *lengths: str) -> None:
    """Type the lengths one after the other, each by the bar that asks for the next."""
    for text in lengths:
        pages.enter()
        pages.type(text)


def notices(pages: Reader) -> list[str]:
    return [one.word for one in pages.blocks() if isinstance(one, Notice)]


def test_reach_by_five_lengths(pages: Reader) -> None:
    pages.open("bench.reach")
    assert (pages.page.crown.form, pages.page.crown.text) == (PLAIN, "Still to measure: 5 lengths.")
    assert pages.page.foot.main.text == "Measure: screw, below its head"
    pages.enter()
    assert pages["help"].text.startswith("Calliper from below the head")
    pages.type("14")
    assert pages.page.foot.main.text == "Next: plate"
    enter(pages, "7", "1", "6.5", "7")
    # Ours: 14 - 8 = 6 in, 7 - 6 = 1 left; 12 to 14.5 fit.
    assert (pages.page.crown.word, pages.page.crown.form) == ("Enough", RIGHT)
    assert pages.shows("Screws of 14\u00a0mm to 14.5\u00a0mm fit here.")
    assert labels(pages["picture"].strokes) == {
        "8\u00a0mm",
        "6\u00a0mm holds",
        "1\u00a0mm free",
        "windings",
    }
    assert notices(pages) == []
    assert pages.page.foot.main.text == "Done"
    pages.enter()
    assert pages.page.foot.entry is None


def test_a_screw_into_the_windings_is_a_warning(pages: Reader) -> None:
    pages.open("bench.reach")
    enter(pages, "16", "7", "0", "6.5", "7")
    assert notices(pages) == ["warning"]
    assert (pages.page.crown.word, pages.page.crown.form) == ("Too long", WRONG)
    assert pages.page.crown.text == "It ends 2\u00a0mm past the hole."
    assert "2\u00a0mm too far" in labels(pages["picture"].strokes)
    assert pages.shows("each screw head to each of the three motor wires must read open")
    pages.tap("A closed bottom")
    assert notices(pages) == []
    assert pages.shows("It jams at the end of the thread")
    assert "bottom" in labels(pages["picture"].strokes)


@pytest.mark.parametrize(
    ("screw", "word", "form"),
    [("10", "Too short", WRONG), ("14.7", "Close", UNSURE), ("7.5", "Does not reach", WRONG)],
)
def test_each_verdict_has_its_form(pages: Reader, screw: str, word: str, form: str) -> None:
    pages.open("bench.reach")
    # Ours: 7.5 mm lie between head and motor, 7 mm of hole: 10 - 7.5 = 2.5 in, of 4 at least; 14.5 - 14.7 < 0.5 clear.
    enter(pages, screw, "7", "0.5", "6.5", "7.5" if screw == "14.7" else "7")
    assert (pages.page.crown.word, pages.page.crown.form) == (word, form)


def test_lengths_outlive_a_restart_and_a_key_acts_at_once(pages: Reader) -> None:
    pages.open("bench.reach")
    enter(pages, "10", "7", "0.5", "6.5", "7")
    pages.enter()
    pages.restart(hours=2)
    assert pages.page.crown.word == "Too short"
    pages.tap("Screw, below its head")
    pages.type("14")
    assert pages.page.crown.word == "Enough"
    assert pages.world.trial == {}


def test_a_length_that_cannot_be_greys_the_verdict_and_keeps_the_old_one(pages: Reader) -> None:
    pages.open("bench.reach")
    enter(pages, "14", "7", "1", "6.5", "7")
    pages.enter()
    pages.tap("Plate")
    pages.type("900")
    assert pages.page.crown.grey
    pages.back()
    assert pages[asked_key("plate")].detail == "900 not used"
    assert pages.page.crown.word == "Enough"


def test_thread_and_metal_begin_at_the_boards_own_motor_screws(pages: Reader) -> None:
    chosen = {one.text for one in pages.open("bench.reach")[asked_key("thread")].options if one.chosen}
    assert chosen == {"M4"}
    pages.tap("M5")
    enter(pages, "14", "7", "1", "6.5", "7")
    # Ours: 1.5 diameters of M5 are 7.5 mm; 6 hold.
    assert pages.page.crown.text == "One diameter holds, but less than this metal wants."


def test_what_was_one_setting_for_all_boards_is_carried_over_once(pages: Reader) -> None:
    body = {"si": 0.014, "known": "measured", "typed_unit": "mm"}
    kept = {"lengths": {"screw_length": body}, "size": "M5", "metal": "steel", "behind": "bottom"}
    pages.store.put("reach", kept)
    pages.open("bench.reach")
    assert pages[asked_key("screw_length")].value == "14\u00a0mm"
    assert [
        one.text
        for name in ("thread", "metal", "behind")
        for one in pages[asked_key(name)].options
        if one.chosen
    ] == [
        "M5",
        "steel",
        "A closed bottom",
    ]
    pages.act(Put(asked_key("screw_length"), None, "question"))
    pages.back()
    pages.open("bench.reach")
    assert pages[asked_key("screw_length")].value == "not set"


def test_every_length_can_be_asked(pages: Reader) -> None:
    pages.open("bench.reach")
    assert [block.act for block in pages.blocks() if block.key in map(asked_key, NAMES)] == [
        Ask(asked_key(name)) for name in NAMES
    ]


@pytest.mark.parametrize("screw", [0.010, 0.014, 0.018])
def test_lengths_are_to_scale(screw: float) -> None:
    picture = cut(screw_length=screw, room=0.015 - screw)
    assert picture.to_scale
    fills = [one for one in picture.strokes if isinstance(one, Fill)]
    inside = max(x for one in fills if one.tone == SCREW for x, _ in one.points)
    assert inside == pytest.approx(min(screw, 0.015))
    past = [x for one in fills if one.tone == PAST for x, _ in one.points]
    assert (max(past) == pytest.approx(screw)) if screw > 0.015 else not past
    # Nothing lies outside the box but texts.
    left, foot, right, top = picture.box
    for one in picture.strokes:
        for x, y in getattr(one, "points", ()):
            assert left - 1e-9 <= x <= right + 1e-9, one
            assert foot - 1e-9 <= y <= top + 1e-9, one


@pytest.mark.parametrize("theme", THEMES)
def test_screw_thread_and_windings_stand_out_by_three_to_one(theme: str) -> None:
    """What each lies on: metal and windings on the ground, the thread on the screw, the stripes on what is too far."""
    tones = COLOURS[theme]
    for ink, paper in product((CUT, SCREW, WINDING, PAST), ("ground",)):
        assert contrast(tones[ink], tones[paper]) >= 3.0
    for ink, paper in ((THREAD, SCREW), (THREAD, PAST)):
        assert contrast(tones[ink], tones[paper]) >= 3.0


def test_forms_tell_screw_thread_and_windings_apart_without_colour() -> None:
    strokes = cut().strokes
    assert any(isinstance(one, Arc) and one.tone == WINDING for one in strokes)
    assert any(isinstance(one, Path) and one.tone == THREAD for one in strokes)
    assert not any(isinstance(one, Fill) and one.tone == WINDING for one in strokes)


@pytest.mark.parametrize(("metal", "kind"), [("6061-T6", SINGLE), ("steel", PAIRS), ("brass", BROKEN)])
def test_the_hatching_means_the_metal(metal: str, kind: str) -> None:
    assert hatching(metal) == kind
    lines = list(hatches((0.0, 0.0), (10.0, 1.0), 1.0, kind=kind))
    starts = [one.points[0][0] for one in lines if one.points[0][1] == 0.0]
    gaps = {round(later - earlier, 6) for earlier, later in pairwise(starts)}
    assert gaps == ({0.35, 1.65} if kind == PAIRS else {1.0})
    assert all(bool(one.dashes) == (kind == BROKEN) for one in lines)
    drawn = [one for one in cut(metal=metal).strokes if isinstance(one, Path) and one.width == THIN]
    assert any(one.dashes for one in drawn) == (kind == BROKEN)


@pytest.mark.parametrize("width", [328, 380, 608])
@pytest.mark.parametrize("screw", [0.014, 0.016])
def test_every_mark_of_a_usual_screw_has_its_text(width: int, screw: float) -> None:
    picture = cut(screw_length=screw, room=0.015 - screw)
    drawn = {one.text for one in lay(picture, dp(width), dp(200)) if one.kind == "text"}
    assert drawn == labels(picture)


@pytest.mark.parametrize(
    "given",
    [(14, 7, 1, 6.5, 7), (16, 7, 0, 6.5, 7), (40, 2, 0, 6, 6), (5, 3, 0.5, 2, 2), (8, 7.9, 0, 30, 40)],
)
def test_nothing_is_cut_or_over_each_other(pages: Reader, given: tuple[float, ...]) -> None:
    for name, length in zip(NAMES, given, strict=True):
        pages.act(Put(asked_key(name), Value(length / 1000, typed_unit="mm"), "question"))
    page = pages.open("bench.reach").page
    found = [
        f"{width}x{height} {scale} {part}: {fault}"
        for width, height in SIZES
        for scale in SCALES
        for part, laid in laids(page, width, height, scale)
        for fault in faults(laid)
    ]
    assert found == []


def test_a_value_of_another_page_is_not_taken(pages: Reader) -> None:
    pages.act(Put(asked_key("plate"), Value(0.007, typed_unit="mm"), "question"))
    assert pages.open("bench.reach").page.crown.text == "Still to measure: 4 lengths."
