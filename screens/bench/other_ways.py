"""The ways to a belt's tension beside the scale, what a pluck was set against, and what two ways tell together."""

from collections.abc import Iterator

from logic.answers.belt_sound import Calibration
from logic.answers.belt_together import Told, takes, together, ways
from logic.answers.reading import Open, Result
from logic.answers.tension import belt_plan
from logic.answers.tension_entry import tension_entry
from logic.errors import UNREADABLE
from logic.store import Record as Entered
from screens.acts import Act, Go, Swap, Turn
from screens.acts.keeping import Record
from screens.bench.measure import Measure
from screens.blocks import Block, FigureRow, Line, Section, Words
from screens.showing import why, working
from screens.tongue import _, texts
from screens.ways import words_if
from screens.words.belt import percent
from screens.words.tension import REASONS, SAID, ago, tension_text, undo_text, with_error
from screens.world import World

SINGLE = ("scale", "pulls", "weight", "motor", "pluck")
"""Ways of one reading."""
WAYS = texts("belt")["ways"]
ELSEWHERE = {"motor": "bench.motor", "pluck": "bench.sound"}
"""Ways with a page of their own."""


def calibration(world: World, side: str) -> Calibration | None:
    """Return what a pluck of this very belt was set against; None for a belt fitted since, or if it cannot be read."""
    stored = world.store.get(f"pluck/{world.saved.id}/{side}", {})
    fitted = world.last("belt_fitted", belt=side)
    try:
        if fitted is not None and fitted.at.isoformat() > stored["at"]:
            return None
        found = Calibration(*(float(stored[name]) for name in ("factor", "pulled", "share")))
    except UNREADABLE:
        return None
    return world.kept.same(f"pluck {side}", found)


def pair(world: World, side: str) -> tuple[Entered, Entered] | None:
    """Return the two newest readings of a belt by different ways since it was fitted."""
    fitted = world.last("belt_fitted", belt=side)
    newest: list[Entered] = []
    for record in world.log.tensions:
        said = record.body
        if said.belt != side or said.method not in SINGLE or not said.comparable:
            continue
        if fitted is not None and record.id < fitted.id:
            break
        if not newest or newest[0].body.method != said.method:
            newest.append(record)
        if len(newest) == 2:  # noqa: PLR2004  (a pair)
            return newest[1], newest[0]
    return None


def together_blocks(world: World, side: str) -> Iterator[Block]:
    """Yield what two readings of this belt tell together, with the act that saves it; nothing without two."""
    two = pair(world, side)
    if two is None:
        return
    style, board = world.style, world.saved
    found = world.kept(
        together,
        board,
        world.person,
        *(
            world.kept.same(f"told {place}", Told(one.body.method, one.body.tension, one.body.error))
            for place, one in enumerate(two)
        ),
    )
    yield Section("together", _("Two ways together"))
    for place, record in enumerate(two):
        yield Line(
            f"told {place}",
            texts("belt")["ways"][record.body.method],
            ago(record.at, world.now),
            value=tension_text(record, style).split(",")[0],
        )
    reading = found.reading
    if not found.agree:
        yield Words("apart", _("These two readings do not fit: one of them is wrong."), bold=True)
        yield from words_if("advice", found.advice)
    elif reading is not None and isinstance(reading.tension, Result) and isinstance(reading.error, Result):
        both = with_error(reading.tension.value, reading.error.value, style)
        word = reading.verdict.word if reading.verdict is not None else ""
        text = _("Both fit. Together: {tension}, {word}.") if word else _("Both fit. Together: {tension}.")
        text = text.format(tension=both, word=SAID.get(word, ""))
        yield Words("mean", text, bold=True)
        if word in REASONS:
            yield Words("mean reason", REASONS[word])
        plan = world.kept(belt_plan, board, world.person)
        ids = tuple(record.id for record in two)
        entry = tension_entry(side, "together", plan, reading, world.person, means=ids)
        yield Line(
            "save both",
            _("Save what both tell"),
            icon="save",
            act=Record(
                entry,
                (Swap("bench.saved", gather={"ids": ("_saved",)}),),
                key="_saved",
                undo=undo_text(_("Belt tension")),
            ),
        )
    item = reading.tension if reading is not None else found.apart
    if isinstance(item, Result):
        yield Line(
            "both working",
            _("Working of both"),
            icon="sum",
            act=working(item, texts("belt")["bench"][item.name]),
        )


def other_ways(way: Measure) -> Iterator[Block]:
    """Yield the best way with its error, each way with what it takes, and what two of them tell together."""
    world = way.world
    known = calibration(world, way.side)
    found = world.kept(ways, way.board, world.person, known)
    if found.best:
        text = _("Best here, by what it takes: {way}, good to {share}.").format(
            way=WAYS[found.best].lower(), share=percent(found.items[found.best], way.style)
        )
        yield Words("best", text, bold=True)
    for name, item in found.items.items():
        detail = why(item, way.style) if isinstance(item, Open) else takes(name)
        if name == "pluck" and known is None and isinstance(item, Result):
            detail = _("For change, and left against right, until it is set against a pull.")
        best = _("Best here. ") if name == found.best else ""
        yield FigureRow(
            f"way {name}",
            WAYS[name],
            percent(item, way.style),
            detail=f"{best}{detail}",
            act=_take(name, way.side),
        )
    yield from together_blocks(world, way.side)


def _take(name: str, side: str) -> Act:
    if name in ELSEWHERE:
        return Go(ELSEWHERE[name], {"side": side})
    return Turn({"way": None if name == "scale" else name, "_at": None, "open_ways": None})
