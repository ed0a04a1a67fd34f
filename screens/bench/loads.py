"""Two ways that load the belt by hand: a weight hung on its span, and the motor pulled."""

from collections.abc import Iterator, Mapping
from typing import Any

from logic.answers.belt_bench import bench_plan, motor_reading, weight_reading
from logic.answers.reading import Item, Result
from logic.answers.tension import BeltReading
from logic.board import Field
from screens.bench.measure import Measure
from screens.bench.measuring import DEPTH, FORCE, asked_field
from screens.blocks import Block, Notice, Picture
from screens.page import Page
from screens.pictures.belts import motor_pulled
from screens.pictures.span import weight_picture
from screens.showing import why
from screens.tongue import _, texts
from screens.world import World


class Weight(Measure):
    """A known weight hung at mid-span, the depth read: a free hand for the reading."""

    way = "weight"
    heading = _("A known weight")

    def asks(self) -> tuple[Field, ...]:
        """Return the weight and the depth."""
        return (asked_field("weight", _("Weight"), FORCE), asked_field("depth", _("Depth"), DEPTH))

    def read(self) -> BeltReading | None:
        """Return what the depth tells."""
        weight, depth = self.number("weight"), self.number("depth")
        if weight is None or depth is None:
            return None
        return weight_reading(self.board, self.world.person, weight, depth)

    def pictures(self) -> Iterator[Block]:
        """Yield the weight on the level span."""
        text = _("The span lies level. The weight hangs from its middle.")
        yield Picture("span picture", weight_picture(self.plan, self.style), text)

    def own(self) -> dict[str, Any]:
        """Keep weight and depth."""
        return {"pull": self.number("weight"), "depth": self.number("depth")}


class MotorPull(Measure):
    """The motor pulled along the line of centres, locked, and measured again."""

    way = "motor"
    heading = _("Pull the motor")

    def prepare(self) -> None:
        """Work out the pull for the target."""
        self.bench = self.world.kept(bench_plan, self.board, self.world.person)

    def before(self) -> Iterator[Block]:
        """Yield the hazard."""
        yield Notice("hazard", "caution", texts("belt")["said"]["strap"])

    def asks(self) -> tuple[Field, ...]:
        """Return the pull."""
        return (asked_field("pull", _("Pull"), FORCE),)

    def read(self) -> BeltReading | None:
        """Return the tension of the pull."""
        pull = self.number("pull")
        return None if pull is None else motor_reading(self.board, self.world.person, pull)

    def headline(self) -> tuple[str, str]:
        """Return the pull for the target."""
        pull = self.bench["motor_pull"]
        if not isinstance(pull, Result):
            return _("Not known yet"), why(pull, self.style)
        return _("Pull the motor with {reads}").format(reads=self._reads()), self.aim()

    def pictures(self) -> Iterator[Block]:
        """Yield the line on which the motor is pulled."""
        text = _("The strap pulls on the line from the axle to the motor's shaft.")
        yield Picture("drive picture", motor_pulled(self._reads()), text)

    def _reads(self) -> str:
        pull = self.bench["motor_pull"]
        if not isinstance(pull, Result):
            return ""
        return str(self.style.shown(pull.value, "force", unit=self.world.person.scale_unit))

    def remarks(self) -> list[str]:
        """Return that it is set and not verified."""
        return [_("Saved as set, not verified: after locking, measure the span by another way.")]

    def figures(self) -> Mapping[str, Item]:
        """Return the pull for the target and how good it is."""
        return {name: self.bench[name] for name in ("motor_pull", "motor_error")}

    def own(self) -> dict[str, Any]:
        """Mark it as not verified."""
        return {"pull": self.number("pull"), "verified": False}


def motor_page(world: World) -> Page:
    """Return the page on which the motor is pulled."""
    return MotorPull(world).page()
