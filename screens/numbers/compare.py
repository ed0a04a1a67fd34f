"""Two set-ups side by side: the saved board against its trial, or against another board."""

from collections.abc import Iterator

from logic.answers.compare import ComparedLine, Comparison, comparison
from logic.answers.reading import Item, Open, Result
from logic.board import Board
from logic.frozen import frozen
from screens.asking import page_choice, refused_now, value_line
from screens.blocks import Block, Cell, Columns, Picture, Section, Verdict, Words
from screens.figure_page import filled
from screens.numbers.over_speed import over_speed
from screens.page import Page
from screens.showing import fold, once, why, working
from screens.tongue import _, texts
from screens.trying import trial_foot, values_of
from screens.words import NO_CHANGE, Style
from screens.world import World

LABELS = {name: own or texts("pairs")["labels"][name] for name, own in texts("compare")["labels"].items()}
BETTER = texts("compare")["better"]
LESS = frozenset({"stop", "per_distance", "time_20", "climb_heat", "belt_load"})
"""Figures of which less is better."""

TRIAL = "trial"
FIRST = 5
"""Figures that stand open; the rest are under "All figures"."""
NAMED = 3
"""How much is said of one in the verdict; the rest is ticked in the rows."""
VALUES = values_of("numbers.compare")


@frozen
class Named:
    """One of the two, and what it is called."""

    board: Board
    name: str


def compare_page(world: World) -> Page:
    """Return which is better at what, both in columns, then their curves."""
    boards = {board.id: board for board in world.boards() if board.id != world.saved.id}
    tried = bool(world.trial) and not world.is_scratch
    seconds = ({TRIAL: _("The trial")} if tried else {}) | {key: board.name for key, board in boards.items()}
    if not seconds:
        return _nothing(world)
    chosen = world.args.get("second")
    key = chosen if chosen in seconds else next(iter(seconds))
    first = Named(world.board if world.is_scratch else world.saved, world.saved.name)
    # What is read of the store anew each time is the same board: its answer is kept.
    other = world.board if key == TRIAL else world.kept.same(f"board {key}", boards[key])
    second = Named(other, seconds[key])
    answer = world.kept(comparison, first.board, second.board, world.person.rider, world.answers)
    blocks = tuple(_figures(world, answer, first, second))
    drawn = world.kept(_chart, world.style, answer)
    return Page(
        title=_("Two set-ups"),
        crown=_verdict(world, answer, first, second),
        blocks=(
            page_choice("second", _("Against"), seconds.items(), key),
            *blocks,
            *drawn,
            Section("values", _("Asked of both")),
            *(value_line(world, one) for one in VALUES),
        ),
        foot=trial_foot(world),
        aside=frozenset(block.key for block in (*blocks, *drawn)),
    )


def _nothing(world: World) -> Page:
    return Page(
        title=_("Two set-ups"),
        crown=Verdict(
            _("Nothing to compare with"), _("Try another value on a page of Numbers, or save a second board.")
        ),
        foot=trial_foot(world),
    )


def _verdict(world: World, answer: Comparison, first: Named, second: Named) -> Verdict:
    """Say which is faster, and what else each is better at."""
    wins: tuple[list[str], list[str]] = ([], [])
    lines = {line.name: line for line in answer.lines}
    for name in list(BETTER)[1:]:
        place = _better(lines[name], world.style)
        if place is not None and len(wins[place]) < NAMED:
            wins[place].append(BETTER[name])
    speed, faster = lines["top_loaded"], _better(lines["top_loaded"], world.style)
    if faster is not None:
        word = _("{name} is faster").format(name=(first, second)[faster].name)
    elif speed.change is None:
        word = _("Top speed not known")
    else:
        word = _("Same top speed")
    said = [
        _("{name}: {wins}.").format(name=one.name, wins=", ".join(won))
        for one, won in zip((first, second), wins, strict=True)
        if won
    ]
    return Verdict(word, " ".join(said), grey=refused_now(world))


def _better(line: ComparedLine, style: Style) -> int | None:
    """Return which of the two is better at a figure as it is shown; None for neither."""
    if line.name not in BETTER or line.change is None or not _change(line, style):
        return None
    return int((line.change > 0) is not (line.name in LESS))


def _change(line: ComparedLine, style: Style) -> str:
    """Return the second less the first, "" where both are shown the same or one is no number."""
    if isinstance(line.first, Open) or isinstance(line.second, Open):
        return ""
    said = style.change(line.second.value, line.first.value, line.second.quantity)
    return "" if said == NO_CHANGE else said


def _figures(world: World, answer: Comparison, first: Named, second: Named) -> Iterator[Block]:
    """Yield the heads and the first figures; the rest fold."""
    lines = {line.name: line for line in answer.lines}
    heads = Columns("heads", (Cell(first.name), Cell(second.name)), head=True)
    labels = filled(world, LABELS)
    yield heads

    def row(name: str) -> Columns:
        return _row(world, lines[name], labels[name])

    names = list(LABELS)
    yield from (row(name) for name in names[:FIRST])
    yield from fold(
        world,
        "all",
        _("All figures"),
        lambda: (once(heads, "heads again"), *(row(name) for name in names[FIRST:])),
    )


def _row(world: World, line: ComparedLine, label: str) -> Columns:
    """Return one figure of both; a touch on a number opens its working."""
    better, change = _better(line, world.style), _change(line, world.style)
    cells = tuple(
        Cell(
            _text(world, item),
            working(item, label) if isinstance(item, Result) else None,
            better == place,
        )
        for place, item in enumerate((line.first, line.second))
    )
    return Columns(line.name, cells, label=label, detail=change, grey=refused_now(world))


def _text(world: World, item: Item) -> str:
    return why(item, world.style) if isinstance(item, Open) else world.style.number(item.value, item.quantity)


def _chart(style: Style, answer: Comparison) -> tuple[Block, ...]:
    """Draw push and load of both over speed."""
    named = zip((_("first"), _("second")), answer.push, answer.load, strict=True)
    curves = [
        (words, points)
        for name, push, load in named
        for words, points in ((name, push), (_("load, {name}").format(name=name), load))
        if points
    ]
    head = Section("chart head", _("Push against road load, both"))
    if not curves:
        return head, Words("chart", _("The chart needs values that are missing."), tone="second")
    picture = over_speed(style, answer, curves, "force", _("Push, {unit}"))
    return head, Picture("chart", picture, _("Push and road load of both over speed."))
