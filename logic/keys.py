"""What a key or pasted text does to what is typed, before anything of it is read."""

from logic.units import LONGEST, MINUS

MARKS, MINUSES = ".,", f"{MINUS}-"


def key_refused(text: str, character: str, *, signed: bool) -> str:
    """Return why a key of our own pad is not taken after `text`: the reason's key, empty when it is taken.

    Only a tap is judged letter by letter. What comes from a keyboard or is pasted is taken whole, then read or refused.
    """
    if character in MARKS and any(mark in text for mark in MARKS):
        return "two marks"
    if character in MINUSES and (text or not signed):
        return "minus first" if signed else "no minus"
    return "too long" if len(text) >= LONGEST else ""


def pasted(text: str) -> str:
    r"""Return pasted text on one line: a break becomes a gap, so that two numbers never join.

    >>> pasted(" 1.5\r\n2 ")
    '1.5 2'
    """
    return " ".join(text.split())
