"""Does the screw reach: engaged thread, room to the windings, and which screws would do."""

from collections.abc import Mapping
from functools import cache, cached_property

from logic.answers.asked import questions
from logic.answers.reading import Item
from logic.answers.run import Figures, Run, answer
from logic.errors import DoesNotReach, InputError, Missing
from logic.fields import Field, Value
from logic.frozen import frozen
from logic.joints.reach import SLACK, Reach, longest_screw, reach, screw_for_engagement
from logic.tables import pick
from logic.workings import Given, given

NAMES = ("screw_length", "plate", "washers", "thread_depth", "hole_depth")


def asked_key(name: str) -> str:
    """Return the key under which a length, the thread, the metal or what is behind the hole is asked for."""
    return f"ask.reach_{name}"


@cache
def reach_fields() -> dict[str, Field]:
    """Return the five lengths that are measured, by name."""
    return {name: questions()[asked_key(name)].field for name in NAMES}


@frozen
class ReachCard:
    """How the screw sits. `verdict` is that of the engine, "does not reach", or "" while a length is missing."""

    items: dict[str, Item]
    verdict: str
    short: bool
    missing: tuple[str, ...]
    problem: InputError | None


class _Parts:
    """The lengths, read once."""

    def __init__(self, thread: str, lengths: Mapping[str, Value], material: str, *, through: bool) -> None:
        missing = tuple(name for name in NAMES if name not in lengths)
        if missing:
            raise Missing(*missing)
        fields = reach_fields()
        self.at = {
            name: given(
                Given(
                    fields[name].label,
                    float(lengths[name].si),
                    "m",
                    "length",
                    known=lengths[name].known,
                    typed_unit=lengths[name].typed_unit,
                )
            )
            for name in NAMES
        }
        self.reach: Reach = reach(thread, **self.at, material=material, through=through)

    @cached_property
    def longest(self) -> float:
        """Longest screw that keeps clear of the end."""
        return longest_screw(
            plate=self.at["plate"],
            washers=self.at["washers"],
            hole_depth=self.reach.end,
            room=pick("reach_rules", rule="close").number("length"),
        )

    @cached_property
    def shortest(self) -> float:
        """Shortest screw that engages what is wanted, or as near to it as the hole allows.

        Raises InputError when the hole has too little thread for any screw.
        """
        for engaged in (self.reach.wanted, self.reach.least):
            length = screw_for_engagement(plate=self.at["plate"], washers=self.at["washers"], engaged=engaged)
            if engaged <= self.at["thread_depth"] + SLACK and length <= self.longest + SLACK:
                return length
        raise InputError("thread_depth", self.at["thread_depth"], "no screw fits", low=self.reach.least)


ITEMS: Figures[_Parts] = {
    "engaged": ("length", lambda parts: parts.reach.engaged),
    "least": ("length", lambda parts: parts.reach.least),
    "wanted": ("length", lambda parts: parts.reach.wanted),
    "room": ("length", lambda parts: parts.reach.room),
    "shortest": ("length", lambda parts: parts.shortest),
    "longest": ("length", lambda parts: parts.longest),
}


@answer(thread="M4", lengths={name: Value(0.007, "measured") for name in NAMES}, material="6061-T6")
def reach_card(
    thread: str, lengths: Mapping[str, Value], material: str, *, through: bool = True
) -> ReachCard:
    """Return how a screw sits in its hole. `through` tells a hole that opens to the windings."""
    run = Run(lambda: _Parts(thread, lengths, material, through=through))
    try:
        sits = run.plain.reach
    except Missing as gap:
        return ReachCard({}, "", short=False, missing=gap.fields, problem=None)
    except InputError as problem:
        verdict = "does not reach" if isinstance(problem, DoesNotReach) else ""
        return ReachCard({}, verdict, short=False, missing=(), problem=problem)
    return ReachCard(run.figures(ITEMS), sits.verdict, sits.short, (), None)
