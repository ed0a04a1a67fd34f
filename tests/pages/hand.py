"""A hand that starts the app and touches only what is in sight: it counts taps, digits and values, and never swipes."""

from screens import blocks as b
from screens.acts import Place
from screens.acts.entering import Done
from tests.pages.reader import Reader
from tests.pages.sight import in_sight

SMALL = (360.0, 640.0)


class Hand:
    """Counts every touch from the app's start on; `steps` says what was touched, each value as one step."""

    def __init__(self, pages: Reader, size: tuple[float, float] = SMALL) -> None:
        """Begin where the app opens."""
        self.pages, self.size = pages, size
        self.steps: list[str] = []
        self.digits = self.values = 0
        pages.act(Place("ride"))

    @property
    def taps(self) -> int:
        """How often it touched, beside digits."""
        return len(self.steps) - self.values

    def place(self, name: str) -> None:
        """Touch one of the four places."""
        assert self.pages.page.places, f"{self.pages.name} shows no places"
        self.steps.append(name)
        self.pages.act(Place(name))

    def tap(self, text: str) -> None:
        """Touch what is called so: a row, an option, a bar or an icon of the header."""
        page = self.pages.page
        bars = (*page.foot.bars, *page.tools)
        if not any(text in bar.text for bar in bars):
            block = next(block for block in self.pages.blocks() if _called(block, text))
            seen = in_sight(page, *self.size) | ({block.key} if block is page.crown else set())
            assert block.key in seen, f"{text} is out of sight on {self.pages.name}: {sorted(seen)}"
        self.steps.append(text)
        self.pages.tap(text)

    def keys(self, text: str) -> None:
        """Type a value on the keypad, a key for each letter."""
        self.steps.append(text)
        self.values += 1
        self.digits += len(text)
        self.pages.type(text)

    def option(self, text: str) -> None:
        """Touch an option of what is being entered: a value, and a tap."""
        entry = self.pages.page.foot.entry
        assert entry is not None
        assert text in [one.label for one in entry.field.options]
        self.steps.append(text)
        self.pages.tap(text)

    def fill(self, *values: str) -> None:
        """Type one value after the other as they are asked for."""
        for number, text in enumerate(values, start=1):
            self.keys(text)
            if number < len(values):
                self.tap("Next")
        self.done()

    def done(self) -> None:
        """Close the keypad."""
        self.steps.append("Done")
        self.pages.act(Done())

    def told(self, job: str, *, taps: int, values: int = 0) -> None:
        """Print what the job took, as a row of a table, and hold it to its bars: taps beside digits, and values."""
        said = f"{self.taps:2} of {taps:2} taps, {self.values} of {values} values of {self.digits:2} digits, no swipe"
        size = f"{self.size[0]:.0f}x{self.size[1]:.0f}"
        print(f"| {job:44} | {size} | {said} | {', '.join(self.steps)}")  # noqa: T201  (shown, not only held)
        assert self.taps <= taps, self.steps
        assert self.values <= values, self.steps


def _called(block: b.Block, text: str) -> bool:
    names = [getattr(block, "title", ""), getattr(block, "label", "")]
    names += [option.text for option in getattr(block, "options", ())]
    return any(text in name for name in names)
