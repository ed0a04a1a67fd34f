"""Tension check by spring scale: one belt after the other, one number each, a verdict at once."""

from collections.abc import Iterator

from logic.answers.reading import Result
from logic.answers.tension import BeltPlan
from logic.board import Board
from screens.acts import Turn
from screens.belt_values import belt_first, belt_lines
from screens.blocks import Block, Button, Line, Picture, Stepper, Verdict, Words
from screens.page import Foot, Page
from screens.pictures.drive import drive
from screens.pictures.gauge import gauge, steps
from screens.pictures.strokes import Picture as Strokes
from screens.ride.belt_check import Check
from screens.showing import figure, fold, shared_sureness, working
from screens.tongue import _
from screens.trying import KEEP_THIS_BOARD, trial_note
from screens.ways import picture_if, voice_line, way_from, words_if
from screens.words import Style
from screens.words import tension as words
from screens.world import World

DEPTHS = (0.0005, 0.02)
"""Depths that can be asked for."""
LATEST = 8
"""Readings that are set side by side."""


def tension_check(world: World) -> Page:
    """Return the page of one belt: what to pull for, and what the pull tells."""
    first = belt_first(world)
    if first is not None:
        return first
    check = Check(world)
    number = check.sides.index(check.side) + 1
    many = len(check.sides) > 1
    return Page(
        title=_("{belt}, {number} of {all}").format(belt=check.name, number=number, all=len(check.sides))
        if many
        else _("Tension check"),
        crown=crown(check),
        blocks=tuple(blocks(check)),
        foot=Foot(main=main_bar(check), entry=check.entry),
        aside=frozenset({"drive", "locked", "depth", "depth words", "figures", *words.ITEMS}),
        back=Turn({"side": check.sides[number - 2], "_moved": None}) if number > 1 else None,
        places=False,
        card=check.side,
        say=spoken(check),
    )


def crown(check: Check) -> Verdict:
    """Return the verdict with the tension; before there is one, what the scale should read."""
    found, style = check.told, check.world.style
    if not check.word:
        word = found.reads or _("Pull {depth} aside").format(depth=check.depth)
        text = found.tension or found.certainty or words.aim_text(check.plan, style, check.entry.unit)
        return Verdict(word, text, lines=2)
    return Verdict(
        found.verdict,
        found.reads,
        form=words.form_of(check.word),
        sign=words.SIGNS.get(check.word, ""),
        lines=2,
    )


def main_bar(check: Check) -> Button:
    """Return the main bar: a belt outside its window is adjusted and measured again."""
    if check.world.is_scratch:
        return Button(_("Keep this board"), KEEP_THIS_BOARD)
    if check.wrong and check.can_save:
        return Button(_("Adjust, measure again"), check.record(Turn({"_moved": check.told.move})))
    return Button(_save_text(check, ""), check.save(), _("Type what the scale reads."))


def _save_text(check: Check, how: str) -> str:
    what = _("Save") if len(check.sides) == 1 else _("Save {side}").format(side=words.SIDES[check.side])
    on = (
        _(", go to {side}").format(side=words.SIDES[check.sides[-1]]) if check.side != check.sides[-1] else ""
    )
    return f"{what}{how}{on}"


def blocks(check: Check) -> Iterator[Block]:
    """Yield what stands under the verdict, the most wanted first."""
    yield from _what_to_do(check)
    yield from _what_it_tells(check)
    yield from belt_lines(check.world, check.plan)
    yield _depth(check)
    yield Words(
        "depth words",
        _("Another depth asks for another pull: the belt tension stays the same."),
        tone="second",
    )
    yield way_from("ride.tension", "set", side=check.side)
    yield voice_line(check.world, "say", _("Say target and verdict aloud"), spoken(check))
    yield from words_if("hint", check.world.args.get("_hint"), tone="second")
    yield from _drive(check)
    note = check.world.kept(shared_sureness, check.plan.items)
    yield from fold(check.world, "figures", _("All figures"), lambda: tuple(_figures(check)), note)


def _what_to_do(check: Check) -> Iterator[Block]:
    world, found = check.world, check.told
    yield from trial_note(world, _("A trial is open: this check uses the saved board."))
    if found.move:
        yield Words("move", found.move, role="lead", bold=True)
        if check.can_save:
            yield Line("as it is", _save_text(check, _(" as it is")), icon="save", act=check.save())
    elif check.pull is None and world.args.get("_moved"):
        yield Words("moved", world.args["_moved"], role="lead", bold=True)
    if not found.reads:
        yield Words("method", words.method_text(check.depth), role="lead")


def _what_it_tells(check: Check) -> Iterator[Block]:
    found, plan = check.told, check.plan
    known = None if check.last is None else check.last.body.tension
    drawn = gauge(plan, check.reading, known, check.world.style)
    yield from picture_if("gauge", drawn, _gauge_text(check))
    yield from words_if("tension", check.word and found.tension, role="lead", bold=True)
    yield from words_if("change", found.change, role="lead", bold=True)
    yield from words_if("certainty", check.word and found.certainty)
    yield Words("last", _last_text(check), tone="second")
    yield from _latest(check)
    item = plan.items["target"] if check.reading is None else check.reading.tension
    if isinstance(item, Result):
        title = _("Working of this reading") if check.reading is not None else _("Working of the target")
        yield Line("working", title, icon="sum", act=working(item, words.ITEMS[item.name]))


def _drive(check: Check) -> Iterator[Block]:
    world, plan, style = check.world, check.plan, check.world.style
    picture = world.kept(_drawn, check.board, plan, style, check.entry.unit, check.side)
    text = _("The drive to scale, with the pull at the middle of the free span.")
    yield from picture_if("drive", picture, text)
    yield Words("locked", words.locked_text(plan, style, check.entry.unit))
    yield from words_if("notes", words.plan_notes(plan, style), bold=True)


def _drawn(board: Board, plan: BeltPlan, style: Style, unit: str, side: str) -> Strokes | None:
    return drive(board, plan, style, unit, mirrored=side == "right")


def _figures(check: Check) -> Iterator[Block]:
    for name, item in check.plan.items.items():
        if name in ("wrap", "depth"):
            continue
        unit = check.entry.unit if name.startswith("pull") else ""
        yield figure(check.world, item, words.ITEMS[name], unit=unit)


def _gauge_text(check: Check) -> str:
    window, style = check.plan.window, check.world.style
    edges = (
        ""
        if window is None
        else _("Window {low} to {high}").format(
            low=style.number(window.floor, "force"), high=style.number(window.ceiling, "force")
        )
    )
    return f"{edges}. {check.told.tension}".strip(". ")


def _last_text(check: Check) -> str:
    if check.last is None:
        return _("First reading of this belt.")
    return _("Last time {tension}, {ago}.").format(
        tension=words.tension_text(check.last, check.world.style),
        ago=words.ago(check.last.at, check.world.now),
    )


def _latest(check: Check) -> Iterator[Block]:
    """Set the last readings of this belt since it was fitted side by side over its window."""
    world = check.world
    forces = [record.body.tension for record in world.log.readings(check.side)][-LATEST:]
    window = check.plan.window
    picture = steps(forces, window.floor if window else 0.0, window.ceiling if window else 0.0, world.style)
    if picture is not None:
        unit = world.style.shown(1.0, "force").said
        title = _("Last readings of this belt, {unit}").format(unit=unit)
        numbers = ", ".join(world.style.shown(force, "force").number for force in forces)
        yield Words("latest title", title, tone="second")
        yield Picture("latest", picture, numbers)


def _depth(check: Check) -> Stepper:
    depth, (low, high) = check.plan.depth, DEPTHS

    def to(sign: int) -> Turn | None:
        if depth is None:
            return None
        wanted = min(max(depth + sign * check.plan.step, low), high)
        return None if wanted == depth else Turn({"depth": wanted})

    return Stepper("depth", _("Pull depth"), check.depth, less=to(-1), more=to(1))


def spoken(check: Check) -> str:
    """Return what is said aloud: what to pull for; once a number stands, what it tells."""
    found = check.told
    if not found.reads:
        pull = _("{belt}. Pull {depth} aside.").format(belt=check.name, depth=check.depth)
        return f"{pull} {words.aim_text(check.plan, check.world.style, check.entry.unit)}"
    verdict = f"{found.verdict.capitalize()}." if found.verdict else ""
    return " ".join(
        part for part in (found.reads, found.tension and f"{found.tension}.", verdict, found.move) if part
    )
