"""What every kind of log entry is: a frozen class that checks itself, read from plain data and written to it.

The classes hold only what they say; how a field is read follows from its annotation, once for all kinds.
"""

import types
from collections.abc import Callable, Mapping
from dataclasses import MISSING, Field, field, fields, is_dataclass
from functools import cache
from math import isfinite
from typing import Any, ClassVar, Self, TypeAlias, Union, get_args, get_origin, get_type_hints

from logic.errors import InputError
from logic.frozen import frozen

Body: TypeAlias = dict[str, Any]
Upgrade: TypeAlias = Callable[[Body], Body]
Take: TypeAlias = Callable[[Any], Any]

SIDES = ("left", "right")


@frozen(kw_only=True)
class Entry:
    """One entry of the log. `note` may be added to any; `more` are fields that this version does not know.

    `UPGRADES` lead from each older version of the body to the next. Raises InputError outside a limit.
    """

    KIND: ClassVar[str] = ""
    VERSION: ClassVar[int] = 1
    UPGRADES: ClassVar[Mapping[int, Upgrade]] = {}

    note: str = ""
    more: Mapping[str, Any] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Check each figure and each choice, then what the kind itself demands."""
        kind: Any = type(self)
        for name, low, high, choices in _limits(kind):
            value = getattr(self, name)
            if choices and value not in choices:
                raise InputError(f"{self.KIND}.{name}", value, "choice")
            if isinstance(value, float) and not (isfinite(value) and low <= value <= high):
                raise InputError(f"{self.KIND}.{name}", value, "range", low, high)
        self.check()

    def check(self) -> None:
        """Raise InputError for what does not fit together; a kind with more to say has its own."""

    @classmethod
    def upgraded(cls, version: int, body: Body) -> Body:
        """Return a body of an older version as this one writes it."""
        for step in range(version, cls.VERSION):
            body = cls.UPGRADES[step](body)
        return body

    @classmethod
    def of(cls, body: Body) -> Self:
        """Return the entry of plain data. Raises TypeError or InputError for what cannot be one."""
        kind: Any = cls
        known = _takers(kind)
        more = {key: value for key, value in body.items() if key not in known}
        rest = {key: value for key, value in body.items() if key in known}
        return cls(**_taken(cls, rest), more=more)

    def body(self) -> Body:
        """Return the entry as plain data; what stands as it would by itself is left out."""
        said = _plain(self)
        return {**said.pop("more", {}), **said}


def figure(low: float = 0.0, high: float = float("inf")) -> Any:  # noqa: ANN401  (as dataclasses.field)
    """Return a field for a number within limits in SI, None while it is not known."""
    return field(default=None, metadata={"low": low, "high": high})


def choice(*choices: str, **default: str) -> Any:  # noqa: ANN401  (as dataclasses.field)
    """Return a field for one of a few words; `default=...` where it may be left out."""
    return field(**default, metadata={"choices": choices})  # type: ignore[call-overload]


@cache
def _limits(cls: type) -> tuple[tuple[str, float, float, tuple[str, ...]], ...]:
    return tuple(
        (one.name, told.get("low", 0.0), told.get("high", 0.0), told.get("choices", ()))
        for one in fields(cls)
        for told in (one.metadata,)
        if "low" in told or "choices" in told
    )


# Reading


@cache
def _takers(cls: type) -> dict[str, tuple[str, Take]]:
    """Return for each key of plain data the field it belongs to and how its value is taken."""
    hints = get_type_hints(cls)
    return {_key(one): (one.name, _taker(hints[one.name])) for one in fields(cls) if one.name != "more"}


def _key(one: Field[Any]) -> str:
    return str(one.metadata.get("key", one.name))


def _taken(cls: type, body: Any) -> Body:  # noqa: ANN401  (whatever JSON holds)
    if not isinstance(body, dict):
        raise TypeError(f"{cls.__name__}: {body!r} is no object")
    takers = _takers(cls)
    found = {}
    for key, value in body.items():
        name, take = takers[key]
        found[name] = take(value)
    return found


def _taker(hint: Any) -> Take:  # noqa: ANN401  (an annotation)
    """Return what takes a JSON value for an annotation; it raises TypeError for another type."""
    origin, args = get_origin(hint), get_args(hint)
    if origin in (Union, types.UnionType):
        return _any_of(tuple(_taker(one) for one in args))
    if origin is tuple:
        return _tuple(args)
    if origin is not None and issubclass(origin, Mapping):
        return _mapping(_taker(args[1]))
    if is_dataclass(hint) and isinstance(hint, type):
        return lambda value: hint(**_taken(hint, value))
    if isinstance(hint, type) and issubclass(hint, tuple):
        parts = _tuple(tuple(get_type_hints(hint).values()))
        return lambda value: hint(*parts(value))
    return _plain_taker(hint)


def _plain_taker(hint: type) -> Take:
    def take(value: Any) -> Any:  # noqa: ANN401  (whatever JSON holds)
        if hint is float and type(value) in (float, int) and isfinite(value):
            return float(value)
        if type(value) is not hint:
            raise TypeError(f"{value!r} is no {hint.__name__}")
        return value

    return take


def _any_of(takers: tuple[Take, ...]) -> Take:
    def take(value: Any) -> Any:  # noqa: ANN401  (whatever JSON holds)
        for one in takers:
            try:
                return one(value)
            except TypeError:
                continue
        raise TypeError(f"{value!r} is of none of the types that may stand here")

    return take


def _tuple(args: tuple[Any, ...]) -> Take:
    some = len(args) > 1 and args[1] is Ellipsis
    takers = [_taker(one) for one in args if one is not Ellipsis]

    def take(value: Any) -> Any:  # noqa: ANN401  (whatever JSON holds)
        if not isinstance(value, list) or not (some or len(value) == len(takers)):
            raise TypeError(f"{value!r} is no list of its length")
        return tuple(
            one(item) for one, item in zip(takers * len(value) if some else takers, value, strict=True)
        )

    return take


def _mapping(one: Take) -> Take:
    def take(value: Any) -> Any:  # noqa: ANN401  (whatever JSON holds)
        if not isinstance(value, dict):
            raise TypeError(f"{value!r} is no object")
        return {key: one(item) for key, item in value.items()}

    return take


# Writing


def _plain(value: Any) -> Any:  # noqa: ANN401  (whatever an entry holds)
    if is_dataclass(value) and not isinstance(value, type):
        return {
            _key(one): _plain(getattr(value, one.name))
            for one in fields(value)
            if getattr(value, one.name) != _default(one)
        }
    if isinstance(value, Mapping):
        return {key: _plain(item) for key, item in value.items()}
    return [_plain(item) for item in value] if isinstance(value, tuple) else value


def _default(one: Field[Any]) -> Any:  # noqa: ANN401  (whatever an entry holds)
    return one.default_factory() if one.default_factory is not MISSING else one.default
