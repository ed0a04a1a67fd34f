"""Somebody who lays hands on the whole app: touches, drags, keys, other sizes and themes, away and back, killed in between.

Each step is told and follows from the seed, so that a fault can be played again.
"""

from collections import Counter
from pathlib import Path
from random import Random
from typing import Any

from logic.person import TEXT_SCALES, THEMES
from screens.acts.keeping import Settle
from screens.driver.finger import Finger
from tests.screens.session import Session

SIZES = ((320, 496), (320, 568), (412, 915), (568, 320), (915, 412), (800, 1280), (1280, 800), (1, 1))
KEYS = (27, 9, 13, 8, 32, 273, 274, 275, 276, 278, 279, 280, 281, 127)
"""Kivy's codes: back, tab, enter, rub out, space, arrows, home, end, page up and down, delete."""
TYPED = ("1", "7", "36", "0.5", "-", "1,5", "é", "x" * 40, "1e9", " ")
AWAY = (0, 1, 29, 31, 60 * 26, -60 * 3)
"""Minutes for which the app is closed; the clock may have been set back."""


class Hands:
    """One person with the app on real touches. `folder` holds the data; `seed` is all there is to it."""

    def __init__(self, folder: Path, seed: int, *, demo: bool) -> None:
        """Start the app."""
        self.dice = Random(seed)
        self.app = Session(folder, demo=demo)
        self.did: list[str] = []
        self.seen: Counter[str] = Counter()

    def steps(self, count: int) -> None:
        """Do so many things; what fails has the last things done in its notes."""
        doing = (self._spot,) * 55 + (self._anywhere,) * 10 + (self._drag,) * 12 + (self._key,) * 8
        doing += (self._type,) * 6 + (self._resize,) * 3 + (self._dress,) * 2 + (self._rest,) * 2
        doing += (self._away, self._restart)
        try:
            for _ in range(count):
                self.dice.choice(doing)()
                self.look()
        except Exception as problem:
            problem.add_note("\n".join(self.did[-12:]))
            raise

    def look(self) -> None:
        """Look at what is in front: a page, and none that stands in for one that failed."""
        front = self.app.front
        assert not front.paper.lost, front.world.trail[-1]
        assert front.page.title
        self.seen[front.world.trail[-1].page] += 1

    def _tell(self, what: str) -> None:
        self.did.append(f"{self.app.front.world.trail[-1].page}: {what}")

    def _spot(self) -> None:
        spots = [one for one in self.app.walk() if hasattr(one, "bring")]
        if spots:
            spot = self.dice.choice(spots)
            self._tell(f"touch {getattr(spot, 'text', spot)!r}"[:80])
            self.app.tap(spot)

    def _place(self) -> tuple[float, float]:
        width, height = self.app.window.size
        return self.dice.uniform(0, width), self.dice.uniform(0, height)

    def _anywhere(self) -> None:
        at = self._place()
        self._tell(f"touch at {at}")
        finger = Finger(self.app, *at)
        self.app.frame(self.dice.choice((1, 3, 40)))
        finger.up()
        self.app.frame(2)

    def _drag(self) -> None:
        fingers: list[Any] = [Finger(self.app, *self._place()) for _ in range(self.dice.choice((1, 1, 1, 2)))]
        self._tell(f"drag with {len(fingers)}")
        for _ in range(self.dice.randrange(6)):
            for finger in fingers:
                finger.move(*self._place())
        for finger in fingers:
            finger.up()
        self.app.frame(4)

    def _key(self) -> None:
        code = self.dice.choice(KEYS)
        self._tell(f"key {code}")
        self.app.key(code, *self.dice.choice(((), (), ("shift",), ("ctrl",))))

    def _type(self) -> None:
        text = self.dice.choice(TYPED)
        self._tell(f"type {text!r}")
        self.app.type(text)

    def _resize(self) -> None:
        size = self.dice.choice(SIZES)
        self._tell(f"size {size}")
        self.app.resize(*size)

    def _dress(self) -> None:
        chosen = {"theme": self.dice.choice(THEMES), "text": self.dice.choice(TEXT_SCALES)}
        self._tell(f"settings {chosen}")
        self.app.front.perform(Settle(chosen))

    def _rest(self) -> None:
        self._tell("wait")
        self.app.frame(self.dice.randrange(1, 5), seconds=self.dice.choice((0.5, 20.0)))

    def _away(self) -> None:
        self._tell("behind and back")
        self.app.app.on_pause()
        self.app.app.on_resume()
        self.app.frame(2)

    def _restart(self) -> None:
        self._tell("closed and opened")
        self.app.restart(minutes=self.dice.choice(AWAY))
