"""Pack for a flight: the verdict first, then what is asked, the figures, and the card for the counter."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.asked import Asking
from logic.answers.carrying import Flight, flight
from logic.answers.reading import Item, Result
from logic.board import Board
from screens.acts import Go
from screens.asked import out_of_use
from screens.blocks import PLAIN, RIGHT, UNSURE, WRONG, Block, Button, FigureRow, Section, Verdict, Words
from screens.figure_page import Figures, figure_page, signs_line
from screens.page import Foot, Page
from screens.saved_board import board_ask, board_choice, board_line, trial_note, untried
from screens.tongue import _
from screens.words import refusal
from screens.words.flight import arithmetic, confirmed, rules_read, verdict_lines, watt_hours
from screens.words.packs import FLIGHT
from screens.world import World

LABELS = {"each": _("One pack"), "all_joined": _("All packs together")}
FORMS = {"allowed, ask the airline": RIGHT, "operator approval": UNSURE}
"""How a verdict looks; the others are a no."""
VALUES = ("pack.series", "pack.parallel", "pack.packs", "pack.chemistry", "pack.cell_capacity")


def may_fly(board: Board, asking: Asking, damaged: bool) -> Flight:  # noqa: FBT001  (as world.kept gives it)
    """Return what may fly; `damaged` is a pack that was taken out of use."""
    return flight(board, asking, damaged=damaged)


def flight_page(world: World) -> Page:
    """Return what may fly of the saved board's packs. The card is offered only when there is something to show."""
    still = untried(world)
    found = world.kept(may_fly, still.board, world.answers, out_of_use(world) is not None)
    items: dict[str, Item] = {"each": found.energy, "all_joined": found.all_joined}
    figures = Figures(world=still, items=items, labels=LABELS, details=_details(world, found), ask=board_ask)
    page = figure_page(
        still,
        title=_("Pack for a flight"),
        crown=_verdict(world, found),
        stop=_("do not pack it"),
        note=trial_note(world),
        controls=(
            board_line(world, "pack.marked_energy"),
            board_choice(world, "pack.marked"),
            board_choice(world, "pack.tested"),
            "ask.loose",
            "ask.carried",
        ),
        figures=lambda: _energies(figures),
        advice=tuple(_rules(world, found)),
        values=tuple(board_line(world, key) for key in VALUES),
        values_title=_("From the board: tap one to change it"),
    )
    if page.foot.entry is not None or not found.cards:
        return page
    return replace(page, foot=Foot(main=Button(_("Show at the counter"), Go("ride.flight_card"))))


def _verdict(world: World, found: Flight) -> Verdict:
    reasons = verdict_lines(found)
    if found.problem is not None:
        reasons.append(refusal(found.problem, world.style))
    text = " ".join(reasons)
    if found.verdict is None:
        return Verdict(key="verdict", word=_("Not known yet"), text=text, form=PLAIN)
    outcome = found.verdict.outcome
    return Verdict(key="verdict", word=FLIGHT[outcome], text=text, form=FORMS.get(outcome, WRONG))


def _energies(figures: Figures) -> Iterator[Block]:
    """Yield watt-hours to a tenth: the classes end at whole ones."""
    yield Section(key="figures", title=_("Watt-hours"), note=figures.note)
    for name, item in figures.items.items():
        row: FigureRow = figures[name]
        if isinstance(item, Result):
            row = replace(row, number=watt_hours(item.value, figures.world.style), unit="Wh")
        if row.number != "–" or row.act is not None:
            yield row


def _details(world: World, found: Flight) -> dict[str, str]:
    """Show the arithmetic, or that case and cells disagree."""
    details = {"all_joined": _("Joined by a lead they count as one.")}
    if found.differs:
        details["each"] = _(
            "The case says another figure than volts times amp-hours: the marked one counts. Check both."
        )
    elif found.cards:
        same, other = (write(found.cards[0], world.style) for write in (confirmed, arithmetic))
        cells = _("By its cells: {sum}. The label counts.").format(sum=other) if other else ""
        details["each"] = f"{same}." if same else cells
    return details


def _rules(world: World, found: Flight) -> Iterator[Block]:
    yield Section(key="rules", title=_("Before the flight"))
    for place, rule in enumerate(found.rules):
        yield Words(key=f"rule {place}", text=rule.text("text"))
    today = world.now.date().isoformat()
    yield Words(key="edition", text=rules_read(found, today), tone="second")
    yield signs_line()
