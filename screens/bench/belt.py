"""Set a belt: by spring scale first, every other way behind one row, and what lies around the belt."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.reading import Result
from logic.log import BeltFitted
from screens.acts import Go, Turn
from screens.acts.keeping import Record
from screens.belt_values import belt_first, belt_lines
from screens.bench.loads import Weight
from screens.bench.measure import Measure
from screens.bench.scale import Depths, Places
from screens.blocks import Block, Button, Figure, Line
from screens.page import Foot, Page
from screens.showing import fold, sentences
from screens.tongue import _, texts
from screens.ways import way_from, words_if
from screens.words.tension import belt_name
from screens.world import World

HERE: dict[str, type[Measure]] = {"scale": Places, "pulls": Depths, "weight": Weight}
"""Ways that are taken on this page."""


def belt_page(world: World) -> Page:
    """Return the page of one belt, by the `way` that is taken; the scale until another is chosen."""
    first = belt_first(world)
    if first is not None:
        return first
    way = HERE[world.args.get("way", "scale")](world)
    page = way.page()
    return replace(
        page,
        blocks=(*_with_ways(page.blocks, way), *belt_lines(world, way.plan), *_around(way)),
        foot=_foot(way, page.foot),
        tools=_tools(way),
        back=page.back or (Turn({"way": None, "_at": None}) if world.args.get("way") else None),
    )


def _foot(way: Measure, foot: Foot) -> Foot:
    """Return the foot; what is read below takes the room of the keypad."""
    if not (way.world.args.get("open_ways") or way.world.args.get("open_around")):
        return foot
    return Foot(main=Button(_("Type a pull"), Turn({"open_ways": None, "open_around": None})))


def _tools(way: Measure) -> tuple[Button, ...]:
    """Return the way to the other belt."""
    other = next((side for side in way.sides if side != way.side), "")
    if not other:
        return ()
    text = _("The left belt") if other == "left" else _("The right belt")
    return (Button(text, Turn({"side": other, "_at": None}), icon="swap"),)


def _with_ways(blocks: tuple[Block, ...], way: Measure) -> tuple[Block, ...]:
    """Return the blocks with the other ways right under what to do: who has no scale finds them without a swipe."""
    others = fold(
        way.world,
        "ways",
        _("Other ways"),
        lambda: _ways(way),
        _("No scale? By a weight, the motor or sound."),
    )
    after = next((place + 1 for place, block in enumerate(blocks) if block.key == "do"), len(blocks))
    return (*blocks[:after], *others, *blocks[after:])


def _ways(way: Measure) -> tuple[Block, ...]:
    # Few open them, and they bring what listens to a belt with them.
    from screens.bench.other_ways import other_ways  # noqa: PLC0415

    return tuple(other_ways(way))


def _around(way: Measure) -> Iterator[Block]:
    yield from fold(way.world, "around", _("Around this belt"), lambda: tuple(_rows(way)))


def _rows(way: Measure) -> Iterator[Block]:
    side = way.side
    yield from words_if("both", _both(way), bold=True)
    yield way_from("bench.belt", "history", side=side)
    yield way_from("bench.belt", "wear")
    if not way.world.is_scratch:
        yield Line(
            "new",
            _("A new belt is on"),
            _("Notes it in the log: history and calibration begin anew."),
            icon="save",
            act=Record(BeltFitted(belt=side), undo=_("New belt noted")),
        )
    yield Line("view", _("Read from a metre away"), icon="view", act=_from_afar(way))
    yield way_from("bench.belt", "tools")
    yield from sentences("order", texts("belt")["order"].values())


def _from_afar(way: Measure) -> Go:
    """Return the way to what matters in letters for a metre."""
    style, plan = way.style, way.plan
    pull, big, lines = plan.items["pull_target"], "", [way.aim()]
    if isinstance(pull, Result) and plan.depth is not None:
        big = str(style.shown(pull.value, "force", unit=way.world.person.scale_unit))
        lines.insert(0, _("Pull {depth} aside").format(depth=style.number(plan.depth, "length")))
    return Go("bench.view", {"title": belt_name(way.side), "big": big, "lines": lines})


def _both(way: Measure) -> str:
    """Return left against right, "" while one was not read."""
    records = [way.world.last("tension", belt=side) for side in way.sides]
    tensions = [record.body.tension for record in records if record is not None]
    if len(tensions) < 2 or None in tensions:  # noqa: PLR2004  (two belts)
        return ""
    apart = way.style.change(tensions[0], tensions[1], "force")
    said = _("Left against right: {apart}.").format(apart=apart)
    same = len({record.body.method for record in records if record is not None}) == 1
    return said if same else said + " " + _("They were read by two different ways.")


def view_page(world: World) -> Page:
    """Return `big` and under it `lines`; the screen stays on."""
    big, lines = world.args["big"], world.args["lines"]
    return Page(
        title=world.args["title"],
        crown=Figure("big", "", big) if big else None,
        blocks=tuple(sentences("line", lines, role="title")),
        places=False,
        awake=True,
    )
