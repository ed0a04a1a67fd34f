"""Typed text in, SI inside, shown text out. Pint made the table of factors; it never sees what a person typed."""

import math
import re
import tomllib
from functools import cache, lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from logic.errors import InputError, UnknownUnit
from logic.frozen import frozen
from logic.tongue import _

if TYPE_CHECKING:
    from pint import UnitRegistry

ASSETS = Path(__file__).resolve().parent.parent / "assets"

THIN_SPACE = "\u202f"
"""Between groups of three digits."""

GAP = "\u00a0"
"""Between a number and its unit; a line never breaks there."""

MINUS = "\u2212"
LONGEST = 24
"""Characters that a typed number may have; more is a slip of the hand, not a number."""


@frozen
class Unit:
    """One unit of a quantity: how it is shown and which words name it when typed."""

    shown: str
    pint: str
    words: tuple[str, ...]
    zero: float = 0.0
    """SI value at the unit's zero: only temperatures have one."""

    def to_si(self, number: float, si: str) -> float:
        """Return a number of this unit in SI."""
        return number * factor(self.pint, si) + self.zero

    def of_si(self, value: float, si: str) -> float:
        """Return an SI value as a number of this unit."""
        return (value - self.zero) / factor(self.pint, si)


@frozen
class Quantity:
    """A kind of number a person types or reads, with its units; the first listed for a system is shown first."""

    name: str
    si: str
    metric: str
    inch: str
    units: tuple[Unit, ...]

    def unit(self, shown: str) -> Unit:
        """Return the unit that is shown as `shown`. Raises InputError for one this quantity does not have."""
        for unit in self.units:
            if unit.shown == shown:
                return unit
        raise UnknownUnit(self.name, shown, "unknown unit", quantity=self.name)

    def home(self, system: str) -> Unit:
        """Return the unit shown first in a system, "metric" or "inch"."""
        return self.unit(self.inch if system == "inch" else self.metric)


@frozen
class Typed:
    """A number that was read: SI value, the unit it was typed in, and whether it deserves a read-back."""

    si: float
    unit: str
    read_back: bool = False


@frozen
class Shown:
    """A number as text and its unit, as it is chosen by; `said` is the unit in the language that is spoken."""

    number: str
    unit: str

    @property
    def said(self) -> str:
        """Return the unit as it is shown."""
        return _(self.unit)

    def __str__(self) -> str:
        """Return number and unit with a gap between them."""
        gap = "" if self.unit in ("°", "") else GAP
        return f"{self.number}{gap}{self.said}"


@cache
def quantities() -> dict[str, Quantity]:
    """Return every quantity by name, from assets/tables/units.toml."""
    with (ASSETS / "tables" / "units.toml").open("rb") as file:
        page: dict[str, Any] = tomllib.load(file)
    return {
        name: Quantity(
            name,
            entry["si"],
            entry["metric"],
            entry["inch"],
            tuple(
                Unit(unit["shown"], unit["pint"], tuple(unit["words"]), float(unit.get("zero", 0.0)))
                for unit in entry["units"]
            ),
        )
        for name, entry in page.items()
        if isinstance(entry, dict)
    }


@cache
def registry() -> "UnitRegistry[float]":
    """Return the Pint registry over our own definitions, made at first use."""
    import pint  # noqa: PLC0415  (0.15 s: kept off the path to the first screen)

    return pint.UnitRegistry(str(ASSETS / "units.txt"))


@cache
def factor(unit: str, si: str) -> float:
    """Return what one `unit` is in `si`. Both are Pint texts of our own data, never typed text.

    >>> factor("inch", "m")
    0.0254
    """
    known = _factors().get(f"{unit} in {si}")
    return known if known is not None else float(registry().Quantity(1.0, unit).to(si).magnitude)


@cache
def _factors() -> dict[str, float]:
    """Return the factors of the app's own units, so that nothing on the way to the first screen waits for Pint."""
    with (ASSETS / "factors.toml").open("rb") as file:
        found: dict[str, float] = tomllib.load(file)["factors"]
    return found


_NUMBER = re.compile(r"([+\-−]?)\s*(\d*)(?:([.,])(\d*))?")
_FRACTION = re.compile(r"(?:(\d+)[ \u00a0\u202f-])?(\d+)/(\d+)")


def read(text: str, quantity: str, unit: str | None = None) -> Typed:
    """Return the SI value of typed text. `unit` (as shown) is used when no unit word is typed.

    Point and comma are both decimal marks; a thousands mark is refused, and so is anything that could be meant
    in two ways. Raises InputError with the reason; the text is never altered.

    >>> read("3.8 in", "length").si
    0.09652
    >>> read("97mm", "length").si
    0.097
    >>> read("1,5", "length", "mm").si
    0.0015
    """
    kind = quantities()[quantity]
    body = text.strip().replace("\u00a0", " ").replace(THIN_SPACE, " ").replace("\u2009", " ")

    def refuse(reason: str, kind: type[InputError] = InputError) -> InputError:
        return kind(quantity, text, reason, quantity=quantity)

    if not body:
        raise refuse("empty")
    if len(body) > LONGEST:
        raise refuse("too long")
    if any(
        character.isnumeric() and not "0" <= character <= "9" and character not in "²³" for character in body
    ):
        raise refuse("digits")
    fraction = _FRACTION.match(body)
    if fraction and body[fraction.end() : fraction.end() + 1] not in (".", ",", "/"):
        return _fraction(fraction, body[fraction.end() :].strip(), kind, unit, refuse)
    match = _NUMBER.match(body)
    assert match is not None  # noqa: S101  (every part of the pattern is optional)
    sign, whole, mark, decimals = match.groups()
    rest = body[match.end() :]
    word = rest.strip()
    # A unit may itself begin with a digit, as 1/min does; a gap stands before it.
    if not (rest[:1] == " " and word in _words(kind)):
        _refuse_malformed(whole, mark, decimals, rest, refuse)
    chosen = (
        _unit(word, kind, refuse) if word else kind.unit(unit) if unit is not None else kind.home("metric")
    )
    number = float(f"{whole or '0'}.{decimals or '0'}")
    signed = -number if sign in ("-", MINUS) else number
    # A comma before exactly three digits could be a thousands mark elsewhere: it is read as a decimal and read back.
    read_back = mark == "," and len(decimals or "") == 3 and whole not in ("", "0")  # noqa: PLR2004
    return Typed(chosen.to_si(signed, kind.si), chosen.shown, read_back)


def _refuse_malformed(whole: str, mark: str | None, decimals: str | None, rest: str, refuse: Any) -> None:  # noqa: ANN401
    if not whole and not decimals:
        raise refuse("no number")
    if rest[:1] in (".", ","):
        raise refuse("two marks" if rest[0] == mark else "ambiguous")
    tail = rest.lstrip()
    if tail[:1].isdigit() or (tail[:1] in (".", ",") and tail[1:2].isdigit()):
        raise refuse("spaces")
    if re.match(r"[eE][+\-]?\d", tail) or "*" in tail or "^" in tail:
        raise refuse("not a plain number")


def _fraction(match: re.Match[str], word: str, kind: Quantity, unit: str | None, refuse: Any) -> Typed:  # noqa: ANN401
    whole, top, bottom = (int(part) if part else 0 for part in match.groups())
    chosen = (
        _unit(word, kind, refuse) if word else kind.unit(unit) if unit is not None else kind.home("metric")
    )
    if chosen.shown != "in":
        raise refuse("fraction")
    if bottom == 0:
        raise refuse("fraction of zero")
    return Typed((whole + top / bottom) * factor(chosen.pint, kind.si), chosen.shown)


def _words(kind: Quantity) -> set[str]:
    return {word for unit in kind.units for word in (unit.shown, *unit.words)}


_MILLI = re.compile("m[ΩVAWsH]")


def _unit(word: str, kind: Quantity, refuse: Any) -> Unit:  # noqa: ANN401
    exact = [unit for unit in kind.units if word in (unit.shown, *unit.words)]
    if exact:
        return exact[0]
    folded = word.casefold()
    loose = [
        unit for unit in kind.units if folded in {known.casefold() for known in (unit.shown, *unit.words)}
    ]
    if len(loose) != 1:
        raise refuse("unknown unit", UnknownUnit)
    # A capital M is a million, a small one a thousandth (SI brochure, table 7).
    if word[0] == "M" and _MILLI.match(loose[0].shown):
        raise refuse("a million")
    return loose[0]


def show(si: float, quantity: str, system: str = "metric", *, mark: str = ".", digits: int = 3) -> Shown:
    r"""Return an SI value as text in the unit a system shows first, rounded to `digits` significant figures.

    >>> str(show(0.0652, "length"))
    '65.2\xa0mm'
    >>> str(show(12.34, "speed"))
    '44.4\xa0km/h'
    """
    return show_in(si, quantity, quantities()[quantity].home(system).shown, mark=mark, digits=digits)


def show_in(si: float, quantity: str, unit: str, *, mark: str = ".", digits: int = 3) -> Shown:
    """Return an SI value as text in a unit of the quantity, rounded to `digits` significant figures."""
    return _written(float(si), quantity, unit, mark, digits)


@lru_cache(2_000)
def _written(si: float, quantity: str, unit: str, mark: str, digits: int) -> Shown:
    """Write a number: at a key most of a page's numbers are those of the key before."""
    kind = quantities()[quantity]
    chosen = kind.unit(unit)
    return Shown(number_text(chosen.of_si(si, kind.si), mark=mark, digits=digits), chosen.shown)


def places(number: float, digits: int = 3) -> int:
    """Return to how many decimals a number is rounded that is shown with significant figures; below 0: to tens.

    >>> places(39.95), places(12345.6)
    (1, -2)
    """
    return digits - 1 - math.floor(math.log10(abs(number))) if number else 0


def significant(number: float, digits: int = 3) -> float:
    """Return a number rounded to significant figures, as it is shown.

    >>> significant(12345.6), significant(39.95, 3)
    (12300.0, 40.0)
    """
    return round(number, places(number, digits))


def number_text(number: float, *, mark: str = ".", digits: int = 3) -> str:
    r"""Return a number rounded to significant figures: no trailing zeros, groups of three from 10 000.

    >>> number_text(-0.04567)
    '−0.0457'
    >>> number_text(12345.6)
    '12\u202f300'
    """
    if not math.isfinite(number):
        raise ValueError("only finite numbers are shown")
    rounded = significant(number, digits)
    text = f"{abs(rounded):.{max(places(number, digits), 0)}f}"
    whole, _, decimals = text.partition(".")
    decimals = decimals.rstrip("0")
    if len(whole) > 4:  # noqa: PLR2004  (four digits read well without a gap)
        whole = f"{int(whole):,}".replace(",", THIN_SPACE)
    sign = MINUS if rounded < 0.0 else ""
    return f"{sign}{whole}{mark}{decimals}" if decimals else f"{sign}{whole}"
