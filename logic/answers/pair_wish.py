"""Which pairs of pulleys meet a wish for speed and hill, and which come near it."""

from collections.abc import Sequence

from logic.answers.asked import Asking
from logic.answers.pairs import Pair, PairTable
from logic.drive.options import HAIR, Wish, WishFit, fit

__all__ = ["HAIR", "Wish", "WishFit", "best_pairs", "fit", "wish_of"]


def best_pairs(table: PairTable, wish: Wish) -> Sequence[tuple[Pair, WishFit]]:
    """Return the rows by a wish: those that meet it first, the nearest to it leading, then the near misses.

    Among pairs that do alike (to 1 % of what was asked), the cooler motor on the reference climb comes first, then a
    belt in stock, then the lighter load on the belt. Pairs with too few teeth in mesh for the belt's full rating
    follow all others that do as much.
    """

    def place(item: tuple[Pair, WishFit]) -> tuple[float, bool, float, float, bool, float]:
        pair, found = item
        heat = pair.option.heat
        return (
            round(found.short, 3),
            pair.belt is not None and pair.belt.few,
            round(found.beyond, 2),
            float("inf") if heat is None else heat,
            table.travel is not None and pair.belt is None,
            pair.belt_load or 0.0,
        )

    return sorted(((pair, fit(pair.option, wish)) for pair in table.pairs), key=place)


def wish_of(asking: Asking) -> Wish:
    """Return what was wished for; None where nothing was."""
    found = {key: asking.get(f"ask.wish_{key}") for key in ("speed", "grade")}
    return Wish(**{key: None if value is None else float(value.si) for key, value in found.items()})
