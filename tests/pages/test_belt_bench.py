"""Setting a belt, page by page: every way to a tension, two of them together, plucks, what is kept."""

import io
import wave
from pathlib import Path
from typing import Any

import pytest

from logic.board_saved import to_dict
from logic.log import Tension
from logic.person import person_to_dict
from screens.acts import Go, Undo
from screens.acts.entering import Ask, Write
from screens.acts.keeping import Record
from screens.acts.outside import Heard, Listen
from screens.blocks import PLAIN, RIGHT, UNSURE, WRONG
from screens.phone.microphone import NONE_HERE
from screens.scenes.bench import pluck
from tests.pages.reader import Reader
from tests.pages.sight import in_sight
from tests.pages.test_layout import SCALES, SIZES, faults, laids

GAP = "\u00a0"
KILOGRAM = 9.80665
"""Newtons that a scale shows as a kilogram."""


@pytest.fixture
def bench(pages: Reader) -> Reader:
    """Give the page on which a belt of Towpath 36 is set."""
    return pages.open("bench.belt")


def other_way(bench: Reader, title: str) -> None:
    """Take another way."""
    if not bench["ways"].open:
        bench.tap("Other ways")
    bench.tap(title)


def pull_all(bench: Reader, *pulls: str) -> None:
    """Type a pull for each place and save."""
    for pull in pulls:
        bench.type(pull)
        bench.enter()


def last(bench: Reader) -> Tension:
    """The newest reading in the log."""
    body: Tension = bench.records("tension")[0].body
    return body


def test_four_wheel_positions(bench: Reader) -> None:
    for number, pull in enumerate(("0.92", "0.98", "0.9", "0.95"), start=1):
        assert bench.page.foot.entry.label == f"Place {number}"
        bench.type(pull)
        bench.tap("Next" if number < 4 else "Save")
    assert bench.page.title == "Tension saved"
    body = last(bench)
    assert body.method == "scale"
    assert body.pulls == pytest.approx([pull * KILOGRAM for pull in (0.92, 0.98, 0.9, 0.95)])
    assert body.tension > body.least > 0
    bench.tap("Finish")
    bench.open("bench.belt")
    assert bench.shows("by scale, just now")
    assert bench.page.foot.entry.text == ""


def test_no_hand_is_told_to_move_a_motor_by_a_hundredth_of_a_millimetre(bench: Reader) -> None:
    """A stiff belt that is a little too tight wants 0.01 mm."""
    other_way(bench, "Pull the motor")
    bench.type("25")
    wanted = f"Nudge the motor less than 0.1{GAP}mm towards the wheel, more in a soft frame."
    assert bench.shows(wanted)


def test_a_reading_from_elsewhere_that_names_no_way_is_told_without_one(bench: Reader) -> None:
    """It read "105 N ± 10 N, , just now."."""
    bench.act(Record(Tension(belt="left", tension=105.0, error=10.0)))
    assert bench["last"].text == f"Last time 105{GAP}N{GAP}±{GAP}10{GAP}N, just now."


def test_one_low_place_round_the_wheel_proves_nothing(bench: Reader) -> None:
    for number in range(1, 5):
        bench.type("0.55")
        verdict = bench.page.crown
        assert (verdict.word, verdict.form) == (("HERE: LOOSE", UNSURE) if number < 4 else ("LOOSE", WRONG))
        assert bench.shows(f"{number} of 4 places so far") is (number < 4)
        assert ("move" in bench) is (number == 4)
        if number < 4:
            bench.tap("Next")
    assert bench.shows("away from the wheel")


def test_one_tight_place_is_told_at_once(bench: Reader) -> None:
    bench.type("1.9")
    assert (bench.page.crown.word, bench.page.crown.form) == ("TIGHT", WRONG)
    assert bench.shows("towards the wheel")


def test_a_single_place_can_be_saved_so(bench: Reader) -> None:
    bench.type("0.92")
    bench.tap("Save so")
    assert last(bench).pulls == pytest.approx([0.92 * KILOGRAM])


def test_half_filled_places_are_kept_over_a_restart(bench: Reader) -> None:
    bench.type("0.92")
    bench.tap("Next")
    bench.type("0.9")
    bench.restart(minutes=5)
    assert bench.page.title == "Left belt"
    options = [one.text for one in bench["values"].options]
    assert options == ["0.92", "0.9", "–", "–"]
    bench.tap("Forget these numbers")
    assert bench["values"].label.endswith("0 of 4")
    bench.act(Undo())
    assert bench["values"].label.endswith("2 of 4")


def test_a_unit_other_than_the_scales_is_kept(bench: Reader) -> None:
    other_way(bench, "A known weight")
    bench.type("1000 g")
    bench.enter()
    bench.type("1.2")
    tension = bench["tension"].text
    bench.restart(minutes=1)
    assert bench["tension"].text == tension
    bench.tap("Save")
    assert last(bench).pull == pytest.approx(KILOGRAM)


def test_several_pulls_can_be_saved_from_two_on(bench: Reader) -> None:
    other_way(bench, "Several pulls")
    assert bench.page.title == "Left belt: several pulls"
    for text in ("1", "0.85", "2"):
        bench.type(text)
        bench.enter()
    bench.type("2.3")
    assert bench.page.foot.main.text == "Save"
    assert bench["tension"].text
    assert [bar.text for bar in bench.page.foot.beside] == ["Another depth"]
    bench.tap("Save")
    assert last(bench).method == "pulls"
    assert len(last(bench).pulls) == 2


def test_another_depth_asks_for_its_pull_as_well(bench: Reader) -> None:
    other_way(bench, "Several pulls")
    for text in ("1", "0.85", "1.5"):
        bench.type(text)
        bench.enter()
    bench.type("1.5")
    bench.tap("Another depth")
    assert bench.page.foot.entry.label == "Depth 3"
    bench.type("2.5")
    bench.enter()
    bench.type("3.35")
    bench.tap("All figures")
    assert bench["zero"].label == "Add to every depth read"
    bench.tap("Save")
    assert len(last(bench).pulls) == 3


def test_pulling_the_motor_is_set_and_not_verified(bench: Reader) -> None:
    other_way(bench, "Pull the motor")
    assert bench.name == "bench.motor"
    assert bench.shows("Two people, power off.")
    assert bench["hazard"].word == "caution"
    bench.type("20")
    bench.tap("Save")
    assert last(bench).verified is False
    assert bench.shows("Set, not verified.")


def test_plucks_their_median_and_the_calibration(bench: Reader) -> None:
    pull_all(bench, "0.9", "0.9", "0.9", "0.9")
    bench.open("bench.sound", side="left")
    for found in (pluck(362.0), pluck(366.0), None, pluck(364.0)):
        bench.tap("Record a pluck")
        assert bench.page.foot.main.act is None
        bench.act(Heard(found, "" if found is not None else NONE_HERE))
        if found is None:
            assert bench.shows(NONE_HERE)
    assert [type(act) for act in bench.out] == [Listen] * 4
    assert bench.shows(f"Heard 364{GAP}Hz.")
    assert bench.shows(f"Plucks: 362, 366, 364 Hz. Median 364{GAP}Hz.")
    assert bench.page.crown.form == PLAIN
    assert bench.shows("A short belt sounds too high")
    assert "spectrum" in bench
    bench.restart(minutes=1)
    assert bench.shows(f"Plucks: 362, 366, 364 Hz. Median 364{GAP}Hz.")
    # The last reading may be by another way: this one is of the span.
    assert bench["against"].detail.startswith("The last pull at the span told")
    bench.tap("Set this pitch against a pull")
    assert bench.page.crown.word == "JUST RIGHT"
    assert bench.page.crown.form == RIGHT
    bench.tap("Save")
    assert last(bench).calibrated
    assert last(bench).pitch == pytest.approx(364.0, abs=0.3)
    assert bench.name == "bench.saved"
    bench.act(Undo())
    assert bench.page.crown.word == "Taken back"


def test_a_bad_recording_says_what_to_do(bench: Reader) -> None:
    bench.open("bench.sound", side="left")
    for found, said in (
        (pluck(362.0, loud=3.0), "Too loud"),
        (pluck(900.0), "Not where this belt can sound"),
    ):
        bench.tap("Record a pluck")
        bench.act(Heard(found))
        assert bench.shows(said)
    assert bench.page.foot.beside[0].act is None
    assert bench.page.foot.beside[0].why == "Record a pluck first."


def test_a_pluck_that_comes_too_late_is_dropped(bench: Reader) -> None:
    bench.open("bench.sound", side="left")
    bench.tap("Record a pluck")
    bench.act(Go("bench.wear"))
    bench.act(Heard(pluck(362.0)))
    bench.back()
    assert bench.page.foot.main.text == "Record a pluck"
    assert "plucks" not in bench


def test_a_pitch_of_another_meter(bench: Reader) -> None:
    bench.open("bench.sound", side="left")
    bench.tap("Type the pitch of a tuner")
    bench.type("358")
    bench.tap("Save")
    assert last(bench).pitch == 358.0


def test_a_recording_from_a_file(bench: Reader, tmp_path: Path) -> None:
    recording = pluck(362.0)
    body = io.BytesIO()
    with wave.open(body, "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(recording.rate)
        file.writeframes(recording.samples.tobytes())
    (tmp_path / "pluck.wav").write_bytes(body.getvalue())
    (tmp_path / "text.wav").write_text("no sound")
    bench.open("bench.sound", side="left")
    bench.tap("Open a recording")
    for name, said in (
        ("none.wav", "There is no file at this path."),
        ("text.wav", "This is not a WAV file"),
        ("pluck.wav", f"Heard 362{GAP}Hz."),
    ):
        bench.act(Write("wav", str(tmp_path / name)))
        bench.tap("Open this recording")
        assert bench.shows(said)


def read_two_ways(bench: Reader, motor: str) -> None:
    """Save a reading by scale and one by pulling the motor."""
    pull_all(bench, "0.85", "0.85", "0.85", "0.85")
    bench.tap("Finish")
    bench.open("bench.belt")
    bench.tap("Other ways")
    assert "together" not in bench
    bench.tap("Pull the motor")
    bench.type(motor)
    bench.tap("Save")
    bench.tap("Finish")


def test_two_ways_together(bench: Reader) -> None:
    read_two_ways(bench, "19")
    assert bench.shows("Both fit. Together: ")
    assert bench["both working"].act.page == "working"
    bench.tap("Save what both tell")
    assert last(bench).method == "together"
    assert len(last(bench).means) == 2


def test_the_second_way_is_set_beside_the_first_where_it_was_saved(bench: Reader) -> None:
    pull_all(bench, "0.85", "0.85", "0.85", "0.85")
    assert "together" not in bench
    bench.open("bench.motor", side="left")
    bench.type("19")
    bench.tap("Save")
    bench.tap("Save what both tell")
    assert last(bench).method == "together"
    assert bench.shows("two ways")
    assert "together" not in bench


def test_two_ways_that_do_not_fit_say_which_is_wrong_and_save_nothing(bench: Reader) -> None:
    read_two_ways(bench, "40")
    assert bench.shows("These two readings do not fit: one of them is wrong.")
    assert bench.shows("Pulling the motor reads more")
    assert "save both" not in bench


def test_the_best_way_is_named_by_what_it_takes(bench: Reader) -> None:
    bench.tap("Other ways")
    assert bench["best"].text.startswith("Best here, by what it takes: spring scale")
    # Pulling the motor is good to 15 % where the scale is good to 19 %.
    assert bench["way motor"].number < bench["way scale"].number
    assert bench["way motor"].detail.startswith("Two people")
    assert bench["way scale"].detail == "Best here. One person and a spring scale."


def test_a_new_belt_is_noted_with_a_way_back(bench: Reader) -> None:
    bench.tap("Around this belt")
    bench.tap("A new belt is on")
    assert bench.world.undo.text == "New belt noted"
    assert bench.records()[0].body.KIND == "belt_fitted"
    bench.act(Undo())
    assert bench.records("belt_fitted") == []


def without_a_belt(pages: Reader) -> Reader:
    """Give a saved board whose belt nobody entered."""
    board = pages.world.saved.with_value("drive.belt_teeth", None)
    pages.store.save_board(board.id, board.name, to_dict(board))
    pages.restart()
    return pages


def test_a_board_without_its_belt_is_asked_for_it_and_not_for_a_pull(pages: Reader) -> None:
    without_a_belt(pages).open("bench.belt")
    assert pages.page.crown.word == "Which belt is it?"
    assert pages.page.foot.entry is None
    pages.tap("Add: belt length in teeth")
    assert (pages.name, pages.world.args["key"]) == ("board.value", "drive.belt_teeth")
    assert pages.records("tension") == []


def test_no_tension_is_saved_without_the_belt(pages: Reader) -> None:
    without_a_belt(pages).open("bench.motor")
    for _ in range(4):
        pages.type("0.9")
        pages.enter()
    assert pages.shows("Belt length in teeth is missing")
    assert pages.records("tension") == []
    assert not any(isinstance(act, Ask) for _, act in pages.parts())


@pytest.mark.parametrize("tool", ["steel rule", "calliper", "feeler gauge"])
def test_ride_and_bench_pull_to_the_same_depth(pages: Reader, tool: str) -> None:
    person = person_to_dict(pages.world.person) | {"depth_tool": tool}
    pages.store.put("person", person)
    pages.restart()
    on_bench = pages.open("bench.belt").page.crown.word
    assert f"Pull {pages.open('ride.tension')['depth'].value} aside" == on_bench


def test_the_other_belt_is_one_tap_away(bench: Reader) -> None:
    bench.tap("The right belt")
    assert bench.page.title == "Right belt"
    other_way(bench, "Pull the motor")
    assert bench.page.title == "Right belt: pull the motor"
    bench.type("19")
    bench.tap("Save")
    assert last(bench).belt == "right"
    bench.tap("The left belt")
    assert bench.page.title == "Left belt"


def test_left_against_right(bench: Reader) -> None:
    board = bench.world.saved.id
    for side, tension in (("left", 92.0), ("right", 103.0)):
        bench.store.append(board, Tension(belt=side, method="scale", tension=tension, error=15.0))
    bench.restart()
    bench.tap("Around this belt")
    assert bench["both"].text == f"Left against right: \u221211{GAP}N."


def test_what_matters_can_be_read_from_a_metre(bench: Reader) -> None:
    bench.tap("Around this belt")
    act: Any = bench["view"].act
    assert act.page == "bench.view"
    assert act.args["big"] == f"0.959{GAP}kg"
    assert act.args["lines"][0] == f"Pull 1.1{GAP}mm aside"


def test_back_leads_through_the_places_and_out_of_another_way(bench: Reader) -> None:
    bench.type("0.92")
    bench.enter()
    bench.back()
    assert bench.page.foot.entry.text == "0.92"
    other_way(bench, "A known weight")
    bench.back()
    assert bench.page.title == "Left belt"
    bench.back()
    assert bench.name == "ride"


@pytest.mark.parametrize("pull", ["0.92", "0.75", "2"])
def test_what_was_saved_is_cut_nowhere(bench: Reader, pull: str) -> None:
    pull_all(bench, pull, pull, pull, pull)
    saved = bench.page
    bench.act(Go("ride.tension_saved", {"ids": bench.world.args["ids"]}))
    for page in (saved, bench.page):
        for width, height in SIZES:
            for scale in SCALES:
                for part, laid in laids(page, width, height, scale):
                    assert [*faults(laid)] == [], (part, width, scale)


def test_who_has_no_scale_finds_the_other_ways_without_a_swipe(bench: Reader) -> None:
    assert bench["ways"].note == "No scale? By a weight, the motor or sound."
    assert "ways" in in_sight(bench.page, 412.0, 915.0)
    keys = [block.key for block in bench.blocks()]
    assert keys.index("ways") == keys.index("do") + 1
