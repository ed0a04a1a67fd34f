"""The numbers that belong to an item of a run, each a card that opens its working."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

from logic.answers.checks import figures
from logic.answers.reading import Result
from logic.board import Board
from logic.checks.lists import Item
from logic.person import Person
from screens.widgets.result import Result as ResultCard
from screens.words import Style, offer, refusal, sureness
from screens.words.checks import FIGURES

if TYPE_CHECKING:
    from screens.ride.run import RunPage


def figure_cards(item: Item, page: "RunPage", *, big: bool) -> Iterator[ResultCard]:
    """Yield a card for each figure of an item of a run; `big` is for reading at arm's length."""
    style = page.style
    for name, found in figures(item.figures, page.state.saved, page.state.person).items():
        card = ResultCard(label=FIGURES[name], compact=not big, has_working=isinstance(found, Result))
        card.role = "big" if big else "value"
        if isinstance(found, Result):
            unit = page.state.person.scale_unit if name.startswith("pull") else ""
            shown = style.shown(found.value, found.quantity, unit=unit)
            card.value, card.unit, card.standing = shown.number, shown.unit, sureness(found)
            card.bind(
                on_open=lambda *_, found=found: page.leave_for(
                    "working", item=found, label=FIGURES[found.name]
                )
            )
        else:
            card.value = "–"
            card.detail = offer(found.missing) if found.missing else refusal(found.problem, style)
        yield card


def said_of(item: Item, board: Board, style: Style, person: Person) -> str:
    """Return what is said aloud of an item: first its hazard, then the item, its figures and its tool."""
    parts = [
        f"{item.care_word}. {item.care}" if item.care else "",
        item.spoken or f"{item.action}. {item.state}.",
    ]
    for name, found in figures(item.figures, board, person).items():
        if isinstance(found, Result):
            unit = person.scale_unit if name.startswith("pull") else ""
            parts.append(f"{FIGURES[name]}: {style.shown(found.value, found.quantity, unit=unit)}.")
    parts.append(f"{item.tool}." if item.tool else "")
    return " ".join(part for part in parts if part)
