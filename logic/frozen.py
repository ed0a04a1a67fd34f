"""Frozen dataclasses that cost little to define: `@frozen` stands for `@dataclass(frozen=True)`.

The standard one writes six functions as text and compiles them, half a millisecond a class: with hundreds of classes on the way
to the first screen that is a tenth of the start. Here one function of each kind serves all classes, and the one that makes an
instance is written when the first is made. Fields, defaults, `replace`, `fields`, `asdict`, `kw_only`, `__post_init__`,
equality, hash and the error at a change are those of the standard library.
"""

from collections.abc import Callable
from dataclasses import MISSING, Field, FrozenInstanceError, dataclass, field, fields, is_dataclass
from operator import attrgetter
from typing import Any, TypeVar, dataclass_transform, overload

C = TypeVar("C", bound=type)


def _init_of(made: type) -> Callable[..., None]:
    """Return what makes an instance, written at its first use."""

    def __init__(self: Any, *args: Any, **named: Any) -> None:  # noqa: ANN401, N807  (whatever the fields take)
        made.__init__ = written = _written(made)  # type: ignore[misc]
        written(self, *args, **named)

    return __init__


def _written(made: type) -> Callable[..., None]:
    """Return the function that sets each field; the text holds names of fields of our own code and nothing else."""
    parts = [part for part in fields(made) if part.init]
    placed = [_taken(part) for part in parts if not part.kw_only]
    named = [_taken(part) for part in parts if part.kw_only]
    takes = ", ".join(["self", *placed, *(["*", *named] if named else [])])
    does = [f" __kept__[{part.name!r}] = {_value(part)}" for part in parts]
    after = [" self.__post_init__()"] if hasattr(made, "__post_init__") else []
    text = "\n".join([f"def __init__({takes}):", " __kept__ = self.__dict__", *does, *after])
    known: dict[str, Any] = {"MISSING": MISSING}
    known |= {f"default_{part.name}": part.default for part in parts}
    known |= {f"make_{part.name}": part.default_factory for part in parts}
    exec(text, known)  # noqa: S102  (as the standard library does)
    written: Callable[..., None] = known["__init__"]
    written.__qualname__ = f"{made.__qualname__}.__init__"
    return written


def _taken(part: "Field[Any]") -> str:
    if part.default is not MISSING:
        return f"{part.name}=default_{part.name}"
    return f"{part.name}=MISSING" if part.default_factory is not MISSING else part.name


def _value(part: "Field[Any]") -> str:
    if part.default_factory is MISSING:
        return part.name
    return f"make_{part.name}() if {part.name} is MISSING else {part.name}"


_KEYS: dict[type, Callable[[Any], Any]] = {}


def _key(of: type) -> Callable[[Any], Any]:
    """Return what gives the compared fields of an instance."""
    found = _KEYS.get(of)
    if found is None:
        compared = [part.name for part in fields(of) if part.compare]
        found = _KEYS[of] = attrgetter(*compared) if compared else lambda _one: ()
    return found


def _equal(one: object, other: object) -> Any:  # noqa: ANN401  (True, False or NotImplemented)
    if other.__class__ is not one.__class__:
        return NotImplemented
    key = _key(one.__class__)
    return key(one) == key(other)


def _hash(one: object) -> int:
    return hash(_key(one.__class__)(one))


def _said(self: Any) -> str:  # noqa: ANN401  (any of them)
    parts = ", ".join(f"{part.name}={getattr(self, part.name)!r}" for part in fields(self) if part.repr)
    return f"{type(self).__qualname__}({parts})"


def _refuse(self: object, name: str, *_: object) -> None:
    raise FrozenInstanceError(f"{type(self).__name__}.{name} cannot be changed")


_FUNCTIONS: dict[str, Any] = {
    "__eq__": _equal,
    "__hash__": _hash,
    "__repr__": _said,
    "__setattr__": _refuse,
    "__delattr__": _refuse,
}


def _make(made: C, *, kw_only: bool) -> C:
    own = {name for name in _FUNCTIONS if made.__dict__.get(name) is not None}
    # The standard function makes nothing that thaws what is frozen, and asked to freeze it writes text: it is told later.
    told = [base.__dict__["__dataclass_params__"] for base in made.__mro__[1:] if is_dataclass(base)]
    for base in told:
        base.frozen = False
    dataclass(init=False, repr=False, eq=False, kw_only=kw_only)(made)
    for base in (*told, made.__dict__["__dataclass_params__"]):
        base.frozen = True
    made.__init__ = _init_of(made)  # type: ignore[misc]
    for name, function in _FUNCTIONS.items():
        if name not in own:
            setattr(made, name, function)
    return made


@overload
def frozen(made: C, /) -> C: ...


@overload
def frozen(*, kw_only: bool = False) -> Callable[[C], C]: ...


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def frozen(made: C | None = None, /, *, kw_only: bool = False) -> C | Callable[[C], C]:
    """Return a class as a frozen dataclass.

    >>> @frozen
    ... class Point:
    ...     x: float
    ...     y: float = 0.0
    >>> Point(1.0) == Point(1.0, 0.0), Point(2.0)
    (True, Point(x=2.0, y=0.0))
    """
    if made is not None:
        return _make(made, kw_only=kw_only)
    return lambda given: _make(given, kw_only=kw_only)
