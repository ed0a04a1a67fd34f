"""Every answer of the app, held to the same rules by walking the register: a new one is held without being named here."""

import importlib
import inspect
import pkgutil
from collections.abc import Callable
from dataclasses import is_dataclass
from typing import Any, get_type_hints

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import logic.answers
from logic.answers.reading import Item, Open, Reading, Result
from logic.answers.run import ANSWERS, Figures, Run, answer
from logic.board import Board, Value, board_fields
from logic.exchange import demo_boards
from tests.loose import loose_ends
from tests.random_boards import CHANGED
from tests.results import RIDER, ask, items_of, results

BOARDS = {board.name: board for board in demo_boards()}


def gives_items(hint: Any, seen: frozenset[Any] = frozenset()) -> bool:
    """Tell whether something of this type can hold a result."""
    if hint in (Result, Open):
        return True
    if hint in seen:
        return False
    parts = [*getattr(hint, "__args__", ())]
    if is_dataclass(hint) and isinstance(hint, type):
        parts += get_type_hints(hint).values()
    return any(gives_items(part, seen | {hint}) for part in parts if not isinstance(part, list))


def returned(function: Any) -> Any:
    """Return what a function says it gives; what it takes may be of a module that is loaded for types alone."""
    hint = function.__annotations__.get("return")
    return get_type_hints(function)["return"] if isinstance(hint, str) else hint


def test_every_function_that_gives_results_is_in_the_register() -> None:
    missing = []
    for module in pkgutil.iter_modules(logic.answers.__path__, "logic.answers."):
        for name, function in inspect.getmembers(importlib.import_module(module.name), inspect.isfunction):
            if name.startswith("_") or function.__module__ != module.name:
                continue
            if module.name.endswith(".run"):
                continue  # what answers are made with
            if {"run", "recorder", "_recorder", "item"} & set(inspect.signature(function).parameters):
                continue
            if gives_items(returned(function)) and f"{module.name}.{name}" not in ANSWERS:
                missing.append(f"{module.name}.{name}")
    assert missing == []


@pytest.mark.parametrize("board", BOARDS.values(), ids=BOARDS)
def test_no_working_has_a_loose_end(board: Board) -> None:
    assert [(place, end) for place, item in results(board).items() for end in loose_ends(item)] == []


@settings(max_examples=30)
@given(CHANGED, st.sampled_from([RIDER, None]))
def test_no_board_cuts_a_trace_or_raises(board: Board, rider: Value | None) -> None:
    assert [(place, end) for place, item in results(board, rider).items() for end in loose_ends(item)] == []


@pytest.mark.parametrize("key", board_fields())
def test_without_a_value_its_results_say_so(key: str) -> None:
    """What still has a number was not made of the value that is gone, unless something stands in for it."""
    label = board_fields()[key].label
    for place, item in results(BOARDS["Weir"].with_value(key, None)).items():
        read = [
            entry
            for entry in item.inputs
            if entry.name == label and entry.known in ("label", "measured", "guess")
        ]
        assert read == [], place


@pytest.mark.parametrize("key", [key for key, field in board_fields().items() if field.options])
def test_a_choice_that_changes_a_number_is_in_its_working(key: str) -> None:
    """Both hands of every choice: where the number is another one, the choice is among what made both."""
    field = board_fields()[key]
    for board in (BOARDS["Weir"], BOARDS["Ferry"]):
        before = results(board)
        for option in field.options:
            for place, after in results(board.with_value(key, Value(option.key, "guess"))).items():
                was = before.get(place, after)
                if was.name == after.name and was.value != after.value:
                    assert field.label in {entry.name for entry in after.inputs}, (place, option.key)


@pytest.mark.parametrize(
    ("act", "shown"),
    [
        (lambda read: read("drive.wheel_diameter") * 1.0, "1.0"),
        (lambda read: read("drive.wheel_diameter") * int(read.choice("drive.motors")), "2"),
    ],
    ids=["times one", "a choice turned into a number"],
)
def test_the_test_finds_what_a_stranger_would_write(act: Callable[[Reading], float], shown: str) -> None:
    """A test of the tests above: an answer with a number from nowhere in it, and one that cuts a guessed choice."""
    of: Figures[Reading] = {"mended": ("length", act)}

    @answer()
    def stranger(board: Board) -> dict[str, Item]:
        return Run(lambda: Reading(board)).figures(of)

    key = next(name for name in ANSWERS if name.endswith(stranger.__name__))
    try:
        found = [end for item in results(BOARDS["Weir"]).values() for end in loose_ends(item)]
        (item,) = (item for _, item in items_of(ask(key, BOARDS["Weir"])))
    finally:
        del ANSWERS[key]
    assert len(found) == 1
    assert shown in found[0]
    assert isinstance(item, Result)
    assert item.rough
