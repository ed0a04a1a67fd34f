"""What stands on a build sheet, whatever it is written in."""

from logic.answers.checks import figures
from logic.answers.gearing import gearing
from logic.answers.reading import Item, Result
from logic.answers.tension import belt_plan
from logic.board import board_fields, groups
from logic.checks.lists import build_stages
from logic.frozen import frozen
from logic.store import Record
from screens.pictures.drive import drive
from screens.pictures.strokes import Picture
from screens.sheet.pictures import history_drawing
from screens.tongue import _, texts
from screens.words import Style, known_text, sureness
from screens.words.checks import FIGURES, check_text
from screens.words.log import entry_words
from screens.words.tension import SIDES, tension_text
from screens.words.typed import value_words
from screens.world import World

WORKED_OUT = ("target", "floor", "ceiling", "depth", "pull_target", "centre", "span")
PACK = ("full_voltage", "empty_voltage", "pack_energy")
SPEEDS = ("ratio", "top_nominal", "top_loaded")
RECENT = 12
"""Log entries and readings that a sheet shows."""


@frozen
class Part:
    """One heading with its lines: label, value, and how it is known or where it comes from; `drawn` stands over them.

    `shows` is what a drawing shows.
    """

    title: str
    lines: tuple[tuple[str, str, str], ...]
    drawn: Picture | None = None
    shows: str = ""


@frozen
class Sheet:
    """A whole sheet."""

    name: str
    made: str
    parts: tuple[Part, ...]


CLOSING = _("A record, not a promise. The maker's sheet, local law and licensed practice come first.")


def sheet(world: World, *, drawn: bool = False) -> Sheet:
    """Return the build sheet of the board in use; `drawn` with its drawings."""
    board, style = world.saved, world.style
    parts = [
        *([_drive(world)] if drawn else []),
        *_board_parts(world, style),
        _worked_out(world, style),
        _build(world),
        *(_tension(side, _readings(world, side), style, drawn=drawn) for side in board.sides),
        _recent(world, style),
    ]
    name = _("Build sheet: {name}").format(name=board.name + (_(" (example)") if board.example else ""))
    made = _("Made {time}").format(time=f"{world.now:%Y-%m-%d %H:%M}")
    return Sheet(name, made, tuple(part for part in parts if part.lines or part.drawn))


def _drive(world: World) -> Part:
    board, person = world.saved, world.person
    picture = drive(board, belt_plan(board, person), world.style, person.scale_unit)
    return Part(_("The drive, to scale"), (), picture, _("The drive to scale"))


def _board_parts(world: World, style: Style) -> list[Part]:
    parts = []
    for group, heading in groups().items():
        lines = []
        for field in board_fields().values():
            value = world.saved.value(field.key)
            if field.group == group and value is not None:
                text = value_words(field, value, style)
                lines.append((field.label, text, known_text(value)))
        parts.append(Part(heading, tuple(lines)))
    return parts


def _worked_out(world: World, style: Style) -> Part:
    board, person = world.saved, world.person
    speeds = gearing(board, person.rider, 20 / 3.6).items
    found: dict[str, Item] = {name: speeds[name] for name in SPEEDS}
    found |= figures((*WORKED_OUT, *PACK), board, person)
    lines = []
    for name, item in found.items():
        if isinstance(item, Result):
            unit = person.scale_unit if name.startswith("pull") else ""
            label = {**FIGURES, **texts("gearing")["items"]}[name]
            lines.append((label, str(style.shown(item.value, item.quantity, unit=unit)), sureness(item)))
    return Part(_("Worked out"), tuple(lines))


def _build(world: World) -> Part:
    lines = []
    for key in build_stages():
        record = world.last("check", list=key)
        of = world.checklist(key)
        if record is not None:
            lines.append((of.title, check_text(record.body), f"{record.at:%Y-%m-%d}"))
        else:
            lines.append((of.title, _("not done in the app"), ""))
    return Part(_("Build"), tuple(lines))


def _readings(world: World, side: str) -> tuple[Record, ...]:
    records = world.entries("tension", 4 * RECENT)
    return tuple([one for one in records if one.body.belt == side][:RECENT][::-1])


def _tension(side: str, readings: tuple[Record, ...], style: Style, *, drawn: bool) -> Part:
    lines = tuple((f"{one.at:%Y-%m-%d %H:%M}", tension_text(one, style), "") for one in readings)
    picture = history_drawing(readings, style) if drawn else None
    shows = _("Tension history, oldest at the left")
    return Part(_("Tension, {side} belt").format(side=SIDES[side]), lines, picture, shows)


def _recent(world: World, style: Style) -> Part:
    lines = []
    for record in world.store.page(world.saved.id, limit=RECENT):
        title, detail, _icon = entry_words(record, style)
        lines.append((title, detail, ""))
    return Part(_("Last entries of the log"), tuple(lines))
