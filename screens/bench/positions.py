"""By spring scale at four wheel positions, at the depth where the tools tell most."""

from typing import Any

from kivy.properties import NumericProperty

from logic.answers.belt_bench import Positions, bench_plan, positions
from logic.answers.reading import Item, Result
from logic.answers.tension import BeltReading
from logic.board import Field
from screens.bench.asked import FORCE, asked
from screens.bench.measure import MeasurePage
from screens.words.tension import scale_text, tile

POSITIONS = 4


class PositionsPage(MeasurePage):
    """One pull at each of four wheel positions, a quarter turn apart; the belt is set by the tightest."""

    way = "scale"
    heading = "Four wheel positions"
    depth = NumericProperty(0.0)

    def fields(self) -> tuple[Field, ...]:
        """Return a pull for each position."""
        return tuple(
            asked(f"pull{number}", f"Position {number}", FORCE) for number in range(1, POSITIONS + 1)
        )

    def refresh(self) -> None:
        """Work out the best depth first: all pulls are made to it."""
        self.bench = bench_plan(self.board, self.state.person)
        best = self.bench["best_depth"]
        self.depth = float(best.value) if isinstance(best, Result) else 0.0
        super().refresh()

    def _found(self) -> Positions | None:
        pulls = tuple(float(self.values[field.key].si) for field in self.fields() if field.key in self.values)
        return positions(self.board, self.state.person, pulls, self.depth) if pulls and self.depth else None

    def read(self) -> BeltReading | None:
        """Return the tightest of the positions."""
        self.found = self._found()
        return None if self.found is None else self.found.tightest

    def scale_reads(self) -> str:
        """Return the tightest pull beside the one at the target: all are made to one depth."""
        pulls = [float(value.si) for value in self.values.values()]
        return f"{scale_text(max(pulls), self.plan, self.style, self.state.person.scale_unit)} "

    def subject(self) -> str:
        """Return of how many places this is the tightest."""
        return f"Tightest of {len(self.values)}:" if len(self.values) > 1 else "Here:"

    def _show_reading(self) -> None:
        """Before all four are pulled only a tight place says something of the belt."""
        super()._show_reading()
        count = len(self.values)
        if self.verdict not in ("", tile("tight")) and count < POSITIONS:
            self.verdict, self.tone, self.move = "", "text", ""
            self.certainty = f"{count} of {POSITIONS} places so far: the tightest counts."

    def instructions(self) -> str:
        """Return what to do with the hands."""
        if not self.depth:
            return self.open_text(self.bench["best_depth"])
        depth = self.style.number(self.depth, "length")
        pull = self.bench["best_pull"]
        aim = (
            " At the target the scale reads"
            f" {self.style.shown(pull.value, 'force', unit=self.state.person.scale_unit)}."
            if isinstance(pull, Result)
            else ""
        )
        return (
            f"Belt cold, one pulley free to turn. Pull the middle of the span {depth} aside and read the"
            " scale."
            f"{aim} Turn the wheel a quarter, pull again: four positions."
        )

    def remarks(self) -> list[str]:
        """Return why this depth, and how far the tension moves round the wheel."""
        said = [self.held_text()]
        share = self.bench["best_share"]
        parts = {name: self.bench[f"from_{name}"] for name in ("depth", "scale", "stiffness")}
        if isinstance(share, Result):
            worst = max(parts, key=lambda name: getattr(parts[name], "value", 0.0))
            words = {
                "depth": "reading the depth",
                "scale": "the scale",
                "stiffness": "the belt's own stiffness",
            }
            said.append(
                f"At this depth one pull is good to {self.style.number(share.value, 'share', 2)}, mostly"
                " because of"
                f" {words[worst]}. Shallower, depth and scale count more; deeper, the belt's stiffness does."
            )
        if self.found is not None and isinstance(self.found.spread, Result) and len(self.values) > 1:
            said.append(
                f"Round the wheel the tension moves by {self.style.number(self.found.spread.value, 'force')}."
                " The tightest place counts."
            )
        return said

    def cards(self) -> dict[str, Item]:
        """Return the depth and what its error is made of."""
        shown = {
            name: self.bench[name]
            for name in (
                "best_depth",
                "best_pull",
                "best_error",
                "from_depth",
                "from_scale",
                "from_stiffness",
            )
        }
        if self.found is not None and self.found.tightest is not None:
            shown["spread"] = self.found.spread
        return shown

    def own(self) -> dict[str, Any]:
        """Keep every pull, and the smallest tension beside the largest."""
        pulls = [float(self.values[field.key].si) for field in self.fields() if field.key in self.values]
        slackest = self.found.slackest.tension if self.found and self.found.slackest else None
        return {
            "pull": max(pulls),
            "pulls": tuple(pulls),
            "depth": self.depth,
            "least": slackest.value if isinstance(slackest, Result) else None,
        }
