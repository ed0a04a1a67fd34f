"""The real app on a folder of its own: touched and typed at, its clock moved, closed and opened again."""

from datetime import datetime, timedelta, timezone
from pathlib import Path
from typing import Any

from logic.log import Check, Tension
from screens.app import DeckhandApp
from screens.driver import Driver, words
from screens.scenes.held import Held
from screens.words.workings import steps
from screens.world import World

CANAL_TIME = timezone(timedelta(hours=1))


class Session(Driver):
    """One person with the app. `time` is what its clock says; frames do not move it."""

    def __init__(self, folder: Path, *, demo: bool = False, width: int = 412, height: int = 915) -> None:
        """Start the app as `main.py` does, at a quiet moment of the demo day."""
        self.folder = folder
        self.time = datetime(2026, 11, 25, 9, 30, tzinfo=CANAL_TIME)
        self.taps = 0
        super().__init__(DeckhandApp(folder, lambda: self.time, demo=demo))
        self.resize(width, height)

    def restart(self, **later: float) -> None:
        """Close the app and open it again, some time later: hours, minutes."""
        self.stop()
        self.time += timedelta(**later)
        super().__init__(DeckhandApp(self.folder, lambda: self.time))
        self.settle()

    @property
    def state(self) -> Held:
        """What the pages show, and what can be done to it by name."""
        return Held(self)

    def looked_over(self) -> None:
        """Log what a board wants after its first ride: the tension of each belt and the joints' re-check."""
        for side in self.state.saved.sides:
            self.state.record(Tension(belt=side, tension=60.0, error=10.0))
        self.state.record(
            Check(list="first_recheck", base="first_recheck", verdict="all right", right=7, total=7)
        )
        self.settle()

    @property
    def front(self) -> Any:
        """What is in front: one World and the paper."""
        return self.app.front

    @property
    def page(self) -> Any:
        """The paper, with the page in front on it."""
        return self.app.front.paper

    def tap(self, target: Any) -> None:
        """Tap, and count it."""
        self.taps += 1
        super().tap(target)

    def keys(self, text: str) -> None:
        """Type on the keypad of the page, a touch for each key."""
        for character in text:
            self.tap(self.page.key(character))

    def texts(self) -> list[str]:
        """Every text on the screen."""
        return [said for widget in self.walk() for said in words(widget)]

    def row(self, title: str) -> Any:
        """The block that is called by a title."""
        return next(
            block
            for block in self.front.page.blocks
            if title in (getattr(block, "title", ""), getattr(block, "label", ""))
        )


def gaps(world: World) -> list[str]:
    """What a working page leaves out: no step, or a step without formula, numbers, result, source or standing."""
    lines = steps(world.args["item"], world.style)
    found = [] if lines else ["no step"]
    for step in lines:
        shown = (step.title, step.formula, step.source, step.standing, step.result.removeprefix("= "))
        if not all(shown):
            found.append(f"empty: {step}")
        found += [
            f"no number: {line}"
            for line in step.lines
            if " = " not in line and not line.startswith("solved between")
        ]
    return found
