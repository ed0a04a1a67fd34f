"""Wire and fuse between pack and controller, and the spark at the plug."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.reading import Item, Result
from logic.answers.wiring import Wiring, wiring
from logic.board import Value
from logic.tables import rows
from screens.acts import Go
from screens.acts.entering import Ask, Put
from screens.asking import on_trial, unused, value_of
from screens.blocks import Block, Stepper, Verdict, Words
from screens.figure_page import Figures, figure_page, figures_of
from screens.page import Page
from screens.showing import why, working
from screens.tongue import _, texts
from screens.ways import ways_from
from screens.world import World

WIRING = texts("packs")["wiring"]
NO_FUSE = texts("packs")["said"]["no fuse"]
AREA = "pack.lead_area"
FIRST = ("riding", "closed_low", "closed_high", "drop", "stands_short", "precharge_time")


def wiring_page(world: World) -> Page:
    """Return which fuse and how the wire fares, then the riding current both rest on."""
    answer, figures = figures_of(world, "numbers.wiring", wiring, world.answers)
    figures = replace(figures, details=_details(world))
    return figure_page(
        figures,
        crown=_verdict(world, answer),
        controls=(_gauge(world),),
        rows=lambda: _rows(world, answer, figures),
        advice=(*ways_from("numbers.wiring"),),
    )


def _verdict(world: World, answer: Wiring) -> Verdict:
    """Return which fuse fits, and how the wire fares; without a lead the current it must carry."""
    style, fuse, riding = world.style, answer.fuse, answer.items["riding"]
    item, own = answer.items["fuse"], world.board.pack.fuse
    wire, least = texts("packs")["wire"].get(answer.wire, ""), answer.least_gauge
    enough = (
        ""
        if least is None
        else _("AWG {gauge} stays cool in a closed deck.").format(gauge=style.plain(least))
    )
    text, form = f"{wire} {enough}".strip(), "plain"
    if fuse is None:
        word = _("Tap to fill in")
        if isinstance(riding, Result):
            word = _("Rides at {amps}").format(amps=style.number(riding.value, "current"))
        text = f"{why(item, style) if not isinstance(item, Result) else ''} {enough}".strip()
    elif not fuse.fits:
        word, form = _("No fuse fits this wire"), "wrong"
    else:
        form = {"cool": "right", "too thin": "wrong"}.get(answer.wire, "unsure")
        low, high = (style.shown(end, "current") for end in (fuse.low, fuse.high))
        word = _("Fuse over {low}, to {high}").format(low=low.number, high=high)
        if own is not None:
            fits = fuse.low < float(own.si) <= fuse.high
            word = (_("Fuse {own}: right") if fits else _("Fuse {own}: no, {low} to {high}")).format(
                own=style.typed(float(own.si), "current"), low=low.number, high=high
            )
            form = form if fits else "wrong"
    return Verdict(word, text, form=form, act=_way(item), lines=2)


def _way(item: Item) -> Ask | Go | None:
    act = working(item, WIRING["fuse"])
    assert act is None or isinstance(act, Ask | Go)  # noqa: S101  (a working or a question)
    return act


def _details(world: World) -> dict[str, str]:
    """Return what each figure holds for, and what the riding current is made of."""
    share, cruise = (
        "" if value is None else world.style.number(float(value.si), quantity)
        for value, quantity in (
            (value_of(world, "ask.peak_share"), "share"),
            (value_of(world, "ask.cruise"), "current"),
        )
    )
    details = texts("packs")["wiring_details"]
    return details | {"riding": details["riding"].format(share=share, cruise=cruise)}


def _rows(world: World, answer: Wiring, figures: Figures) -> Iterator[Block]:
    """Yield the riding current, the fuse it asks for, then the rest."""
    shown = list(figures.rows(FIRST))
    yield from (*shown[:2], *_fuse(world, answer, figures), *shown[2:])


def _fuse(world: World, answer: Wiring, figures: Figures) -> Iterator[Block]:
    """Yield the fuse and what else it must stand."""
    row, fuse, style = figures["fuse"], answer.fuse, world.style
    if fuse is None:
        yield row
    elif not fuse.fits:
        yield replace(row, number="–", unit="", change="", detail=NO_FUSE)
    else:
        low, high = (style.shown(end, "current").number for end in (fuse.low, fuse.high))
        yield replace(row, number=_("over {low}, to {high}").format(low=low, high=high))
        text = texts("packs")["said"]["fuse"]
        volts, amps = style.number(fuse.voltage, "voltage"), style.number(fuse.interrupt, "current")
        yield Words("fuse words", text.format(volts=volts, amps=amps), tone="second")


def _gauge(world: World) -> Stepper:
    """Return a stepper over the printed gauges. A smaller number is a thicker wire: plus steps along the numbers."""
    sizes = [(float(row.cells["gauge"]), float(row.cells["area"])) for row in rows("wire_ampacity")]
    value = world.board.value(AREA)
    place = None
    if value is not None:
        area = float(value.si)
        place = min(range(len(sizes)), key=lambda one: abs(sizes[one][1] - area))

    def to(sign: int) -> Put | None:
        wanted = len(sizes) // 2 if place is None else place + sign
        return Put(AREA, Value(sizes[wanted][1], typed_unit="mm²")) if 0 <= wanted < len(sizes) else None

    return Stepper(
        "gauge of lead",
        _("Gauge of the lead, AWG"),
        "–" if place is None else world.style.plain(sizes[place][0]),
        note=unused(world, AREA),
        trial=on_trial(world, AREA),
        less=to(-1),
        more=to(1),
        act=Ask(AREA),
    )
