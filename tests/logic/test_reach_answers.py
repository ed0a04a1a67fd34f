"""How a screw sits in its hole. Cases of our own, done by hand: M4 through a 7 mm plate into a motor face."""

import pytest

from logic.answers.reach import NAMES, reach_card, reach_fields
from logic.answers.reading import Open, Result
from logic.board import Value
from tests.loose import loose_ends


def lengths(*millimetres: float) -> dict[str, Value]:
    return {name: Value(number / 1000, "measured") for name, number in zip(NAMES, millimetres, strict=True)}


@pytest.mark.parametrize(
    ("given", "through", "verdict", "engaged", "room"),
    [
        # Screw, plate, washers, thread, hole: 14 - 8 = 6 in; 7 - 6 = 1 left.
        ((14, 7, 1, 6.5, 7), True, "enough", 6.0, 1.0),
        ((14, 7, 0.5, 6.5, 7), True, "enough", 6.5, 0.5),
        ((14, 7, 0.2, 6.5, 7), True, "close", 6.5, 0.2),
        ((10, 7, 0.5, 6.5, 7), True, "too short", 2.5, 4.5),
        ((16, 7, 0, 6.5, 7), True, "reaches the windings", 6.5, -2.0),
        # A closed hole ends where its thread does: 16 - 7 = 9 in, 6.5 of thread.
        ((16, 7, 0, 6.5, 7), False, "bottoms", 6.5, -2.5),
        ((14, 7, 0, 4.5, 8), False, "bottoms", 4.5, -2.5),
        ((14, 7, 0, 4.5, 8), True, "enough", 4.5, 1.0),
        # The tip on the windings is too far already.
        ((14, 7, 0, 6.5, 7), True, "reaches the windings", 6.5, 0.0),
    ],
)
def test_verdicts(
    given: tuple[float, ...],
    through: bool,  # noqa: FBT001
    verdict: str,
    engaged: float,
    room: float,
) -> None:
    told = reach_card("M4", lengths(*given), "6061-T6", through=through)
    assert told.verdict == verdict
    assert told.items["engaged"].value * 1000 == pytest.approx(engaged)
    assert told.items["room"].value * 1000 == pytest.approx(room)


def test_which_screws_fit() -> None:
    """8 mm of plate and washer and the 6 mm that 6061 wants make 14; 15 to the end less 0.5 make 14.5."""
    told = reach_card("M4", lengths(14, 7, 1, 6.5, 7), "6061-T6")
    assert told.items["shortest"].value * 1000 == pytest.approx(14)
    assert told.items["longest"].value * 1000 == pytest.approx(14.5)
    # With 5 mm of thread one diameter is all there is; closed, it ends at 5 mm less 0.5.
    told = reach_card("M4", lengths(14, 7, 1, 5, 7), "6061-T6", through=False)
    assert told.items["shortest"].value * 1000 == pytest.approx(12)
    assert told.items["longest"].value * 1000 == pytest.approx(12.5)
    # 1.5 diameters are wanted in aluminium, 1 in steel.
    assert told.items["wanted"].value * 1000 == pytest.approx(6.0)
    assert reach_card("M4", lengths(14, 7, 1, 6.5, 7), "steel").items["wanted"].value * 1000 == pytest.approx(
        4
    )


@pytest.mark.parametrize(
    ("thread", "hole", "through"),
    [
        pytest.param(2, 20, True, id="2 mm of thread never engage 4"),
        pytest.param(4.2, 6, False, id="4 mm and half a millimetre are more than 4.2"),
    ],
)
def test_a_hole_no_screw_fits(thread: float, hole: float, through: bool) -> None:  # noqa: FBT001
    told = reach_card("M4", lengths(14, 7, 0, thread, hole), "6061-T6", through=through)
    item = told.items["shortest"]
    assert isinstance(item, Open)
    assert item.problem is not None
    assert item.problem.reason == "no screw fits"


def test_what_is_missing_or_cannot_be() -> None:
    some = {name: value for name, value in lengths(14, 7, 1, 6.5, 7).items() if name != "plate"}
    assert reach_card("M4", some, "6061-T6").missing == ("plate",)
    assert reach_card("M4", lengths(7, 7, 1, 6.5, 7), "6061-T6").verdict == "does not reach"
    deep = reach_card("M4", lengths(14, 7, 1, 8, 7), "6061-T6")
    assert deep.problem is not None
    assert deep.problem.reason == "deeper than the hole"


def test_workings_have_no_loose_end() -> None:
    for name, item in reach_card("M4", lengths(14, 7, 1, 6.5, 7), "6061-T6").items.items():
        assert isinstance(item, Result), name
        assert loose_ends(item) == [], name


def test_fields_have_words_and_limits() -> None:
    assert tuple(reach_fields()) == NAMES
    assert all(field.help and field.quantity == "length" for field in reach_fields().values())
