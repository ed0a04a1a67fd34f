"""The verdict of a recorded tension as a block."""

from logic.answers.tension_entry import word_of
from logic.store import Record
from screens.blocks import PLAIN, RIGHT, UNSURE, WRONG
from screens.words.tension import TONES

FORMS = {"good": RIGHT, "bad": WRONG, "text": UNSURE}
"""Form of a verdict by the tone of its word."""


def form_of(word: str) -> str:
    """Return how a word is drawn; that of no verdict is quiet."""
    return FORMS[TONES.get(word, "text")] if word else PLAIN


def worst(records: list[Record]) -> Record:
    """Return the reading that asks for most: a belt to set anew, else one that is on the edge."""
    order = (WRONG, UNSURE, PLAIN, RIGHT)
    return min(records, key=lambda record: order.index(form_of(word_of(record.body))))
