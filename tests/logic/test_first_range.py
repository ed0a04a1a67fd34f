"""The best range so far: by what a way usually takes, then modelled with what is usual."""

import pytest

from logic.answers.first_range import PACK, RIDING, first_range
from logic.answers.range import range_alone
from logic.answers.reading import Open
from logic.board import Board, Value
from logic.exchange import demo_boards
from tests.logic.test_first_speed import only
from tests.loose import loose_ends

RIDER = Value(80.0, "guess")
DEMOS = demo_boards()


def test_an_empty_board_names_three_values() -> None:
    found = first_range(Board("empty", "Empty"), None, {})
    assert found.level == "nothing"
    assert isinstance(found.item, Open)
    assert found.item.missing == PACK


def test_a_first_range_is_the_charge_over_what_a_way_takes() -> None:
    # Handbook of electric drives, 95 kg on the level: 6.3 Wh/km at 15 km/h on smooth and 16.1 at 30 km/h on rough ground.
    board = only(next(board for board in DEMOS if board.name == "Towpath 36"), *PACK)
    found = first_range(board, None, {})
    assert found.level == "by usual"
    # Ours: 36 V x 8 Ah x 0.9 = 259.2 Wh.
    assert [end / 1000.0 for end in found.item.band] == pytest.approx([259.2 / 16.1, 259.2 / 6.3])
    assert found.item.rough


@pytest.mark.parametrize("board", DEMOS, ids=lambda board: board.name)
def test_the_full_answer_lies_in_the_modelled_band(board: Board) -> None:
    full = range_alone(board, RIDER, {})
    found = first_range(only(board, *PACK, *RIDING, "pack.packs"), RIDER, {})
    assert found.level == "modelled"
    assert found.item.band[0] < float(full.value) < found.item.band[1]
    assert loose_ends(found.item) == []
    assert found.item.standing == "estimate"
