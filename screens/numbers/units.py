"""Units: type a number with any unit word, read it in the units of the trade."""

from dataclasses import replace

from logic.answers.unit_page import by_rule, in_every_unit
from logic.units import Shown
from screens.acts import Both, Turn
from screens.acts.entering import Ask
from screens.asking import refused_now, value_line, value_text
from screens.blocks import Block, Figure, FigureRow, Line, Section
from screens.figure_page import Figures
from screens.page import Page
from screens.tongue import _, texts
from screens.trying import trial_foot
from screens.world import World

KINDS = texts("unit_page")["kinds"]
FIRST = next(iter(KINDS))


def units_page(world: World) -> Page:
    """Return the kind that was typed last in every unit, then every kind."""
    kind = world.args.get("kind", FIRST)
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
        _row(place, shown, grey=refused_now(world))
        for place, shown in enumerate(in_every_unit(world.answers, kind, mark=world.style.mark))
    ]
    items = world.kept(by_rule, world.answers, kind)
    figures = Figures(world, items, texts("unit_page")["labels"])
    return (*rows, *(figures[name] for name in items))


def _row(place: int, shown: Shown, *, grey: bool) -> FigureRow:
    return FigureRow(f"unit {place}", _("In {unit}").format(unit=shown.unit), shown.number, grey=grey)
