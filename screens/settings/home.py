"""Settings: how the app is read, the rider, the tools in the hand, and what the phone may do. Each acts at once."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Any

from logic.answers.reading import RIDER
from logic.board import Value
from logic.fields import ARM, Field
from logic.person import TEXT_SCALES
from logic.tables import rows
from logic.units import quantities
from screens.acts import Go
from screens.acts.keeping import Settle
from screens.asked_value import with_refused
from screens.blocks import Block, Choice, Line, Option, Words
from screens.page import Page
from screens.showing import fold
from screens.tongue import _, texts
from screens.ways import way_from
from screens.words import KNOWN
from screens.world import World

ABOUT = texts("pages")["said"]["about"]


def settings_page(world: World) -> Page:
    """Return the settings that people change, the others in folds."""
    return Page(
        title=_("Settings"),
        blocks=(
            *_reading(world),
            *_person(world),
            *fold(world, "tools", _("Tools"), lambda: _tools(world), _("Scale, depth, hex key")),
            *fold(world, "phone", _("Voice, notes and feel"), lambda: _phone(world)),
            way_from("settings", "sources"),
            Words("about", ABOUT, tone="second"),
            way_from("settings", "licences"),
        ),
        places=False,
    )


def _choice(world: World, name: str, label: str, options: Iterable[tuple[Any, str]]) -> Choice:
    """Return a choice of a setting that the person has a field for."""
    present = getattr(world.person, name)
    said = tuple(Option(text, Settle({name: one}), one == present) for one, text in options)
    return Choice(name, label, said)


def _on_off(world: World, name: str, label: str) -> Choice:
    return _choice(world, name, label, ((True, _("On")), (False, _("Off"))))


def _reading(world: World) -> Iterator[Block]:
    yield _theme(world)
    sizes = ((scale, f"{scale:.0%}".replace("%", "\u202f%")) for scale in TEXT_SCALES)
    yield _choice(world, "text", _("Text size"), sizes)
    yield _choice(world, "system", _("Units"), (("metric", _("Metric")), ("inch", _("Inch and pound"))))
    yield _choice(world, "mark", _("Decimal mark"), ((".", _("Point: 1.5")), (",", _("Comma: 1,5"))))


def _theme(world: World) -> Choice:
    """Return the themes. Sun is apart: it is on for a while, then the one before comes back."""
    person = world.person
    names = (("day", _("Day")), ("night", _("Night")), ("phone", _("As phone")))
    usual = tuple(
        Option(text, Settle({"theme": name, "sun": False}), not person.sun and person.theme == name)
        for name, text in names
    )
    sun = Option(_("Sun"), Settle({"sun": True}), person.sun or person.theme == "sun")
    return Choice("theme", _("Theme"), (*usual, sun))


def _person(world: World) -> Iterator[Block]:
    person = world.person
    rider = Line("rider", _("Rider with helmet and bag"), act=Go("board.value", {"key": RIDER.key}))
    yield _value(world, rider, person.rider, RIDER, f"board/{RIDER.key}")
    yield way_from("settings", "lists")
    yield way_from("settings", "files")


def _value(world: World, row: Line, value: Value | None, field: Field, typed: str) -> Line:
    """Return the row of a value with how it is known, or with what was typed and not used."""
    if value is None:
        row = replace(row, value=_("not set"))
    else:
        shown = world.style.typed(float(value.si), field.quantity, value.typed_unit)
        row = replace(row, value=shown, detail=KNOWN[value.known])
    return with_refused(world, row, typed)


def _tools(world: World) -> Iterator[Block]:
    tools = rows("measuring_tools")
    scales = ((row.text("name"), row.text("label")) for row in tools if "scale_error" in row)
    yield _choice(world, "scale", _("Scale for the pull"), scales)
    units = ((unit.shown, unit.shown) for unit in quantities()["force"].units)
    yield _choice(world, "scale_unit", _("The scale reads"), units)
    depths = ((row.text("name"), row.text("label")) for row in tools if "depth_error" in row)
    yield _choice(world, "depth_tool", _("Tool for the depth"), depths)
    act, assumed = Go("bench.joint_value", {"key": ARM.key}), _("a usual length is assumed")
    arm = Line("arm", _("Arm of your hex key"), assumed, act=act)
    yield _value(world, arm, world.person.key_arm, ARM, f"value/{ARM.key}")


def _phone(world: World) -> Iterator[Block]:
    yield _on_off(world, "say", _("Say items aloud"))
    yield _on_off(world, "bench", _("Bench view: large text in a run"))
    yield _on_off(world, "vibrate", _("Vibrate on taps"))
    yield _on_off(world, "fade", _("Fade from page to page"))
    yield _on_off(world, "remind", _("One note a day at most, only when a check is late"))
