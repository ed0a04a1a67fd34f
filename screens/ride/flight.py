"""Pack for a flight: marked and tested first, then the class of each pack, then the card for the counter."""

from typing import Any

from logic.answers.carrying import Flight, flight
from logic.answers.reading import Item, Open, Result
from logic.board import Board
from logic.units import Shown
from screens.asked import out_of_use
from screens.figures import SavedFiguresPage
from screens.widgets.row import Row, Section
from screens.widgets.text import Text
from screens.words import refusal
from screens.words.flight import arithmetic, confirmed, rules_read, verdict_lines, watt_hours
from screens.words.packs import FLIGHT


class Figures:
    """A flight's answer with its figures by name, as a page of figures reads them."""

    def __init__(self, answer: Flight) -> None:
        """Take an answer."""
        self.flight = answer
        self.items: dict[str, Item] = {"each": answer.energy, "all_joined": answer.all_joined}


class FlightPage(SavedFiguresPage):
    """What may fly of the saved board's packs. The card is offered only when there is something to show."""

    HEAD = "each"
    LABELS = {"each": "One pack", "all_joined": "All packs together"}  # noqa: RUF012  (as in FiguresPage)
    CONTROLS = ("pack.marked", "pack.tested", "ask.loose", "ask.carried")
    CHIPS = (
        "pack.marked_energy",
        "pack.series",
        "pack.parallel",
        "pack.packs",
        "pack.chemistry",
        "pack.cell_capacity",
    )

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Put the verdict above the figures and the rules below."""
        super().__init__(*args, title="Pack for a flight", **kwargs)
        self.more_title, self.chips_title = "Together", "From the board: tap one to change it"
        self.verdict = Text(role="title", bold=True)
        self.reasons = Text()
        self.rules = Text(tone="second")
        for place, widget in enumerate((self.verdict, self.reasons)):
            self.front.add_widget(widget, len(self.front.children) - place)
        self.advice.add_widget(Section(title="Before the flight"))
        self.advice.add_widget(self.rules)
        signs = Row(title="Swollen or hot pack?", icon="battery", tone="bad")
        signs.bind(on_release=lambda *_: self.shell.go("ride.pack_signs"))
        self.advice.add_widget(signs)

    def work_out(self, board: Board) -> Figures:
        """Return what may fly."""
        return Figures(flight(board, self.asking, damaged=out_of_use(self.state) is not None))

    def figure(self, item: Result, si: float) -> Shown:
        """Write watt-hours to a tenth: the classes end at whole ones."""
        return Shown(watt_hours(si, self.style), super().figure(item, si).unit)

    def detail(self, name: str, item: Item) -> str:
        """Show the arithmetic, or that case and cells disagree."""
        if isinstance(item, Open) or self.answer is None:
            return ""
        answer = self.answer.flight
        if name == "each" and answer.differs:
            return (
                "The case says another figure than volts times amp-hours: the marked one counts. Check both."
            )
        if name == "each" and answer.cards:
            card = answer.cards[0]
            same = confirmed(card, self.style)
            other = arithmetic(card, self.style)
            return same or (f"By its cells: {other}. The label counts." if other else "")
        return "Joined by a lead they count as one." if name == "all_joined" else ""

    def show(self, answer: Figures) -> None:
        """Write the verdict and the rules."""
        found = answer.flight
        if found.verdict is not None:
            self.verdict.text = FLIGHT[found.verdict.outcome]
            self.verdict.tone = "text" if found.verdict.card else "bad"
        else:
            self.verdict.text = ""
        problem = [refusal(found.problem, self.style)] if found.problem else []
        self.reasons.text = " ".join(verdict_lines(found) + problem)
        rules = "\n".join(rule.text("text") for rule in found.rules)
        today = self.state.clock().date().isoformat()
        self.rules.text = f"{rules}\n{rules_read(found, today)}"

    def bars(self) -> list[tuple[str, str, Any]]:
        """Offer the card when there is one."""
        if self.stopped or self.answer is None or not self.answer.flight.cards:
            return []
        return [("Show at the counter", "main", lambda: self.shell.go("ride.flight_card"))]
