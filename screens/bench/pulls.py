"""Several pulls at different depths, fitted together."""

from typing import Any

from logic.answers.belt_bench import fitted_reading
from logic.answers.reading import Item
from logic.answers.tension import BeltReading
from logic.board import Field
from screens.bench.asked import DEPTH, FORCE, asked
from screens.bench.measure import MeasurePage

MOST_PULLS = 5


class PullsPage(MeasurePage):
    """Two to five pulls at different depths, fitted for the tension and the depth's zero error."""

    way = "pulls"
    heading = "Several pulls"

    def fields(self) -> tuple[Field, ...]:
        """Return a depth and a pull for each; another pair comes when all are filled."""
        filled = sum(
            f"pull{n}" in self.values and f"depth{n}" in self.values for n in range(1, MOST_PULLS + 1)
        )
        count = min(max(2, filled + 1), MOST_PULLS)
        pairs = [
            (asked(f"depth{n}", f"Depth {n}", DEPTH), asked(f"pull{n}", f"Pull {n}", FORCE))
            for n in range(1, count + 1)
        ]
        return tuple(field for pair in pairs for field in pair)

    def _pulls(self) -> tuple[tuple[float, float], ...]:
        return tuple(
            (float(self.values[f"pull{n}"].si), float(self.values[f"depth{n}"].si))
            for n in range(1, MOST_PULLS + 1)
            if f"pull{n}" in self.values and f"depth{n}" in self.values
        )

    def read(self) -> BeltReading | None:
        """Return what the pulls tell together."""
        pulls = self._pulls()
        self.found = fitted_reading(self.board, self.state.person, pulls) if len(pulls) > 1 else None
        return None if self.found is None else self.found.reading

    def instructions(self) -> str:
        """Return what to do with the hands."""
        return (
            "One pulley free to turn. Pull the middle of the span to a first depth, read the scale, then"
            " to others:"
            " half as deep again, twice as deep. Keep the line you measure from where it is."
        )

    def remarks(self) -> list[str]:
        """Return what fitting gains, and whether the pulls belong together."""
        said = [
            "Two pulls gain next to nothing over one good one; five take about a fifth off the error,"
            " because they"
            " also show where zero is."
        ]
        said.append(self.held_text())
        if self.found is not None and not self.found.agree:
            said.insert(0, "These pulls do not belong to one belt: one was held, or read wrong.")
        return said

    def cards(self) -> dict[str, Item]:
        """Return the zero error."""
        return {} if self.found is None else {"zero": self.found.zero}

    def _show_save(self) -> None:
        super()._show_save()
        ahead = self.next_field()
        # Two pulls are enough to save: a further pair is offered, not asked for.
        if self.savable and ahead is not None and ahead.key.startswith("depth"):
            self.save_text, self.can_go = "SAVE", True

    def go_on(self) -> None:
        """Save from two pulls on when the next pair is not begun."""
        self.refresh()
        ahead = self.next_field()
        if self.savable and ahead is not None and ahead.key.startswith("depth"):
            self.save()
        else:
            super().go_on()

    def own(self) -> dict[str, Any]:
        """Keep the pulls with their depths."""
        pulls = self._pulls()
        return {"pulls": pulls, "pull": pulls[0][0], "depth": pulls[0][1]}
