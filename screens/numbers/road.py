"""Gearing and speed on any road: a step along the curve, a grade, a wind, every charge, and which limit rules where."""

from collections.abc import Iterator

from logic.answers.push import Pushing, pushing
from screens.asking import asked, stepper, value_line
from screens.blocks import Block, Picture, Section, Words
from screens.figure_page import Figures, answered, filled
from screens.numbers.over_speed import middle_of, not_drawn, over_speed
from screens.showing import fold, once, once_each
from screens.tongue import _, texts
from screens.words import Style
from screens.world import World

FIRST = ("top_loaded", "top_loaded_full", "top_loaded_empty", "time_20", "load", "acceleration")
ABOVE = ("push_at", "angular_speed_at")
"""Figures that do not ask for the road: they stand with the gearing."""


def road_note(world: World) -> str:
    """Return which road is asked about, "" for a level one without wind."""
    said = []
    for key, quantity, text in (
        ("ask.grade", "share", _("grade {value}")),
        ("ask.wind", "speed", _("headwind {value}")),
    ):
        value = asked(world, key)
        if value:
            said.append(text.format(value=world.style.number(value, quantity)))
    return ", ".join(said)


def road_blocks(world: World) -> Iterator[Block]:
    """Yield what is asked of the road, push and load on it, then the figures; their keys begin with "road"."""
    style = world.style
    answer, before = answered(world, pushing, world.person.rider, world.answers)
    speed = style.number(asked(world, "ask.speed"), "speed")
    labels = filled(world, texts("push")["labels"])

    def figures(title: str, *names: str) -> Iterator[Block]:
        # What is folded is not read: what is not read is not worked out.
        items = {name: answer.items[name] for name in names if name in answer.items}
        details = {name: middle_of(item, style, _("{value} as entered.")) for name, item in items.items()}
        shown = Figures(world, items, labels, before=before, details=details, faults=answer.faults)
        yield Section(f"road {title}", title, shown.note)
        yield from (once(shown[name], f"road {name}") for name in once_each(items))

    yield stepper(world, "ask.speed", _("Along the curve"))
    yield stepper(world, "ask.grade")
    yield stepper(world, "ask.wind")
    yield from _chart(answer, style, speed)
    yield from _rules(answer, style)
    yield from figures(_("On this road"), *FIRST)
    rest = [name for name in labels if name not in (*FIRST, *ABOVE)]
    yield from fold(
        world, "road all", _("All figures on this road"), lambda: figures(_("Starts, amps and heat"), *rest)
    )
    yield value_line(world, "ask.axle")


def _rules(answer: Pushing, style: Style) -> tuple[Block, ...]:
    """Return which limit rules where."""
    limits = texts("push")["limits"]
    parts = [
        _("{limit} up to {speed}").format(limit=limits[part.limit], speed=style.number(part.high, "speed"))
        for part in answer.stretches
    ]
    if not parts:
        return ()
    said = _("What limits at full throttle: {parts}.").format(parts=_(". Then ").join(parts))
    return (Words("road rules", said),)


def _chart(answer: Pushing, style: Style, speed: str) -> tuple[Block, ...]:
    """Draw push by charge against the road load, and where one stands on it."""
    if answer.curves is None:
        return (not_drawn("road chart"),)
    curves, cursor = answer.curves, answer.curves.cursor
    # Three numbers would stand over each other: those of a full and an empty pack are in the rows.
    met = [
        (point, style.plain(style.scale(point[0], "speed")) if charge == "nominal" else "")
        for charge, point in curves.meetings.items()
        if point is not None
    ]
    charge = texts("push")["charge"]
    lines = (*((charge[name], points) for name, points in curves.push.items()), (_("load"), curves.load))
    at = None if cursor is None else cursor[0]
    picture = over_speed(style, answer, lines, "force", _("Push, {unit}"), met, at)
    said = ""
    if cursor is not None:
        push, load = (style.number(force, "force") for force in cursor[1:])
        said = _("At {speed}: push {push}, load {load}.").format(speed=speed, push=push, load=load)
    return (
        Picture("road chart", picture, _("Push by charge and road load over speed.")),
        Words("road at", said, bold=True, reserve=1),
    )
