"""Cited formulas and the recording of their calls: what a screen shows as the working of a result.

A formula's text stands beside the code that computes it. While a recorder is open every call is kept with its
arguments and its value, and every number read from the board or a table is kept with where it came from. A value
is traced to its origins by the identity of the float objects, so the working cannot drift from the result.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field
from functools import wraps
from typing import Any, ParamSpec

P = ParamSpec("P")

STANDINGS = ("published", "derived", "practice", "estimate")
"""How well a formula, a row or a result is founded, strongest first."""

KNOWN = ("measured", "label", "guess", "assumed")
"""How an input is known, strongest first."""


@dataclass(frozen=True)
class Formula:
    """One cited formula: its text, where it is printed, and the units of its signature."""

    name: str
    mark: str
    text: str
    source: str
    where: str
    standing: str
    function: Callable[..., Any] = field(compare=False)

    @property
    def units(self) -> dict[str, str]:
        """Unit of each argument, from the annotations of the signature."""
        return {
            name: note.__metadata__[0]
            for name, note in self.function.__annotations__.items()
            if name != "return" and hasattr(note, "__metadata__")
        }

    @property
    def unit(self) -> str:
        """Unit of the result."""
        return str(self.function.__annotations__["return"].__metadata__[0])


REGISTER: dict[str, Formula] = {}
"""Every formula of the app by module and name; tests walk it."""


@dataclass(frozen=True, eq=False)
class Call:
    """One recorded call of a formula. `bracket` is where a solver looked, None for closed formulas."""

    formula: Formula
    arguments: dict[str, float]
    value: float
    bracket: tuple[float, float] | None = None


@dataclass(frozen=True, eq=False)
class Given:
    """A number put in: read from the board (`known` is set) or from a table (`standing` is set).

    `unit` is SI; `quantity` and `typed_unit` say how a board's value is shown.
    """

    name: str
    value: float
    unit: str
    quantity: str = ""
    known: str = ""
    standing: str = ""
    source: str = ""
    where: str = ""
    typed_unit: str = ""


Entry = Call | Given


@dataclass(frozen=True)
class Root:
    """A solution and the bracket it was searched in."""

    value: float
    low: float
    high: float


class Recorder:
    """The calls and given numbers of one answer, in order."""

    def __init__(self) -> None:
        """Start empty."""
        self.entries: list[Entry] = []

    def trace(self, value: float) -> tuple[Entry, ...]:
        """Return what `value` was made of, in the order it was made; `value` must be the recorded object itself."""
        made = {id(entry.value): entry for entry in self.entries}
        wanted: set[int] = set()
        stack: list[float] = [value]
        while stack:
            entry = made.get(id(stack.pop()))
            if entry is not None and id(entry) not in wanted:
                wanted.add(id(entry))
                if isinstance(entry, Call):
                    stack.extend(entry.arguments.values())
        return tuple(entry for entry in self.entries if id(entry) in wanted)


_open: ContextVar[Recorder | None] = ContextVar("recorder", default=None)


@contextmanager
def recording() -> Iterator[Recorder]:
    """Open a recorder for one shown answer."""
    recorder = Recorder()
    token = _open.set(recorder)
    try:
        yield recorder
    finally:
        _open.reset(token)


@contextmanager
def unrecorded() -> Iterator[None]:
    """Shut the recorder, for the many trial calls of a solver."""
    token = _open.set(None)
    try:
        yield
    finally:
        _open.reset(token)


def given(number: Given) -> float:
    """Record a number put in, if a recorder is open, and return it as an object of its own."""
    recorder = _open.get()
    if recorder is not None:
        recorder.entries.append(number)
    return number.value


def fresh(value: float) -> float:
    """Return an equal float that is a new object, so that identity tells where a value came from."""
    return value + 0.0


def _register(function: Any, mark: str, text: str, source: str, standing: str) -> Formula:  # noqa: ANN401
    if standing not in STANDINGS:
        raise ValueError(f"{function.__name__}: unknown standing {standing!r}")
    key, _, where = source.partition(" ")
    formula = Formula(function.__name__, mark, text, key, where, standing, function)
    REGISTER[f"{function.__module__}.{function.__name__}"] = formula
    return formula


def cited(
    text: str, *, source: str, standing: str = "published"
) -> Callable[[Callable[P, float]], Callable[P, float]]:
    """Mark a function as the closed formula `text`; `source` is a key of sources.toml, then the place in it."""
    return _recorded("cited", text, source, standing, "")


def method(
    text: str, *, source: str, standing: str = "derived", at: str = ""
) -> Callable[[Callable[P, float]], Callable[P, float]]:
    """Mark a function whose steps are told in words; a published or simulated test stands for the text check.

    An argument may be a curve: the working keeps its value where the argument named by `at` stands, with the
    calls that made it.
    """
    return _recorded("method", text, source, standing, at)


def _recorded(
    mark: str, text: str, source: str, standing: str, at: str
) -> Callable[[Callable[P, float]], Callable[P, float]]:
    def decorate(function: Callable[P, float]) -> Callable[P, float]:
        formula = _register(function, mark, text, source, standing)

        @wraps(function)
        def call(*args: P.args, **numbers: P.kwargs) -> float:
            recorder = _open.get()
            if recorder is None:
                return function(*args, **numbers)
            with unrecorded():
                value = fresh(function(*args, **numbers))
            shown = {
                name: argument(numbers[at]) if callable(argument) else argument
                for name, argument in numbers.items()
            }
            recorder.entries.append(Call(formula, shown, value))  # type: ignore[arg-type]
            return value

        return call

    return decorate


def solved(
    text: str, *, source: str, standing: str = "derived"
) -> Callable[[Callable[P, Root]], Callable[P, float]]:
    """Mark a function that finds the root of `text` = 0, where `text` names the arguments and the function itself.

    An argument may be a curve (a function of the unknown): the working keeps its value at the solution, with the
    calls that made it.
    """

    def decorate(function: Callable[P, Root]) -> Callable[P, float]:
        formula = _register(function, "solved", text, source, standing)

        @wraps(function)
        def call(*args: P.args, **numbers: P.kwargs) -> float:
            recorder = _open.get()
            with unrecorded():
                root = function(*args, **numbers)
            if recorder is None:
                return root.value
            value = fresh(root.value)
            at_root = {
                name: argument(value) if callable(argument) else argument
                for name, argument in numbers.items()
            }
            recorder.entries.append(Call(formula, at_root, value, (root.low, root.high)))  # type: ignore[arg-type]
            return value

        return call

    return decorate


def standing_of(entries: tuple[Entry, ...]) -> str:
    """Return the weakest standing among the formulas and rows of a working."""
    found = [
        entry.formula.standing if isinstance(entry, Call) else entry.standing
        for entry in entries
        if isinstance(entry, Call) or entry.standing
    ]
    return max(found, key=STANDINGS.index, default="derived")


def rough(entries: tuple[Entry, ...]) -> bool:
    """Tell whether a result rests on a guess, an assumed default or an estimate."""
    return standing_of(entries) == "estimate" or any(
        isinstance(entry, Given) and entry.known in ("guess", "assumed") for entry in entries
    )
