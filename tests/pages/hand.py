"""A hand that starts the app and touches only what is in sight: it counts taps, and digits among them, and never swipes."""

from screens import blocks as b
from screens.acts import Done, Place
from tests.pages.reader import Reader
from tests.pages.sight import in_sight

SMALL = (360.0, 640.0)


class Hand:
    """Counts every touch from the app's start on; `steps` says what was touched."""

    def __init__(self, pages: Reader, size: tuple[float, float] = SMALL) -> None:
        """Begin where the app opens."""
        self.pages, self.size = pages, size
        self.steps: list[str] = []
        pages.act(Place("ride"))

    @property
    def taps(self) -> int:
        """How often it touched, digits and Done too."""
        return len(self.steps)

    def tap(self, text: str) -> None:
        """Touch what is called so: a row, an option, a bar or an icon of the header."""
        page = self.pages.page
        bars = (*page.foot.beside, *((page.foot.main,) if page.foot.main else ()), *page.tools)
        if not any(text in bar.text for bar in bars):
            block = next(block for block in self.pages.blocks() if _called(block, text))
            seen = in_sight(page, *self.size) | ({block.key} if block is page.crown else set())
            assert block.key in seen, f"{text} is out of sight on {self.pages.name}: {sorted(seen)}"
        self.steps.append(text)
        self.pages.tap(text)

    def keys(self, text: str) -> None:
        """Touch the keypad, a key for each letter."""
        for letter in text:
            self.steps.append(letter)
            self.pages.type(letter)

    def done(self) -> None:
        """Close the keypad."""
        self.steps.append("Done")
        self.pages.act(Done())

    def told(self, job: str, bar: int) -> None:
        """Print what the job took and hold it to its bar."""
        print(f"{job}: {self.taps} taps, no swipe (bar {bar}): {', '.join(self.steps)}")  # noqa: T201  (shown, not only held)
        assert self.taps <= bar, self.steps


def _called(block: b.Block, text: str) -> bool:
    names = [getattr(block, "title", ""), getattr(block, "label", "")]
    names += [option.text for option in getattr(block, "options", ())]
    return any(text in name for name in names)
