"""Which pulleys for the speed and the hill one wants, shared by Numbers and the page of pairs; and one pair of them."""

from collections.abc import Iterator, Sequence
from itertools import islice, takewhile
from math import inf

from logic.answers import pair_wish, pairs
from logic.answers.first_speed import road_speed
from logic.answers.pair import pair_board, pair_details
from logic.board import Value
from screens.acts import Act, Both, Go
from screens.acts.entering import Ask, Put
from screens.asked import beside_wishes
from screens.blocks import Button, Verdict, Words
from screens.figure_page import Figures, figure_page, filled
from screens.nearer import lacks_values, so_far
from screens.page import Page
from screens.tongue import _, texts
from screens.words import offer, refusal
from screens.world import World

ALSO = 2
"""Pairs that are named beside the best one."""

Ranked = Sequence[tuple[pairs.Pair, pair_wish.WishFit]]
KEYS = {"motor": "drive.motor_teeth", "wheel": "drive.wheel_teeth", "belt": "drive.belt_teeth"}


def _said(word: str, text: str, form: str, act: Act | None = None) -> Verdict:
    return Verdict(word, text, key="best", form=form, act=act, lines=2)


def teeth(option: pairs.PairOption) -> str:
    """Return a pair as one says it: motor, then wheel."""
    return f"{option.motor_teeth}:{option.wheel_teeth}"


def table_of(world: World) -> pairs.PairTable:
    """Return the table of the board in front; what is wished for changes its order and nothing in it."""
    return world.kept(pairs.pair_table, world.board, world.person.rider, beside_wishes(world))


def wished(world: World) -> pair_wish.Wish:
    """Return what is wished for."""
    return world.kept(pair_wish.wish_of, world.answers)


def ranked(world: World) -> pair_wish.Ranking:
    """Return the pairs by the wish, the best one first."""
    return world.kept(pair_wish.best_pairs, table_of(world), wished(world))


def sound(table: pairs.PairTable, pair: pairs.Pair) -> bool:
    """Tell whether a pair has a belt that fits, as far as belts are known at all."""
    return table.travel is None or (pair.belt is not None and not pair.belt.few)


def pair_act(pair: pairs.Pair) -> Act:
    """Return the act that opens a pair."""
    belt = pair.belt.teeth if pair.belt else None
    return Go(
        "numbers.pair", {"motor": pair.option.motor_teeth, "wheel": pair.option.wheel_teeth, "belt": belt}
    )


def wish_text(world: World, wish: pair_wish.Wish) -> str:
    """Return the wish in words."""
    style = world.style
    parts = []
    if wish.speed is not None:
        parts.append(style.number(wish.speed, "speed"))
    if wish.grade is not None:
        parts.append(_("a {grade} hill").format(grade=style.number(wish.grade, "share")))
    return _(" and ").join(parts)


def best_told(world: World, *, brief: bool = False) -> Verdict:
    """Return which pulleys do what is wished for, and what stands in the way of an answer; a row says it in brief."""
    table, wish = table_of(world), wished(world)
    if table.missing:
        return _said(_("Tap to fill in"), _lacking(table.missing), "plain", Ask(table.missing[0]))
    if table.problem is not None:
        return _said(_("Not known yet"), refusal(table.problem, world.style), "unsure")
    if not table.pairs:
        return _said(_("None fits"), texts("pairs")["said"]["none fits"], "wrong")
    if wish.speed is None and wish.grade is None:
        return _unwished(world, table)
    return _wished(world, table, wish, brief=brief)


def _wished(world: World, table: pairs.PairTable, wish: pair_wish.Wish, *, brief: bool) -> Verdict:
    order = ranked(world)
    met = (pair for pair, _fit in takewhile(lambda one: not one[1].short, order))
    good = list(islice((pair for pair in met if sound(table, pair)), 1 + ALSO))
    if not good:
        nearest, fit = next((one for one in order if sound(table, one[0])), order[0])
        pair = teeth(nearest.option)
        if brief:
            return _said(pair, _("Nearest. None does it."), "wrong")
        text = _("None does {wish}. Nearest: {pair}, {short}.").format(
            wish=wish_text(world, wish), pair=pair, short=gives(world, fit)
        )
        return _said(_("None does it"), text, "wrong", pair_act(nearest))
    also = ", ".join(teeth(pair.option) for pair in good[1:])
    doubts = list(_doubts(world, table, wish, good[0]))
    said = [_("also {pairs}").format(pairs=also) + "."] if also else []
    if not brief:
        said += [_("For {wish}.").format(wish=wish_text(world, wish)), *doubts]
    return _said(teeth(good[0].option), " ".join(said), "unsure" if doubts else "right", pair_act(good[0]))


def _lacking(missing: Sequence[str]) -> str:
    """Return what is said of values that are missing: how many give a first answer."""
    if len(missing) == 1:
        return offer(missing)
    return _("{count} values give the pulleys.").format(count=len(missing))


def _unwished(world: World, table: pairs.PairTable) -> Verdict:
    present = next((pair for pair in table.pairs if pair.present), None)
    asked = _("Enter below the speed and hill you want.")
    if present is None or present.option.loaded is None:
        return _said(_("{count} pairs fit").format(count=len(table.pairs)), asked, "plain")
    option, style = present.option, world.style
    does = style.number(option.loaded or 0.0, "speed")
    if option.climb is not None:
        does = _("{speed}, {grade} hill").format(speed=does, grade=style.number(option.climb, "share"))
    text = _("On the board now: {does}. {asked}").format(does=does, asked=asked)
    return _said(teeth(option), text, "plain", pair_act(present))


def _doubts(world: World, table: pairs.PairTable, wish: pair_wish.Wish, best: pairs.Pair) -> Iterator[str]:
    """Yield what may be otherwise than the best pair promises."""
    spread = best.option.spread
    if table.usual:
        yield _("{count} usual values stand in.").format(count=len(table.usual))
    elif wish.speed is not None and spread is not None and spread[0] < wish.speed * (1.0 - pair_wish.HAIR):
        yield _("It may fall short, down to {speed}: Kv is only printed.").format(
            speed=world.style.number(spread[0], "speed")
        )
    if table.travel is None:
        yield _("Belts are not checked.")


def gives(world: World, fit: pair_wish.WishFit) -> str:
    """Return what a pair gives against the wish."""
    style, option = world.style, fit.option
    short: list[str] = []
    spare: list[str] = []
    for margin, value, quantity in (
        (fit.speed_margin, option.loaded or 0.0, "speed"),
        (fit.grade_margin, option.climb or 0.0, "share"),
    ):
        if margin is None:
            continue
        asked = value / (1.0 + margin) if margin > -1.0 else inf
        away = style.number(abs(value - asked), quantity, 2) if asked < inf else _("all of it")
        (short if margin < -pair_wish.HAIR else spare).append(away)
    if short:
        return _("{short} short").format(short=_(" and ").join(short))
    return _("{spare} in hand").format(spare=_(" and ").join(spare))


def pair_page(world: World) -> Page:
    """Return the top speed of the pair named by `motor`, `wheel` and `belt` teeth, then its figures."""
    motor, wheel, belt = (world.args.get(name) for name in KEYS)
    board = world.kept(pair_board, world.board, motor, wheel, belt)
    items = world.kept(pair_details, board, world.person.rider, world.answers)
    labels, details = (filled(world, texts("pairs")["labels"]), texts("pairs")["details"])
    figures = Figures(world, items, labels, "numbers.pair", details=details, head="top_loaded")
    told = _("{motor} teeth on the motor, {wheel} on the wheel. {belt}")
    said = _("Belt of {teeth} teeth.").format(teeth=belt) if belt else _("No belt in stock fits the mount.")
    crown = None
    if lacks_values(items["top_loaded"]):
        # The list gives a speed with what is usual: its page gives one as well.
        first = world.kept(road_speed, board, world.person.rider)
        crown = so_far(world, first, labels["top_loaded"], _("Rough: usual values stand in."))
    return figure_page(
        figures,
        crown=crown,
        title=_("Pair {motor}:{wheel}").format(motor=motor, wheel=wheel),
        controls=(Words("told", told.format(motor=motor, wheel=wheel, belt=said)),),
        offer=_try(world),
    )


def _try(world: World) -> Button | None:
    """Return the bar that lays the pair and its belt over the board as a trial, unless they are on it now."""
    wanted = {key: float(world.args[name]) for name, key in KEYS.items() if world.args.get(name)}
    present = {key: world.board.value(key) for key in wanted}
    if all(value is not None and value.si == wanted[key] for key, value in present.items()):
        return None
    acts = tuple(Put(key, Value(count)) for key, count in wanted.items())
    return Button(_("Try this pair on the board"), Both(acts))
