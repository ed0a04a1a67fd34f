"""History of one belt: its tension with its errors over the way it has run, and how long it lasts."""

from collections.abc import Iterator
from datetime import datetime

from logic.answers.belt_history import BeltHistory, Point, belt_history
from logic.answers.reading import Item, Open, Result
from logic.store import Record
from logic.units import GAP
from screens.asking import page_choice
from screens.blocks import Block, FigureRow, Line, Picture, Section, Verdict, Words
from screens.log_book import SHOWN
from screens.page import Page
from screens.pictures.history import Reading, history
from screens.showing import figure
from screens.tongue import _, texts
from screens.words.tension import ago, tension_text
from screens.world import World

BENCH = texts("belt")["bench"]
DAY = 86400.0
KILOMETRE = 1000.0
LISTED = 12
MONTH = 30.0
"""Days for which a fall is told where no rides are logged."""


class Past:
    """The readings of a belt since it was fitted, over the way ridden or, without rides, over days."""

    def __init__(self, world: World) -> None:
        """Read the belt of the `side` in front."""
        self.world = world
        self.side = world.side_of(world.saved)
        self.fitted = world.last("belt_fitted", belt=self.side)
        self.records = world.log.readings(self.side)
        begin = self._begin()
        rides = [(record.at, record.body.distance or 0.0) for record in world.entries("ride", SHOWN)]
        self.by_way = any(way for at, way in rides if at >= begin)
        self.points = tuple(
            Point(
                sum(way for at, way in rides if begin <= at <= record.at)
                if self.by_way
                else (record.at - begin).total_seconds() / DAY * KILOMETRE,
                record.body.tension,
                max(record.body.error, 0.1),
            )
            for record in self.records
        )
        self.found: BeltHistory = world.kept(
            belt_history, world.saved, world.kept.same("points", self.points)
        )

    def _begin(self) -> datetime:
        if self.fitted is not None:
            return self.fitted.at
        return self.records[0].at if self.records else self.world.now

    def trend(self) -> Verdict:
        """Return how the tension falls, in words."""
        trend = self.found.trend
        if trend is None:
            count = _("{count} of 3 readings.").format(count=len(self.points))
            return Verdict(_("No trend yet"), count, key="trend")
        if not self.found.falls:
            return Verdict(
                _("No clear fall"), _("It is not larger than the error of the readings."), key="trend"
            )
        each = self.world.style.number(trend.fall * (10 if self.by_way else MONTH) * KILOMETRE, "force", 2)
        over = f"10{GAP}km" if self.by_way else _("30 days")
        return Verdict(
            _("Falls by {force} in {over}").format(force=each, over=over),
            _("If nothing was moved."),
            key="trend",
        )

    def left(self) -> FigureRow:
        """Return how long it lasts: a way, or days where no rides are logged."""
        left = self.found.items["left"]
        until = _("Until it is under its window.")
        if isinstance(left, Result) and not self.by_way:
            days = self.world.style.plain(max(left.value, 0.0) / KILOMETRE, 2)
            return FigureRow("left", BENCH["left"], days, unit=_("days"), detail=until)
        if isinstance(left, Open):
            until = _("Needs three readings that show a fall.")
        return self.row(left, until)

    def row(self, item: Item, detail: str) -> FigureRow:
        """Return a figure with what is said of it."""
        found = figure(self.world, item, BENCH[item.name], detail=detail)
        assert isinstance(found, FigureRow)  # noqa: S101  (a row is asked for)
        return found

    def pictures(self) -> Iterator[Block]:
        """Yield the readings as a chart and what they stand over, or what will stand there."""
        style, window = self.world.style, self.found.window

        def newton(force: float) -> float:
            return style.scale(force, "force")

        drawn = history(
            [
                Reading(
                    style.scale(point.way, "distance") if self.by_way else point.way / KILOMETRE,
                    newton(point.tension),
                    newton(point.error),
                )
                for point in self.points
            ],
            None if window is None else (newton(window.floor), newton(window.ceiling)),
            mark=style.mark,
            y_title=_("Belt tension, {unit}").format(unit=style.shown(1.0, "force").said),
        )
        if drawn is None:
            text = _("Readings of this belt will stand here, with their errors.")
            yield Words("chart", text, tone="second")
            return
        numbers = ", ".join(style.shown(point.tension, "force").number for point in self.points)
        yield Picture("chart", drawn, numbers)
        over = _("Ridden since it was fitted, {unit}.").format(unit=style.shown(KILOMETRE, "distance").said)
        yield Words(
            "over", over if self.by_way else _("Days since the first reading."), role="small", tone="second"
        )


def history_page(world: World) -> Page:
    """Return the history of the belt of `side`."""
    past = Past(world)
    return Page(
        title=_("History of a belt"),
        crown=past.trend(),
        blocks=tuple(_blocks(past)),
        aside=frozenset({"chart", "over"}),
    )


def _blocks(past: Past) -> Iterator[Block]:
    names = (("left", _("Left")), ("right", _("Right")))
    if len(past.world.saved.sides) > 1:
        yield page_choice("side", _("Belt"), names, past.side)
    yield from past.pictures()
    yield past.left()
    stretch = past.found.items["stretch"]
    yield past.row(
        stretch,
        _("Two readings are needed. The motor must not have moved.") if isinstance(stretch, Open) else "",
    )
    yield Section("readings", _("Readings since it was fitted"))
    yield from (_line(past.world, record) for record in past.records[: -LISTED - 1 : -1])
    if past.fitted is not None:
        yield Line("new", _("New belt"), ago(past.fitted.at, past.world.now), icon="save")


def _line(world: World, record: Record) -> Line:
    way = texts("belt")["short_way"].get(record.body.method, "")
    return Line(
        f"reading {record.id}", tension_text(record, world.style), f"{ago(record.at, world.now)}, {way}"
    )
