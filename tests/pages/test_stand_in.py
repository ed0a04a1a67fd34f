"""The board that stands in never takes the place of one that is saved."""

from dataclasses import replace
from pathlib import Path

import pytest

from logic.board import Value
from logic.board_saved import to_dict
from logic.exchange.arriving import arrival, take_in
from logic.exchange.board_file import BoardFile
from logic.log import Note
from screens.acts.boards import Choose, KeepAs
from screens.acts.entering import Put
from screens.acts.keeping import Record
from screens.acts.runs import Answer
from tests.pages.reader import Reader


def test_board_that_arrives_with_the_id_of_the_stand_in_stays(tmp_path: Path) -> None:
    """Two phones set up from one copy: the board that the other one saved is not written over."""
    reader = Reader(tmp_path, demo=False)
    other = replace(reader.world.saved, name="From afar")
    reader.store.take_in(other.id, other.name, to_dict(other), [])
    reader.act(Choose(""))
    reader.act(KeepAs("Mine"))
    assert {board.name for board in reader.store.boards()} == {"From afar", "Mine"}
    reader.close()


@pytest.mark.parametrize("kept", ["an entry", "a value", "an answer", "half a check"])
def test_a_board_that_arrives_takes_nothing_from_the_stand_in(tmp_path: Path, kept: str) -> None:
    """Two phones set up from one copy: what was logged without a board on one became the log of the other one's board."""
    reader = Reader(tmp_path, demo=False)
    stand_in = reader.world.saved
    if kept == "half a check":
        reader.open("ride.run", list="before_ride")
    acts = {
        "an entry": Record(Note(note="dry")),
        "a value": Put("drive.motor_teeth", Value(17.0)),
        "an answer": Put("ask.wish_speed", Value(10.0), "question"),
        "half a check": Answer("right"),
    }
    reader.act(acts[kept])
    other = replace(stand_in, name="From afar")
    arrived = take_in(reader.store, arrival(reader.store, BoardFile(other, ())))
    assert arrived != stand_in.id
    reader.act(Choose(arrived))
    assert (reader.records(), dict(reader.world.trial), dict(reader.world.answers)) == ([], {}, {})
    assert reader.world.session("before_ride").run is None
    reader.act(Choose(""))
    assert (reader.world.is_scratch, reader.world.saved.id) == (True, stand_in.id)
    assert reader.store.holds(stand_in.id)
    reader.close()


def test_a_board_that_arrives_where_nothing_was_done_keeps_its_id(tmp_path: Path) -> None:
    """The same file once more then adds only what is new in its log."""
    reader = Reader(tmp_path, demo=False)
    file = BoardFile(replace(reader.world.saved, name="From afar"), ())
    assert take_in(reader.store, arrival(reader.store, file)) == file.board.id
    assert arrival(reader.store, file).kind == "same"
    reader.close()
