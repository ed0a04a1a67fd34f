"""Cited formulas and traced numbers: what a screen shows as the working of a result.

A formula's text stands beside the code that computes it. While recording is on, every number that is read from the
board, a table or the person, and every number that a formula returns, is `Traced`: a float that carries what made
it. The working of a result is read off the result itself, so it cannot drift from it, and no copy, cache or thread
can cut it. Arithmetic on a traced number is an unnamed step of the working. A number that comes from nowhere is
`bare`: it is shown as such and weakens whatever it goes into.
"""

from collections.abc import Callable, Iterable
from contextvars import ContextVar
from dataclasses import field
from functools import wraps
from typing import Any, ParamSpec

from logic.frozen import frozen

P = ParamSpec("P")

STANDINGS = ("published", "derived", "practice", "estimate")
"""How well a formula, a row or a result is founded, strongest first."""

KNOWN = ("measured", "label", "guess", "assumed")
"""How an input is known, strongest first."""

BARE = "bare"
"""How a number is known that nobody put in and no formula made: not at all."""


@frozen
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
        """Unit of the result; empty for a step of arithmetic, whose unit follows from its numbers."""
        note = self.function.__annotations__.get("return")
        return "" if note is None else str(note.__metadata__[0])


REGISTER: dict[str, Formula] = {}
"""Every formula of the app by module and name; tests walk it."""


@frozen
class Call:
    """One recorded call of a formula. `bracket` is where a solver looked, None for closed formulas."""

    formula: Formula
    arguments: dict[str, float]
    value: float
    bracket: tuple[float, float] | None = None

    __eq__, __hash__ = object.__eq__, object.__hash__
    """Two calls that look alike are two calls."""

    @property
    def made_of(self) -> tuple["Entry", ...]:
        """What went in."""
        return tuple([number.origin for number in self.arguments.values() if isinstance(number, Traced)])


@frozen
class Given:
    """A number or a choice put in: read from the board (`known` is set) or from a table (`standing` is set).

    `unit` is SI; `quantity` and `typed_unit` say how a board's value is shown. `because` are the choices and
    numbers by which a row was found.
    """

    name: str
    value: float | str
    unit: str
    quantity: str = ""
    known: str = ""
    standing: str = ""
    source: str = ""
    where: str = ""
    typed_unit: str = ""
    because: tuple["Entry", ...] = ()

    __eq__, __hash__ = object.__eq__, object.__hash__
    """Two inputs that look alike are two inputs."""

    @property
    def made_of(self) -> tuple["Entry", ...]:
        """What the row was found by."""
        return self.because


Entry = Call | Given


@frozen
class Root:
    """A solution and the bracket it was searched in."""

    value: float
    low: float
    high: float


_recording: ContextVar[bool] = ContextVar("recording", default=False)


class Traced(float):
    """A number that carries what made it. Arithmetic on it gives another one while recording is on."""

    __slots__ = ("origin",)
    origin: Entry

    def __new__(cls, value: float, origin: Entry) -> "Traced":
        """Return `value` with its origin."""
        made = float.__new__(cls, value)
        made.origin = origin
        return made

    def __deepcopy__(self, _memo: object) -> "Traced":
        """Return itself: it never changes."""
        return self

    def __reduce__(self) -> tuple[type[float], tuple[float]]:
        """Leave the process as a plain number."""
        return float, (float(self),)


class Choice(str):
    """An option that carries how it was chosen."""

    __slots__ = ("origin",)
    origin: Given

    def __new__(cls, text: str, origin: Given) -> "Choice":
        """Return `text` with its origin."""
        made = str.__new__(cls, text)
        made.origin = origin
        return made

    def __deepcopy__(self, _memo: object) -> "Choice":
        """Return itself: it never changes."""
        return self

    def __reduce__(self) -> tuple[type[str], tuple[str]]:
        """Leave the process as plain text."""
        return str, (str(self),)


CARRIES = (Traced, Choice)
"""What carries an origin."""


def _step(name: str, text: str) -> tuple[str, Callable[..., Any]]:
    """Return one arithmetic method of `Traced` that is kept as an unnamed step."""
    bare = getattr(float, f"__{name}__")
    turned = name.startswith("r") and name not in ("round",)
    formula = Formula(name, "step", text, "derived", "a step of arithmetic", "derived", bare_step)

    def act(self: Traced, *others: Any) -> Any:  # noqa: ANN401  (as Python's own)
        value = bare(self, *others)
        if value is NotImplemented or not _recording.get():
            return value
        numbers = (*others, self) if turned else (self, *others)
        arguments = {key: _traced(key, number) for key, number in zip("ab", numbers, strict=False)}
        return Traced(value, Call(formula, arguments, float(value)))

    return f"__{name}__", act


def bare_step() -> None:
    """Stand in for the function of a step, which has no signature of its own."""


_STEPS = {
    "add": "a + b",
    "radd": "a + b",
    "sub": "a - b",
    "rsub": "a - b",
    "mul": "a * b",
    "rmul": "a * b",
    "truediv": "a / b",
    "rtruediv": "a / b",
    "pow": "a**b",
    "rpow": "a**b",
    "neg": "-a",
    "abs": "abs(a)",
    "round": "round(a, b)",
}
for _name, _text in _STEPS.items():
    setattr(Traced, *_step(_name, _text))


def _traced(name: str, number: float) -> float:
    """Return an argument as it goes into a working: traced, or shown as coming from nowhere."""
    if isinstance(number, Traced) or not isinstance(number, int | float):
        return number
    return Traced(number, Given(name, float(number), "1", known=BARE))


def trace(*values: object) -> tuple[Entry, ...]:
    """Return what the values were made of: each thing once, and after all that it rests on."""
    seen: set[Entry] = set()
    found: list[Entry] = []

    def visit(entry: Entry) -> None:
        # A solution stands among the arguments of the calls that were made at it: seen before its parts are.
        seen.add(entry)
        for part in entry.made_of:
            if part not in seen:
                visit(part)
        found.append(entry)

    for origin in origins(values):
        if origin not in seen:
            visit(origin)
    return tuple(found)


class _Switch:
    """Traces numbers inside a `with`, or does not: entered by every formula, so it is light."""

    __slots__ = ("on", "token")

    def __init__(self, *, on: bool) -> None:
        self.on = on

    def __enter__(self) -> None:
        self.token = _recording.set(self.on)

    def __exit__(self, *_: object) -> None:
        _recording.reset(self.token)


def recording() -> _Switch:
    """Trace numbers, for one shown answer."""
    return _Switch(on=True)


def unrecorded() -> _Switch:
    """Trace nothing, for the many trial calls of a solver."""
    return _Switch(on=False)


def is_recording() -> bool:
    """Tell whether numbers are traced at the moment."""
    return _recording.get()


def given(number: Given) -> float:
    """Return a number put in, traced while recording is on."""
    value = float(number.value)
    return Traced(value, number) if _recording.get() else value


def choice(option: Given) -> str:
    """Return an option that was chosen, with its origin while recording is on."""
    return Choice(str(option.value), option) if _recording.get() else str(option.value)


def origins(values: Iterable[object]) -> tuple[Entry, ...]:
    """Return what the traced among some values were made of, without what went into that."""
    return tuple([value.origin for value in values if isinstance(value, CARRIES)])


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
            if not _recording.get():
                return function(*args, **numbers)
            with unrecorded():
                value = function(*args, **_plain(numbers))
            return Traced(value, Call(formula, _shown(numbers, numbers.get(at)), float(value)))

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
            if not _recording.get():
                return function(*args, **numbers).value
            with unrecorded():
                root = function(*args, **_plain(numbers))
            made = Call(formula, {}, float(root.value), (root.low, root.high))
            solution = Traced(root.value, made)
            made.arguments.update(_shown(numbers, solution))
            return solution

        return call

    return decorate


def _plain(numbers: dict[str, Any]) -> dict[str, Any]:
    """Return arguments for the sums inside a formula: those need no trace."""
    return {key: float(number) if type(number) is Traced else number for key, number in numbers.items()}


def _shown(numbers: dict[str, Any], at: Any) -> dict[str, float]:  # noqa: ANN401  (whatever a formula takes)
    """Return arguments as the working shows them: a curve by its value where the formula stands."""
    return {
        name: number if type(number) is Traced else _traced(name, number(at) if callable(number) else number)
        for name, number in numbers.items()
    }


def standing_of(entries: tuple[Entry, ...]) -> str:
    """Return the weakest standing among the formulas and rows of a working; a bare number has none to speak of."""
    found = [
        entry.formula.standing if isinstance(entry, Call) else entry.standing
        for entry in entries
        if isinstance(entry, Call) or entry.standing
    ]
    found += ["estimate" for entry in entries if isinstance(entry, Given) and entry.known == BARE]
    return max(found, key=STANDINGS.index, default="derived")


def rough(entries: tuple[Entry, ...]) -> bool:
    """Tell whether a result rests on a guess, an assumed default, an estimate or a number from nowhere."""
    return standing_of(entries) == "estimate" or any(
        isinstance(entry, Given) and entry.known in ("guess", "assumed") for entry in entries
    )
