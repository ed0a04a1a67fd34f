"""At the desk and on the bench: a motor from what was measured, and a number in the units of the trade."""

from collections.abc import Mapping
from dataclasses import replace

from logic.answers.bench_motor import bench_motor, mixings, to_lay_over
from logic.answers.reading import Item, Open, Result
from logic.answers.unit_page import by_rule, in_every_unit
from logic.board import Value
from logic.units import Shown
from screens.acts import Both, Turn
from screens.acts.entering import Ask, Put
from screens.asking import refused_now, value_line, value_text
from screens.blocks import Block, Button, Figure, FigureRow, Line, Notice, Section, Verdict
from screens.figure_page import Figures, figure_page, figures_of, filled
from screens.page import Page
from screens.showing import why, working
from screens.tongue import _, texts
from screens.trying import trial_foot
from screens.ways import words_of
from screens.world import World

SHORT = {"kv": _("Kv {value}"), "resistance": _("{value}"), "pole_pairs": _("{value} pole pairs")}
"""How each stands in the verdict."""
WORDS = texts("bench_motor")
MOTOR = WORDS["labels"]
KINDS = texts("unit_page")["kinds"]
FIRST_KIND = next(iter(KINDS))


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
            filled(world, WORDS["convention"], taken=_(worst.taken), meant=_(worst.meant), error=error),
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
    act = working(lacks, MOTOR[lacks.name]) if lacks is not None else working(told[0][1], MOTOR[told[0][0]])
    return Verdict(
        word or _("Not measured yet"),
        "" if lacks is None else why(lacks, world.style),
        form="plain" if not told else "right" if lacks is None else "unsure",
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


def units_page(world: World) -> Page:
    """Return the kind that was typed last in every unit, then every kind."""
    kind = world.args.get("kind", FIRST_KIND)
    return Page(
        title=_("Units"),
        crown=Figure(
            "head", KINDS[kind], value_text(world, kind)[0], grey=refused_now(world), act=_ask(kind)
        ),
        blocks=(
            *_shown(world, kind),
            Section("kinds", _("Tap one and type: any unit word may follow the number")),
            *(_kind_line(world, key) for key in KINDS),
        ),
        foot=trial_foot(world),
        aside=frozenset({"kinds", *KINDS}),
    )


def _kind_line(world: World, key: str) -> Line:
    """Return a kind; a touch turns to it and asks for a number."""
    line = value_line(world, key)
    return replace(line, detail=line.detail if line.bad else "", act=_ask(key))


def _ask(key: str) -> Both:
    return Both((Turn({"kind": key}), Ask(key)))


def _shown(world: World, kind: str) -> tuple[Block, ...]:
    """Return the kind in every unit, and what follows by a rule of the trade."""
    rows = [
        _in_unit(place, shown, grey=refused_now(world))
        for place, shown in enumerate(in_every_unit(world.answers, kind, mark=world.style.mark))
    ]
    items = world.kept(by_rule, world.answers, kind)
    figures = Figures(world, items, texts("unit_page")["labels"])
    return (*rows, *(figures[name] for name in items))


def _in_unit(place: int, shown: Shown, *, grey: bool) -> FigureRow:
    return FigureRow(f"unit {place}", _("In {unit}").format(unit=shown.said), shown.number, grey=grey)
