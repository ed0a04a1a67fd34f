"""What is worked out once: answers that are kept while what they rest on is the same."""

from collections.abc import Callable
from typing import Any, TypeVar

from logic.board import Value

T = TypeVar("T")

KEPT = 3
"""Answers of one function that are kept: the trial's, the saved board's, and one more."""


class Memo:
    """Answers that are kept while what they rest on is the same object."""

    def __init__(self) -> None:
        """Keep nothing yet."""
        self._kept: dict[Callable[..., Any], list[tuple[tuple[Any, ...], Any]]] = {}
        self._read: dict[str, Any] = {}
        self._made: dict[str, tuple[tuple[object, ...], Any]] = {}

    def same(self, name: str, read: T) -> T:
        """Return what was read under a name before while it is equal: answers that rest on it are kept then."""
        if name not in self._read or self._read[name] != read:
            self._read[name] = read
        return self._read[name]  # type: ignore[no-any-return]

    def __call__(self, function: Callable[..., T], *given: Any) -> T:  # noqa: ANN401  (whatever the function takes)
        """Return what a function gives, from memory where it was given the same."""
        kept = self._kept.setdefault(function, [])
        for place, (before, result) in enumerate(kept):
            if len(before) == len(given) and all(map(_same, before, given)):
                if place:
                    kept.insert(0, kept.pop(place))
                return result  # type: ignore[no-any-return]
        result = function(*given)
        kept.insert(0, (given, result))
        del kept[KEPT:]
        return result

    def unless(self, name: str, rests_on: tuple[object, ...], make: Callable[[], T]) -> T:
        """Return what was made under a name before while what it rests on is equal, else make it anew."""
        kept = self._made.get(name)
        if kept is None or kept[0] != rests_on:
            kept = self._made[name] = (rests_on, make())
        return kept[1]

    def known(self, where: str, *given: Any) -> tuple[Any, ...]:  # noqa: ANN401  (whatever the function takes)
        """Return what a function, by module and name, gave; nothing where it was not asked the same. It is not run."""
        kept = next((kept for one, kept in self._kept.items() if where == _named(one)), [])
        return next(((result,) for before, result in kept if all(map(_same, before, given))), ())


def _named(function: Callable[..., Any]) -> str:
    return f"{function.__module__}.{getattr(function, '__name__', '')}"


def _same(one: object, other: object) -> bool:
    return one is other or (isinstance(one, int | float | str | Value | None) and one == other)
