"""One run of an answer: what it shows is recorded, traced and guarded in one place, and one register lists all answers."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from functools import cached_property
from typing import Any, Generic, TypeVar

from logic.answers.reading import Item, Open, Result
from logic.board import Board, Value
from logic.errors import InputError, Missing, NoFigure
from logic.frozen import frozen
from logic.tables import pick
from logic.workings import recording, unrecorded

P = TypeVar("P")
T = TypeVar("T")
Otherwise = TypeVar("Otherwise")
F = TypeVar("F", bound=Callable[..., Any])

Band = tuple[float, float]


@frozen
class Middle:
    """A usual value inside its band."""

    value: float
    band: Band


Points = tuple[tuple[float, float], ...]
"""A curve: what stands over what, point by point."""

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


class WhenRead(Mapping[str, Item]):
    """Figures by name, each worked out when it is first read: what nobody looks at costs nothing."""

    def __init__(self, names: Iterable[str], make: Callable[[str], Item], **known: Item) -> None:
        """Take the names in the order shown, and what works one out; some are `known` already."""
        self._found: dict[str, Item | None] = {**dict.fromkeys(names), **known}
        self._make = make

    def __getitem__(self, name: str) -> Item:
        """Return one figure."""
        found = self._found[name]
        if found is None:
            found = self._found[name] = self._make(name)
        return found

    def __contains__(self, name: object) -> bool:
        """Tell whether there is such a figure, without working it out."""
        return name in self._found

    @property
    def read(self) -> set[str]:
        """Return the names of those that were worked out."""
        return {name for name, item in self._found.items() if item is not None}

    def __iter__(self) -> Iterator[str]:
        """Give the names."""
        return iter(self._found)

    def __len__(self) -> int:
        """Return how many there are."""
        return len(self._found)


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

    def when_read(self, of: Figures[P], **known: Item) -> Mapping[str, Item]:
        """Return every figure by name, worked out when it is read; those that are `known` already as they are."""
        return WhenRead(of, lambda name: self.figure(name, *of[name]), **known)

    def reads(self, compute: Callable[[P], object]) -> bool:
        """Tell whether parts can be read; they are those of the figures, so nothing is read twice."""
        with recording():
            return not isinstance(_or_open("", lambda: compute(self.parts)), Open)

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
    except NoFigure as answer:
        return Open(name, outcome=answer.reason)
    except InputError as problem:
        return Open(name, problem=problem)


def kv_bands(
    board: Board, make: Callable[[Board], P], of: Figures[P], items: Mapping[str, Item], *names: str
) -> Mapping[str, Item]:
    """Return the items, those named with the band that a speed constant leaves open while it is only printed.

    Without a band where an end cannot be worked out, and where the constant was measured.
    """
    kv = board.motor.kv
    if kv is None or kv.known == "measured":
        return items
    with unrecorded():
        share = pick("spreads", name="printed speed constant").number("share")
    ends = [_with_kv(board, make, replace(kv, si=float(kv.si) * (1.0 + off))) for off in (-share, share)]

    def banded(name: str) -> Item:
        item = items[name]
        if name not in names or not isinstance(item, Result):
            return item
        low, high = (end.view(of[name][1], None) for end in ends)
        if not isinstance(low, float) or not isinstance(high, float):
            return item
        reach = (low, high, float(item.value))
        return replace(item, band=(min(reach), max(reach)))

    return WhenRead(items, banded)


def _with_kv(board: Board, make: Callable[[Board], P], kv: Value) -> Run[P]:
    return Run(lambda: make(board.with_value("motor.kv", kv)))
