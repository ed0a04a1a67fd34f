"""Which of the peaks of a spectrum belong to one string, and where its fundamental lies, however weak that is."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from math import log10

from logic.si import Hertz

DEPTH = 40.0
"""Peaks so many dB under the strongest no longer count; between, they count by their level."""
FLAT, SHARP, CURVE = 0.012, 0.012, 0.0022
"""How far a partial may lie under and over its whole multiple; a stiff span's rise with the order's square."""
NEAREST = 0.25
"""A partial may never lie further off than this share of the fundamental: further on begins the next one."""
ORDERS = 12
DEEPEST_ORDER = 6
"""The strongest peaks are taken for partials up to this one."""
LEADERS = 6
"""So many of the strongest peaks are tried as partials."""
MISSING = 0.4
"""What an order without a peak costs, as a share of all peaks when every order lacks one."""
COUNTED = 0.001
"""Energy of a partial, as a share of the strongest, from which it tells one string from two."""
RIVAL = 0.12
"""Energy of a peak outside, as a share of the strongest, from which there are two pitches."""
CLEAR = 0.03
"""By how much the best reading must explain more than any other."""

Peak = tuple[float, Hertz]


@dataclass(frozen=True)
class Series:
    """Partials of one string: the peak of each order, how well they explain all peaks, the strongest outside."""

    fundamental: Hertz
    partials: dict[int, Peak]
    score: float
    rival: Hertz

    @property
    def grounded(self) -> bool:
        """Tell whether it is one string: its fundamental is there, or no two other strings have all its partials.

        Partials 2, 3, 4 and 6 may be of two strings a fifth apart; with a 5 they cannot.
        """
        strongest = max(energy for energy, _ in self.partials.values())
        orders = [order for order, (energy, _) in self.partials.items() if energy > COUNTED * strongest]
        pairs = combinations(range(2, ORDERS + 1), 2)
        return 1 in orders or not any(
            all(order % one == 0 or order % other == 0 for order in orders) for one, other in pairs
        )


def order_of(frequency: Hertz, fundamental: Hertz) -> int:
    """Return the order of a partial, 0 when it is none.

    >>> order_of(205.0, 100.0), order_of(150.0, 100.0), order_of(530.0, 100.0)
    (2, 0, 5)
    """
    ratio = frequency / fundamental
    for order in (int(ratio), int(ratio) + 1):
        if not 1 <= order <= ORDERS:
            continue
        off = ratio - order
        if -min(FLAT * order, NEAREST) < off < min((SHARP + CURVE * order * order) * order, NEAREST):
            return order
    return 0


def series(peaks: Sequence[Peak], low: Hertz, high: Hertz) -> tuple[Series, bool] | None:
    """Return the string that explains the peaks best, and whether no other comes near; None without peaks.

    `peaks` are (energy, Hz), strongest first; `low` and `high` bound the fundamental.
    """
    tried = [
        _explained(peaks, leader / order)
        for _, leader in peaks[:LEADERS]
        for order in range(1, DEEPEST_ORDER + 1)
        if low <= leader / order <= high
    ]
    if not tried:
        return None
    tried = [one for one in tried if one.partials]
    if not tried:
        return None
    best = max(tried, key=lambda one: one.score)
    others = [one.score for one in tried if abs(one.fundamental / best.fundamental - 1.0) > 0.04]  # noqa: PLR2004
    return best, best.score - max(others, default=0.0) >= CLEAR


def _explained(peaks: Sequence[Peak], fundamental: Hertz) -> Series:
    strongest = peaks[0][0]
    partials = _partials(peaks, fundamental)
    inside = whole = 0.0
    rival = 0.0
    for energy, frequency in peaks:
        weight = max(0.0, 1.0 + 10 * log10(energy / strongest) / DEPTH)
        whole += weight
        if (energy, frequency) in partials.values():
            inside += weight
        elif not rival and energy > RIVAL * strongest and frequency < (ORDERS + 0.5) * fundamental:
            rival = frequency
    last = max((order for order, (energy, _) in partials.items() if energy > COUNTED * strongest), default=1)
    lacking = sum(order not in partials for order in range(1, last + 1)) / last
    return Series(fundamental, partials, inside / whole - MISSING * lacking, rival)


def _partials(peaks: Sequence[Peak], fundamental: Hertz) -> dict[int, Peak]:
    """Return the strongest peak of each order, as long as none is sharper than the one below it foretells.

    A stiff span's partials rise by the order's square: one that leaves that line is another string's, or the
    strongest peak itself over the harmonics of a hum.
    """
    found: dict[int, Peak] = {}
    for peak in peaks:
        order = order_of(peak[1], fundamental)
        if order:
            found.setdefault(order, peak)
    below = 0
    for order in sorted(found):
        sharp = found[order][1] / fundamental / order - 1
        if below > 1:
            reach = (order**2 - 1) / (below**2 - 1)
            if sharp > (max(0.0, found[below][1] / fundamental / below - 1) + FLAT / 2) * reach:
                del found[order]
                continue
        below = order
    if peaks[0] not in [found[order] for order in found if order <= DEEPEST_ORDER]:
        return {}
    return found
