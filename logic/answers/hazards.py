"""What can happen: hazards of an answer, with their signal words in order."""

from logic.frozen import frozen


@frozen
class Hazard:
    """What can happen: a signal word, the key of its sentence, and numbers for it as (name, SI, quantity).

    The word is "" for a note without a signal.
    """

    word: str
    key: str
    numbers: tuple[tuple[str, float, str], ...] = ()


WORDS = ("DANGER", "WARNING", "CAUTION", "NOTICE", "")
"""Signal words, the worst first."""


def by_severity(hazards: list[Hazard]) -> tuple[Hazard, ...]:
    """Return hazards with the worst first; a screen shows the first one's word only."""
    return tuple(sorted(hazards, key=lambda hazard: WORDS.index(hazard.word)))
