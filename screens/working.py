"""The working of one result: what it is, what it rests on, each step with its source."""

from collections.abc import Iterator
from dataclasses import replace

from logic import checked
from logic.answers.reading import Result
from logic.units import GAP
from screens.blocks import Block, Section, Words
from screens.page import Page
from screens.settings.sources import source_line
from screens.showing import figure, fold
from screens.tongue import _
from screens.words import Style, sureness
from screens.words.tension import with_error
from screens.words.workings import Step, steps
from screens.world import World


def working_page(world: World) -> Page:
    """Return the result `item` under its `label`, then each step. A working is read, then left: nothing keeps it."""
    item = world.args.get("item")
    if not isinstance(item, Result):
        gone = _("Touch a number to see how it was worked out.")
        return Page(title=_("Working"), blocks=(Words("gone", gone),), places=False)
    crown = replace(figure(world, item, world.args["label"], row=False), act=None)
    if item.name == "tension" and item.band:
        crown = replace(crown, number=_measured(item, world.style))
    sure = Words("sure", _("{sureness}.").format(sureness=sureness(item)))
    return Page(
        title=_("Working"),
        crown=crown,
        blocks=(
            sure,
            *(block for place, one in enumerate(steps(item, world.style)) for block in _step(place, one)),
            *fold(world, "sources", _("What it was held against"), lambda: _sources(item)),
        ),
        places=False,
    )


def _measured(item: Result, style: Style) -> str:
    """Return a tension that was measured with its error, as the page says it that leads here."""
    assert item.band is not None  # noqa: S101  (asked before)
    said = with_error(item.value, item.band[1] - item.value, style)
    return said.replace(f"{GAP}{style.shown(item.value, item.quantity).said}", "")


def _sources(item: Result) -> Iterator[Block]:
    """Yield how many of the formulas have an outside check, then each source, to be opened."""
    of = [call.formula for call in item.calls if call.formula.mark != "step"]
    held = sum(f"{one.function.__module__}.{one.name}" in checked.held() for one in of)
    said = _("{held} of {all} formulas here have an outside check.").format(held=held, all=len(of))
    yield Words("held", said)
    keys = [*(one.source for one in of), *(one.source for one in item.inputs if one.source)]
    yield from (source_line(key) for key in dict.fromkeys(keys))


def _step(place: int, step: Step) -> Iterator[Block]:
    """Yield one step: its name and source, the formula with the numbers that go in, what comes out."""
    note = _("{source}, {standing}").format(source=step.source, standing=step.standing)
    yield Section(f"step {place}", step.title, note)
    yield Words(f"sum {place}", "\n".join((step.formula, *step.lines)))
    yield Words(f"result {place}", step.result, bold=True)
