"""One answer to one question: two results of the same name, board and conditions are the same number."""

import importlib
import inspect
import pkgutil
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

import pytest

from logic import answers
from logic.answers import push
from logic.answers.reading import Open, Result
from logic.board import Board, Value
from logic.errors import InputError, Missing
from logic.exchange import demo_boards
from logic.log.rides import LoggedRide
from logic.person import Person
from logic.units import quantities

BOARDS = demo_boards()
KMH = 1 / 3.6
SPEEDS = (
    "ask.speed",
    "ask.range_speed",
    "ask.stop_speed",
    "ask.climb_speed",
    "ask.hold_speed",
    "ask.usual_speed",
)
GRADES = ("ask.climb_grade", "ask.hold_grade")
READ = {
    "ask.first_volts": Value(41.2, "chosen"),
    "ask.second_volts": Value(41.0, "chosen"),
    "ask.coast_speed": Value(5.0, "chosen"),
    "ask.coast_distance": Value(62.0, "chosen"),
    "ask.roll_way": Value(3.05, "chosen"),
}
RIDES = tuple(LoggedRide(km * 1000.0, wh * 3600.0) for km, wh in ((8.2, 98.0), (5.1, 64.0), (11.4, 140.0)))


def conditions(speed: float, grade: float) -> dict[str, Value]:
    """Return a question that asks every page at the same speed, on the level or on the same climb."""
    return (
        READ | dict.fromkeys(SPEEDS, Value(speed, "chosen")) | dict.fromkeys(GRADES, Value(grade, "chosen"))
    )


def answering() -> Iterator[tuple[str, Any]]:
    """Yield every function of the answer layer that takes a board and gives results."""
    for module in pkgutil.iter_modules(answers.__path__):
        found = importlib.import_module(f"{answers.__name__}.{module.name}")
        for name, act in vars(found).items():
            if not inspect.isfunction(act) or act.__module__ != found.__name__ or name.startswith("_"):
                continue
            if next(iter(inspect.signature(act).parameters), "") == "board":
                yield f"{module.name}.{name}", act


ASKED_TOO = {
    "rider": Value(80.0, "measured"),
    "person": Person(),
    "rides": RIDES,
    "worn": 0.005,
    "pull": 12.0,
    "tension": 100.0,
    "depth": 0.0015,
    "weight": 10.0,
}
"""What answers take besides the board and the conditions."""

MEASURED = {"pull", "tension", "weight"}
"""What is read off a belt: two ways of measuring are two conditions."""


def results(found: object) -> Iterator[Result | Open]:
    """Yield every result in an answer, however it is held."""
    if isinstance(found, Result | Open):
        yield found
    elif isinstance(found, Mapping):
        for part in found.values():
            yield from results(part)
    elif isinstance(found, tuple | list):
        for part in found:
            yield from results(part)
    elif is_dataclass(found) and not isinstance(found, Board | Value):
        for field in fields(found):
            yield from results(getattr(found, field.name))


def all_results(board: Board, asking: Mapping[str, Value]) -> Iterator[tuple[str, str, Result]]:
    """Yield each result of each answer about a board with the name of the answer and what was measured for it."""
    for name, act in answering():
        given = ASKED_TOO | {"asking": asking, "at_speed": float(asking["ask.speed"].si)}
        wanted = inspect.signature(act).parameters
        if any(
            key not in given and part.default is part.empty for key, part in wanted.items() if key != "board"
        ):
            continue
        try:
            found = act(board, **{key: given[key] for key in wanted if key in given})
        except (Missing, InputError):
            continue
        measured = f"{name}: " if MEASURED & set(wanted) else ""
        for item in results(found):
            if isinstance(item, Result):
                yield name, measured, item


def apart(board: Board, asking: Mapping[str, Value]) -> dict[str, dict[str, float]]:
    """Return the numbers of each name that has more than one, by who gives them.

    A torque and a force of one name are told apart by their units.
    """
    numbers: dict[str, dict[str, float]] = {}
    for answer, measured, item in all_results(board, asking):
        name = f"{measured}{item.name} ({quantities()[item.quantity].si})"
        numbers.setdefault(name, {})[answer] = float(item.value)
    return {
        name: given
        for name, given in numbers.items()
        if max(given.values()) - min(given.values()) > 1e-9 * max(map(abs, given.values()))
    }


@pytest.mark.parametrize("board", BOARDS, ids=lambda board: board.name)
@pytest.mark.parametrize(("speed", "grade"), [(20.0, 0.0), (12.0, 0.06)])
def test_results_of_one_name_are_one_number(board: Board, speed: float, grade: float) -> None:
    assert apart(board, conditions(speed * KMH, grade)) == {}


def test_the_walk_meets_the_pages_that_once_differed() -> None:
    met = {(answer, item.name) for answer, _, item in all_results(BOARDS[0], conditions(12.0 * KMH, 0.06))}
    for name, pages in {
        "stop_as_set": {"energy.pack_figures", "descents.descent", "stopping.stopping"},
        "stop_for_long": {"energy.pack_figures", "controller_card.controller_card"},
        "per_distance": {"range.range_answer", "push.pushing"},
        "top_loaded": {"gearing.gearing", "gearing.top_speed", "pair.pair_details", "push.pushing"},
        "push_at": {"gearing.gearing", "push.pushing"},
        "climb_heat": {"pair.pair_details", "hold.holding"},
    }.items():
        assert {answer for answer, of in met if of == name} >= pages, name
    assert len({answer for answer, _ in met}) >= 30


def test_the_walk_sees_two_pages_that_differ(monkeypatch: pytest.MonkeyPatch) -> None:
    """A page that leaves the heat inside the pack out is caught."""
    quantity, _ = push.RESULTS["per_distance"]
    monkeypatch.setitem(
        push.RESULTS, "per_distance", (quantity, lambda parts: parts.steady.battery_power / parts.speed)
    )
    assert list(apart(BOARDS[0], conditions(20.0 * KMH, 0.0))) == ["per_distance (J/m)"]
