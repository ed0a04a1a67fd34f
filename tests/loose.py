"""What of a working comes from nowhere: numbers that nobody put in and no formula made."""

from typing import Any

from logic.answers.reading import Item, Open
from logic.workings import BARE, Call, Given, Traced, given


def loose_ends(item: Item) -> list[str]:
    """Return the numbers of a result's working that come from nowhere, by the formula that took them."""
    if isinstance(item, Open):
        return []
    return [
        f"{item.name}: {name} = {number!r} of {call.formula.name} ({call.formula.text})"
        for call in item.working
        if isinstance(call, Call)
        for name, number in call.arguments.items()
        if not isinstance(number, Traced)
        or (isinstance(number.origin, Given) and number.origin.known == BARE)
    ]


def put_in(name: str, value: float, unit: str = "1", **more: Any) -> float:
    """Return a number as a board gives it: traced while recording is on."""
    return given(Given(name, value, unit, **more))
