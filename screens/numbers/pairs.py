"""Pairs of pulleys: which of them do what is wished for, and every sensible one in a table to sort."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.pair_wish import WishFit, fit
from logic.answers.pairs import FIRST, Pair, PairTable, speed_cap
from logic.tables import pick
from screens.acts import Turn
from screens.asked import WISHES
from screens.asking import refused_now, value_line
from screens.blocks import Block, Choice, FigureRow, Line, Notice, Option, Section, Words
from screens.nearer import Rounds, following, nearer, taken
from screens.numbers import best_pairs as best
from screens.page import Page
from screens.showing import fold
from screens.tongue import _, texts
from screens.trying import trial_foot, values_heading, values_of
from screens.words import Style, offer
from screens.words.figures import OUTCOMES
from screens.world import World

VALUES = values_of("numbers.pairs")
ROUNDS: Rounds = {FIRST: _("Give them one by one")}
QUANTITY = {
    "loaded": "speed",
    "unloaded": "speed",
    "push": "force",
    "climb": "share",
    "heat": "power",
    "stop": "way",
    "centre": "length",
    "belt_load": "share",
    "ratio": "ratio",
    "angular_speed": "angular_speed",
    "erpm_margin": "share",
    "belt": "teeth",
    "in_mesh": "teeth",
}
RISING = ("heat", "stop", "belt_load", "centre", "belt")
"""Columns that are read from the smallest up."""
SHOWN, MORE = 5, 20
"""Pairs that stand on the page at first, and how many come at each wish for more."""


def pairs_page(world: World) -> Page:
    """Return the best pairs for the wish, the wish itself, then the table."""
    rows = tuple(_rows(world))
    return Page(
        title=_("Pairs of pulleys"),
        crown=replace(best.best_told(world), grey=refused_now(world)),
        blocks=(
            *(value_line(world, key) for key in WISHES),
            *(nearer(world, ROUNDS) if best.table_of(world).missing else ()),
            *rows,
            *taken(world, best.table_of(world).usual),
            Notice("caution", "caution", _caution(world.style)),
            Section("values", values_heading(world)),
            *(value_line(world, key) for key in VALUES),
            *_travel(world),
        ),
        foot=trial_foot(world, then=following(world, (*ROUNDS, WISHES))),
        aside=frozenset(block.key for block in rows),
    )


def _caution(style: Style) -> str:
    """Return the law and the wobble, its speed in the person's unit."""
    speed = float(pick("pair_rules", name="wobble").cells["speed"])
    return texts("pairs")["said"]["caution"].format(wobble=style.number(speed, "speed", 2))


def _rows(world: World) -> Iterator[Block]:
    """Yield the table: how many do it, the first pairs, the way to the others and to another order."""
    table = best.table_of(world)
    if not table.pairs:
        return
    wish, key = best.wished(world), world.args.get("sort", "")
    asked = wish.speed is not None or wish.grade is not None
    shown = world.args.get("rows", SHOWN)
    yield Section("pairs", _("Pairs"), _counted(world, asked=asked))
    for pair, given in _order(world, key, shown, asked=asked):
        yield _row(world, pair, given, key or "loaded", asked=asked)
    count = len(table.pairs)
    if shown < count:
        more = min(MORE, count - shown)
        title = _("Show {more} more of {all}").format(more=more, all=count)
        yield Line("more", title, act=Turn({"rows": shown + more}))
    yield from fold(world, "sort", _("Sort by another figure"), lambda: (_sorting(key, world, asked=asked),))


def _order(world: World, key: str, count: int, *, asked: bool) -> best.Ranked:
    """Return the first pairs in the order that is chosen: by the wish, or by a figure. Of the others no more is read."""
    if asked and not key:
        return best.ranked(world)[:count]
    table, by = best.table_of(world), key or "loaded"
    rising = (by in RISING) != bool(world.args.get("turned"))
    order = sorted(table.pairs, key=lambda pair: _place(figure_of(pair, by), rising=rising))
    if not key:
        # What one compares with comes first, what is doubtful last.
        order.sort(key=lambda pair: not pair.present)
        order = _sound_first(table, order, count)
    return [(pair, fit(pair.option, best.wished(world))) for pair in order[:count]]


def _sound_first(table: PairTable, order: list[Pair], count: int) -> list[Pair]:
    """Return at least so many pairs, those with a sound belt before the others."""
    found, doubtful = list[Pair](), list[Pair]()
    for pair in order:
        (found if pair.present or best.sound(table, pair) else doubtful).append(pair)
        if len(found) == count:
            return found
    return found + doubtful


def figure_of(pair: Pair, key: str) -> float | None:
    """Return a figure of a row in SI, None where there is none."""
    if key in ("belt", "centre", "in_mesh"):
        return None if pair.belt is None else float(getattr(pair.belt, {"belt": "teeth"}.get(key, key)))
    found = getattr(pair, key) if key in ("belt_load", "erpm_margin") else getattr(pair.option, key)
    return None if found is None else float(found)


def _place(value: float | None, *, rising: bool) -> tuple[bool, float]:
    """Return where a value stands in a column; what has no number stands last either way."""
    if value is None:
        return True, 0.0
    return False, value if rising else -value


def _counted(world: World, *, asked: bool) -> str:
    """Return how many pairs do it, and what caps the speed beside the gears."""
    table, wish = best.table_of(world), best.wished(world)
    said = []
    if asked:
        good = sum(
            not given.short and (table.travel is None or pair.belt is not None)
            for pair, given in best.ranked(world).unranked
        )
        said.append(
            _("{good} of {all} do {wish}.").format(
                good=good or _("None"), all=len(table.pairs), wish=best.wish_text(world, wish)
            )
        )
        cap = speed_cap(table) if wish.speed is not None else None
        if cap is not None:
            text = _("Taller gears gain nothing above {speed}: {limit} limit.")
            said.append(
                text.format(speed=world.style.number(cap[0], "speed"), limit=texts("push")["limits"][cap[1]])
            )
    else:
        said.append(_("{all} pairs fit this board.").format(all=len(table.pairs)))
    if table.also_missing:
        said.append(_("Without a stopping distance: {offer}").format(offer=offer(table.also_missing)))
    return " ".join(said)


def _row(world: World, pair: Pair, given: WishFit, key: str, *, asked: bool) -> FigureRow:
    """Return a pair with the figure it is sorted by; speed, hill and belt beside it."""
    style, option = world.style, pair.option
    value = figure_of(pair, key)
    shown = None if value is None else style.shown(value, QUANTITY[key])
    notes = [
        _shown(style, option.loaded, "speed", "{number}") if key != "loaded" else "",
        _shown(style, option.climb, "share", _("{number} hill")) if key != "climb" else "",
        _shown(style, None if pair.belt is None else pair.belt.teeth, "teeth", _("belt {number}"))
        if key != "belt"
        else "",
        best.gives(world, given) if asked else "",
        _("on the board now") if pair.present else "",
    ]
    if option.spread is not None:
        low, high = (style.shown(end, "speed").number for end in option.spread)
        notes.append(_("{low} to {high} loaded, Kv is printed").format(low=low, high=high))
    if option.outcome != "meets":
        notes.append(OUTCOMES[option.outcome])
    if pair.belt is not None and pair.belt.few:
        notes.append(_("only {count} teeth in mesh").format(count=pair.belt.in_mesh))
    if best.table_of(world).travel is not None and pair.belt is None:
        notes.append(_("no belt in stock"))
    return FigureRow(
        f"pair {best.teeth(option)}",
        best.teeth(option),
        "–" if shown is None else shown.number,
        unit="" if shown is None else shown.said,
        detail=", ".join(note for note in notes if note),
        act=best.pair_act(pair),
        grey=refused_now(world),
    )


def _shown(style: Style, value: float | None, quantity: str, text: str) -> str:
    return "" if value is None else text.format(number=style.number(float(value), quantity))


def _sorting(key: str, world: World, *, asked: bool) -> Choice:
    """Return what the table can be sorted by; the same again turns the order."""
    by_wish = (Option(_("By the wish"), Turn({"sort": None, "turned": None}), not key),) if asked else ()
    chosen = key or ("" if asked else "loaded")

    def turned(name: str) -> Turn:
        return Turn({"sort": name, "turned": True if name == key and not world.args.get("turned") else None})

    options = tuple(
        Option(text, turned(name), name == chosen) for name, text in texts("pairs")["columns"].items()
    )
    return Choice("sorting", _("Tap one twice to turn the order."), (*by_wish, *options))


def _travel(world: World) -> tuple[Words, ...]:
    """Return which belts and wheel pulleys were looked at."""
    table = best.table_of(world)
    if table.missing or table.problem is not None:
        return ()
    if table.travel is None:
        text = _("Belts are left out: enter the mount's travel or the belt that is on.")
        return (Words("travel", text, role="small", tone="second"),)
    low, high = (world.style.number(end, "length") for end in table.travel)
    entered = _("Belts in stock for a centre distance from {low} to {high}.")
    if not table.travel_known:
        entered = _("Belts in stock for a centre distance from {low} to {high}, assumed.")
    ground = _("Wheel pulleys up to {teeth} teeth clear the ground.").format(teeth=table.largest_wheel)
    text = f"{entered.format(low=low, high=high)} {ground}"
    return (Words("travel", text, role="small", tone="second"),)
