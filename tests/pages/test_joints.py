"""Joints, and screws that are looked up: the answer first, the record with one tap, what is due, hazards, searching."""

from datetime import timedelta

import pytest

from logic.board_saved import to_dict
from logic.log import Ride, Tightening
from screens.acts import Go, Undo
from screens.acts.entering import Write
from screens.bench.joint_card import rides_since
from screens.blocks import PLAIN, WRONG, FigureRow, Fold, Line, Notice
from screens.tongue import texts
from tests.pages.reader import Reader
from tests.pages.sight import in_sight

NOTICES = texts("joints")["notices"]


def use(pages: Reader, name: str) -> None:
    pages.store.put("board", next(board.id for board in pages.world.boards() if board.name == name))
    pages.restart()


def card(pages: Reader, joint: str, board: str = "Towpath 36") -> Reader:
    use(pages, board)
    return pages.open("bench.joint", joint=joint)


def opened(pages: Reader) -> None:
    """Open every fold."""
    for block in pages.blocks():
        if isinstance(block, Fold):
            pages.act(block.act)


def figures(pages: Reader) -> dict[str, FigureRow]:
    return {one.label: one for one in pages.blocks() if isinstance(one, FigureRow)}


def notices(pages: Reader) -> list[str]:
    return [one.word for one in pages.blocks() if isinstance(one, Notice)]


def test_the_list_shows_each_joint_with_its_answer(pages: Reader) -> None:
    pages.open("bench.joints")
    assert {one.title: one.value for one in pages.blocks() if isinstance(one, Line) and one.value} == {
        "Truck to deck bolts": "by feel",
        "Kingpin nuts": "by feel",
        "Bearings and spacers": "by feel",
        "Axle nuts": "by feel",
        "Wheel pulley bolts": "1.5\u00a0N·m",
        "Mount clamp screws": "6\u00a0N·m",
        "Mount to mount screws": "3.5\u00a0N·m",
        "Motor face screws": "1.7\u00a0N·m",
        "Motor pulley set screws": "1.3\u00a0N·m",
        "Enclosure screws": "by feel",
    }
    assert "8 × M4, class 8.8, 6\u00a0mm in aluminium 6061-T6" in pages["motor_face"].detail
    assert pages.blocks()[1].key == "motor_face"
    # A touch opens the joint: no pencil says that its torque is typed here.
    assert all(row.leads for row in pages.blocks() if getattr(row, "value", ""))
    pages.tap("Threadlocker")
    assert pages.name == "bench.locker"


def test_the_crown_says_torque_ceiling_locker_and_pull(pages: Reader) -> None:
    card(pages, "motor_face", "Lock-keeper")
    crown = pages.page.crown
    assert (crown.word, crown.form) == ("1.3\u00a0N·m, never over 1.45", PLAIN)
    assert crown.text.startswith("Medium locker, ride after ")
    # Ours: 1.3 N m over 80 mm is 16.25 N, shown to even 16.2; 1.66 kg on the scale.
    assert crown.text.endswith("\nNo wrench: 1.66\u00a0kg at 80\u00a0mm")
    opened(pages)
    assert figures(pages)["Pull on the key or spanner"].number == "16.2"
    assert "1.66\u00a0kg on the scale, 80\u00a0mm from the screw" in pages["pull"].detail
    # Ours: 1.3 x 8.8507 = 11.506 and 1.45 x 8.8507 = 12.834, both rounded down.
    assert pages["other unit"].text == "Set 11.5\u00a0lbf·in, never over 12.8\u00a0lbf·in."
    assert pages.shows("What limits it: the thread in the hole strips.")
    assert pages.shows("Medium strength: undone with hand tools.")
    assert pages.shows("3 mm hex key. Try the tool first")


def test_inches_first_for_who_reads_inches(pages: Reader) -> None:
    pages.store.put("person", {"system": "inch"})
    card(pages, "motor_face")
    # Ours: 1.7 x 8.8507 = 15.046; 1.8 x 8.8507 = 15.931.
    assert pages.page.crown.word == "15\u00a0lbf·in, never over 15.9"
    pages.tap("Why")
    assert pages["other unit"].text == "Set 1.7\u00a0N·m, never over 1.8\u00a0N·m."


def test_every_result_opens_its_working(pages: Reader) -> None:
    card(pages, "motor_face")
    opened(pages)
    acts = [pages.page.crown.act, *(one.act for one in figures(pages).values())]
    assert len(acts) > 4
    assert all(isinstance(act, Go) and act.page == "working" for act in acts)
    assert pages.page.crown.act.args["label"] == "Set"


def test_one_tap_records_and_undo_takes_it_back(pages: Reader) -> None:
    card(pages, "motor_face")
    assert pages.shows("Done writes it into the log, medium locker.")
    pages.tap("Done: 1.7\u00a0N·m, torque wrench")
    (record,) = pages.records("tightening")
    assert record.body.torque == pytest.approx(1.7)
    assert (record.body.locker, record.body.tool, record.body.looked) == ("medium", "torque wrench", False)
    assert pages.shows("Tightened just now: 1.7\u00a0N·m, torque wrench, medium locker.")
    assert pages.shows("Recorded")
    pages.act(Undo())
    assert pages.world.last("tightening", joint="motor_face") is None
    assert pages.shows("Not recorded yet.")


def test_the_bar_names_the_tool_used_last_and_none_by_feel(pages: Reader) -> None:
    pages.store.put("joint_tool", "hex key and scale")
    card(pages, "motor_face")
    assert pages.page.foot.main.text == "Done: 1.7\u00a0N·m, hex key and scale"
    card(pages, "axle_nut")
    assert pages.page.foot.main.text == "Done: by feel"
    pages.enter()
    assert pages.records("tightening")[0].body.tool == "by feel"


def test_looking_again_is_due_after_a_day_and_ends_with_a_look(pages: Reader) -> None:
    card(pages, "motor_face")
    pages.enter()
    assert not pages.shows("Look at it again now.")
    pages.restart(hours=24)
    assert pages["again"].text.startswith("Look at it again now.")
    pages.open("bench.joints")
    assert "Look at it again now." in pages["motor_face"].detail
    assert pages["motor_face"].icon == "due"
    pages.store.append(pages.world.saved.id, Tightening(joint="motor_face", looked=True))
    pages.restart()
    assert "Looked at just now: the paint line was whole." in pages["motor_face"].detail
    assert pages["motor_face"].icon == "tick"


def test_a_ride_makes_it_due_too(pages: Reader) -> None:
    card(pages, "motor_face")
    pages.enter()
    pages.restart(minutes=10)
    assert not pages.shows("Look at it again now.")
    pages.store.append(pages.world.saved.id, Ride(distance=4000.0))
    pages.restart()
    assert pages.shows("Look at it again now.")


def test_the_day_moves_the_cure(pages: Reader) -> None:
    card(pages, "motor_face")
    pages.tap("Threadlocker")
    before = float(pages["cure"].number)
    pages.tap("Temperature at the bench, one less")
    assert float(pages["cure"].number) > before
    for _ in range(3):
        pages.tap("Temperature at the bench, one less")
    assert pages.shows("Too cold to cure: warm the parts and the bench first.")
    for _ in range(3):
        pages.tap("Temperature at the bench, one less")
    assert pages.world.person.day == pytest.approx(263.15)


def test_a_board_that_says_nothing_asks_for_the_first_value(bare: Reader) -> None:
    bare.open("bench.joint", joint="motor_face")
    assert (bare.page.crown.word, bare.page.crown.text) == ("Not known yet", "Thread is missing. Add it.")
    assert bare.page.foot.main.act is None
    bare.tap("Add it")
    assert bare.world.trail[-1][1] == {"key": "joints.motor_face.thread"}


@pytest.mark.parametrize(
    ("board", "joint", "sentence"),
    [("Ferry", "motor_set_screw", "pulley slips bare"), ("Weir", "deck_bolts", "nut is worn")],
)
def test_hazards_of_this_board_stand_first(pages: Reader, board: str, joint: str, sentence: str) -> None:
    card(pages, joint, board)
    assert notices(pages) == ["warning"]
    assert pages.page.crown.form == WRONG
    assert pages.page.blocks[0].text == NOTICES[sentence]
    pages.open("bench.joints")
    assert pages[joint].icon == "cross"


def test_no_card_has_two_signal_words_and_no_sentence_is_long(pages: Reader) -> None:
    use(pages, "Weir")
    for row in pages.world.saved.joints:
        pages.open("bench.joint", joint=row.key)
        assert len(notices(pages)) <= 1
    assert all(len(sentence.split()) <= 25 for sentence in NOTICES.values())
    assert not any("safe" in sentence for sentence in (*NOTICES.values(), *texts("joints")["items"].values()))


def test_a_nut_whose_drag_is_not_measured_is_told_over_its_drag(pages: Reader) -> None:
    board = pages.world.saved.with_value("joints.wheel_pulley.running", None)
    pages.store.save_board(board.id, board.name, to_dict(board))
    pages.restart()
    pages.open("bench.joints")
    # Ours: with a drag of 0.8 N m the card says 1.5 and 1.6 at most; 0.8 less of both is for the clamp.
    assert pages["wheel_pulley"].value == "0.7\u00a0N·m + drag"
    pages.tap("Wheel pulley bolts")
    assert pages.page.crown.word == "0.7\u00a0N·m, never over 0.8 over the nut's drag"
    pages.tap("Why")
    # ISO 2320: a new M5 nut may drag 1.6 N m.
    assert pages.shows("a new one drags up to 1.6\u00a0N·m")


def test_what_a_motor_shaft_has_is_chosen_in_sight(bare: Reader) -> None:
    bare.open("bench.joints")
    bare.tap("Motor pulley set screws")
    # Nothing is wrong before the depth is known: it is asked for.
    assert (bare.page.crown.word, bare.page.crown.form) == ("How deep is the thread?", PLAIN)
    assert bare["hazard"].word == "warning"
    assert {"carries", "engagement"} <= in_sight(bare.page, 360.0, 640.0)
    bare.tap("flat")
    bare.tap("5 mm")
    assert "hazard" not in bare
    assert bare.page.crown.form == PLAIN
    assert bare.page.crown.word.endswith("never over 0.8")


def test_a_motor_face_screw_is_looked_up_in_a_few_taps(bare: Reader) -> None:
    bare.open("bench.joints")
    bare.tap("Motor face screws")
    bare.tap("5 mm")
    # Ours: 0.762, of an alloy nobody named.
    assert bare.page.crown.word.startswith("0.7\u00a0N·m, never over ")
    assert bare.shows("M4, class 8.8, 5\u00a0mm in aluminium, alloy not known")
    # What the line above says already is not said again.
    assert bare["assumed"].text.startswith("Assumed: class 8.8")
    bare.tap("6061")
    # Ours: the hole bears 1.474; the head on a mount nobody knows, 17.59 mm2 x 152 MPa = 2674 N -> 1.283; / 1.06 = 1.211.
    assert bare.page.crown.word.startswith("1.2\u00a0N·m")
    assert bare.shows("Assumed: class 8.8")


def test_a_look_up_begins_with_the_boards_own_screws_and_leaves_the_board_alone(pages: Reader) -> None:
    use(pages, "Weir")
    before = pages.world.saved
    pages.open("bench.joints")
    pages.act(Write("lookup", "motor face"))
    pages.tap("Motor face screws")
    pages.tap("M4")
    pages.tap("5 mm")
    assert pages.shows("M4, class 12.9, 5\u00a0mm in aluminium 6061-T6")
    # Ours: the hole decides, 1.474, whatever the class.
    assert pages.page.crown.word.startswith("1.3\u00a0N·m")
    pages.restart(minutes=1)
    assert pages.shows("M4, class 12.9, 5\u00a0mm in aluminium 6061-T6")
    assert pages.world.saved == before
    assert pages.world.trial == {}
    pages.tap("Other sizes, class, head")
    pages.tap("Class or grade")
    assert pages.name == "bench.joint_value"


@pytest.mark.parametrize(
    ("typed", "wanted"),
    [
        ("grub", "Motor pulley set screws"),
        ("axle", "Axle nuts"),
        ("5/16", "Any screw 5/16-24 UNF"),
        ("m8 x 1", "Any screw M8 × 1"),
        ("#10-32", "Any screw #10-32 UNF"),
        ("lid", "Enclosure screws"),
    ],
)
def test_search_by_what_one_sees(pages: Reader, typed: str, wanted: str) -> None:
    pages.open("bench.joints")
    pages.act(Write("lookup", typed))
    pages.restart()
    assert pages["lookup"].text == typed
    pages.tap(wanted)
    assert pages.name == "bench.lookup_card"
    # A set screw asks for its length of thread first.
    word = pages.page.crown.word
    assert "never over" in word or word.startswith("By feel") or "Thread engaged" in pages.page.crown.text


def test_nothing_found_is_said(pages: Reader) -> None:
    pages.open("bench.joints")
    pages.act(Write("lookup", "wombat"))
    assert pages.shows("Nothing by this name.")


def test_a_look_alike_is_a_notice(pages: Reader) -> None:
    pages.open("bench.joints")
    pages.act(Write("lookup", "M8"))
    pages.tap("Any screw M8 × 1.25")
    assert notices(pages) == ["notice"]
    assert pages.shows("Looks alike: 5/16-24. Not interchangeable")


def test_rides_since_a_joint_are_counted_by_their_order_not_by_a_wrong_clock(pages: Reader) -> None:
    """The clock was two months ahead when the joint was tightened: the ride after it is a ride after it."""
    board = pages.world.saved.id
    pages.store.append(board, Tightening(joint="motor_face", torque=1.7), pages.time + timedelta(days=60))
    pages.store.append(board, Ride(distance=8000.0))
    pages.restart()
    record = pages.world.last("tightening", joint="motor_face")
    assert rides_since(pages.world, record) == 1
    pages.open("bench.joint", joint="motor_face")
    assert pages.shows("dated 2027-01-24, ahead of the clock")
