"""A step is taken back on the board it was done to, whatever board has come in front since."""

from dataclasses import replace
from pathlib import Path

import pytest

from logic.board import Value
from logic.log import Note
from logic.store import Store
from logic.store.stand_in import SCRATCH
from screens.acts import Both, Place, Undo
from screens.acts.boards import AddBoard, Bin, Choose, KeepAs, NotKnown, Rename
from screens.acts.entering import Put, Write
from screens.acts.keeping import Keep, Record, Set, Settle, TakeOut
from screens.acts.runs import Answer as AnswerItem
from screens.acts.runs import Halt
from screens.asked import not_known, out_of_use
from screens.world import CLOSE
from tests.pages.reader import Reader

TEETH = "drive.motor_teeth"


def other(pages: Reader, name: str = "Weir") -> str:
    """Put another board in front and return its id."""
    found = next(board.id for board in pages.world.boards() if board.name == name)
    pages.act(Choose(found))
    return found


def test_a_dropped_trial_comes_back_on_its_own_board(pages: Reader) -> None:
    """It landed on the board in use."""
    first = pages.world.saved.id
    pages.open("numbers.gearing")
    pages.tap("Motor pulley, one more")
    pages.tap("Drop the trial")
    there = other(pages)
    pages.act(Undo())
    assert (pages.world.saved.id, dict(pages.world.trial)) == (there, {})
    assert pages.world.undo.text == "Taken back on Towpath 36."
    pages.act(Choose(first))
    assert pages.world.trial[TEETH].si == 17.0


def test_a_kept_trial_that_is_taken_back_is_tried_again_and_the_log_tells_of_no_change(pages: Reader) -> None:
    """What was typed was lost, and the log went on saying that the board has it."""
    before = pages.world.saved
    pages.act(Put(TEETH, Value(17.0)))
    pages.act(Keep())
    assert len(pages.records("board_changed")) == 1
    pages.act(Undo())
    pages.restart()
    assert (pages.world.saved, pages.world.trial[TEETH].si) == (before, 17.0)
    assert pages.records("board_changed") == []


def test_a_saved_value_is_taken_back_without_a_change_of_boards(pages: Reader) -> None:
    """The board it was saved on came in front."""
    first = pages.world.saved
    pages.act(Set({TEETH: Value(18.0)}))
    there = other(pages)
    pages.act(Undo())
    assert (pages.world.saved.id, pages.store.get("board")) == (there, there)
    pages.act(Choose(first.id))
    assert pages.world.saved == first


def test_a_log_entry_is_taken_back_on_its_own_board(pages: Reader) -> None:
    first = pages.world.saved.id
    pages.act(Record(Note(note="dry"), undo="Noted"))
    other(pages)
    pages.act(Record(Note(note="wet")))
    pages.act(Undo())
    assert [record.body.note for record in pages.store.entries(pages.world.saved.id, "note")] == ["wet"]
    assert pages.store.entries(first, "note") == []


def test_what_was_tried_since_stays_beside_the_trial_that_comes_back(pages: Reader) -> None:
    pages.act(Put(TEETH, Value(17.0)))
    pages.open("numbers.gearing")
    pages.tap("Drop the trial")
    pages.tap("Wheel pulley, one more")
    pages.act(Undo())
    assert {key: value.si for key, value in pages.world.trial.items()} == {
        TEETH: 17.0,
        "drive.wheel_teeth": 41.0,
    }


def test_of_a_board_that_is_in_the_bin_nothing_is_taken_back(pages: Reader) -> None:
    pages.act(Set({TEETH: Value(18.0)}))
    step, first = pages.world.undo, pages.world.saved
    pages.act(Bin())
    pages.world = replace(pages.world, undo=step)
    pages.act(Undo())
    assert pages.world.undo.word == CLOSE
    assert pages.store.board(first.id).body["drive"]["motor_teeth"]["si"] == 18.0


@pytest.mark.parametrize("belt", ["left", "right"])
def test_bin_and_undo_over_a_tension_check_leave_a_page_that_can_be_read(pages: Reader, belt: str) -> None:
    """A board with one motor came back under the check of the right belt and ended the app."""
    other(pages, "Lock-keeper")
    pages.act(Bin())
    assert pages.world.saved.name == "Ferry"
    pages.open("ride.tension", belt=belt)
    pages.type("0.9")
    pages.act(Undo())
    assert pages.world.saved.name == "Lock-keeper"
    assert pages.page.title.startswith("Tension check")


def test_a_renamed_board_keeps_what_was_changed_on_another(pages: Reader) -> None:
    first = pages.world.saved.id
    pages.act(Rename("Towpath 40"))
    there = other(pages)
    pages.act(Settle({"text": 1.3}))
    pages.act(Undo())
    assert pages.world.saved.id == there
    assert pages.world.person.text == 1.3
    assert pages.store.board(first).name == "Towpath 36"


def test_a_new_board_takes_no_older_step_with_it(pages: Reader) -> None:
    """Renamed back, two boards would have had one name."""
    pages.act(Rename("Towpath 40"))
    pages.act(AddBoard("Towpath 36"))
    assert pages.world.undo is None


def test_what_was_tried_without_a_board_is_kept_whole_or_not_at_all(
    bare: Reader, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The trial was dropped before the board was saved: a storage that filled up in between lost both."""
    bare.act(Both((Put(TEETH, Value(17.0)), Put("drive.wheel_teeth", Value(40.0)))))

    def full(*_: object) -> None:
        raise OSError("full")

    with monkeypatch.context() as patch:
        patch.setattr(Store, "_save_board", full)
        with pytest.raises(OSError, match="full"):
            bare.act(KeepAs("Mooring"))
    with monkeypatch.context() as patch:
        patch.setattr(Store, "_put", full)
        with pytest.raises(OSError, match="full"):
            bare.act(KeepAs("Mooring"))
    bare.restart()
    assert (bare.world.is_scratch, bare.world.trial[TEETH].si, bare.store.boards()) == (True, 17.0, [])
    bare.act(KeepAs("Mooring"))
    assert (bare.world.saved.name, bare.world.saved.drive.motor_teeth.si) == ("Mooring", 17.0)
    assert (dict(bare.world.trial), bare.store.trial(bare.world.saved.id)) == ({}, None)


@pytest.mark.parametrize("purpose", ["keep", "new"])
def test_what_was_answered_without_a_board_is_of_the_board_that_is_kept(bare: Reader, purpose: str) -> None:
    """The speed one wishes for, what nobody knows, and a swollen pack."""
    bare.act(Put("ask.wish_speed", Value(10.0), "question"))
    bare.act(NotKnown("motor.kv"))
    bare.act(TakeOut("Swollen"))
    bare.open("board.name", purpose=purpose)
    bare.act(Write(f"name/{purpose}", "Mooring"))
    bare.tap("Save")
    bare.restart()
    assert bare.world.saved.name == "Mooring"
    assert bare.world.answers["ask.wish_speed"].si == 10.0
    assert not_known(bare.world) == {"motor.kv"}
    assert out_of_use(bare.world)["sign"] == "Swollen"
    bare.act(Bin())
    assert (bare.world.is_scratch, out_of_use(bare.world), dict(bare.world.answers)) == (True, None, {})


def kept(pages: Reader) -> None:
    """Save the board that stands in, by its page."""
    pages.open("board.name", purpose="keep")
    pages.act(Write("name/keep", "Mooring"))
    pages.tap("Save")


def test_a_check_without_a_board_is_of_the_board_that_is_kept(bare: Reader) -> None:
    """It ended "Do not ride", and the board that was kept looked as if it could be ridden."""
    bare.act(Place("ride"))
    bare.open("ride.run", list="before_ride")
    bare.act(Halt("A wheel wobbles"))
    assert (bare.records("check")[0].body.verdict, len(bare.world.history().faults)) == ("stopped", 1)
    kept(bare)
    bare.restart()
    assert bare.world.saved.name == "Mooring"
    assert bare.records("check")[0].body.verdict == "stopped"
    assert len(bare.world.history().faults) == 1
    bare.act(Bin())
    assert (bare.world.is_scratch, bare.records(), bare.world.history().faults) == (True, [], ())


def test_a_run_that_was_begun_without_a_board_goes_on_on_the_board_that_is_kept(bare: Reader) -> None:
    bare.open("ride.run", list="before_ride")
    bare.act(AnswerItem("right"))
    kept(bare)
    assert bare.name == "ride.run"
    assert len(bare.world.session("before_ride").under_way.answers) == 1


def test_a_step_from_before_the_board_was_kept_is_taken_back_on_it(bare: Reader) -> None:
    """What nobody knows was taken back on the board that stands in."""
    bare.act(NotKnown("motor.kv"))
    step = bare.world.undo
    kept(bare)
    assert bare.world.undo == step
    bare.act(Undo())
    bare.restart()
    assert (bare.world.saved.name, not_known(bare.world)) == ("Mooring", frozenset())


def test_an_entry_from_before_the_board_was_kept_is_taken_back_on_it(bare: Reader) -> None:
    bare.act(Record(Note(note="dry"), undo="Noted"))
    kept(bare)
    bare.act(Undo())
    assert (bare.world.saved.name, bare.records("note")) == ("Mooring", [])


def test_boards_of_two_phones_have_two_ids(bare: Reader, tmp_path: Path) -> None:
    """One that is kept has the id of the one that stood in for it: a friend's board may not be taken for it."""
    other = Reader(tmp_path / "other", demo=False)
    for one in (bare, other):
        one.act(Put(TEETH, Value(17.0)))
        kept(one)
    assert bare.world.saved.id != other.world.saved.id
    other.close()


def test_values_from_before_a_board_that_stands_in_had_an_id_of_its_own_are_there(bare: Reader) -> None:
    bare.store.save_trial(SCRATCH, {"values": {TEETH: {"si": 17.0}}, "typed": {}})
    bare.store.put("stand_in", None)
    bare.restart()
    assert (bare.world.saved.id, bare.world.trial[TEETH].si) == (SCRATCH, 17.0)
    kept(bare)
    bare.act(Bin())
    assert (bare.world.is_scratch, bare.world.saved.id != SCRATCH) == (True, True)
