"""No answer raises and none gives what is no number, whatever the fields allow; the long form is a benchmark."""

import importlib
import inspect
import pkgutil
from random import Random

import pytest

import logic.answers
from logic.board import Board
from tests import every_answer
from tests.every_answer import ANSWERS, any_case, boards_at_limits, troubles

BOARDS = 8
LIMITS = list(boards_at_limits())
EACH = len(LIMITS) // 12
NO_ANSWERS = {
    "lookup",
    "kv_bands",
    "belt_run",
    "taken_as_usual",
    "lacking",
    "for_board",
    "snapshot",
    "figures",
    "volts_fault",
    "nearly_empty",
}
"""Functions of a board that are parts of others or are asked by the name of their module."""


def test_every_answer_is_asked() -> None:
    found = set()
    for module in pkgutil.iter_modules(logic.answers.__path__):
        members = vars(importlib.import_module(f"logic.answers.{module.name}"))
        found |= {
            name
            for name, act in members.items()
            if inspect.isfunction(act)
            and act.__module__.endswith(module.name)
            and not name.startswith("_")
            and Board in inspect.get_annotations(act).values()
        }
    assert len(found) > 40
    assert found - NO_ANSWERS <= set(vars(every_answer))


@pytest.mark.parametrize("place", range(BOARDS))
def test_boards_drawn_at_random(place: int) -> None:
    assert list(troubles(any_case(Random(f"board {place}")))) == []


@pytest.mark.parametrize("place", range(5, len(LIMITS), EACH))
def test_fields_at_their_limits(place: int) -> None:
    assert list(troubles(any_case(Random(place), LIMITS[place]))) == []


def test_a_fault_is_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    def act(_: object) -> object:
        yield {"top": float("nan")}
        raise ZeroDivisionError

    monkeypatch.setitem(ANSWERS, "planted", act)
    found = list(troubles(any_case(Random("board 1")), "planted"))
    assert [words for _, words, _ in found] == ["dict: top = nan", "ZeroDivisionError: "]
