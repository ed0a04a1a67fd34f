"""Every result of every registered answer, wherever it stands in it."""

import importlib
import inspect
import pkgutil
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

import logic
from logic.answers.reading import Item, Open, Result
from logic.answers.run import ANSWERS
from logic.board import Board, Value
from logic.person import Person

RIDER = Value(80.0, "measured")

for _module in pkgutil.walk_packages(logic.__path__, "logic."):
    importlib.import_module(_module.name)


def ask(key: str, board: Board, rider: Value | None = RIDER) -> Any:
    """Return what an answer of the register says of a board."""
    function, samples = ANSWERS[key]
    known = {
        "board": board,
        "first": board,
        "second": board,
        "rider": rider,
        "person": Person(),
        "asking": {},
    }
    wanted = inspect.signature(function).parameters
    return function(**{name: value for name, value in {**known, **samples}.items() if name in wanted})


def items_of(found: object, where: str = "") -> Iterator[tuple[str, Item]]:
    """Yield every result in what an answer said, wherever it stands in it."""
    if isinstance(found, Result | Open):
        yield where, found
    elif isinstance(found, Mapping):
        for name, part in found.items():
            yield from items_of(part, f"{where}.{name}")
    elif isinstance(found, tuple | list):
        for number, part in enumerate(found):
            yield from items_of(part, f"{where}[{number}]")
    elif is_dataclass(found) and not isinstance(found, type | Board):
        for field in fields(found):
            yield from items_of(getattr(found, field.name), f"{where}.{field.name}")


def results(board: Board, rider: Value | None = RIDER) -> dict[str, Result]:
    """Return every number of every answer on a board, by the place where it stands."""
    return {
        f"{key}{where}": item
        for key in ANSWERS
        for where, item in items_of(ask(key, board, rider))
        if isinstance(item, Result)
    }
