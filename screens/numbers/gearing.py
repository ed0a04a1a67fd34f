"""Gearing and speed: change a value and see what it does, against the saved board."""

from collections.abc import Iterator, Mapping

from logic.answers.first_push import first_push
from logic.answers.first_speed import first_speed
from logic.answers.gearing import Gearing, gearing
from logic.answers.reading import Item, Result
from logic.answers.run import Points
from screens.asking import asked, refused_now, stepper, value_line
from screens.blocks import Block, Figure, Picture, Section
from screens.figure_page import filled
from screens.nearer import following, lacks_values
from screens.numbers.first_figures import SPEED as ROUNDS
from screens.numbers.first_figures import nearer_speed, speed_crown
from screens.numbers.over_speed import middle_of, not_drawn, over_speed
from screens.numbers.road import road_blocks, road_note
from screens.page import Page
from screens.pictures.strokes import Point
from screens.showing import figure, fold, once_each, shared_sureness
from screens.tongue import _, texts
from screens.trying import faults_said, trial_foot, values_heading, values_of
from screens.ways import way_from
from screens.words import Style
from screens.world import World

STEPPED = ("drive.motor_teeth", "drive.wheel_teeth")
VALUES = values_of("numbers.gearing")
SPEED = "ask.speed"
CROWN = "top_loaded"
FIRST = ("top_nominal", "push_start", "climb_start", "ratio", "push_at")
"""Figures that stand open; the rest are under "All figures"."""


def gearing_page(world: World) -> Page:
    """Return the top speed, then teeth, chart, figures and values."""
    speed = asked(world, SPEED)
    rider = world.person.rider
    answer = world.kept(gearing, world.board, rider, speed)
    saved = (
        world.kept(gearing, world.saved, rider, speed).items if world.trial and not world.is_scratch else {}
    )
    grey = bool(answer.faults) or refused_now(world)
    labels, holds = filled(world, texts("gearing")["items"]), texts("gearing")["details"]

    # What is folded is not read: what is not read is not worked out.
    items = {name: answer.items[name] for name in (CROWN, *FIRST)}
    said = once_each(items)

    first = (
        world.kept(first_speed, world.board, rider)
        if lacks_values(items[CROWN]) and not answer.faults
        else None
    )
    rough: Mapping[str, Item] = {}
    if first is not None:
        # What lacks a value waits folded: the best speed so far says what is asked for.
        rough = world.kept(first_push, world.board, rider, speed)
        items |= {name: rough[name] for name in FIRST if name in rough}
        said = tuple(name for name in FIRST if isinstance(items[name], Result))

    def shown(name: str, *, row: bool = True, reserve: bool = False) -> Block:
        item = rough.get(name) or answer.items[name]
        usual, band = _("{value} as usual."), _("{value} if the printed Kv is right.")
        words = middle_of(item, world.style, usual if name in rough else band)
        detail = f"{words} {holds.get(name, '')}".strip()
        before = saved.get(name)
        return figure(
            world, item, labels[name], before=before, detail=detail, grey=grey, row=row, reserve=reserve
        )

    def rest() -> Iterator[Block]:
        every = once_each(items | dict(answer.items))
        return (shown(name) for name in every if name not in (CROWN, *said))

    # Before there is a speed who wants the range finds it without a swipe.
    far = way_from("numbers.gearing", "range")
    figures: tuple[Block, ...] = (
        *_chart(answer, world.style, wanted=first is None),
        *([Section("more", _("More answers"), shared_sureness(items))] if said else []),
        *(shown(name, reserve=True) for name in FIRST if name in said),
        *fold(world, "all", _("All figures"), rest),
        *fold(
            world,
            "road",
            _("Hills, wind and every charge"),
            lambda: tuple(road_blocks(world)),
            note=road_note(world) or _("Curves, starts, and what limits where."),
        ),
        *(() if first is not None else (far,)),
    )
    values: tuple[Block, ...] = (
        Section("values", values_heading(world)),
        *_values(world, all_open=first is None),
    )
    blocks: tuple[Block, ...] = (
        *(() if first is None else (*nearer_speed(world, first), far)),
        *faults_said(world, answer.faults),
        *(stepper(world, key) for key in STEPPED),
        # What is asked for comes first while a speed is not known.
        *((*figures, *values) if first is None else (*values, *figures)),
    )
    crown = (
        shown(CROWN, row=False, reserve=True)
        if first is None
        else speed_crown(world, first, grey=refused_now(world))
    )
    assert isinstance(crown, Figure)  # noqa: S101  (row=False makes one)
    return Page(
        title=_("Gearing and speed"),
        crown=crown,
        blocks=blocks,
        foot=trial_foot(world, fits=not answer.faults, then=following(world, ROUNDS)),
        aside=frozenset(block.key for block in figures),
    )


def _values(world: World, *, all_open: bool) -> tuple[Block, ...]:
    """Return the values; while a speed is not known, those nobody knows without a bench wait folded."""
    # While the road is open the speed stands there.
    values = tuple(key for key in VALUES if key != SPEED or not world.args.get("open_road"))
    if all_open:
        return tuple(value_line(world, key) for key in values)
    asked = tuple(key for keys in ROUNDS for key in keys if key in values)
    later = (value_line(world, key) for key in values if key not in asked)
    return (
        *(value_line(world, key) for key in asked),
        *fold(world, "values more", _("All values"), lambda: later),
    )


def _chart(answer: Gearing, style: Style, *, wanted: bool) -> tuple[Block, ...]:
    """Draw push against road load; say why there is no chart only where one is `wanted`."""
    head = Section("chart head", _("Push against road load"))
    if not answer.drawn:
        return (head, not_drawn()) if wanted else ()
    top = answer.items[CROWN]
    met = ""
    if isinstance(top, Result):
        met = _("They meet at {speed}.").format(speed=style.plain(style.scale(top.value, "speed")))
    text = _("Push and road load over speed. {met}").format(met=met)
    picture = over_speed(style, answer, _lines(answer), "force", _("Push, {unit}"), _met(answer, style))
    return (head, Picture("chart", picture, text))


def _lines(answer: Gearing) -> Iterator[tuple[str, Points]]:
    """Yield both curves by their names; they are worked out when the first is read."""
    if answer.curves is not None:
        yield _("push at full throttle"), answer.curves.push
        yield _("road load"), answer.curves.load


def _met(answer: Gearing, style: Style) -> Iterator[tuple[Point, str]]:
    """Yield where they meet, with its speed."""
    if answer.curves is not None and answer.curves.meeting is not None:
        yield answer.curves.meeting, style.plain(style.scale(answer.curves.meeting[0], "speed"))
