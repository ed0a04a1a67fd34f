"""Stopping: the whole way of a stop, what holds the brake down, and what the pack takes back."""

from dataclasses import replace

from logic.answers.first_stop import first_stop
from logic.answers.reading import Open
from logic.answers.stopping import Stopping, stopping
from screens.asking import value_of
from screens.blocks import Block, Notice, Picture, Section, Words
from screens.figure_page import figure_page, figures_of
from screens.numbers.first_figures import STOP, near, told_outcome
from screens.numbers.over_speed import not_drawn, over_speed
from screens.page import Page
from screens.tongue import _, texts
from screens.words import Style
from screens.world import World

HEAD = "stop_dry_design"
WORDS = texts("stopping")


def stopping_page(world: World) -> Page:
    """Return the dry stop of someone who does not expect it, then the other stops, and what the pack allows."""
    answer, figures = figures_of(world, "numbers.stopping", stopping, world.person.rider, world.answers)
    any_charge = value_of(world, "ask.rest_voltage") is None
    details = {HEAD: WORDS["said"]["any charge"]} if any_charge else {}
    figures = replace(figures, labels={**_stops(), **figures.labels}, details=details)
    first, _first = near(figures, STOP, first_stop, texts("first")["stop"])
    return figure_page(
        figures,
        crown=told_outcome(figures.crown(), answer.items[HEAD]),
        near=first,
        note=_warning(answer, WORDS["said"]["a full pack" if any_charge else "this pack"]),
        picture=(
            Section("chart head", _("Stopping distance over speed")),
            *_chart(world.style, answer),
            *_rules(answer, world.style),
        ),
    )


def _runs_on(answer: Stopping) -> bool:
    first = answer.items[HEAD]
    return isinstance(first, Open) and first.outcome == "does not stop"


def _warning(answer: Stopping, pack: str) -> tuple[Block, ...]:
    """Return what takes the brake away; without a warning, what the figures hold for."""
    if _runs_on(answer):
        return (Notice("warning", "warning", WORDS["said"]["runs on"]),)
    if answer.cuts_out:
        return (Notice("warning", "warning", WORDS["said"]["cuts out"].format(pack=pack)),)
    text = _("Motors alone, no foot brake. The slower of controller, pack and one braked axle decides.")
    return (Words("assumed", text, tone="second"),)


def _stops() -> dict[str, str]:
    """Return the label of each stop, by its ground and how one reacts."""
    return {
        f"stop_{surface}_{reaction}": f"{ground.capitalize()}, {acting}"
        for surface, ground in WORDS["surface"].items()
        for reaction, acting in WORDS["reaction"].items()
    }


def _rules(answer: Stopping, style: Style) -> tuple[Block, ...]:
    """Return what holds the brake down, from the asked speed to a stop."""
    parts = [
        _("{ruler} from {high} down").format(
            ruler=WORDS["rulers"][part.ruler], high=style.number(part.high, "speed")
        )
        + (_(" to {low}").format(low=style.number(part.low, "speed")) if part.low else "")
        for part in reversed(answer.stretches)
    ]
    if not parts or _runs_on(answer):
        return ()
    said = _("What holds the brake down on a dry road: {parts}.").format(parts=_(". Then ").join(parts))
    return (Words("rules", said),)


def _chart(style: Style, answer: Stopping) -> tuple[Block, ...]:
    """Draw the whole way over speed, by surface."""
    lines = [(WORDS["surface"][surface], points) for surface, points in answer.curves.items()]
    if not lines:
        never = _("Nothing to draw: it does not stop on this slope.")
        return (Words("chart", never, tone="second") if _runs_on(answer) else not_drawn(),)
    picture = over_speed(style, answer, lines, "way", _("Stopping distance, {unit}"))
    return (Picture("chart", picture, _("Stopping distance over speed, by surface.")),)
