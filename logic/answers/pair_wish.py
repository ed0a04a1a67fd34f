"""Which pairs of pulleys meet a wish for speed and hill, and which come near it."""

from collections.abc import Callable, Iterator, Sequence
from itertools import groupby, islice
from math import inf
from typing import Any, overload

from logic.answers.asked import Asking
from logic.answers.pairs import Pair, PairTable
from logic.drive.options import HAIR, Wish, WishFit, fit

__all__ = ["HAIR", "Wish", "WishFit", "best_pairs", "fit", "wish_of"]


Fitted = tuple[Pair, WishFit]


class Ranking(Sequence[Fitted]):
    """Pairs in an order, each put in its place when it is read: what stands below the last one read is not compared."""

    def __init__(self, pairs: Sequence[Fitted], *keys: Callable[[Fitted], Any]) -> None:
        """Take the pairs in any order, and what they are ranked by, what counts most first."""
        self.unranked = pairs
        self._ranked: list[Fitted] = []
        self._rest = _in_order(pairs, *keys)

    def __len__(self) -> int:
        """Return how many there are."""
        return len(self.unranked)

    @overload
    def __getitem__(self, place: int) -> Fitted: ...
    @overload
    def __getitem__(self, place: slice) -> Sequence[Fitted]: ...
    def __getitem__(self, place: int | slice) -> Fitted | Sequence[Fitted]:
        """Return the pair at a place, or those at some."""
        last = range(len(self))[place]
        end = max(last, default=-1) if isinstance(last, range) else last
        self._ranked += islice(self._rest, max(0, end + 1 - len(self._ranked)))
        return self._ranked[place]


def _in_order(pairs: Sequence[Fitted], *keys: Callable[[Fitted], Any]) -> Iterator[Fitted]:
    """Yield pairs by the keys; one is asked only of those that are alike by the keys before it."""
    if not keys or len(pairs) == 1:
        yield from pairs
        return
    first, *others = keys
    for _, alike in groupby(sorted(pairs, key=first), first):
        yield from _in_order(list(alike), *others)


def best_pairs(table: PairTable, wish: Wish) -> Ranking:
    """Return the rows by a wish: those that meet it first, the nearest to it leading, then the near misses.

    Among pairs that do alike (to 1 % of what was asked), the cooler motor on the reference climb comes first, then a
    belt in stock, then the lighter load on the belt. Pairs with too few teeth in mesh for the belt's full rating
    follow all others that do as much.
    """
    return Ranking(
        [(pair, fit(pair.option, wish)) for pair in table.pairs],
        lambda one: round(one[1].short, 3),
        lambda one: one[0].belt is not None and one[0].belt.few,
        lambda one: round(one[1].beyond, 2),
        lambda one: inf if one[0].option.heat is None else one[0].option.heat,
        lambda one: table.travel is not None and one[0].belt is None,
        lambda one: one[0].belt_load or 0.0,
    )


def wish_of(asking: Asking) -> Wish:
    """Return what was wished for; None where nothing was."""
    found = {key: asking.get(f"ask.wish_{key}") for key in ("speed", "grade")}
    return Wish(**{key: None if value is None else float(value.si) for key, value in found.items()})
