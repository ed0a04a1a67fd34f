"""Which of the peaks of a spectrum belong to one string, and where its fundamental lies, however weak that is."""

from collections.abc import Iterator, Sequence
from itertools import combinations
from math import log10, sqrt

from logic.frozen import frozen
from logic.si import Hertz

DEPTH = 40.0
"""Peaks so many dB under the strongest no longer count; between, they count by their level."""
MOST = 30
"""So many peaks are looked at, the strongest."""
STIFFNESSES = (0.0, 0.0004, 0.0012, 0.003, 0.006)
"""Values of B that are tried: partial n of a stiff span lies at n f sqrt(1 + B n^2)."""
OFF, BLUR = 0.008, 0.6
"""A partial lies off its place by no more than this share of its frequency, and so many Hz more."""
TWIN = 0.015
"""A second peak so near a partial is the same string's: it swings in two planes, at two pitches."""
NEAREST = 0.2
"""A partial may never lie further off than this share of the fundamental: further on begins the next one."""
ORDERS = 12
DEEPEST_ORDER = 10
"""The strongest peaks are taken for partials up to this one."""
LEADERS = 6
"""So many of the strongest peaks are tried as partials."""
FIRST, LONE = 2, 0.016
"""Above this order the strongest partial has another within two orders, not weaker than this share of its energy."""
MISSING = 0.4
"""What an order without a peak costs, as a share of all peaks when every order lacks one."""
COUNTED = 0.0003
"""Energy of a partial, as a share of the strongest, from which it tells one string from two."""
HELD = 0.03
"""Energy of a partial, as a share of the strongest, from which a reading may stand on it alone."""
FEWEST = 4
"""So many partials tell of a fundamental that is not there: through three peaks some stiff string's always pass."""
RIVAL = 0.12
"""Energy of a peak outside, as a share of the strongest, from which there are two pitches."""
CLEAR = 0.03
"""By how much the best reading must explain more than any other."""

Peak = tuple[float, Hertz]


@frozen
class Series:
    """Partials of one string: the peak of each order, how well they explain all peaks, the strongest outside."""

    fundamental: Hertz
    stiffness: float
    partials: dict[int, Peak]
    score: float
    rival: Hertz

    @property
    def grounded(self) -> bool:
        """Tell whether it is one string: its fundamental is there, or no two other strings have all its partials.

        Partials 2, 3, 4 and 6 may be of two strings a fifth apart; with a 5 they cannot. And 2, 4 and 6 with one
        weak 1 may be a string an octave higher and a peak of noise. Three peaks alone tell of nothing below them.
        """
        strongest = max(energy for energy, _ in self.partials.values())
        orders = [order for order, (energy, _) in self.partials.items() if energy > COUNTED * strongest]
        for one in range(2, ORDERS + 1):
            others = [self.partials[order][0] for order in orders if order % one]
            if len(orders) > 1 and len(others) == 1 and others[0] < HELD * strongest:
                return False
        pairs = combinations(range(2, ORDERS + 1), 2)
        return 1 in orders or (
            len(orders) >= FEWEST
            and not any(
                all(order % one == 0 or order % other == 0 for order in orders) for one, other in pairs
            )
        )


def order_of(frequency: Hertz, fundamental: Hertz, stiffness: float = 0.0) -> float:
    """Return which partial a tone would be, as a number that need not be whole.

    >>> order_of(205.0, 100.0), round(order_of(205.0, 100.0, 0.01266), 2)
    (2.05, 2.0)
    """
    ratio = frequency / fundamental
    if stiffness == 0.0:
        return ratio
    return sqrt((sqrt(1.0 + 4.0 * stiffness * ratio * ratio) - 1.0) / (2.0 * stiffness))


def series(peaks: Sequence[Peak], low: Hertz, high: Hertz) -> tuple[Series, bool] | None:
    """Return the string that explains the peaks best, and whether no other comes near; None without peaks.

    `peaks` are (energy, Hz), strongest first; `low` and `high` bound the fundamental.
    """
    weighed = [
        (1.0 + 10 * log10(peak[0] / peaks[0][0]) / DEPTH, peak)
        for peak in peaks[:MOST]
        if peak[0] > 10 ** (-DEPTH / 10) * peaks[0][0]
    ]
    tried = [
        one
        for fundamental, stiffness in _guesses(peaks, low, high)
        if (one := _explained(weighed, fundamental, stiffness)).partials
    ]
    if not tried:
        return None
    best = max(tried, key=lambda one: one.score)
    others = [one.score for one in tried if abs(one.fundamental / best.fundamental - 1.0) > 0.04]  # noqa: PLR2004
    return best, best.score - max(others, default=0.0) >= CLEAR


def _guesses(peaks: Sequence[Peak], low: Hertz, high: Hertz) -> Iterator[tuple[Hertz, float]]:
    for _, leader in peaks[:LEADERS]:
        for order in range(1, DEEPEST_ORDER + 1):
            for stiffness in STIFFNESSES:
                fundamental = leader / order / sqrt(1.0 + stiffness * order * order)
                if low <= fundamental <= high:
                    yield fundamental, stiffness


def _explained(weighed: Sequence[tuple[float, Peak]], fundamental: Hertz, stiffness: float) -> Series:
    strongest = weighed[0][1][0]
    partials: dict[int, Peak] = {}
    inside = whole = 0.0
    outside = []
    for weight, peak in weighed:
        energy, frequency = peak
        place = order_of(frequency, fundamental, stiffness)
        order = round(place)
        off = abs(place - order)
        whole += weight
        if 1 <= order <= ORDERS:
            if off < min(OFF * order + BLUR / fundamental, NEAREST):
                if order not in partials:
                    partials[order] = peak
                    inside += weight
                else:
                    whole -= weight
                continue
            if order in partials and off < min(TWIN * order, NEAREST):
                continue
        if energy > RIVAL * strongest and place < ORDERS + 0.5:
            outside.append(peak)
    if not _led(partials, weighed[0][1]):
        return Series(fundamental, stiffness, {}, 0.0, 0.0)
    last = max((order for order, (energy, _) in partials.items() if energy > COUNTED * strongest), default=1)
    lacking = sum(order not in partials for order in range(1, last + 1)) / last
    rival = outside[0][1] if outside else 0.0
    return Series(fundamental, stiffness, partials, inside / whole - MISSING * lacking, rival)


def _led(partials: dict[int, Peak], leader: Peak) -> bool:
    """Tell whether the strongest peak is a partial, and no lone one far over all its neighbours.

    A string's strongest partial has others near it; the string itself over the harmonics of a hum has none.
    """
    order = next((order for order, peak in partials.items() if peak == leader), 0)
    if order <= FIRST:
        return order > 0
    near = [
        partials[other][0] for other in range(order - 2, order + 3) if other != order and other in partials
    ]
    return max(near, default=0.0) > LONE * leader[0]
