"""One belt of a tension check: its plan, the pull that is typed, what it tells, and how it is kept."""

from dataclasses import replace

from logic.answers.reading import Result
from logic.answers.tension import BeltPlan, BeltReading, belt_plan, belt_run, pulled
from logic.answers.tension_entry import tension_entry
from logic.board import Field, Value
from logic.store import Record as Entered
from screens.acts import Act, Swap, Turn
from screens.acts.entering import Type
from screens.acts.keeping import Record
from screens.asking import number_entry, typed_value
from screens.tongue import _
from screens.words.belt import Told, told
from screens.words.tension import belt_name, undo_text
from screens.world import World

PULL = Field("pull", _("Scale reads"), "number", 0, "", quantity="force", low=0.05, high=500.0)


class Check:
    """What a tension check rests on, read once from a world: the belt, its plan, and what is typed."""

    def __init__(self, world: World) -> None:
        """Read the belt in front: the first one until another is named."""
        self.world = world
        self.board = world.board if world.is_scratch else world.saved
        self.sides = self.board.sides
        self.side = world.side_of(self.board)
        self.key = f"pull/{self.side}"
        self.plan: BeltPlan = world.kept(belt_plan, self.board, world.person, world.args.get("depth"))
        self.entry = number_entry(world, self.key, PULL, world.person.scale_unit)
        self.pull: Value | None = typed_value(world, self.key, PULL, world.person.scale_unit)
        self.reading: BeltReading | None = None
        if self.pull is not None and self.plan.depth is not None:
            run = world.kept(belt_run, self.board, world.person, self.plan.depth)
            self.reading = pulled(run, float(self.pull.si))
        self.last = self._last()
        before = None if self.last is None else self.last.body.tension
        self.told: Told = told(self.reading, self.pull, self.plan, before, world.style, self.entry.unit)

    def _last(self) -> Entered | None:
        """Return the reading before: not the one that this check has already saved of the belt."""
        record = self.world.last("tension", belt=self.side)
        return None if record is not None and record.id == self.world.args.get(f"id_{self.side}") else record

    @property
    def name(self) -> str:
        """Return what the belt is called."""
        if len(self.sides) == 1:
            return _("Belt")
        return belt_name(self.side)

    @property
    def word(self) -> str:
        """Return the word of the verdict, "" while there is none."""
        verdict = self.reading.verdict if self.reading is not None else None
        return "" if verdict is None else verdict.word

    @property
    def wrong(self) -> bool:
        """Tell whether the belt must be set anew."""
        verdict = self.reading.verdict if self.reading is not None else None
        return verdict is not None and verdict.wrong

    @property
    def can_save(self) -> bool:
        """Tell whether there is a tension to keep: a pull alone says nothing of a belt."""
        return self.reading is not None and self.reading.known and not self.world.is_scratch

    @property
    def depth(self) -> str:
        """Return how far to pull."""
        depth = self.plan.items["depth"]
        return self.world.style.number(depth.value, "length") if isinstance(depth, Result) else "–"

    def record(self, *then: Act) -> Record:
        """Return the act that writes the reading into the log, then empties the entry and goes on."""
        assert self.pull is not None  # noqa: S101  (who records has a pull)
        entry = tension_entry(
            self.side,
            "scale",
            self.plan,
            self.reading,
            self.world.person,
            pull=float(self.pull.si),
            unit=self.pull.typed_unit,
            depth=self.plan.depth,
        )
        empty = Type(self.key, PULL, "", self.entry.unit, "typed")
        return Record(entry, (empty, *then), undo=undo_text(self.name))

    def save(self) -> Act | None:
        """Return the act that saves the belt and goes to the other one, or to what was found."""
        if not self.can_save:
            return None
        name = f"id_{self.side}"
        place = self.sides.index(self.side) + 1
        if place < len(self.sides):
            record = self.record(Turn({"side": self.sides[place], "_moved": None}))
        else:
            ids = tuple(f"id_{side}" for side in self.sides)
            record = self.record(Swap("ride.tension_saved", gather={"ids": ids}))
        return replace(record, key=name)
