"""The board that stands in never takes the place of one that is saved."""

from dataclasses import replace
from pathlib import Path

from logic.board_saved import to_dict
from screens.acts.boards import Choose, KeepAs
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
