"""One run of an answer: what it shows is recorded, traced and guarded in one place, and one register lists all answers."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any, Generic, TypeVar

from logic.answers.outcomes import OUTCOMES
from logic.answers.reading import Item, Open, Result
from logic.board import Board, Value
from logic.errors import InputError, Missing
from logic.tables import pick
from logic.workings import recording, unrecorded

P = TypeVar("P")
T = TypeVar("T")
Otherwise = TypeVar("Otherwise")
F = TypeVar("F", bound=Callable[..., Any])

Band = tuple[float, float]


@dataclass(frozen=True)
class Middle:
    """A usual value inside its band."""

    value: float
    band: Band


Compute = Callable[[P], float | Band | Middle]
Figures = Mapping[str, tuple[str, Compute[P]]]
"""Figures by name, in the order shown: the quantity, and how one is worked out of the parts."""

ANSWERS: dict[str, tuple[Callable[..., Any], dict[str, Any]]] = {}
"""Every answer by module and name, with a sample of each argument beside board, person and question."""


def answer(**samples: Any) -> Callable[[F], F]:  # noqa: ANN401  (whatever an answer takes)
    """Enter a function into the register of answers; one test walks it and holds every answer to the same rules."""

    def enter(function: F) -> F:
        ANSWERS[f"{function.__module__}.{function.__name__}"] = function, samples
        return function

    return enter


class Run(Generic[P]):
    """One run over the parts that an answer rests on; `make` reads them when first needed."""

    def __init__(self, make: Callable[[], P]) -> None:
        """Take what reads the parts."""
        self.make = make

    @cached_property
    def parts(self) -> P:
        """The parts whose numbers carry what made them; only figures read these."""
        return self.make()

    @cached_property
    def plain(self) -> P:
        """The same parts as plain numbers, for curves and for what is decided beside the figures."""
        return self.make()

    def figure(self, name: str, quantity: str, compute: Compute[P]) -> Item:
        """Return one figure, a band by its high end, or what stands in its way."""
        with recording():
            found = _or_open(name, lambda: compute(self.parts))
        if isinstance(found, Open):
            return found
        if isinstance(found, Middle):
            return Result(name, found.value, quantity, found.band)
        if isinstance(found, tuple):
            return Result(name, found[1], quantity, found)
        return Result(name, found, quantity)

    def figures(self, of: Figures[P]) -> dict[str, Item]:
        """Return every figure by name."""
        return {name: self.figure(name, quantity, compute) for name, (quantity, compute) in of.items()}

    def or_open(self, name: str, compute: Callable[[P], T]) -> T | Open:
        """Return something beside the figures, or what stands in its way."""
        with unrecorded():
            return _or_open(name, lambda: compute(self.plain))

    def view(self, compute: Callable[[P], T], otherwise: Otherwise) -> T | Otherwise:
        """Return something beside the figures, `otherwise` where a value is missing or does not fit."""
        found = self.or_open("", compute)
        return otherwise if isinstance(found, Open) else found


def _or_open(name: str, compute: Callable[[], T]) -> T | Open:
    """Return what is computed, or what stands in its way: the one place where an answer meets a refusal."""
    try:
        return compute()
    except Missing as gap:
        return Open(name, missing=gap.fields)
    except InputError as problem:
        if problem.reason in OUTCOMES:
            return Open(name, outcome=problem.reason)
        return Open(name, problem=problem)


def kv_bands(
    board: Board, make: Callable[[Board], P], of: Figures[P], items: dict[str, Item], *names: str
) -> dict[str, Item]:
    """Return the items, those named with the band that a speed constant leaves open while it is only printed.

    Without a band where an end cannot be worked out, and where the constant was measured.
    """
    kv = board.motor.kv
    if kv is None or kv.known == "measured":
        return items
    with unrecorded():
        share = pick("spreads", name="printed speed constant").number("share")
    ends = [_with_kv(board, make, replace(kv, si=float(kv.si) * (1.0 + off))) for off in (-share, share)]
    found = dict(items)
    for name in names:
        item, compute = items[name], of[name][1]
        low, high = (end.view(compute, None) for end in ends)
        if isinstance(item, Result) and isinstance(low, float) and isinstance(high, float):
            reach = (low, high, float(item.value))
            found[name] = replace(item, band=(min(reach), max(reach)))
    return found


def _with_kv(board: Board, make: Callable[[Board], P], kv: Value) -> Run[P]:
    return Run(lambda: make(board.with_value("motor.kv", kv)))
