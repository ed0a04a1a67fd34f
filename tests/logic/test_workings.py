"""Workings: a value is traced to the calls and numbers that made it, by the identity of the floats."""

from collections.abc import Callable, Iterator

import pytest

from logic.errors import positive
from logic.si import Metre, One, SquareMetre
from logic.workings import (
    REGISTER,
    Call,
    Given,
    Recorder,
    Root,
    cited,
    fresh,
    given,
    method,
    recording,
    rough,
    solved,
    standing_of,
    unrecorded,
)


@pytest.fixture(scope="module", autouse=True)
def _register_left_as_it_was() -> Iterator[None]:
    yield
    for key in [key for key in REGISTER if key.startswith(__name__)]:
        del REGISTER[key]


@cited("side * other", source="derived area of a rectangle", standing="derived")
def area(*, side: Metre, other: Metre) -> SquareMetre:
    """Area of a rectangle. Ours, to be followed by hand."""
    positive(side=side, other=other)
    return side * other


@cited("area / width", source="derived side of a rectangle", standing="practice")
def other_side(*, area: SquareMetre, width: Metre) -> Metre:
    """Return the side of a rectangle from its area. Ours."""
    return area / width


@method("halve until it is small", source="derived halving", standing="estimate")
def halved(*, length: Metre) -> Metre:
    """Half a length; calls another formula inside."""
    return area(side=length, other=0.5)


@solved("curve - wanted", source="derived root", standing="derived")
def root_of(*, curve: Callable[[One], One], wanted: One) -> Root:
    """Find where a straight line has a value, by halving: many calls, one of which is shown."""
    low, high = 0.0, 16.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if curve(middle) < wanted else (low, middle)
    return Root((low + high) / 2, 0.0, 16.0)


def put_in(name: str, value: float, **more: str) -> float:
    """Record a number of the board."""
    return given(Given(name, fresh(value), "m", "length", **more))


def names(entries: tuple[object, ...]) -> list[str]:
    """Return the names of calls and numbers in a trace."""
    return [entry.formula.name if isinstance(entry, Call) else entry.name for entry in entries]


def test_a_trace_holds_what_made_the_value_and_nothing_else() -> None:
    with recording() as recorder:
        a, b, c = put_in("a", 2.0), put_in("b", 3.0), put_in("c", 3.0)
        first = area(side=a, other=b)
        area(side=a, other=c)
        last = other_side(area=first, width=a)
    assert last == 3.0
    assert names(recorder.trace(last)) == ["a", "b", "area", "other_side"]
    assert names(recorder.trace(first)) == ["a", "b", "area"]


def test_equal_numbers_are_told_apart_by_identity() -> None:
    with recording() as recorder:
        b, c = put_in("b", 3.0), put_in("c", 3.0)
        value = area(side=c, other=c)
    assert b == c
    assert names(recorder.trace(value)) == ["c", "area"]
    assert recorder.trace(fresh(value)) == ()


def test_a_result_that_is_one_of_its_arguments_is_an_object_of_its_own() -> None:
    with recording() as recorder:
        one = put_in("one", 1.0)
        value = area(side=one, other=1.0)
    assert value is not one
    assert names(recorder.trace(one)) == ["one"]
    assert names(recorder.trace(value)) == ["one", "area"]


def test_a_call_keeps_arguments_units_and_value() -> None:
    with recording() as recorder:
        value = area(side=2.0, other=3.0)
    call = recorder.entries[-1]
    assert isinstance(call, Call)
    assert call.arguments == {"side": 2.0, "other": 3.0}
    assert call.value is value
    assert (call.formula.units, call.formula.unit) == ({"side": "m", "other": "m"}, "m**2")
    assert (call.formula.source, call.formula.where) == ("derived", "area of a rectangle")
    assert call.bracket is None


def test_nothing_is_kept_without_a_recorder_or_while_it_is_shut() -> None:
    assert area(side=2.0, other=3.0) == 6.0
    with recording() as recorder:
        with unrecorded():
            area(side=2.0, other=3.0)
            put_in("a", 1.0)
        assert recorder.entries == []
        area(side=2.0, other=3.0)
        assert len(recorder.entries) == 1


def test_a_recorder_inside_another_keeps_to_itself() -> None:
    with recording() as outer:
        with recording() as inner:
            area(side=2.0, other=3.0)
        put_in("a", 1.0)
    assert (len(inner.entries), len(outer.entries)) == (1, 1)


def test_a_refused_call_leaves_nothing_and_the_recorder_open() -> None:
    with recording() as recorder:
        with pytest.raises(ValueError, match="not positive"):
            area(side=0.0, other=1.0)
        assert recorder.entries == []
        area(side=2.0, other=1.0)
    assert len(recorder.entries) == 1


def test_a_method_shows_itself_and_not_what_it_called() -> None:
    with recording() as recorder:
        halved(length=4.0)
    assert names(tuple(recorder.entries)) == ["halved"]


def test_a_solver_is_recorded_once_at_its_solution() -> None:
    with recording() as recorder:
        factor, wanted = put_in("factor", 2.0), put_in("wanted", 6.0)
        x = root_of(curve=lambda x: area(side=factor, other=x), wanted=wanted)
    assert x == pytest.approx(3.0)
    assert names(tuple(recorder.entries)) == ["factor", "wanted", "area", "root_of"]
    call = recorder.entries[-1]
    assert isinstance(call, Call)
    assert call.bracket == (0.0, 16.0)
    # The residual of the equation shown, at the solution.
    assert call.arguments["curve"] - call.arguments["wanted"] == pytest.approx(0.0, abs=1e-9)
    assert names(recorder.trace(x)) == ["factor", "wanted", "area", "root_of"]


def test_a_result_stands_as_its_weakest_formula_or_row() -> None:
    with recording() as recorder:
        a = put_in("a", 2.0, known="measured")
        strong = area(side=a, other=put_in("row", 3.0, standing="published"))
        weak = other_side(area=strong, width=a)
        weaker = halved(length=weak)
    assert standing_of(recorder.trace(strong)) == "derived"
    assert standing_of(recorder.trace(weak)) == "practice"
    assert standing_of(recorder.trace(weaker)) == "estimate"
    assert standing_of(()) == "derived"


@pytest.mark.parametrize(
    ("known", "standing", "expected"),
    [
        ("measured", "", False),
        ("label", "", False),
        ("guess", "", True),
        ("assumed", "practice", True),
        ("", "estimate", True),
        ("", "published", False),
    ],
)
def test_a_guess_an_assumed_value_and_an_estimate_make_it_rough(
    known: str, standing: str, *, expected: bool
) -> None:
    with recording() as recorder:
        value = area(side=put_in("a", 2.0, known=known, standing=standing), other=1.0)
    assert rough(recorder.trace(value)) is expected


def test_an_unknown_standing_is_refused_where_it_is_written() -> None:
    with pytest.raises(ValueError, match="unknown standing"):
        cited("x", source="derived x", standing="sure")(lambda *, x: x)


def test_a_recorder_may_be_read_empty() -> None:
    assert Recorder().trace(1.0) == ()
