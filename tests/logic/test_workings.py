"""Workings: a value carries the calls and numbers that made it; what comes from nowhere is said and weakens."""

from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from copy import deepcopy
from functools import cache
from math import pi, sqrt

import pytest

from logic.answers.reading import Result
from logic.errors import positive
from logic.si import Metre, One, SquareMetre
from logic.workings import (
    REGISTER,
    Call,
    Choice,
    Entry,
    Given,
    Root,
    Traced,
    choice,
    cited,
    method,
    recording,
    rough,
    solved,
    standing_of,
    trace,
    unrecorded,
)
from tests.loose import loose_ends, put_in


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


def names(*values: object) -> list[str]:
    """Return the names of calls and numbers in a trace."""
    return [entry.formula.name if isinstance(entry, Call) else entry.name for entry in trace(*values)]


def origin(value: float) -> Entry:
    """Return what made a value."""
    assert isinstance(value, Traced)
    return value.origin


def test_a_trace_holds_what_made_the_value_and_nothing_else() -> None:
    with recording():
        a, b, c = put_in("a", 2.0), put_in("b", 3.0), put_in("c", 3.0)
        first = area(side=a, other=b)
        area(side=a, other=c)
        last = other_side(area=first, width=a)
    assert last == 3.0
    assert names(last) == ["a", "b", "area", "other_side"]
    assert names(first) == ["a", "b", "area"]


def test_a_call_keeps_arguments_units_and_value() -> None:
    with recording():
        call = origin(area(side=put_in("a", 2.0), other=put_in("b", 3.0)))
    assert isinstance(call, Call)
    assert call.arguments == {"side": 2.0, "other": 3.0}
    assert call.value == 6.0
    assert (call.formula.units, call.formula.unit) == ({"side": "m", "other": "m"}, "m**2")
    assert (call.formula.source, call.formula.where) == ("derived", "area of a rectangle")
    assert call.bracket is None


def test_nothing_is_traced_while_recording_is_off_or_shut() -> None:
    assert type(area(side=2.0, other=3.0)) is float
    assert type(put_in("a", 1.0)) is float
    with recording():
        with unrecorded():
            assert type(area(side=2.0, other=3.0)) is float
        assert type(area(side=2.0, other=3.0)) is Traced
        with recording():
            put_in("b", 1.0)
        assert type(put_in("a", 1.0)) is Traced


def test_a_refused_call_leaves_recording_on() -> None:
    with recording():
        with pytest.raises(ValueError, match="not positive"):
            area(side=0.0, other=1.0)
        assert type(area(side=2.0, other=1.0)) is Traced


def test_a_method_shows_itself_and_not_what_it_called() -> None:
    with recording():
        assert names(halved(length=put_in("a", 4.0))) == ["a", "halved"]


def test_a_solver_is_shown_once_at_its_solution() -> None:
    with recording():
        factor, wanted = put_in("factor", 2.0), put_in("wanted", 6.0)
        x = root_of(curve=lambda x: area(side=factor, other=x), wanted=wanted)
    assert x == pytest.approx(3.0)
    assert names(x) == ["factor", "area", "wanted", "root_of"]
    call = origin(x)
    assert isinstance(call, Call)
    assert call.bracket == (0.0, 16.0)
    # The residual of the equation shown, at the solution.
    assert call.arguments["curve"] - call.arguments["wanted"] == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(
    ("act", "value", "text"),
    [
        (lambda a, b: a + b, 11.0, "a + b"),
        (lambda a, b: a - b, 5.0, "a - b"),
        (lambda a, b: a * b, 24.0, "a * b"),
        (lambda a, b: a / b, 8 / 3, "a / b"),
        (lambda a, b: a**b, 512.0, "a**b"),
        (lambda a, _: -a, -8.0, "-a"),
        (lambda a, _: abs(-a), 8.0, "abs(a)"),
        (lambda a, b: sum((a, b)), 11.0, "a + b"),
    ],
)
def test_arithmetic_is_a_step_of_the_working(
    act: Callable[[float, float], float], value: float, text: str
) -> None:
    with recording():
        made = act(put_in("a", 8.0), put_in("b", 3.0))
    assert made == value
    step = origin(made)
    assert isinstance(step, Call)
    assert (step.formula.mark, step.formula.text) == ("step", text)
    assert names(made)[0] == "a"


@pytest.mark.parametrize(
    "act",
    [
        lambda a: a * 1.0,
        lambda a: 2.0 * a,
        lambda a: a + 1,
        lambda a: round(a, 2),
        lambda a: 1.0 - a,
        lambda a: area(side=a, other=1.0),
        lambda a: area(side=a, other=sqrt(a)),
        lambda a: area(side=float(a), other=a),
        lambda a: area(side=pi, other=a),
    ],
)
def test_a_number_from_nowhere_is_seen_and_weakens(act: Callable[[float], float]) -> None:
    """Also the two ways in which a trace can still be cut: a function that returns a plain float, and float()."""
    with recording():
        made = act(put_in("a", 2.0, known="measured", standing="published"))
    assert loose_ends(Result("made", made, "area"))
    assert standing_of(trace(made)) == "estimate"
    assert rough(trace(made))


def test_a_result_takes_nothing_that_does_not_say_what_made_it() -> None:
    with recording():
        a = put_in("a", 2.0)
    assert Result("a", a, "length").value == 2.0
    for cut in (2.0, float(a), sqrt(a), 2):
        with pytest.raises(TypeError, match="does not carry what made it"):
            Result("a", cut, "length")


def test_a_cache_a_thread_and_a_copy_keep_the_trace() -> None:
    @cache
    def kept() -> float:
        return area(side=put_in("a", 2.0), other=put_in("b", 3.0))

    with recording():
        first = kept()
    with recording():
        assert names(kept()) == ["a", "b", "area"]
    with ThreadPoolExecutor(1) as pool:
        assert pool.submit(names, first).result() == ["a", "b", "area"]
    assert names(deepcopy({"kept": first})["kept"]) == ["a", "b", "area"]
    assert names(min(first, 100.0), max(0.0, first)) == ["a", "b", "area"]


def test_a_choice_is_an_input_of_the_row_it_picked() -> None:
    with recording():
        picked = choice(Given("Kind", "soft", "", known="guess"))
        row = put_in("row", 1.0, because=(picked.origin,))  # type: ignore[arg-type, attr-defined]
    assert isinstance(picked, Choice)
    assert picked == "soft"
    assert names(row) == ["Kind", "row"]
    assert rough(trace(row))


def test_a_result_stands_as_its_weakest_formula_or_row() -> None:
    with recording():
        a = put_in("a", 2.0, known="measured")
        strong = area(side=a, other=put_in("row", 3.0, standing="published"))
        weak = other_side(area=strong, width=a)
        weaker = halved(length=weak)
    assert standing_of(trace(strong)) == "derived"
    assert standing_of(trace(weak)) == "practice"
    assert standing_of(trace(weaker)) == "estimate"
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
    with recording():
        a = put_in("a", 2.0, known=known, standing=standing)
        value = area(side=a, other=a)
    assert rough(trace(value)) is expected


def test_an_unknown_standing_is_refused_where_it_is_written() -> None:
    with pytest.raises(ValueError, match="unknown standing"):
        cited("x", source="derived x", standing="sure")(lambda *, x: x)
