"""Joining two packs, in parallel or in series: whether they may be, and what flows at the instant."""

from functools import cached_property

from logic.answers.asked import Asked, Asking
from logic.answers.hazards import Hazard, by_severity
from logic.answers.pack_parts import PackParts
from logic.answers.reading import Item, Reading
from logic.answers.run import Figures, Run, answer
from logic.board import Board, Value
from logic.frozen import frozen
from logic.pack import cells
from logic.pack.joining import (
    Outcome,
    allowed_difference,
    charge_moved,
    heat_in_all,
    joining_current,
    joining_figures,
    joining_heat,
    joining_outcome,
    joining_rules,
    loop_resistance,
    settling_time,
    storage,
    time_constant,
)
from logic.pack.limits import cells_limit
from logic.si import Volt
from logic.tables import Row, pick
from logic.workings import cited

SECOND = {
    "ask.second_series": "pack.series",
    "ask.second_chemistry": "pack.chemistry",
    "ask.second_parallel": "pack.parallel",
    "ask.second_capacity": "pack.cell_capacity",
    "ask.second_resistance": "pack.cell_resistance",
}
"""What the second pack is asked for, and the board value it is like until an answer differs."""

CELL_CURRENT = "pack.cell_charge_current"


@cited("abs(first - second)", source="derived difference of two readings", standing="derived")
def difference(*, first: Volt, second: Volt) -> Volt:
    """Return how far two packs are apart.

    >>> difference(first=41.0, second=41.5)
    0.5
    """
    return abs(first - second)


@frozen
class Joining:
    """Results by name; the outcome, None while a value is missing; rules to read first; hazards."""

    way: str
    items: dict[str, Item]
    outcome: Outcome | None
    rules: tuple[Row, ...]
    hazards: tuple[Hazard, ...]

    @property
    def head(self) -> str:
        """Return the name of the result that is asked about first."""
        return "allowed" if self.way == "parallel" else "full_in_series"


class JoinParts(PackParts):
    """Two packs: the board's, and one that is like it unless the answers say otherwise."""

    @cached_property
    def second(self) -> PackParts:
        """The second pack as a board of its own."""
        board = self.read.board
        for question, key in SECOND.items():
            if self.asked.has(question):
                board = board.with_value(key, self.asked.chosen[question])
        return PackParts(Reading(board)) if board is not self.read.board else self

    @cached_property
    def apart(self) -> float:
        """Difference of the two readings."""
        return difference(first=self.asked("ask.first_volts"), second=self.asked("ask.second_volts"))

    def loop(self, *, least: bool) -> float:
        """Return the resistance of the loop, or the low end of what it may be."""

        def of(parts: PackParts) -> float:
            cell = parts.least_resistance_cell if least else parts.resistance_cell
            return cells.pack_resistance(
                cell_resistance=cell, series=parts.series, parallel=parts.parallel, packs=self.one
            )

        return loop_resistance(
            resistance_first=of(self),
            resistance_second=of(self.second),
            resistance_leads=self.asked("ask.joining_leads"),
        )

    @cached_property
    def least_loop(self) -> float:
        """Low end of the loop's resistance: what the current is reckoned with."""
        return self.loop(least=True)

    @cached_property
    def current(self) -> float:
        """Current at the instant of joining, at most."""
        return joining_current(voltage_difference=self.apart, resistance=self.least_loop)

    @cached_property
    def charge_limit(self) -> float:
        """Charge limit of the pack that allows less."""
        limits = [
            cells_limit(cell_limit=parts.read(CELL_CURRENT), parallel=parts.parallel, packs=self.one)
            for parts in (self, self.second)
        ]
        return min(limits)

    @cached_property
    def allowed(self) -> float:
        """Largest difference at which the two may be joined."""
        return allowed_difference(
            cell_difference=joining_figures(self.chemistry.name).number("difference"),
            series=self.series,
            charge_limit=self.charge_limit,
            resistance=self.least_loop,
        )

    @cached_property
    def stored(self) -> tuple[float, float]:
        """Capacitance that stands for each pack."""

        def of(parts: PackParts) -> float:
            return storage(
                capacity=parts.capacity(self.one),
                swing=joining_figures(parts.chemistry.name).number("swing"),
                series=parts.series,
            )

        return of(self), of(self.second)

    @cached_property
    def moved(self) -> float:
        """Charge moved until both are level."""
        return charge_moved(
            voltage_difference=self.apart, storage_first=self.stored[0], storage_second=self.stored[1]
        )

    def settles(self) -> float:
        """Return the time until the current has all but gone."""
        constant = time_constant(
            resistance=self.loop(least=False),
            storage_first=self.stored[0],
            storage_second=self.stored[1],
        )
        share = pick("pack_practice", name="settled").number("share")
        return settling_time(
            time_constant=constant,
            current=self.current,
            final_current=share * self.current,
        )

    def full_in_series(self) -> float:
        """Return the volts of both in series, full."""
        return self.voltage("full") + self.second.voltage("full")


PARALLEL: Figures[JoinParts] = {
    "allowed": ("voltage", lambda parts: parts.allowed),
    "apart": ("voltage", lambda parts: parts.apart),
    "joining_current": ("current", lambda parts: parts.current),
    "joining_heat": (
        "power",
        lambda parts: joining_heat(voltage_difference=parts.apart, resistance=parts.least_loop),
    ),
    "moved": ("charge", lambda parts: parts.moved),
    "heat_in_all": (
        "heat",
        lambda parts: heat_in_all(charge=parts.moved, voltage_difference=parts.apart),
    ),
    "settles": ("time", lambda parts: parts.settles()),
    "charge_limit": ("current", lambda parts: parts.charge_limit),
    "loop": ("resistance", lambda parts: parts.least_loop),
    "capacity_joined": ("charge", lambda parts: parts.capacity(parts.packs)),
}
SERIES: Figures[JoinParts] = {
    "full_in_series": ("voltage", lambda parts: parts.full_in_series()),
    "apart": ("voltage", lambda parts: parts.apart),
}


@answer()
def joining(board: Board, asking: Asking) -> Joining:
    """Return everything the joining page shows, for the way that was chosen."""
    way = Asked(asking).choice("ask.way")
    run = Run(lambda: JoinParts(Reading(board), Asked(asking)))
    # Unlike packs are told before any volts are read.
    outcome = run.view(_unlike, None)
    if outcome is not None and not outcome.danger:
        outcome = run.view(_levelled, None)
    if way == "parallel":
        items, hazards = run.figures(PARALLEL), _parallel(run, outcome)
    else:
        items = run.figures(SERIES)
        hazards = [hazard for check in IN_SERIES for hazard in run.view(check, [])]
        hazards.append(Hazard("WARNING", "series lead"))
    return Joining(way, items, outcome, joining_rules(way), by_severity(hazards))


def _outcome(parts: JoinParts, apart: float, allowed: float) -> Outcome:
    return joining_outcome(
        series_first=int(parts.series),
        series_second=int(parts.second.series),
        chemistry_first=parts.chemistry.name,
        chemistry_second=parts.second.chemistry.name,
        voltage_difference=apart,
        allowed=allowed,
    )


def _unlike(parts: JoinParts) -> Outcome:
    """Return what the two are as far as their kinds tell."""
    return _outcome(parts, apart=0.0, allowed=1.0)


def _levelled(parts: JoinParts) -> Outcome:
    return _outcome(parts, apart=parts.apart, allowed=parts.allowed)


def _parallel(run: Run[JoinParts], outcome: Outcome | None) -> list[Hazard]:
    if outcome is None or not outcome.danger:
        return run.view(_implausible, [])
    numbers: tuple[tuple[str, float, str], ...] = ()
    if outcome.key == "difference too large":
        parts = run.plain
        numbers = (("asked", parts.apart, "voltage"), ("allowed", parts.allowed, "voltage"))
    return [Hazard("DANGER", outcome.key, numbers)]


def _implausible(parts: JoinParts) -> list[Hazard]:
    """Return a note when a reading is no voltage these packs can have: a wrong entry or a harmed pack."""
    low, high = parts.chemistry.floor * parts.series, parts.voltage("full") * 1.02
    readings = [parts.asked("ask.first_volts"), parts.asked("ask.second_volts")]
    if all(low <= volts <= high for volts in readings):
        return []
    return [Hazard("DANGER", "volts outside the pack", (("low", low, "voltage"), ("high", high, "voltage")))]


def _charge_differs(parts: JoinParts) -> list[Hazard]:
    allowed = joining_figures(parts.chemistry.name).number("difference") * parts.series
    if parts.series != parts.second.series or parts.apart <= allowed:
        return []
    numbers = (("asked", parts.apart, "voltage"), ("allowed", allowed, "voltage"))
    return [Hazard("DANGER", "charge differs", numbers)]


def _capacity_differs(parts: JoinParts) -> list[Hazard]:
    differs = parts.capacity(parts.one) != parts.second.capacity(parts.one)
    return [Hazard("DANGER", "amp-hours differ")] if differs else []


def _chemistry_differs(parts: JoinParts) -> list[Hazard]:
    differs = parts.chemistry.name != parts.second.chemistry.name
    return [Hazard("DANGER", "chemistry differs")] if differs else []


def _over_controller(parts: JoinParts) -> list[Hazard]:
    limit, full = parts.read("controller.voltage_limit"), parts.full_in_series()
    if full <= limit:
        return []
    numbers = (("asked", full, "voltage"), ("allowed", limit, "voltage"))
    return [Hazard("WARNING", "series over the controller", numbers)]


IN_SERIES = (_charge_differs, _capacity_differs, _chemistry_differs, _over_controller)
"""What is looked at before two packs are put in series, each as far as its own values are known."""


def like(board: Board, question: str) -> Value | None:
    """Return the board value that the second pack is taken to have until an answer says otherwise."""
    return board.value(SECOND[question])
