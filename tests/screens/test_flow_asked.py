"""Values of questions that were kept in earlier places: read from the real file, changed, and still there afterwards."""

import pytest

from logic.board import Value
from screens.asked import answer, answers
from tests.screens.session import Session

KMH = 1 / 3.6


@pytest.fixture
def earlier(app: Session) -> Session:
    """The app on a file in which each kind of page kept its answers in a place of its own."""
    board = app.state.saved.id
    body = {"known": "chosen", "on": "", "typed_unit": "km/h", "note": ""}
    at = app.state.clock().timestamp()
    store = app.state.store
    store.put(
        f"asked {board}", {"ask.stop_speed": {"si": 32 * KMH, **body}, "ask.speed": {"si": 11 * KMH, **body}}
    )
    store.put(
        f"asked/{board}",
        {
            "ask.speed": {"si": 17 * KMH, **body, "at": at},
            "ask.charge": {"si": 0.4, **body, "typed_unit": "%", "at": at},
            "ask.first_volts": {"si": 40.1, **body, "typed_unit": "V", "at": at},
        },
    )
    store.put("at_speed", 18 * KMH)
    store.put("wanted_centre", 0.075)
    store.put("wheel_wear", 0.004)
    app.restart(minutes=10)
    return app


def kept(app: Session) -> dict[str, float]:
    """Return the answers for the board in use, rounded."""
    return {key: round(float(value.si), 6) for key, value in answers(app.state).items()}


FOR_ALL = {"ask.gearing_speed": round(18 * KMH, 6), "ask.wanted_centre": 0.075, "ask.wheel_wear": 0.004}
EARLIER = {
    **FOR_ALL,
    "ask.stop_speed": round(32 * KMH, 6),
    "ask.speed": round(11 * KMH, 6),
    "ask.range_speed": round(17 * KMH, 6),
    "ask.charge": 0.4,
    "ask.first_volts": 40.1,
}


def test_nothing_that_was_kept_is_lost(earlier: Session) -> None:
    assert kept(earlier) == EARLIER
    earlier.tap("Numbers")
    earlier.tap("Stopping")
    assert earlier.row("Stop from").value == "32 km/h"
    earlier.shell.place("numbers")
    earlier.frame()
    earlier.tap("Range")
    assert earlier.row("At a speed of").value == "17 km/h"


def test_the_first_change_carries_the_rest_over(earlier: Session) -> None:
    answer(earlier.state, "ask.charge", Value(0.5, typed_unit="%"))
    earlier.restart()
    assert kept(earlier) == {**EARLIER, "ask.charge": 0.5}


def test_what_is_taken_back_does_not_come_again(earlier: Session) -> None:
    answer(earlier.state, "ask.stop_speed", None)
    earlier.restart()
    assert "ask.stop_speed" not in kept(earlier)
    assert len(kept(earlier)) == len(EARLIER) - 1


def test_a_meter_reading_still_grows_old(earlier: Session) -> None:
    earlier.restart(minutes=30)
    assert kept(earlier) == {key: value for key, value in EARLIER.items() if key != "ask.first_volts"}
    earlier.restart(hours=24)
    assert "ask.stop_speed" in kept(earlier)


def test_each_board_keeps_its_own_and_what_was_one_setting_for_all(earlier: Session) -> None:
    earlier.state.choose(next(board.id for board in earlier.state.boards() if board.name == "Weir"))
    assert kept(earlier) == FOR_ALL
    answer(earlier.state, "ask.wanted_centre", None)
    assert "ask.wanted_centre" not in kept(earlier)
    earlier.state.choose(next(board.id for board in earlier.state.boards() if board.name == "Towpath 36"))
    assert kept(earlier) == EARLIER


@pytest.mark.parametrize(
    ("page", "row", "value"),
    [
        ("Gearing and speed", "Ask at a speed of", "18\u00a0km/h"),
        ("Belt length and load", "Wanted centre distance", "75\u00a0mm"),
        ("Does it fit", "Wear asked about, off the diameter", "4\u00a0mm"),
    ],
)
def test_the_pages_show_what_was_one_setting_for_all(
    earlier: Session, page: str, row: str, value: str
) -> None:
    earlier.tap("Numbers")
    earlier.tap(page)
    assert earlier.row(row).value == value
