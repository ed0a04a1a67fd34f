"""A coast to standstill: the rolling coefficient from distance, from time, or from both."""

from collections.abc import Mapping

from logic.answers.drag import best_rolling, coasting
from logic.answers.reading import Item, Open, Result
from screens.blocks import RIGHT, Verdict
from screens.figure_page import figure_page, figures_of
from screens.page import Page
from screens.showing import sentences, why, working
from screens.tongue import _, texts
from screens.trying import try_measured
from screens.world import World

WAYS = ("by_distance", "by_time")
LABELS = texts("drag")["labels"]


def coast_page(world: World) -> Page:
    """Return the coefficient by each way that was entered, and the way to lay their mean over the board."""
    items, figures = figures_of(world, "numbers.coast", coasting, world.person.rider, world.answers)
    mean = float(best_rolling(dict(items)) or 0.0)
    told = world.style.plain(mean)
    offer, refused = try_measured(world, "load.rolling", mean, told, "coast") if mean else (None, ())
    return figure_page(
        figures,
        crown=_verdict(world, items, told),
        picture=refused,
        advice=tuple(sentences("how", texts("drag")["coast"].values(), tone="second")),
        offer=offer,
    )


def _verdict(world: World, items: Mapping[str, Item], mean: str) -> Verdict:
    """Return the mean of what was found; before that, what comes first."""
    told = [item for name in WAYS if isinstance(item := items[name], Result)]
    if not told:
        lacks = items[WAYS[0]]
        assert isinstance(lacks, Open)  # noqa: S101  (none is told)
        text, act = why(lacks, world.style), working(lacks, LABELS[lacks.name])
        return Verdict(word=_("Not measured yet"), text=text, act=act, lines=2)
    both = _("Mean of the ways by distance and by time.")
    return Verdict(
        word=_("Rolling {coefficient}").format(coefficient=mean),
        text=both if len(told) > 1 else LABELS[told[0].name],
        form=RIGHT,
        act=working(told[0], LABELS[told[0].name]),
        lines=2,
    )
