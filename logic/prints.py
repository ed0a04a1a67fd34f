"""What is printed on parts, read as it stands there: a belt's back, a pack's label, its volts."""

import re

from logic.errors import InputError
from logic.frozen import frozen
from logic.si import Metre, One
from logic.tables import matching, pick, rows

MILLIMETRE = 1e-3
NEAR = 1e-6
"""By how much a length in teeth may miss a whole number through rounding."""

_BELT = re.compile(r"(\d{2,4})[ -]([A-Z]*[35]M[A-Z]*)[ -](\d{1,2}(?:[.,]\d)?)")
_BELT_NAMED = re.compile(r"(HTD|GT)[ -]?(\d{2,4}[ -][35]M)(.*)")
_BELT_BEGUN = re.compile(r"(?:HTD|GT)?[ -]?\d{2,4}-.*")
_PACK = re.compile(r"(\d{1,2}) ?S(?: ?(\d{1,2}) ?P)?")
_MOTOR = re.compile(r"(?:(\d{2})(\d{2})[ -])?(\d{2,4}) ?KV")
_CAN = re.compile(r"(\d{2})(\d{2})")
_CAPACITY = re.compile(r"(.*?\S)[ ,-]*?(?<![\d.,])(\d{1,3}(?:[.,]\d{1,2})?) ?AH")
_VOLTS = re.compile(r"(\d{1,3})(?:[.,](\d{1,2}))? ?V(?:OLTS?)?")


@frozen
class BeltPrint:
    """A belt as its back says: profile, pitch length with its teeth, and width."""

    profile: str
    length: Metre
    teeth: int
    width: Metre


def teeth_of(length: Metre, profile: str) -> int:
    """Return how many teeth a belt of a pitch length has.

    Raises InputError ("no whole teeth") for a length that no whole number of pitches makes.

    >>> teeth_of(0.265, "HTD 5M")
    53
    """
    pitch: float = pick("belt_profiles", profile=profile).cells["pitch"]
    teeth = length / pitch
    if abs(teeth - round(teeth)) > NEAR:
        low = int(teeth) * pitch
        raise InputError(
            "drive.belt_teeth", length, "no whole teeth", low=low, high=low + pitch, quantity="length"
        )
    return round(teeth)


def belt_print(text: str) -> BeltPrint | None:
    """Return the belt of a print such as 280-5M-15; None for text that is no print of a belt.

    Raises InputError for a print that is not whole yet ("half a print"), of a profile the tables do not have ("unknown print")
    or of a length that is no whole number of teeth ("no whole teeth").

    >>> belt_print("280-5M-15")
    BeltPrint(profile='HTD 5M', length=0.28, teeth=56, width=0.015)
    """
    body = text.strip().upper()
    named = _BELT_NAMED.fullmatch(body)
    name, body = (named[1], f"{named[2]}{named[3]}") if named else ("", body)
    found = _BELT.fullmatch(body)
    if found is None:
        if _BELT_BEGUN.fullmatch(body):
            raise InputError("drive.belt_teeth", text, "half a print")
        return None
    length, mark, width = found.groups()
    row = next(matching("belt_prints", mark=f"{name}{mark}"), None)
    if row is None:
        raise InputError("drive.profile", text, "unknown print")
    metres = int(length) * MILLIMETRE
    profile = row.text("profile")
    return BeltPrint(profile, metres, teeth_of(metres, profile), float(width.replace(",", ".")) * MILLIMETRE)


def meant_in_millimetres(teeth: One, profile: str) -> int | None:
    """Return the teeth that a number has when it was meant as a length in mm; None where it was surely teeth.

    Asked only where that many teeth make a belt longer than small boards have.

    >>> meant_in_millimetres(265.0, "HTD 5M"), meant_in_millimetres(56.0, "HTD 5M")
    (53, None)
    """
    pitch = pick("belt_profiles", profile=profile).cells["pitch"]
    if teeth * pitch <= pick("belt_practice", name="longest usual belt").cells["length"]:
        return None
    try:
        return teeth_of(teeth * MILLIMETRE, profile)
    except InputError:
        return None


def pack_print(text: str) -> tuple[int, int | None] | None:
    """Return cells in series and in parallel of a print such as 10S2P or 10S; None for other text.

    >>> pack_print("10s2p"), pack_print("10S"), pack_print("36 V")
    ((10, 2), (10, None), None)
    """
    found = _PACK.fullmatch(text.strip().upper())
    if found is None:
        return None
    series, parallel = found.groups()
    return int(series), int(parallel) if parallel else None


def cells_of_volts(text: str, chemistry: str) -> int | None:
    """Return the cells in series of a pack with these volts on its label; None for text that is no volts.

    The volts may be the nominal ones or those of a full pack, to the digits that are typed. Raises InputError when
    no whole number of cells has them ("volts fit no cells"), or two numbers do ("volts fit two").

    >>> cells_of_volts("36 V", "NMC"), cells_of_volts("42V", "NMC"), cells_of_volts("48 V", "NMC")
    (10, 10, 13)
    """
    found = _VOLTS.fullmatch(text.strip().upper())
    if found is None:
        return None
    whole, decimals = found.groups()
    volts = float(f"{whole}.{decimals or '0'}")
    half_a_digit = 0.5 * 10.0 ** -len(decimals or "")
    row = next(row for row in rows("chemistry") if row.text("name") == chemistry)
    fitting: set[int] = {
        cells
        for volts_of_one in (row.cells["nominal_low"], row.cells["nominal_high"], row.cells["full"])
        for cells in (round(volts / volts_of_one),)
        if cells and abs(cells * volts_of_one - volts) <= half_a_digit + NEAR
    }
    if len(fitting) != 1:
        raise InputError(
            "pack.series",
            text,
            "volts fit two" if fitting else "volts fit no cells",
            low=min(fitting, default=None),
            high=max(fitting, default=None),
            quantity="count",
        )
    return fitting.pop()


@frozen
class MotorPrint:
    """A motor as its can says: diameter and length of the can, turns a minute for each volt; None for what is not there."""

    diameter: Metre | None
    length: Metre | None
    turns: int | None


def motor_print(text: str) -> MotorPrint | None:
    """Return the motor of a print such as 6374 170KV, 6374 or 170KV; None for other text.

    The first two of four digits are the can's diameter in mm, the last two its length (common practice, no source).

    >>> motor_print("6374 170KV")
    MotorPrint(diameter=0.063, length=0.074, turns=170)
    >>> motor_print("170 kv"), motor_print("170")
    (MotorPrint(diameter=None, length=None, turns=170), None)
    """
    body = text.strip().upper()
    found, can = _MOTOR.fullmatch(body), _CAN.fullmatch(body)
    if found is None and can is None:
        return None
    diameter, length, turns = found.groups() if found is not None else (*can.groups(), None)  # type: ignore[union-attr]
    return MotorPrint(
        None if diameter is None else int(diameter) * MILLIMETRE,
        None if length is None else int(length) * MILLIMETRE,
        None if turns is None else int(turns),
    )


def with_capacity(text: str) -> tuple[str, str]:
    """Return a pack's label without its amp-hours, and these; "" where it names none.

    >>> with_capacity("36 V 4 Ah"), with_capacity("10S2P 8.0Ah"), with_capacity("36V4Ah"), with_capacity("36 V")
    (('36 V', '4'), ('10S2P', '8.0'), ('36V', '4'), ('36 V', ''))
    """
    found = _CAPACITY.fullmatch(text.strip().upper())
    return (text.strip(), "") if found is None else (found[1], found[2])
