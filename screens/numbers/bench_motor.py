"""Motor from the bench: Kv from a spin-up, resistance from volts and amps, pole pairs from magnets."""

from collections.abc import Mapping

from logic.answers.bench_motor import bench_motor, mixings, to_lay_over
from logic.answers.reading import Item, Open, Result
from logic.board import Value
from screens.acts import Both
from screens.acts.entering import Put
from screens.blocks import PLAIN, RIGHT, UNSURE, Button, Notice, Verdict
from screens.figure_page import figure_page, figures_of, filled
from screens.page import Page
from screens.showing import why, working
from screens.tongue import _, texts
from screens.ways import words_of
from screens.world import World

SHORT = {"kv": _("Kv {value}"), "resistance": _("{value}"), "pole_pairs": _("{value} pole pairs")}
"""How each stands in the verdict."""
WORDS = texts("bench_motor")
LABELS = WORDS["labels"]


def bench_motor_page(world: World) -> Page:
    """Return what was measured in one verdict, the figures, and the way to lay it over the board."""
    items, figures = figures_of(world, "numbers.bench_motor", bench_motor, world.answers)
    worst = mixings()[0]
    error = world.style.number(abs(worst.error), "share", 2)
    return figure_page(
        figures,
        crown=_verdict(world, items),
        note=(Notice("safe", "warning", WORDS["said"]["safe"]),),
        advice=words_of(
            filled(world, WORDS["convention"], taken=worst.taken, meant=worst.meant, error=error),
            tone="second",
        ),
        offer=_offer(world, items),
    )


def _verdict(world: World, items: Mapping[str, Item]) -> Verdict:
    """Return what the bench tells so far, and what comes next."""
    told = [(name, item) for name in SHORT if isinstance(item := items[name], Result)]
    lacks = next((item for name in SHORT if isinstance(item := items[name], Open)), None)
    word = ", ".join(
        SHORT[name].format(value=world.style.number(item.value, item.quantity)) for name, item in told
    )
    act = working(lacks, LABELS[lacks.name]) if lacks is not None else working(told[0][1], LABELS[told[0][0]])
    return Verdict(
        word or _("Not measured yet"),
        "" if lacks is None else why(lacks, world.style),
        form=PLAIN if not told else RIGHT if lacks is None else UNSURE,
        act=act,
        lines=2,
    )


def _offer(world: World, items: Mapping[str, Item]) -> Button | None:
    """Offer what was measured, unless the board has it."""
    found = to_lay_over(world.board, dict(items))
    if not found:
        return None
    acts = tuple(Put(key, Value(float(value), "measured")) for key, value in found.items())
    return Button(_("Try the measured values on the board"), Both(acts))
