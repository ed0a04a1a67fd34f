"""The best push and climb so far: nothing before the limits are known, then a band that holds the full answer."""

import pytest

from logic.answers.first_push import FIGURES, HILLS, RoughGearing, first_push
from logic.answers.first_speed import FIRST, LIMITS, WEIGHT
from logic.answers.gearing import gearing
from logic.answers.reading import Result
from logic.answers.rough import taken_as_usual
from logic.board import Board, Value
from logic.exchange import demo_boards
from tests.logic.test_first_speed import only
from tests.loose import loose_ends

RIDER = Value(80.0, "guess")
DEMOS = demo_boards()
AT = 20.0 / 3.6


def test_a_limit_that_can_be_known_is_never_taken_as_usual() -> None:
    board = only(DEMOS[0], *FIRST, *WEIGHT, *LIMITS)
    assert first_push(board, RIDER, AT) == {}
    assert first_push(only(DEMOS[0], *FIRST, *WEIGHT, *HILLS), None, AT) == {}


@pytest.mark.parametrize("board", DEMOS, ids=lambda board: board.name)
def test_the_full_answer_lies_in_the_band(board: Board) -> None:
    full = gearing(board, RIDER, AT).items
    found = first_push(only(board, *FIRST, *WEIGHT, *LIMITS, *HILLS), RIDER, AT)
    assert tuple(found) == FIGURES
    for name, item in found.items():
        assert isinstance(item, Result)
        low, high = item.band
        assert low <= float(full[name].value) <= high, name
        assert low < float(item.value) < high, name
        assert loose_ends(item) == [], name
        assert item.standing == "estimate", name


def test_half_the_motors_push_half_as_hard() -> None:
    board = only(DEMOS[0], *FIRST, *WEIGHT, *LIMITS, *HILLS)
    two = first_push(board, RIDER, AT)["push_start"]
    one = first_push(board.with_value("drive.motors", Value("1")), RIDER, AT)["push_start"]
    # From standstill the motor amps limit, not the pack: each motor pushes by itself.
    assert float(two.value) == pytest.approx(2.0 * float(one.value))


def test_a_board_is_read_once_for_all_its_figures(monkeypatch: pytest.MonkeyPatch) -> None:
    made: list[object] = []
    begin = RoughGearing.__init__

    def counted(parts: RoughGearing, *given: object) -> None:
        made.append(parts)
        begin(parts, *given)  # type: ignore[arg-type]

    monkeypatch.setattr(RoughGearing, "__init__", counted)
    board = only(DEMOS[0], *FIRST, *WEIGHT, *LIMITS, *HILLS)
    found = first_push(board, RIDER, AT)
    assert made == []
    assert all(isinstance(item, Result) for item in found.values())
    # As it is usual, and with each value that is taken as usual at both ends.
    assert len(made) == 1 + 2 * len(taken_as_usual(board))
