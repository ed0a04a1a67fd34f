"""The ways to a belt's tension beside the scale: the best by its error and by what it takes, and what two tell together."""

from collections.abc import Iterator

from logic.answers.belt_together import takes, ways
from logic.answers.reading import Open, Result
from screens.acts import Act, Go, Turn
from screens.bench.calibration import calibration
from screens.bench.measure import Measure
from screens.bench.together import together_blocks
from screens.blocks import Block, FigureRow, Words
from screens.showing import why
from screens.tongue import _, texts
from screens.words.belt import percent

WAYS = texts("belt")["ways"]
ELSEWHERE = {"motor": "bench.motor", "pluck": "bench.sound"}
"""Ways with a page of their own."""


def other_ways(way: Measure) -> Iterator[Block]:
    """Yield the best way with its error, each way with what it takes, and what two of them tell together."""
    world = way.world
    known = calibration(world, way.side)
    found = world.kept(ways, way.board, world.person, known)
    if found.best:
        text = _("Best here, by what it takes: {way}, good to {share}.").format(
            way=WAYS[found.best].lower(), share=percent(found.items[found.best], way.style)
        )
        yield Words(key="best", text=text, bold=True)
    for name, item in found.items.items():
        detail = why(item, way.style) if isinstance(item, Open) else takes(name)
        if name == "pluck" and known is None and isinstance(item, Result):
            detail = _("For change, and left against right, until it is set against a pull.")
        best = _("Best here. ") if name == found.best else ""
        yield FigureRow(
            key=f"way {name}",
            label=WAYS[name],
            number=percent(item, way.style),
            detail=f"{best}{detail}",
            act=_take(name, way.side),
        )
    yield from together_blocks(world, way.side)


def _take(name: str, side: str) -> Act:
    if name in ELSEWHERE:
        return Go(ELSEWHERE[name], {"side": side})
    return Turn({"way": None if name == "scale" else name, "_at": None, "open_ways": None})
