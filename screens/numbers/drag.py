"""Rolling and air on the road: what logged rides tell of them, and a coast to standstill."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from logic.answers.asked import questions
from logic.answers.drag import Fitted, RideFit, Sample, best_rolling, coasting, ride_fit
from logic.answers.reading import Item, Open, Result
from logic.board import Board, Value
from logic.store import Record
from screens.acts import Act, Both, Turn
from screens.acts.entering import Put, Write
from screens.acts.keeping import Remember
from screens.asked import ride_speeds
from screens.asking import number_entry, typed_value
from screens.blocks import Button, FigureRow, Line, Verdict, Words
from screens.figure_page import Figures, figure_page, figures_of
from screens.page import Foot, Page
from screens.showing import sentences, why, working
from screens.tongue import _, texts
from screens.trying import try_measured
from screens.world import World

WORDS = texts("drag")
SPEED = "ask.ride_speed"
NAMES = ("rolling", "drag_area")
SHOWN = 12
"""Rides on the page: the newest."""
WAYS = ("by_distance", "by_time")
LABELS = texts("drag")["labels"]


def rides_page(world: World) -> Page:
    """Return the two coefficients with their bands, then the rides they come from."""
    rides = [ride for ride in world.entries("ride", SHOWN) if ride.body.energy_per_distance]
    speeds = ride_speeds(world)
    samples = world.kept.same("ride samples", _samples(rides, speeds))
    answer = world.kept(ride_fit, world.board, world.person.rider, samples)
    figures = Figures(world, answer.items, WORDS["labels"])
    page = figure_page(
        figures,
        title=_("Drag from rides"),
        crown=_rides_told(world, answer, rides, speeds),
        rows=lambda: _rides_rows(figures, answer),
        advice=(Words("level", WORDS["rides"]["level"], tone="second"),),
        values=tuple(_ride_line(world, ride, speeds) for ride in rides),
        values_title=_("Rides with a known energy: tap one to give its usual speed"),
        offer=_try_both(world.board, answer),
    )
    asked = next((ride for ride in rides if ride.id == world.args.get("ride")), None)
    return page if asked is None else _asking(world, page, asked, speeds)


def _samples(rides: list[Record], speeds: Mapping[str, float]) -> tuple[Sample, ...]:
    return tuple(
        Sample(speed=float(speeds[str(ride.id)]), energy_per_distance=ride.body.energy_per_distance)
        for ride in rides
        if speeds.get(str(ride.id))
    )


def _rides_told(world: World, answer: RideFit, rides: list[Record], speeds: Mapping[str, float]) -> Verdict:
    """Return what the rides tell, or how many are known."""
    style, fit = world.style, answer.fit
    if answer.rides < answer.wanted:
        bare = next((ride for ride in rides if not speeds.get(str(ride.id))), None)
        word = _("{rides} of {wanted} rides known").format(rides=answer.rides, wanted=answer.wanted)
        text = _("Each needs its energy and its usual speed.")
        turn = None if bare is None else Turn({"ride": bare.id})
        return Verdict(word, text, act=turn, lines=2)
    if fit is None:
        text = _("Slow and fast rides tell the two apart.")
        return Verdict(_("These rides cannot be used"), text, form="unsure", lines=2)
    scatter = _("From {rides} rides that scatter by {share}.").format(
        rides=answer.rides, share=style.number(fit.scatter, "share", 2)
    )
    word = _("Rolling {rolling}, drag area {area}").format(
        rolling=style.plain(fit.rolling.value), area=style.number(fit.drag_area.value, "area")
    )
    act = working(answer.items["rolling"], WORDS["labels"]["rolling"])
    if not answer.clear:
        word = _("Too alike to tell rolling from air")
        return Verdict(word, WORDS["rides"]["not clear"], form="unsure", act=act, lines=2)
    return Verdict(word, scatter, form="right", act=act, lines=2)


def _rides_rows(figures: Figures, answer: RideFit) -> Iterator[FigureRow]:
    """Yield what fits the rides best, and how far they leave it open."""
    for name in NAMES:
        row = figures[name]
        yield row if answer.fit is None else _rides_row(figures.world, answer, row, answer.fit)


def _rides_row(world: World, answer: RideFit, row: FigureRow, fit: Fitted) -> FigureRow:
    item, found = answer.items[row.key], getattr(fit, row.key)
    if isinstance(item, Open):
        return row
    half = world.style.number(found.half, item.quantity, 2)
    value = world.board.value(f"load.{row.key}")
    so_far = _("Assumed so far.") if value is None else _("Entered on the board so far.")
    return replace(
        row,
        number=world.style.shown(found.value, item.quantity).number,
        detail=_("± {half}, 95 %. {so_far}").format(half=half, so_far=so_far),
    )


def _ride_line(world: World, ride: Record, speeds: Mapping[str, float]) -> Line:
    style, speed = world.style, speeds.get(str(ride.id))
    return Line(
        f"ride {ride.id}",
        f"{ride.at:%Y-%m-%d}, {style.number(ride.body.distance, 'distance')}",
        style.number(ride.body.energy_per_distance, "energy_per_distance"),
        value=style.number(float(speed), "speed") if speed else _("speed not set"),
        chosen=world.args.get("ride") == ride.id,
        act=Turn({"ride": ride.id}),
    )


def _asking(world: World, page: Page, ride: Record, speeds: Mapping[str, float]) -> Page:
    """Return the page with the speed of a ride being entered; Done and Back keep what is one."""
    key, field, unit = f"ride speed {ride.id}", questions()[SPEED].field, world.style.unit("speed")
    found = typed_value(world, key, field, unit)
    leave: Act = Turn({"ride": None})
    if found is not None:
        kept = {**speeds, str(ride.id): float(found.si)}
        leave = Both((Remember(f"ride speeds {world.saved.id}", kept), Write(key, ""), leave))
    foot = Foot(main=Button(_("Done"), leave), entry=number_entry(world, key, field, unit))
    return replace(page, foot=foot, back=leave)


def _try_both(board: Board, answer: RideFit) -> Button | None:
    """Offer to try both coefficients once they are told clearly, unless the board has them."""
    fit, present = answer.fit, board.load.rolling
    if fit is None or not answer.clear or (present is not None and present.si == fit.rolling.value):
        return None
    note = "least squares of rides"
    acts = tuple(
        Put(f"load.{name}", Value(float(getattr(fit, name).value), "measured", note=note)) for name in NAMES
    )
    return Button(_("Try both on the board"), Both(acts))


def coast_page(world: World) -> Page:
    """Return the coefficient by each way that was entered, and the way to lay their mean over the board."""
    items, figures = figures_of(world, "numbers.coast", coasting, world.person.rider, world.answers)
    mean = float(best_rolling(dict(items)) or 0.0)
    told = world.style.plain(mean)
    offer, refused = try_measured(world, "load.rolling", mean, told, "coast") if mean else (None, ())
    return figure_page(
        figures,
        crown=_coast_told(world, items, told),
        picture=refused,
        advice=tuple(sentences("how", texts("drag")["coast"].values(), tone="second")),
        offer=offer,
    )


def _coast_told(world: World, items: Mapping[str, Item], mean: str) -> Verdict:
    """Return the mean of what was found; before that, what comes first."""
    told = [item for name in WAYS if isinstance(item := items[name], Result)]
    if not told:
        lacks = items[WAYS[0]]
        assert isinstance(lacks, Open)  # noqa: S101  (none is told)
        text, act = why(lacks, world.style), working(lacks, LABELS[lacks.name])
        return Verdict(_("Not measured yet"), text, act=act, lines=2)
    both = _("Mean of the ways by distance and by time.")
    return Verdict(
        _("Rolling {coefficient}").format(coefficient=mean),
        both if len(told) > 1 else LABELS[told[0].name],
        form="right",
        act=working(told[0], LABELS[told[0].name]),
        lines=2,
    )
