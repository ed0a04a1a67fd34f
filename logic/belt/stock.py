"""Belts that are in stock, and those nearest to a wanted centre distance."""

from bisect import bisect_left
from functools import cache

from logic.belt.geometry import belt_length, centre_distance
from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.si import Metre
from logic.tables import matching, pick
from logic.workings import unrecorded


@frozen
class Stock:
    """One length that is in stock: the lists it is in by their source keys, and whether any was read."""

    teeth: int
    length: Metre
    lists: tuple[str, ...]
    sure: bool


@cache
def stock(profile: str) -> tuple[Stock, ...]:
    """Return the lengths in stock of a profile, shortest first; gathered once. Raises InputError for an unknown profile.

    >>> [belt.teeth for belt in stock("HTD 5M") if len(belt.lists) == 4][:4]
    [53, 59, 60, 66]
    """
    pitch = pick("belt_profiles", profile=profile).cells["pitch"]
    lists: dict[int, list[str]] = {}
    sure: dict[int, bool] = {}
    for row in matching("belt_lengths", profile=profile):
        teeth = round(row.cells["length"] / pitch)
        lists.setdefault(teeth, []).append(row.source)
        sure[teeth] = row.standing != "estimate"
    return tuple(Stock(teeth, teeth * pitch, tuple(lists[teeth]), sure[teeth]) for teeth in sorted(lists))


def widths(profile: str) -> tuple[Metre, ...]:
    """Return the widths in stock of a profile, narrowest first.

    >>> [round(width * 1000) for width in widths("HTD 5M")]
    [9, 15, 25]
    """
    return tuple(row.cells["width"] for row in matching("belt_widths", profile=profile))


def nearest(*, profile: str, large: Metre, small: Metre, wanted: Metre, count: int) -> tuple[Stock, ...]:
    """Return the `count` belts in stock whose exact centre lies nearest to the wanted one, shortest first.

    Belts too short to go round both pulleys are left out. Raises InputError for an unknown profile, for a wanted
    centre that is not positive and when `small` exceeds `large`.
    """
    positive(wanted=wanted)
    away: list[tuple[float, Stock]] = []
    belts = stock(profile)
    with unrecorded():
        # The centre grows with the length: the nearest stand side by side around the length that the wanted one asks for.
        length = belt_length(centre=max(wanted, (large + small) / 2), large=large, small=small)
        place = bisect_left(belts, length, key=lambda belt: belt.length)
        for belt in belts[max(0, place - count) : place + count]:
            try:
                centre = centre_distance(length=belt.length, large=large, small=small)
            except InputError:
                continue
            away.append((abs(centre - wanted), belt))
    away.sort(key=lambda item: item[0])
    return tuple(sorted((belt for _, belt in away[:count]), key=lambda belt: belt.teeth))
