"""Numbers: each row with the figure its page leads with, so that opening it is often not needed."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from importlib import import_module
from typing import Any, NamedTuple

from logic.answers.asked import Asked
from logic.answers.reading import Item
from logic.board import Value, board_fields
from logic.units import Shown
from screens.acts import Go, Turn
from screens.acts.entering import Ask
from screens.asked import WISHES, beside_wishes
from screens.asking import entry_of, value_line
from screens.blocks import Block, Line, Section
from screens.nearer import following
from screens.page import Foot, Page
from screens.search_tool import search_tools
from screens.showing import lead
from screens.tongue import _, asset
from screens.trying import trial_foot, values_of
from screens.ways import signs_line, ways_from
from screens.words import span
from screens.world import World

HEADINGS = {
    "numbers: speed": _("Speed, hills and stopping"),
    "numbers: packs": _("Packs"),
    "numbers: belts": _("Belts and wheels"),
    "numbers: bench": _("Bench and desk"),
}
"""Heading of each group of rows in assets/ways.toml."""
ASIDE = ("numbers: packs", "numbers: bench")
"""Groups that stand in the second pane of a wide window."""
Answers = dict[str, Value]


NONE_DOES_IT = _("Nearest. None does it.")
"""The longest that the row of the pulleys says of a wish."""
SMALL, BAND = "0.000", span("00.0", "00.0")
"""How wide figures come out that are small in inches, and those with a band."""
ROUGH = ("numbers.gearing", "numbers.stopping")
"""Pages whose figure has a band while the board lacks values."""


class Lead(NamedTuple):
    """The figure of a row: the answer that gives it, by its module and name, what that is asked, and where it stands in it.

    `quantity` and `wide` say how wide it may come out.
    """

    where: str
    given: Callable[[World, Answers], tuple[Any, ...]]
    quantity: str
    read: Callable[[Any], Item | None] = lambda item: item
    wide: str = "00.0"


def _asked(world: World, answers: Answers) -> tuple[Any, ...]:
    return world.board, answers


def _ridden(world: World, answers: Answers) -> tuple[Any, ...]:
    return world.board, world.person.rider, answers


LEADS: dict[str, Lead] = {
    "numbers.gearing": Lead("first_speed.road_speed", lambda w, _a: (w.board, w.person.rider), "speed"),
    "numbers.stopping": Lead("first_stop.stop_so_far", _ridden, "way"),
    "numbers.packs": Lead("energy.pack_energy", lambda w, _a: (w.board,), "energy"),
    "numbers.range": Lead("first_range.range_so_far", lambda w, a: (*_ridden(w, a), w.rides), "distance", wide=BAND),
    "numbers.charging": Lead("charging.charging", _asked, "long_time", lambda found: found.items.get("time"), BAND),
    "numbers.joining": Lead("joining.joining", _asked, "voltage", lambda found: found.items.get(found.head)),
    "numbers.wiring": Lead("wiring.wiring", _asked, "current", lambda found: found.items["riding"]),
    "numbers.descents": Lead("descents.descent", _ridden, "way", lambda found: found.items["drop_back"]),
    "numbers.belt": Lead("belt_choice.centre_of", lambda w, _a: (w.board,), "length", wide=SMALL),
    "numbers.feel": Lead("feel.feel", _ridden, "way", lambda found: found.items["radius"]),
    "numbers.fit": Lead("belt_fit.narrowest_gap", lambda w, a: (w.board, Asked(a)("ask.wheel_wear")), "length", wide=SMALL),
}  # fmt: skip
"""The figure of a row, where its page leads with one."""


def numbers_page(world: World) -> Page:
    """Return which pulleys first, then every page with its figure: those that are known, one more at each quiet moment."""
    entry = entry_of(world)
    found = {page: _found(world, page) for page in LEADS}
    unknown = [page for page, answer in found.items() if not answer]
    table, wish = _table_known(world), any(key in world.answers for key in WISHES)
    if not table:
        # Without a wish the table comes last: its page then opens at once.
        unknown.insert(0 if wish else len(unknown), "numbers.pairs")
    return Page(
        title=_("Numbers"),
        blocks=(
            _pulleys(world, known=table) if wish else _present_pulleys(world),
            *(value_line(world, key) for key in WISHES),
            *_rows(world, {page: answer[0] for page, answer in found.items() if answer}),
            signs_line(),
        ),
        aside=frozenset(
            {
                *(HEADINGS[group] for group in ASIDE),
                *(page for group in ASIDE for page in asset("ways")[group]),
            }
        ),
        foot=Foot() if entry is None else trial_foot(world, then=following(world, (WISHES,))),
        chip=True,
        tools=search_tools(),
        then=Turn({"_next": unknown[0]}) if unknown else None,
    )


def _found(world: World, page: str) -> tuple[Any, ...]:
    """Return the answer a row shows, nothing where it is neither known nor asked for now."""
    lead_of = LEADS[page]
    where, args = f"logic.answers.{lead_of.where}", lead_of.given(world, beside_wishes(world))
    if world.args.get("_next") == page:
        module, _dot, name = where.rpartition(".")
        return (world.kept(getattr(import_module(module), name), *args),)
    return world.kept.known(where, *args)


def _table_known(world: World) -> bool:
    """Tell whether the table of pairs is known; where it is asked for now it is worked out."""
    if world.args.get("_next") == "numbers.pairs":
        import_module("screens.numbers.best_pairs").table_of(world)
    return bool(
        world.kept.known(
            "logic.answers.pairs.pair_table", world.board, world.person.rider, beside_wishes(world)
        )
    )


def _present_pulleys(world: World) -> Line:
    """Return the pulleys that are on."""
    drive = world.board.drive
    teeth = (drive.motor_teeth, drive.wheel_teeth)
    now = "" if None in teeth else ":".join(f"{float(one.si):.0f}" for one in teeth)  # type: ignore[union-attr]
    return _pulleys_row(now, _("Which teeth for your speed and hill? Enter both below."))


def _pulleys(world: World, *, known: bool) -> Line:
    """Return which pulleys for the speed and the hill that are wished for."""
    if not known:
        return _pulleys_row("", _("One moment."))
    best = import_module("screens.numbers.best_pairs").best_told(world, brief=True)
    # What is missing is said below the title: beside it the words would leave no room.
    return _pulleys_row("" if isinstance(best.act, Ask) else best.word, best.text)


def _pulleys_row(value: str, detail: str) -> Line:
    act = Go("numbers.pairs")
    row = Line("numbers.pairs", _("Pairs of pulleys"), detail, value=value, icon="drive", act=act)
    return replace(row, room=replace(row, value="00:00", detail=NONE_DOES_IT))


def _rows(world: World, found: dict[str, Any]) -> Iterator[Block]:
    # A figure of nothing but what is usual is no answer for a board that there is none of.
    empty = world.is_scratch and not world.trial
    for group, heading in HEADINGS.items():
        yield Section(heading, heading)
        yield from (_row(world, row, found.get(row.key), empty=empty) for row in ways_from(group))


def _row(world: World, row: Line, answer: Any, *, empty: bool) -> Line:  # noqa: ANN401  (each answer is of its own kind)
    if (
        row.key == "numbers.charging"
        and answer is not None
        and answer.check is not None
        and answer.check.danger
    ):
        return replace(row, detail=_("Wrong charger for this pack."), bad=True)
    if row.key == "numbers.gearing" and world.trial and not world.is_scratch:
        row = replace(row, detail=_("{figure} Trial open.").format(figure=row.detail))
    if empty or row.key not in LEADS:
        return row
    of = LEADS[row.key]
    wide = BAND if row.key in ROUGH and _lacks(world) else of.wide
    row = replace(row, room=replace(row, value=str(Shown(wide, world.style.unit(of.quantity)))))
    return row if answer is None else replace(row, value=lead(of.read(answer), world.style))


def _lacks(world: World) -> bool:
    """Tell whether the board lacks a value of these pages for which nothing stands in."""
    fields = board_fields()
    keys = (key for page in ROUGH for key in values_of(page) if key in fields and not fields[key].stand_in)
    return any(world.board.value(key) is None for key in keys)
