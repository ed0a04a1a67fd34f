"""The real app on a folder of its own: touched and typed at, its clock moved, closed and opened again."""

from datetime import datetime, timedelta, timezone
from pathlib import Path
from typing import Any

from logic.log import Check, Tension
from screens.app import DeckhandApp
from screens.driver import Driver, words
from screens.widgets.keypad import Key
from screens.words.workings import steps

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
    def state(self) -> Any:
        """What the screens show and change."""
        return self.app.state

    def looked_over(self) -> None:
        """Log what a board wants after its first ride: the tension of each belt and the joints' re-check."""
        for side in self.state.saved.sides:
            self.state.record(Tension(belt=side, tension=60.0, error=10.0))
        self.state.record(
            Check(list="first_recheck", base="first_recheck", verdict="all right", right=7, total=7)
        )
        self.settle()

    @property
    def shell(self) -> Any:
        """The frame around the pages."""
        return self.app.shell

    @property
    def page(self) -> Any:
        """The page in front."""
        return self.app.shell.page

    def tap(self, target: Any, **where: Any) -> None:
        """Tap, and count it."""
        self.taps += 1
        super().tap(target, **where)

    def keys(self, text: str) -> None:
        """Type on the keypad of the page, a touch for each key."""
        for character in text:
            if getattr(self.page, "data", False):
                self.tap(self.page.key(character))
                continue
            self.tap(
                next(key for key in self.page.keypad.walk() if isinstance(key, Key) and key.text == character)
            )

    def texts(self) -> list[str]:
        """Every text on the screen."""
        return [said for widget in self.walk() for said in words(widget)]

    def row(self, title: str) -> Any:
        """The row, card or chip that is called by a title; on a page of data its block."""
        if getattr(self.page, "data", False):
            return next(
                block
                for block in self.page.page.blocks
                if title in (getattr(block, "title", ""), getattr(block, "label", ""))
            )
        return next(
            widget
            for widget in self.walk()
            if hasattr(widget, "value")
            and title in (getattr(widget, "title", ""), getattr(widget, "label", ""))
        )


def gaps(page: Any) -> list[str]:
    """What a working page leaves out: no step, or a step without formula, numbers, result, source or standing."""
    lines = steps(page.args["item"], page.world.style)
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
