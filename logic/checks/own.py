"""Own lists: copies of ours that a person changes. Ours stay as they are and can be updated."""

from collections.abc import Mapping
from dataclasses import asdict, replace
from typing import Any

from logic.checks.lists import Checklist, Item, form, list_from
from logic.errors import InputError

PREFIX = "own/"
LONGEST = 80
"""Letters of an action or a state."""


def copy_of(of: Checklist, number: int, title: str = "") -> Checklist:
    """Return a list of one's own that begins as a copy; what counts for the original counts for it."""
    return replace(of, key=f"{PREFIX}{number}", title=title.strip() or f"{of.title}, own", version=1)


def with_item(of: Checklist, action: str, state: str, *, number: int) -> Checklist:
    """Return the list with one item more at its end.

    Raises InputError for empty or long words and for a full list.
    """
    most = form()["items"].most
    if len(of.items) >= most:
        raise InputError("items", len(of.items), "list full", high=most)
    item = Item(
        f"own_{number}",
        _words(action),
        _words(state),
        source="practice",
        where="own item",
        standing="practice",
    )
    return replace(of, items=(*of.items, item), version=of.version + 1)


def reworded(of: Checklist, key: str, action: str, state: str) -> Checklist:
    """Return the list with other words for one item; its hazard, its figures and whether it stops stay."""
    action, state = _words(action), _words(state)
    items = tuple(
        replace(item, action=action, state=state, spoken="") if item.key == key else item for item in of.items
    )
    return replace(of, items=items, version=of.version + 1)


def without(of: Checklist, key: str) -> Checklist:
    """Return the list without one item. A stop item can be reworded but not taken out: InputError."""
    if of.item(key).stop:
        raise InputError(key, key, "stop item")
    return replace(of, items=tuple(item for item in of.items if item.key != key), version=of.version + 1)


def moved(of: Checklist, key: str, by: int) -> Checklist:
    """Return the list with one item further up (-1) or down (+1); at an end it stays."""
    items = list(of.items)
    place = next(number for number, item in enumerate(items) if item.key == key)
    other = min(max(place + by, 0), len(items) - 1)
    items.insert(other, items.pop(place))
    return replace(of, items=tuple(items), version=of.version + 1)


def _words(text: str) -> str:
    text = " ".join(text.split())
    if not 1 <= len(text) <= LONGEST:
        raise InputError("words", text, "words length", 1, LONGEST)
    return text


def list_to_dict(of: Checklist) -> dict[str, Any]:
    """Return an own list as plain data."""
    body = asdict(of)
    body["item"] = [
        {name: list(value) if isinstance(value, tuple) else value for name, value in item.items() if value}
        for item in body.pop("items")
    ]
    return body


def list_from_dict(body: Mapping[str, Any]) -> Checklist:
    """Return an own list of plain data."""
    return list_from(body)
