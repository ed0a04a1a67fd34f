"""Wheels, bushings, trucks, deck and riser: how a board turns and what a change does; how a wheel wears."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import partial

from logic.answers.feel import LARGER, Feel, changes, feel
from logic.answers.reading import Item, Open, Result
from logic.answers.wheel import measured, wheel
from logic.tables import pick
from screens.acts.entering import Ask
from screens.asking import asked
from screens.blocks import Block, Button, Notice, Verdict, Words
from screens.figure_page import figure_page, figures_of
from screens.page import Page
from screens.showing import fold, sentences
from screens.tongue import _, texts
from screens.trying import try_measured
from screens.ways import ways_from
from screens.words import offer
from screens.words.figures import OUTCOMES
from screens.world import World

WORDS = texts("feel")
MEASURES = ("ask.deck_width", "ask.track", "ask.wheel_width")
"""What wheel bite rests on beside the board: while one is assumed it is not sure."""
WEAR = texts("wheel")
KEY = "drive.wheel_diameter"


def feel_page(world: World) -> Page:
    """Return whether a wheel bites and how tight it turns at a lean, then figures, then what a change of each part does."""
    larger = world.style.number(LARGER, "length")
    answer, figures = figures_of(
        world, "numbers.feel", feel, world.person.rider, world.answers, larger=larger
    )
    details = {**figures.details, "bushing": WORDS["bushing"][answer.bushing]}
    return figure_page(
        replace(figures, details=details, outcomes=OUTCOMES),
        crown=_bites(world, answer),
        controls=(*_warning(world, answer), "ask.lean"),
        advice=tuple(_advice(world)),
    )


def _bites(world: World, answer: Feel) -> Verdict:
    """Return whether a wheel bites at that lean; without it, how tight it turns."""
    style, radius, bite = world.style, answer.items["radius"], answer.items["bite"]
    lean = style.number(asked(world, "ask.lean"), "angle")
    turn = ""
    if isinstance(radius, Result):
        turn = _("Radius {radius} at {lean} of lean.").format(
            lean=lean, radius=style.number(radius.value, "way")
        )
    if answer.bites is None:
        lacks = bite.missing if isinstance(bite, Open) else ()
        text = f"{turn} {offer(lacks)}" if lacks else turn
        act = Ask(lacks[0]) if lacks else None
        return Verdict(_("Wheel bite not known yet"), text, act=act, lines=2)
    assumed = any(key not in world.answers for key in MEASURES)
    unsure = _("Deck width or wheels are assumed.") if assumed else ""
    text = f"{turn} {unsure}".strip()
    if answer.bites:
        word = _("Wheel bite")
        if isinstance(bite, Result) and bite.value > 0.0:
            word = _("Wheel bite from {lean}").format(lean=style.number(bite.value, "angle"))
        return Verdict(word, text, form="unsure" if assumed else "wrong", lines=2)
    word = _("No wheel bite at {lean}").format(lean=lean)
    return Verdict(word, text, form="unsure" if assumed else "right", lines=2)


def _warning(world: World, answer: Feel) -> tuple[Block, ...]:
    """Return the hazard of a wheel that bites; of steadiness at speed the usual caution."""
    if answer.bites:
        return (Notice("bites", "warning", WORDS["said"]["bites"]),)
    speed = world.style.number(float(pick("pair_rules", name="wobble").cells["speed"]), "speed", 2)
    return (Notice("wobble", "caution", WORDS["said"]["wobble"].format(speed=speed)),)


def _advice(world: World) -> Iterator[Block]:
    for part, title in WORDS["parts"].items():
        yield from fold(world, part, title, partial(_changes, part), note=_("Common practice, no source."))
    yield from ways_from("numbers.feel")


def _changes(part: str) -> Iterator[Block]:
    for place, row in enumerate(changes(part)):
        yield Words(f"{part} {place}", row.text("change"), bold=True)
        yield Words(f"{part} {place} does", row.text("does"))


def wheel_page(world: World) -> Page:
    """Return the diameter of today, what it does, and how to measure it; a measured one can be laid over the board."""
    items, figures = figures_of(world, "numbers.wheel", wheel, world.person.rider, world.answers)
    offer, refused = _try_wheel(world, items["today"])
    return figure_page(
        figures,
        picture=(*refused, *_low(items)),
        advice=tuple(sentences("how", WEAR["how"].values(), tone="second")),
        offer=offer,
    )


def _low(items: Mapping[str, Item]) -> tuple[Block, ...]:
    """Say that the wheel has grown too small."""
    clearance = items["clearance"]
    least = pick("pair_rules", name="ground clearance").cells["length"]
    low = isinstance(clearance, Result) and clearance.value < least
    return (Words("low", WEAR["said"]["low"], tone="bad", bold=True),) if low else ()


def _try_wheel(world: World, today: Item) -> tuple[Button | None, tuple[Words, ...]]:
    """Return the bar that tries the measured diameter, or why the board cannot have it."""
    if not isinstance(today, Result) or not measured(world.answers):
        return None, ()
    return try_measured(world, KEY, today.value, world.style.number(today.value, "length"))
