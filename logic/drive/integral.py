"""Integrals of several rates over one stretch, on shared points, so that their sums balance to rounding."""

from collections.abc import Callable

from logic.errors import InputError

Rates = Callable[[float], tuple[float, ...]]

TOLERANCE = 1e-5
"""Difference of two step widths, as a share of the total, at which a part is taken; what is left is far smaller."""

PARTS = 16
"""Equal parts to begin with. A corner, where one limit hands over to another, may lie so in its part that both step
widths agree on a wrong figure; in parts this small that costs less than 0.03 %."""

DEEPEST = 24
"""Halvings of a part; beyond it a rate without bound is met, and the answer would be nothing to go by."""


def integral(
    rates: Rates, low: float, high: float, *, tolerance: float = TOLERANCE, parts: int = PARTS
) -> tuple[float, ...]:
    """Return the integral of each of `rates` from `low` to `high`, by Simpson's rule, halved where it is uneven.

    Where both step widths agree, their known ratio of errors (16 to 1) takes out most of what is left. All rates
    share their points: if they add up to nothing everywhere, so do the integrals. `parts` are those it begins with: fewer
    where it is a piece of a longer stretch. Raises InputError ("no end")
    when a rate grows without bound on the way.

    >>> round(integral(lambda x: (x**2, 1.0), 0.0, 3.0)[0], 9)
    9.0
    """
    ends = [low + (high - low) * step / parts for step in range(parts + 1)]
    at = [rates(end) for end in ends]
    total = (0.0,) * len(at[0])
    # The parts still to be taken, the leftmost last: (a, b, rates at a, in the middle, at b, halvings so far).
    waiting = [
        (
            ends[place],
            ends[place + 1],
            at[place],
            rates(0.5 * (ends[place] + ends[place + 1])),
            at[place + 1],
            0,
        )
        for place in reversed(range(parts))
    ]
    while waiting:
        a, b, at_a, at_middle, at_b, halved = waiting.pop()
        middle = 0.5 * (a + b)
        quarter, three = rates(0.5 * (a + middle)), rates(0.5 * (middle + b))
        step = (b - a) / 6.0
        found, even = [], True
        for so_far, x, q, y, t, z in zip(total, at_a, quarter, at_middle, three, at_b, strict=True):
            whole = step * (x + 4.0 * y + z)
            halves = 0.5 * step * (x + 4.0 * q + 2.0 * y + 4.0 * t + z)
            even = even and abs(halves - whole) <= tolerance * (abs(halves) + abs(so_far) + 1e-12)
            found.append(so_far + halves + (halves - whole) / 15.0)
        if even:
            total = tuple(found)
        elif halved == DEEPEST:
            raise InputError("integral", (a, b), "no end")
        else:
            waiting.append((middle, b, at_middle, three, at_b, halved + 1))
            waiting.append((a, middle, at_a, quarter, at_middle, halved + 1))
    return total
