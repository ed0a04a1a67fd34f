"""The pages in a made-up language: what passed through `_` is two fifths longer and has marked vowels.

Run in a process of its own (`python -m tests.pages.made_up`), as sentences that stand in a module are said when it is loaded.
Prints a line for each fault of the layout, then how many texts were said in the language and how many there were.
"""

import re
import sys
from gettext import NullTranslations

LONGER = 0.4
MARKED = str.maketrans("aeiouyAEIOUY", "áéíóúýÁÉÍÓÚÝ")
MORE = " ẋẋẋẋẋ"
SIGNS = set("áéíóúýÁÉÍÓÚÝẋ")
SIZE = (360, 640, 1.3)


class MadeUp(NullTranslations):
    """A language that keeps what is put in by name, and marks and lengthens the rest."""

    def gettext(self, message: str) -> str:
        """Return a sentence in it.

        >>> MadeUp().gettext("Gear ratio {number}")
        'Géár rátíó {number} ẋẋẋ'
        """
        parts = re.split(r"(\{[^}]*\})", message)
        marked = "".join(part if part.startswith("{") else part.translate(MARKED) for part in parts)
        longer = round(len("".join(part for part in parts if not part.startswith("{"))) * LONGER)
        return marked + (MORE * (longer // len(MORE) + 1))[:longer].rstrip()


def main() -> None:
    """Say every page in it, in every state, and lay it out."""
    from screens import tongue  # noqa: PLC0415  (before any module that has a sentence)

    tongue.take(MadeUp())
    from screens.paper.sheet import Ink  # noqa: PLC0415  (after it)
    from tests.pages.states import names, states  # noqa: PLC0415
    from tests.pages.test_layout import faults, laids  # noqa: PLC0415

    marked, texts = 0, 0
    for name in names():
        for what, page in states(name):
            for part, laid in laids(page, *SIZE):
                said = [mark.text for mark in laid.marks if isinstance(mark, Ink) and mark.text]
                texts += len(said)
                marked += sum(bool(set(text) & SIGNS) for text in said)
                for fault in faults(laid):
                    sys.stdout.write(f"{what} {part}: {fault}\n")
    sys.stdout.write(f"{marked} of {texts}\n")


if __name__ == "__main__":
    main()
