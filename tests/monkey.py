"""Somebody who touches anything, types anything and goes anywhere, with the app closed in between: nothing may fail.

Each step is told, so that a fault can be played again: the same seed does the same.
"""

from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from random import Random

from logic.errors import InputError
from logic.person import SYSTEMS, TEXT_SCALES, THEMES
from screens import blocks as b
from screens.acts import Act, Back, Dismiss, Go, Place, Undo
from screens.acts.entering import Done, Type, Write
from screens.acts.keeping import Settle
from screens.page import Page
from tests.pages.reader import Reader
from tests.pages.states import examples, names

PLACES = ("ride", "bench", "numbers", "log", "board", "settings")
TEXTS = (
    "1",
    "3",
    "15",
    "36",
    "0",
    "-4",
    "1.5",
    "1,5",
    "1.234,5",
    "9" * 30,
    "12 mm",
    "5 Mohm",
    "x",
    "",
    " ",
    "½",
    "10S2P",
)
NOTES = ("", "oil on the belt", "=1+1", "a" * 10_000, "é\n\t\u2028", "'; DROP TABLE log; --")
MOST_BACK = 10
"""Steps back, beyond those that led here, after which a page is a trap."""


class Monkey:
    """One of them, with an app of its own. `folder` holds its data; `seed` is all there is to it."""

    def __init__(self, folder: Path, seed: int, *, demo: bool) -> None:
        """Open the app."""
        self.dice = Random(seed)
        self.reader = Reader(folder, demo=demo)
        self.did: list[str] = []
        self.seen: Counter[str] = Counter()

    def steps(self, count: int) -> None:
        """Do so many things; raises what failed, with the last things done in its notes."""
        try:
            for _ in range(count):
                self.step()
        except Exception as problem:
            problem.add_note("\n".join(self.did[-12:]))
            raise

    def step(self) -> None:
        """Do one thing and read the page that comes of it."""
        chance = self.dice.random()
        reader = self.reader
        if chance < 0.01:
            # Only to pages that need no parameters: others rest on the page they were opened from.
            self._act("jump", Go(self.dice.choice([name for name in names() if examples(name) == ({},)]), {}))
        elif chance < 0.06:
            self._act("back", Back())
        elif chance < 0.09:
            self._act("place", Place(self.dice.choice(PLACES)))
        elif chance < 0.11:
            self._act("undo", self.dice.choice([Undo(), Dismiss(), Done()]))
        elif chance < 0.12:
            self._act("settings", Settle(self._settings()))
        elif chance < 0.13:
            self._restart()
        elif chance < 0.14:
            self._home()
        else:
            self._touch(reader.page)
        self._read(reader.page)

    def _read(self, page: Page) -> None:
        self.seen[self.reader.name] += 1
        assert page.title, self.reader.name
        for block in self.reader.blocks():
            block.said()

    def _touch(self, page: Page) -> None:
        entry = page.foot.entry
        if entry is not None and entry.field.kind != "choice" and self.dice.random() < 0.5:
            text = self.dice.choice(TEXTS)
            for end in range(1, len(text) + 1):
                self._act(
                    f"type {text[:end]!r}", Type(entry.key, entry.field, text[:end], entry.unit, entry.keeps)
                )
                entry = self.reader.page.foot.entry
                if entry is None:
                    return
            return
        fields = [block for block in page.blocks if isinstance(block, b.Field)]
        if fields and self.dice.random() < 0.2:
            self._act("write", Write(self.dice.choice(fields).key, self.dice.choice(NOTES)))
            return
        parts = [(name, act) for name, act in self.reader.parts() if act is not None]
        if parts:
            self._act(*self.dice.choice(parts))

    def _act(self, name: str, act: Act) -> None:
        self.did.append(f"{self.reader.name}: {name}: {act!r}"[:300])
        try:
            self.reader.act(act)
        except InputError:
            # Told under the entry by the paper; nothing has changed.
            self.did[-1] += " (refused)"

    def _settings(self) -> dict[str, object]:
        return {
            "system": self.dice.choice(SYSTEMS),
            "mark": self.dice.choice(".,"),
            "theme": self.dice.choice(THEMES),
            "text": self.dice.choice(TEXT_SCALES),
        }

    def _restart(self) -> None:
        self.did.append("restart")
        self.reader.restart(minutes=self.dice.choice([0, 1, 40, 60 * 30, 60 * 24 * 40, -60 * 24 * 3]))

    def _home(self) -> None:
        """Go back until there is no further back: no page may hold one."""
        for _ in range(len(self.reader.world.trail) + MOST_BACK):
            before = (self.reader.world.trail, self.reader.world.asking)
            self.reader.back()
            if before == (self.reader.world.trail, self.reader.world.asking):
                return
        raise AssertionError(f"no way back from {before[0]}")


def monkeys(folder: Path, seeds: range, steps: int) -> Iterator[Monkey]:
    """Yield one after the other when it has done its steps: half begin with nothing, half with the example boards."""
    for seed in seeds:
        monkey = Monkey(folder / str(seed), seed, demo=seed % 2 == 1)
        monkey.steps(steps)
        monkey.reader.close()
        yield monkey


def pages_seen(found: Iterator[Monkey]) -> Counter[str]:
    """Return how often each page was read."""
    return sum((monkey.seen for monkey in found), Counter())
