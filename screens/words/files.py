"""What is said of files that come from outside."""

from logic.exchange.errors import Broken, Foreign, Later, TooDeep, TooLarge
from logic.store.errors import NoRight
from screens.tongue import _, texts
from screens.words.storage import sentence

SENTENCES: dict[type[Exception], str] = {
    TooLarge: _("This file is over 64 MB. Deckhand writes none as large. Nothing was changed."),
    TooDeep: _("This file holds lists within lists, too deep to be ours. Nothing was changed."),
    Broken: _("This file is cut short or damaged. Ask for it again. Nothing was changed."),
    Foreign: _("This is no file of Deckhand. Nothing was changed."),
    Later: _("A later Deckhand wrote this file. Update this app to open it. Nothing was changed."),
    NoRight: _("This file cannot be read. Look at its place and its name. Nothing was changed."),
}


def not_taken(problem: Exception) -> str:
    """Return why a file was not taken in."""
    return SENTENCES.get(type(problem)) or sentence(problem)


WHAT = texts("files")["what"]
"""What a thing is that cannot be read."""
