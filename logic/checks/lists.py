"""What is checked and in which order: lists as data with their sources, fitted to a board."""

import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import fields, replace
from functools import cache
from typing import Any, TypeAlias

from logic.errors import InputError
from logic.frozen import frozen
from logic.tables import ASSETS
from logic.tongue import said
from logic.units import GAP

FOLDER = ASSETS / "checklists"
NOT_LISTS = ("form", "faults")
"""Files of the folder that hold something else."""

BUILD = "build"
SHORT_NAME = 3
"""Words of the name of an item."""

UNITS = ("mm", "km/h", "km", "kg", "N·m", "N", "Wh", "V", "A", "%", "°C", "s", "min")
"""Units in the texts of the lists."""

Lookup: TypeAlias = Callable[[str], float | str | None]
"""Gives the SI value or the option of a board's field, None while it is not set."""


@frozen
class Item:
    """One thing to do or to look at.

    `state` is what good looks like and the words of the button that says so. `word` and `hazard` belong to
    the moment it is not right, `care_word` and `care` to the moment before the act. `ask` is "volts" or
    "choice" when a value is wanted; `figures` names results and board values to show with it. `opens` is a
    page, or "list:" and a checklist. `stop_signs` are those of `signs` that end the ride on an item that is
    no stop item as a whole; `word` and `hazard` belong to them then. `fixes` are what to do about each of `signs`, in
    their order, "" where it is `fix`.
    """

    key: str
    action: str
    state: str
    how: str = ""
    why: str = ""
    fix: str = ""
    stop: bool = False
    spoken: str = ""
    word: str = ""
    hazard: str = ""
    care_word: str = ""
    care: str = ""
    tool: str = ""
    joint: str = ""
    belt: bool = False
    opens: str = ""
    ask: str = ""
    options: tuple[str, ...] = ()
    figures: tuple[str, ...] = ()
    picture: str = ""
    signs: tuple[str, ...] = ()
    stop_signs: tuple[str, ...] = ()
    fixes: tuple[str, ...] = ()
    when: tuple[str, ...] = ()
    source: str = ""
    where: str = ""
    standing: str = ""

    @property
    def name(self) -> str:
        """Return what the item is about in a word or two, its action where nothing shorter is known.

        >>> Item("a", "Grip each wheel", "Tight", spoken="Wheels. Tight.").name
        'Wheels'
        """
        first, dot, _ = self.spoken.partition(".")
        return first if dot and len(first.split()) <= SHORT_NAME else self.action

    def stops(self, sign: str = "") -> bool:
        """Tell whether an item that is not right ends the list: a stop item, or one with a stop sign."""
        return self.stop or sign in self.stop_signs

    def remedy(self, sign: str = "") -> str:
        """Return what to do about a sign; about the item as a whole where the sign has no words of its own.

        >>> item = Item("a", "Read the volts", "Enough", fix="Charge.", signs=("Low", "Will not read"), fixes=("", "Link it."))
        >>> item.remedy("Low"), item.remedy("Will not read")
        ('Charge.', 'Link it.')
        """
        return dict(zip(self.signs, self.fixes, strict=False)).get(sign) or self.fix


@frozen
class Checklist:
    """A list between two pauses. `base` is the list of ours that an own list began as, else its own key.

    What is found wrong on a list that `keeps_faults` stays open on Ride until it is found right.
    """

    key: str
    title: str
    short: str
    kind: str
    place: str
    version: int
    seconds: int
    pause: str
    halt: str
    halted: str
    items: tuple[Item, ...]
    lapses: bool = False
    keeps_faults: bool = False
    next: str = ""
    base: str = ""
    source: str = ""
    where: str = ""
    standing: str = ""

    def item(self, key: str) -> Item:
        """Return an item by its key. Raises InputError when the list has none."""
        for item in self.items:
            if item.key == key:
                return item
        raise InputError("item", key, "not in the list")


_ITEM_FIELDS = {item.name for item in fields(Item)}
_LIST_FIELDS = {item.name for item in fields(Checklist)}


def item_from(line: Mapping[str, Any], page: Mapping[str, Any] | None = None) -> Item:
    """Return an item of plain data; its source is the list's where it names none."""
    body = dict(line)
    body["standing"] = body.pop("item_standing", body.get("standing", ""))
    for name in ("source", "where", "standing"):
        body[name] = body.get(name) or (page or {}).get(name, "")
    for name in ("options", "figures", "signs", "stop_signs", "fixes", "when"):
        body[name] = tuple(body.get(name, ()))
    unknown = set(body) - _ITEM_FIELDS
    if unknown:
        raise InputError("item", sorted(unknown), "unknown field")
    return Item(**body)


def list_from(page: Mapping[str, Any], outer: Mapping[str, Any] | None = None) -> Checklist:
    """Return a checklist of plain data."""
    body = {**{name: (outer or {}).get(name, "") for name in ("source", "where", "standing")}, **page}
    items = tuple(item_from(line, body) for line in body.pop("item", ()))
    body["base"] = body.get("base") or body["key"]
    unknown = set(body) - _LIST_FIELDS
    if unknown:
        raise InputError("list", sorted(unknown), "unknown field")
    return Checklist(**body, items=items)


@cache
def _page(stem: str) -> dict[str, Any]:
    with (FOLDER / f"{stem}.toml").open("rb") as file:
        found: dict[str, Any] = glued(said("checklists", tomllib.load(file)))
    return found


def _pages() -> dict[str, Any]:
    return {
        path.stem: _page(path.stem) for path in sorted(FOLDER.glob("*.toml")) if path.stem not in NOT_LISTS
    }


@cache
def _lists(stem: str) -> dict[str, Checklist]:
    """Return the lists of a file by their keys."""
    page = _page(stem)
    lists = [list_from(line, page) for line in page["list"]] if "list" in page else [list_from(page)]
    return {made.key: made for made in lists}


_PARTED = re.compile(rf"(?<=\d) (?=(?:{'|'.join(map(re.escape, UNITS))})(?!\w))")


def glued(page: Any) -> Any:  # noqa: ANN401  (plain data of any shape)
    r"""Return plain data with no number of its texts parted from its unit at the end of a line.

    >>> glued({"how": ["about 0.3 mm across"]})
    {'how': ['about 0.3\xa0mm across']}
    """
    if isinstance(page, str):
        return _PARTED.sub(GAP, page)
    if isinstance(page, dict):
        return {key: glued(value) for key, value in page.items()}
    return [glued(value) for value in page] if isinstance(page, list) else page


@cache
def checklists() -> dict[str, Checklist]:
    """Return every list of ours by its key."""
    return {key: made for stem in _pages() for key, made in _lists(stem).items()}


def checklist(key: str) -> Checklist:
    """Return a list of ours. Raises InputError when there is none of that name.

    >>> checklist("before_ride").title
    'Before a ride'
    """
    # A list with a file of its own is read alone: the first page shows one.
    if key not in NOT_LISTS and (FOLDER / f"{key}.toml").is_file() and key in _lists(key):
        return _lists(key)[key]
    if key not in checklists():
        raise InputError("list", key, "unknown list")
    return checklists()[key]


def build_stages() -> tuple[str, ...]:
    """Return the keys of the build's stages in their order, first power among them.

    >>> build_stages()[0]
    'build.layout'
    """
    return tuple(_page(BUILD)["stages"])


@frozen
class Rule:
    """What research or the house asks of every list: a count or a time, and where that is said."""

    key: str
    text: str
    source: str
    where: str
    standing: str
    least: int = 0
    most: int = 0


@cache
def form() -> dict[str, Rule]:
    """Return the rules that every list of ours keeps to.

    >>> form()["items"].most
    9
    """
    with (FOLDER / "form.toml").open("rb") as file:
        return {line["key"]: Rule(**line) for line in said("checklists", tomllib.load(file))["rule"]}


def applies(item: Item, value_of: Lookup) -> bool:
    """Tell whether an item has a meaning on a board. What the board does not say yet is asked all the same.

    >>> one = Item("a", "Compare", "alike", when=("drive.motors is 2",))
    >>> applies(one, lambda key: "1"), applies(one, lambda key: "2"), applies(one, lambda key: None)
    (False, True, True)
    """
    return all(_holds(condition, value_of) for condition in item.when)


def _holds(condition: str, value_of: Lookup) -> bool:
    key, relation, wanted = condition.split(" ", 2)
    value = value_of(key)
    if value is None:
        return True
    if relation == "over":
        return float(value) > float(wanted)
    return str(value) == wanted


def fitted(of: Checklist, value_of: Lookup) -> Checklist:
    """Return the list with the items that apply to a board."""
    return replace(of, items=tuple(item for item in of.items if applies(item, value_of)))
