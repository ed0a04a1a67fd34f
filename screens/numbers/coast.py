"""A coast to standstill: the rolling coefficient from distance, from time, or from both."""

from collections.abc import Mapping

from logic.answers.drag import best_rolling, coasting
from logic.answers.reading import Item, Open, Result
from logic.board import Value, board_fields
from logic.errors import InputError
from screens.acts.entering import Put
from screens.blocks import PLAIN, RIGHT, Block, Button, Verdict, Words
from screens.figure_page import Figures, answered, figure_page
from screens.page import Page
from screens.showing import sentences, why, working
from screens.tongue import _, texts
from screens.words import refusal
from screens.world import World

KEY = "load.rolling"
WAYS = ("by_distance", "by_time")
LABELS = texts("drag")["labels"]


def coast_page(world: World) -> Page:
    """Return the coefficient by each way that was entered, and the way to lay their mean over the board."""
    items, before = answered(world, coasting, world.person.rider, world.answers)
    figures = Figures(world, items, LABELS, before)
    offer, refused = _offer(world, items)
    return figure_page(
        world,
        "numbers.coast",
        crown=_verdict(world, items),
        picture=refused,
        figures=figures,
        advice=tuple(sentences("how", texts("drag")["coast"].values(), tone="second")),
        offer=offer,
    )


def _verdict(world: World, items: Mapping[str, Item]) -> Verdict:
    """Return the mean of what was found; before that, what comes first."""
    told = [item for name in WAYS if isinstance(item := items[name], Result)]
    if not told:
        lacks = items[WAYS[0]]
        assert isinstance(lacks, Open)  # noqa: S101  (none is told)
        text, act = why(lacks, world.style), working(lacks, LABELS[lacks.name])
        return Verdict(key="verdict", word=_("Not measured yet"), text=text, form=PLAIN, act=act, lines=2)
    both = _("Mean of the ways by distance and by time.")
    return Verdict(
        key="verdict",
        word=_("Rolling {coefficient}").format(coefficient=world.style.plain(_mean(items))),
        text=both if len(told) > 1 else LABELS[told[0].name],
        form=RIGHT,
        act=working(told[0], LABELS[told[0].name]),
        lines=2,
    )


def _mean(items: Mapping[str, Item]) -> float:
    found = best_rolling(dict(items))
    return 0.0 if found is None else float(found)


def _offer(world: World, items: Mapping[str, Item]) -> tuple[Button | None, tuple[Block, ...]]:
    """Return the bar that tries the mean, unless the board has it or cannot have it."""
    found, present = _mean(items), world.board.load.rolling
    if not found or (present is not None and present.si == found):
        return None, ()
    try:
        board_fields()[KEY].check(found)
    except InputError as problem:
        return None, (Words(key="refused", text=refusal(problem, world.style), tone="bad", bold=True),)
    text = _("Try {coefficient} on the board").format(coefficient=world.style.plain(found))
    return Button(text, Put(KEY, Value(found, "measured", note="coast"))), ()
