"""Boards, trials, runs, settings: each is read back from the file, joint changes are whole or absent."""

import sqlite3
from dataclasses import replace
from datetime import timedelta

import pytest

import logic.store.file
from logic.board import Value
from logic.log import BoardChanged, Change, Check, Ride
from logic.store import NotSaved, Store, UnknownBoard
from logic.store.migrations import pending

BODY = {"name": "Weir", "motor": {"kv": {"si": 15.707963267948966, "known": "label"}}, "centre": None}


CHANGE = BoardChanged(changes={"drive.motor_teeth": Change(Value(14.0), Value(15.0, "measured"))})
CHECK = Check(list="before_ride", base="before_ride", verdict="all right")


def names(boards):
    return [board.name for board in boards]


def test_a_board_is_read_back_from_the_file(store, reopened):
    store.save_board("b1", "Weir", BODY)
    board = reopened().board("b1")
    assert (board.id, board.name, board.body, board.binned_at) == ("b1", "Weir", BODY, None)


def test_saving_again_replaces_the_board(store, reopened):
    store.save_board("b1", "Weir", BODY)
    store.save_board("b1", "Lower weir", {"name": "Lower weir"})
    boards = reopened().boards()
    assert [(board.name, board.body) for board in boards] == [("Lower weir", {"name": "Lower weir"})]


def test_boards_come_by_name_and_an_unknown_one_is_none(store):
    for number, name in enumerate(["weir", "Ferry", "Towpath 36"]):
        store.save_board(str(number), name, {})
    assert names(store.boards()) == ["Ferry", "Towpath 36", "weir"]
    assert store.board("9") is None


def test_a_binned_board_leaves_the_list_and_comes_back_whole(store, reopened, clock):
    store.save_board("b1", "Weir", BODY)
    store.save_board("b2", "Ferry", {})
    store.bin_board("b1")
    binned_at = clock.now
    clock.move(days=2)
    store.bin_board("b1")
    store.bin_board("b2")
    store.save_board("b1", "Weir", BODY)
    store = reopened()
    assert store.boards() == []
    assert names(store.binned_boards()) == ["Ferry", "Weir"]
    assert store.board("b1").binned_at == binned_at
    store.restore_board("b1")
    store = reopened()
    assert store.boards() == [store.board("b1")]
    assert store.board("b1").body == BODY


def test_an_unknown_board_is_not_binned_or_restored(store):
    for call in (store.bin_board, store.restore_board):
        with pytest.raises(UnknownBoard, match="b9"):
            call("b9")


def test_a_trial_is_read_back_until_24_hours_after_it_was_last_saved(store, reopened, clock):
    store.save_trial("b1", {"drive.motor_teeth": "1"})
    clock.move(hours=20)
    store.save_trial("b1", {"drive.motor_teeth": "14."})
    clock.move(hours=24)
    assert reopened().trial("b1") == {"drive.motor_teeth": "14."}
    clock.move(seconds=1)
    store = reopened()
    assert store.trial("b1") is None
    store.save_trial("b1", {"drive.motor_teeth": "15"})
    assert store.trial("b1") == {"drive.motor_teeth": "15"}
    assert store.trial("b2") is None


def test_a_dropped_trial_is_gone(store, reopened):
    store.save_trial("b1", {"a": 1})
    store.save_trial("b2", {"a": 2})
    store.drop_trial("b1")
    store.drop_trial("b1")
    store = reopened()
    assert store.trial("b1") is None
    assert store.trial("b2") == {"a": 2}


def test_keeping_a_trial_saves_the_board_and_logs_the_change(store, reopened):
    store.save_board("b1", "Weir", {"teeth": 14})
    store.save_trial("b1", {"teeth": 15})
    number = store.keep_trial("b1", "Weir", {"teeth": 15}, CHANGE)
    store = reopened()
    assert store.board("b1").body == {"teeth": 15}
    assert store.trial("b1") is None
    record = store.entry(number)
    assert (record.board, record.kind, record.body) == ("b1", "board_changed", CHANGE)


@pytest.mark.parametrize(
    "event",
    ["INSERT ON log", "DELETE ON trial", "UPDATE ON board"],
    ids=["at the log", "at the trial", "at the board"],
)
def test_a_keep_that_fails_half_way_leaves_all_as_before(store, reopened, raw, event):
    store.save_board("b1", "Weir", {"teeth": 14})
    store.save_trial("b1", {"teeth": 15})
    raw(f"CREATE TRIGGER fault AFTER {event} BEGIN SELECT RAISE(ABORT, 'fault'); END")
    with pytest.raises(sqlite3.IntegrityError, match="fault"):
        store.keep_trial("b1", "Weir, changed", {"teeth": 15}, CHANGE)
    for look in (lambda: store, reopened):
        seen = look()
        assert (seen.board("b1").name, seen.board("b1").body) == ("Weir", {"teeth": 14})
        assert seen.trial("b1") == {"teeth": 15}
        assert seen.count() == 0
    raw("DROP TRIGGER fault")
    assert seen.keep_trial("b1", "Weir, changed", {"teeth": 15}, CHANGE) == 1


def test_a_run_is_resumed_with_the_time_it_was_left(store, reopened, clock):
    store.save_run("b1", "before a ride", {"done": 4})
    clock.move(minutes=2)
    store.save_run("b1", "before a ride", {"done": 5})
    store.save_run("b1", "travel", {"done": 1})
    left = clock.now
    clock.move(minutes=40)
    store = reopened()
    run = store.run("b1", "before a ride")
    assert (run.board, run.checklist, run.body, run.at) == ("b1", "before a ride", {"done": 5}, left)
    assert clock.now - run.at == timedelta(minutes=40)
    store.drop_run("b1", "before a ride")
    store = reopened()
    assert store.run("b1", "before a ride") is None
    assert store.run("b1", "travel").body == {"done": 1}


def test_finishing_a_run_logs_all_of_it_or_nothing(store, reopened):
    store.save_run("b1", "before a ride", {"done": 8})
    with pytest.raises(ValueError, match="JSON"):
        store.finish_run("b1", "before a ride", replace(CHECK, more={"new": float("nan")}))
    store = reopened()
    assert store.run("b1", "before a ride").body == {"done": 8}
    assert store.count() == 0
    check = store.finish_run("b1", "before a ride", CHECK)
    store = reopened()
    assert store.run("b1", "before a ride") is None
    assert store.entry(check).body == CHECK


@pytest.mark.parametrize("value", [None, True, 0, 1.2, "Sun", [1, "a"], {"arm": 0.08, "of": {"key": None}}])
def test_a_setting_is_read_back_from_the_file(store, reopened, value):
    store.put("theme", "Day")
    store.put("theme", value)
    store = reopened()
    assert store.get("theme") == value
    assert type(store.get("theme")) is type(value)
    assert store.get("other") is None
    assert store.get("other", 7) == 7


def test_a_setting_of_another_type_than_wanted_is_as_if_never_saved_and_set_aside(store, raw):
    store.put("theme", ["Sun"])
    store.put("speed", 8)
    store.put("gone", None)
    assert store.get("theme", "Day") == "Day"
    assert store.get("speed", 2.5) == 8
    assert store.get("gone", "Day") == "Day"
    assert [(one.what, one.key, one.text) for one in store.aside()] == [("setting", "theme", '["Sun"]')]


def test_a_setting_that_json_cannot_hold_is_refused_and_the_old_one_stays(store):
    store.put("arm", 0.08)
    with pytest.raises(ValueError, match="JSON"):
        store.put("arm", float("nan"))
    with pytest.raises(TypeError):
        store.put("arm", {1, 2})
    assert store.get("arm") == 0.08


def test_what_cannot_be_written_says_so_and_is_not_there(path, clock, monkeypatch):
    monkeypatch.setattr(logic.store.file, "PATIENCE", 0)
    with Store(path, clock) as store, Store(path, clock) as other:
        other._connection.execute("BEGIN IMMEDIATE")  # noqa: SLF001  (stands for another program that is writing)
        for write in (
            lambda: store.append("b1", Ride()),
            lambda: store.put("theme", "Sun"),
            lambda: store.keep_trial("b1", "Weir", {}, CHANGE),
        ):
            with pytest.raises(NotSaved, match="locked"):
                write()
        other._connection.execute("ROLLBACK")  # noqa: SLF001  (same)
        assert store.count() == 0
        assert store.append("b1", Ride()) == 1


def test_a_copy_is_one_whole_file_and_never_overwrites(store, tmp_path, clock):
    store.append("b1", Ride(distance=4200.0))
    store.save_board("b1", "Weir", BODY)
    copy = tmp_path / "copy.db"
    store.copy_to(copy)
    store.append("b1", Ride())
    with pytest.raises(NotSaved):
        store.copy_to(copy)
    assert pending(copy) == ()
    with Store(copy, clock) as copied:
        assert copied.board("b1").body == BODY
        assert [record.body for record in copied.page()] == [Ride(distance=4200.0)]
