"""History of one belt: its tension with error bars over the way it has run, and how long it lasts."""

from datetime import datetime
from typing import Any

from kivy.properties import ListProperty, ObjectProperty, StringProperty

from logic.answers.belt_history import BeltHistory, Point, belt_history
from logic.answers.reading import Item, Open, Result
from logic.store import Record
from logic.units import GAP
from screens.app_page import AppPage
from screens.ride.readings import SHOWN, readings
from screens.widgets.chart import Curve, Mark
from screens.widgets.load import load_kv
from screens.widgets.refill import refill
from screens.widgets.row import Row
from screens.words import offer, refusal, sureness
from screens.words.belt import BENCH, SHORT_WAY
from screens.words.tension import ago, tension_text

DAY = 86400.0
LISTED = 12


class TensionHistory(AppPage):
    """Readings of the belt `side` since it was fitted."""

    sides = ListProperty()
    side = StringProperty("left")
    trend = StringProperty()
    x_title = StringProperty()
    y_title = StringProperty()
    lines = ListProperty()
    bars = ListProperty()
    marks = ListProperty()
    stretch = ObjectProperty()
    left = ObjectProperty()
    entries = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Listen to the cards."""
        self.found: BeltHistory | None = None
        super().__init__(*args, title="History of a belt", **kwargs)
        self.stretch.bind(on_open=lambda *_: self._open("stretch"))
        self.left.bind(on_open=lambda *_: self._open("left"))

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin with the side asked for."""
        self.sides = [(side, side.capitalize()) for side in self.state.saved.sides]
        if args.get("side"):
            self.side = args["side"]
        if self.side not in self.state.saved.sides:
            self.side = self.state.saved.sides[0]
        super().open(**args)

    def take_side(self, side: str) -> None:
        """Go to the other belt."""
        self.side = side
        self.refresh()

    def refresh(self) -> None:
        """Show the readings since the belt was fitted, over the way or, without rides, over days."""
        fitted = self.state.last("belt_fitted", belt=self.side)
        records = readings(self.state, self.side, since=fitted)
        rides = self._rides()
        begin = fitted.at if fitted is not None else records[0].at if records else self.state.clock()
        ran = sum(way for at, way in rides if at >= begin)
        by_way = ran > 0
        points = tuple(
            Point(
                sum(way for at, way in rides if begin <= at <= record.at)
                if by_way
                else (record.at - begin).total_seconds() / DAY * 1000.0,
                record.body.tension,
                max(record.body.error, 0.1),
            )
            for record in records
        )
        self.found = belt_history(self.state.saved, points)
        self._show_chart(points, by_way)
        self._show_trend(by_way, len(points))
        self._show_entries(fitted, records)

    def _rides(self) -> list[tuple[datetime, float]]:
        return [(record.at, record.body.distance or 0.0) for record in self.state.entries("ride", SHOWN)]

    def _show_chart(self, points: tuple[Point, ...], by_way: bool) -> None:  # noqa: FBT001
        style = self.style
        unit = style.shown(1000.0, "distance").unit
        self.x_title = f"Way since it was fitted, {unit}" if by_way else "Days since the first reading"
        self.y_title = f"Belt tension, {style.shown(1.0, 'force').unit}"

        def place(way: float) -> float:
            return style.scale(way, "distance") if by_way else way / 1000.0

        def newton(force: float) -> float:
            return style.scale(force, "force")

        line = [(place(point.way), newton(point.tension)) for point in points]
        lines = [Curve("tension", line)] if line else []
        window = self.found.window
        if window is not None and line:
            end = max(x for x, _ in line) or 1.0
            lines.append(Curve("floor", [(0.0, newton(window.floor)), (end, newton(window.floor))]))
            lines.append(Curve("ceiling", [(0.0, newton(window.ceiling)), (end, newton(window.ceiling))]))
        self.lines = lines
        self.bars = [
            (place(point.way), newton(point.tension - point.error), newton(point.tension + point.error))
            for point in points
        ]
        self.marks = [Mark(x, y, "") for x, y in line]

    def _show_trend(self, by_way: bool, count: int) -> None:  # noqa: FBT001
        style = self.style
        trend = self.found.trend
        self._fill(
            self.stretch,
            self.found.items["stretch"],
            "Two readings are needed. The motor must not have moved.",
        )
        left = self.found.items["left"]
        if trend is None:
            self.trend = f"No trend yet: {count} of 3 readings."
        elif not self.found.falls:
            self.trend = "No fall that is larger than the error of the readings."
        else:
            each = style.number(trend.fall * (10000.0 if by_way else 30000.0), "force", 2)
            self.trend = f"Falls by {each} in {f'10{GAP}km' if by_way else '30 days'}, if nothing was moved."
        if not by_way and isinstance(left, Result):
            self.left.label, self.left.value = BENCH["left"], style.plain(max(left.value, 0.0) / 1000.0, 2)
            self.left.unit, self.left.detail, self.left.has_working = (
                "days",
                "Until it is under its window.",
                False,
            )
            self.left.standing = ""
        else:
            self._fill(self.left, left, "Needs three readings that show a fall.")
            if isinstance(left, Result):
                self.left.detail = "Until it is under its window."

    def _fill(self, card: Any, item: Item, otherwise: str) -> None:  # noqa: ANN401  (a card)
        card.label = BENCH[item.name]
        card.has_working = isinstance(item, Result)
        if isinstance(item, Open):
            card.value, card.unit, card.standing = "\N{EN DASH}", "", ""
            card.detail = offer(item.missing) if item.missing else otherwise
            if item.problem is not None:
                card.detail = refusal(item.problem, self.style)
            return
        shown = self.style.shown(item.value, item.quantity, 2)
        card.value, card.unit, card.detail, card.standing = shown.number, shown.unit, "", sureness(item)

    def _open(self, name: str) -> None:
        item = self.found.items[name]
        if isinstance(item, Result):
            self.shell.go("working", item=item, label=BENCH[name])

    def _show_entries(self, fitted: Record | None, records: list[Record]) -> None:
        lines = []
        for record in records[: -LISTED - 1 : -1]:
            way = SHORT_WAY.get(record.body.method, "")
            when = ago(record.at, self.state.clock())
            lines.append((tension_text(record, self.style), f"{when}, {way}", ""))
        if fitted is not None:
            lines.append(("New belt", ago(fitted.at, self.state.clock()), "save"))
        refill(self.entries, lines, lambda: [self._row(*line) for line in lines])

    def _row(self, title: str, detail: str, icon: str) -> Row:
        return Row(title=title, detail=detail, icon=icon, chevron=False)


load_kv(__file__)
