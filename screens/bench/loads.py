"""Two ways that load the belt by hand: a weight hung on its span, and the motor pulled."""

from typing import Any

from logic.answers.belt_bench import bench_plan, motor_reading, weight_reading
from logic.answers.reading import Item, Result
from logic.answers.tension import BeltReading
from logic.board import Field
from screens.bench.asked import DEPTH, FORCE, asked
from screens.bench.measure import MeasurePage
from screens.widgets.notice import Notice

HAZARD = "A strap that slips throws motor or hand. Pull in line on fixed parts, fingers out of the slots."


class WeightPage(MeasurePage):
    """A known weight hung at mid-span, the depth read: a free hand for the reading."""

    way = "weight"
    heading = "A known weight"

    def fields(self) -> tuple[Field, ...]:
        """Return the weight and the depth."""
        return (asked("weight", "Weight", FORCE), asked("depth", "Depth", DEPTH))

    def read(self) -> BeltReading | None:
        """Return what the depth tells."""
        weight, depth = self.number("weight"), self.number("depth")
        if weight is None or depth is None:
            return None
        return weight_reading(self.board, self.state.person, weight, depth)

    def instructions(self) -> str:
        """Return what to do with the hands."""
        return (
            "Turn the board so that the span lies level, one pulley free to turn. Hang a known weight at"
            " its middle:"
            " a bottle with 1 kg of water, weighed with its hook. Read how far the belt is pushed in,"
            " then type."
        )

    def own(self) -> dict[str, Any]:
        """Keep weight and depth."""
        return {"pull": self.number("weight"), "depth": self.number("depth")}


class MotorPage(MeasurePage):
    """The motor pulled along the line of centres, locked, and measured again."""

    way = "motor"

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Put the hazard above the numbers."""
        super().__init__(*args, **kwargs)
        self.extra.add_widget(Notice(word="caution", text=HAZARD))

    def fields(self) -> tuple[Field, ...]:
        """Return the pull."""
        return (asked("pull", "Pull", FORCE),)

    def refresh(self) -> None:
        """Work out the pull for the target first."""
        self.bench = bench_plan(self.board, self.state.person)
        super().refresh()

    def read(self) -> BeltReading | None:
        """Return the tension of the pull."""
        pull = self.number("pull")
        return None if pull is None else motor_reading(self.board, self.state.person, pull)

    def instructions(self) -> str:
        """Return what to do with the hands, two people's."""
        pull = self.bench["motor_pull"]
        aim = ""
        if isinstance(pull, Result):
            text = self.style.shown(pull.value, "force", unit=self.state.person.scale_unit)
            aim = f" For the target: {text}."
        return (
            f"Two people, power off.{aim} Motor screws just loose, so that the mount slides. Strap or"
            " jackscrew on a"
            " fixed part in the belt's plane, never round the can that turns; load on the line from axle"
            " to shaft."
            " Pull, lock the screws, turn the wheel, measure again."
        )

    def remarks(self) -> list[str]:
        """Return that it is set and not verified."""
        return ["Saved as set, not verified: after locking, measure the span by another way."]

    def cards(self) -> dict[str, Item]:
        """Return the pull for the target and how good it is."""
        return {name: self.bench[name] for name in ("motor_pull", "motor_error")}

    def own(self) -> dict[str, Any]:
        """Mark it as not verified."""
        return {"pull": self.number("pull"), "verified": False}
