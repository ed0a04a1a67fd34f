"""Pack for a flight: the verdict first, then what is asked, the figures, and the card for the counter."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.asked import Asking
from logic.answers.carrying import Flight, flight
from logic.answers.reading import Item, Result
from logic.board import Board, Value
from screens.acts import Go
from screens.acts.entering import Ask, Put
from screens.acts.outside import Share
from screens.asked import out_of_use
from screens.asking import choice, stepper, value_line
from screens.blocks import Block, Button, Choice, Figure, FigureRow, Line, Option, Section, Verdict, Words
from screens.figure_page import Figures, figure_page
from screens.page import Foot, Page
from screens.showing import sentences
from screens.tongue import _, texts
from screens.trying import board_ask, board_choice, board_line, trial_note, untried
from screens.ways import signs_line, words_if
from screens.words import flight as words
from screens.words import refusal
from screens.world import World

LABELS = {"each": _("One pack"), "all_joined": _("All packs together")}
FORMS = {"allowed, ask the airline": "right", "operator approval": "unsure"}
"""How a verdict looks; the others are a no."""
MOST = 4
"""Packs that can be said to be there."""
LINES = 3
"""Lines that the tile has room for: while answers come it hardly grows over what is answered."""


def may_fly(board: Board, asking: Asking, damaged: bool) -> Flight:  # noqa: FBT001  (as world.kept gives it)
    """Return what may fly; `damaged` is a pack that was taken out of use."""
    return flight(board, asking, damaged=damaged)


def flight_page(world: World) -> Page:
    """Return what may fly of the packs, best first, as far as the answers go. The card comes when nothing is left open."""
    still = untried(world)
    found = world.kept(may_fly, still.board, world.answers, out_of_use(world) is not None)
    items: dict[str, Item] = {"each": found.energy, "all_joined": found.all_joined}
    ask = Ask if world.is_scratch else board_ask
    figures = Figures(still, items, LABELS, "ride.flight", details=_details(world, found), ask=ask)
    page = figure_page(
        figures,
        crown=_verdict(world, found),
        note=trial_note(world),
        controls=tuple(_questions(world, found)),
        rows=lambda: _energies(figures),
        advice=tuple(_rules(world, found)),
        line=_line,
    )
    if page.foot.entry is not None:
        if page.foot.entry.key != "pack.marked_energy":
            return page
        entry = replace(page.foot.entry, label=_("Wh on one pack"))
        return replace(page, foot=replace(page.foot, entry=entry))
    card = Button(_("Show at the counter"), Go("ride.flight_card")) if found.cards else None
    return replace(page, foot=Foot(main=card)) if card is not None or world.is_scratch else page


def _line(world: World, key: str) -> Line:
    """Return a value: where no board is saved it is asked for here."""
    return value_line(world, key) if world.is_scratch else board_line(world, key)


def _questions(world: World, found: Flight) -> Iterator[Block]:
    """Yield what is asked, the most telling first; of one pack there is less to ask."""
    yield _line(world, "pack.marked_energy")
    yield _count(world)
    if found.packs is not None and found.packs > 1:
        yield choice(world, "ask.carried")
    yield board_choice(world, "pack.tested")
    pack = untried(world).board.pack
    if pack.marked_energy is None or pack.marked is not None:
        yield board_choice(world, "pack.marked")
    if found.packs is not None:
        yield stepper(world, "ask.loose")


def _count(world: World) -> Choice:
    """Return how many packs there are, written onto the board at once."""
    value = untried(world).board.pack.packs
    chosen = None if value is None else int(float(value.si))
    options = tuple(
        Option(str(count), Put("pack.packs", Value(float(count), "label"), "saved"), count == chosen)
        for count in range(1, MOST + 1)
    )
    return Choice("packs", _("How many packs"), options)


def _verdict(world: World, found: Flight) -> Verdict:
    """Return the best verdict that the answers allow; what it takes for granted leaves it open."""
    told = words.verdict_lines(found, world.style, by_cells=untried(world).board.pack.marked_energy is None)
    text = " ".join(told)
    if found.best is None:
        asks = _("How many Wh does the pack say?")
        why = refusal(found.problem, world.style) if found.problem else _("It is printed on its case.")
        return Verdict(asks, why, lines=LINES)
    outcome = found.best.outcome
    word, form = texts("packs")["flight"][outcome], FORMS.get(outcome, "wrong")
    if found.best.card and found.hopes:
        return Verdict(word, text, form="unsure", lines=LINES)
    return Verdict(word, " ".join((*told, *words.where_lines(found))), form=form, lines=LINES)


def _energies(figures: Figures) -> Iterator[Block]:
    """Yield watt-hours to a tenth: the classes end at whole ones."""
    yield Section("figures", _("Watt-hours"), figures.note)
    for name, item in figures.items.items():
        row: FigureRow = figures[name]
        if isinstance(item, Result):
            row = replace(row, number=words.watt_hours(item.value, figures.world.style), unit="Wh")
        # How many packs there are is asked above; until then they are counted as one.
        if row.number != "–" or (row.act is not None and name == "each"):
            yield row


def _details(world: World, found: Flight) -> dict[str, str]:
    """Show the arithmetic, or that case and cells disagree."""
    details = {"all_joined": _("Joined by a lead they count as one.")}
    if found.differs:
        details["each"] = texts("packs")["said"]["case differs"]
    elif found.cards:
        same, other = (write(found.cards[0], world.style) for write in (words.confirmed, words.arithmetic))
        cells = _("By its cells: {sum}. The label counts.").format(sum=other) if other else ""
        details["each"] = f"{same}." if same else cells
    return details


def _rules(world: World, found: Flight) -> Iterator[Block]:
    yield Section("rules", _("Before the flight"))
    yield from sentences("where", words.where_lines(found), bold=True)
    yield from sentences("rule", (rule.text("text") for rule in found.rules))
    yield Words("edition", words.rules_read(found, world.now.date().isoformat()), tone="second")
    yield signs_line()


def flight_card(world: World) -> Page:
    """Return the figure that counts, its arithmetic and how the packs are protected; nothing where there is no card to show."""
    title = _("Lithium-ion packs")
    board, style, today = untried(world).board, world.style, world.now.date().isoformat()
    found = world.kept(may_fly, board, world.answers, out_of_use(world) is not None)
    if not found.cards:
        none = _("There is no card to show for these packs.")
        return Page(title=title, blocks=(Words("none", none, role="title"),), places=False)
    chemistry = "" if board.pack.chemistry is None else str(board.pack.chemistry.si)
    text = words.as_text(found, "" if world.is_scratch else board.name, chemistry, style, today)
    number = words.watt_hours(words.large_energy(found), style)
    return Page(
        title=title,
        crown=Figure("energy", words.counted(found), number, unit="Wh", held_up=True),
        blocks=(
            *(
                Words(f"line {place}", line, role="lead", bold=True)
                for place, line in enumerate(words.lines(found, chemistry, style, today))
                if line
            ),
            *words_if("said", world.args.get("_said"), tone="second"),
        ),
        foot=Foot(beside=(Button(_("Send as a text"), Share(_("Packs for a flight"), text), icon="send"),)),
        places=False,
    )
