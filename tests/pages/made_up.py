"""The pages in a made-up language: what passed through `_` is two fifths longer and has marked vowels.

Run in a process of its own (`python -m tests.pages.made_up`), as sentences that stand in a module are said when it is loaded.
Prints a line for each fault of the layout, each text with a word that is in no language, and each that no translator is given.
"""

import json
import re
import sys
import tempfile
from collections.abc import Iterator
from gettext import NullTranslations
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from screens.page import Page

LONGER = 0.4
MARKED = str.maketrans("aeiouyAEIOUY", "áéíóúýÁÉÍÓÚÝ")
MORE = " ẋẋẋẋẋ"
SIGNS = set("áéíóúýÁÉÍÓÚÝẋ")
SIZE = (360, 640, 1.3)
PRINTED = ("settings.licences", "settings.sources", "settings.source")
"""Pages of what others wrote: texts of licences, titles and places of what is printed."""
NAMES = frozenset(["Deckhand", "Towpath", "Ferry", "Weir", "Lock", "keeper", "Scratch", "board"])
"""Names that stand in the file of the data: of the app and of boards."""
GIVEN = frozenset(
    (
        *("1024.5", "pluck.wav", "ValueError: a fault"),
        *("Left belt", "Pull 1 mm aside", "Aim at 99 N", "Check after water", "Look at the joints"),
    )
)
"""What the tests put in: as it is typed, or in the parameters of a page."""
PLACES = re.compile(r"(?:p\. [\w.-]+|Tip sheets|Handbook of|Technical Manual|ICAO|IATA).*", re.DOTALL)
"""Titles of what is printed and places in it: they are looked for as they are."""
WORD = re.compile(r"[^\W\d_]+")


class MadeUp(NullTranslations):
    """A language that keeps what is put in by name, and marks and lengthens the rest; `asked` is all it was asked for."""

    def __init__(self) -> None:
        """Begin before anything is said."""
        super().__init__()
        self.asked: set[str] = set()

    def gettext(self, message: str) -> str:
        """Return a sentence in it.

        >>> MadeUp().gettext("Gear ratio {number}")
        'Géár rátíó {number} ẋẋẋ'
        """
        self.asked.add(message)
        parts = re.split(r"(\{[^}]*\})", message)
        marked = "".join(part if part.startswith("{") else part.translate(MARKED) for part in parts)
        longer = round(len("".join(part for part in parts if not part.startswith("{"))) * LONGER)
        return marked + (MORE * (longer // len(MORE) + 1))[:longer].rstrip()


def symbols() -> frozenset[str]:
    """Return the letters of units, which are the same in every language."""
    from logic.units import quantities  # noqa: PLC0415  (after the language is taken)

    shown = (unit.shown for kind in quantities().values() for unit in kind.units)
    return frozenset(
        word for text in shown if text not in ("teeth", "per inch") for word in WORD.findall(text)
    )


KEPT = (
    "note",
    "by",
    "reason",
    "name",
    "title",
    "fit_why",
    "faults",
    "notes",
    "stopped_by",
    "halted",
    "put_off",
)
"""What of a log entry is in words as they were said, or typed, when it was written."""


def logged(folder: Path) -> Iterator[tuple[str, "Page"]]:
    """Yield the pages that show a log with an entry of each kind, and each entry."""
    from logic.log import read  # noqa: PLC0415  (after the language is taken)
    from screens.acts import Go, Place  # noqa: PLC0415
    from tests.logic.test_log import WRITTEN  # noqa: PLC0415
    from tests.pages.reader import Reader  # noqa: PLC0415

    reader = Reader(folder)
    for kind, body in WRITTEN.items():
        reader.store.append(reader.world.saved.id, read(kind, 1, body))
    reader.restart()
    ways = [Go(name, {}) for name in ("ride.lists", "log", "log.tension", "numbers.rides", "ride.tension")]
    ways += [Go("log.entry", {"number": number + 1}) for number in range(len(WRITTEN))]
    for way in (Place("ride"), *ways, Go("bench.joint", {"joint": "motor_face"})):
        reader.act(way)
        yield f"a log, {reader.name} {reader.world.args}", reader.page
    reader.close()


def kept() -> frozenset[str]:
    """Return the words that stand in those entries."""
    from tests.logic.test_log import WRITTEN  # noqa: PLC0415  (after the language is taken)

    told = [value for body in WRITTEN.values() for key, value in json.loads(body).items() if key in KEPT]
    return frozenset(WORD.findall(f"{told} {str(told).lower()}"))


def unsaid(text: str, symbols: frozenset[str]) -> list[str]:
    """Return the words of a text that were not said in the language.

    A word of up to four capitals is a designation, as UNC or NMC; one without a vowel cannot be told.

    >>> unsaid("Géár ratio of 2.5 mm, M4 UNC", frozenset({"mm"}))
    ['ratio', 'of']
    """
    for given in GIVEN:
        text = text.replace(given, "")
    return [
        word
        for word in WORD.findall(PLACES.sub("", text))
        if len(word) > 1
        and re.search("[aeiouyAEIOUY]", word)
        and word not in NAMES | symbols
        and not (word.isupper() and len(word) <= 4)
    ]


def shown() -> Iterator[tuple[str, list[str], list[str]]]:
    """Yield each state of each page with its texts, also those that are only read aloud, and its faults of layout."""
    from screens.paper.sheet import Drawing, Ink  # noqa: PLC0415  (after the language is taken)
    from tests.pages.states import names, states  # noqa: PLC0415
    from tests.pages.test_layout import faults, laids  # noqa: PLC0415

    with tempfile.TemporaryDirectory() as folder:
        pages = [(name, *state) for name in names() for state in states(name)]
        pages += [("log", *state) for state in logged(Path(folder))]
    for name, what, page in pages:
        for part, laid in laids(page, *SIZE):
            texts = [mark.text for mark in laid.marks if isinstance(mark, Ink)]
            drawn = (mark.picture for mark in laid.marks if isinstance(mark, Drawing))
            texts += [getattr(stroke, "text", "") for one in drawn for stroke in one.strokes]
            texts += [laid.said, *(touch.name for touch in laid.touches)]
            yield f"{what} {part}", [] if name in PRINTED else texts, list(faults(laid))


def main() -> None:
    """Say every page in it, in every state, and lay it out."""
    from logic import tongue  # noqa: PLC0415  (before any module that has a sentence)

    language = MadeUp()
    tongue.take(language)
    units, found = symbols() | kept(), set()
    for what, texts, faults in shown():
        found |= {f"{what}: {fault}" for fault in faults}
        found |= {f"not said: {text!r} ({what})" for text in texts if unsaid(text, units)}
    from tests.messages import messages  # noqa: PLC0415  (as above)

    found |= {f"no translator is given: {text!r}" for text in language.asked - set(messages())}
    sys.stdout.write("\n".join(sorted(found)))


if __name__ == "__main__":
    main()
