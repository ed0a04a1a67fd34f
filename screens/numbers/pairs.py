"""Pairs of pulleys: every sensible one in a table to sort, and the other way round: which of them meet a wish."""

from collections.abc import Callable, Sequence
from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.pairs import Pair, PairTable, Wish, WishFit, best_pairs, pair_table, speed_cap, wish_of
from logic.answers.reading import RIDER
from logic.board import Board
from screens.answering import AnsweringPage
from screens.numbers.pair_rows import SHOWN
from screens.widgets.bar import Bar
from screens.widgets.load import load_kv
from screens.words import offer, refusal
from screens.words.figures import OUTCOMES
from screens.words.pairs import CAUTION, COLUMNS, NONE_FITS
from screens.words.push import LIMITS

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


def figure(pair: Pair, key: str) -> float | None:
    """Return a figure of a row in SI, None where there is none."""
    if key in ("belt", "centre", "in_mesh"):
        name = {"belt": "teeth"}.get(key, key)
        return None if pair.belt is None else float(getattr(pair.belt, name))
    found = getattr(pair, key) if key in ("belt_load", "erpm_margin") else getattr(pair.option, key)
    return None if found is None else float(found)


WISHES = ("ask.wish_speed", "ask.wish_grade")


class PairsPage(AnsweringPage):
    """The count, the table, the caution, then what it rests on."""

    CHIPS = (
        "ask.wish_speed",
        "ask.wish_grade",
        "drive.profile",
        "mount.centre_least",
        "mount.centre_most",
        "drive.wheel_diameter",
        "drive.belt_width",
        "ask.climb_grade",
        "ask.climb_speed",
        "motor.kv",
        "controller.motor_current",
        "controller.battery_current",
        "load.board_mass",
        RIDER.key,
    )

    title = StringProperty("Pairs of pulleys")
    headline = StringProperty()
    told = StringProperty()
    travel = StringProperty()
    caution = StringProperty()
    table = ObjectProperty()
    wishes = ObjectProperty()
    tools = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Start at the top of the table."""
        self.found: PairTable = PairTable()
        self.order: Sequence[tuple[Pair, WishFit]] = ()
        self.sorted_by: str | None = None
        self.turned = False
        self.begin = 0
        super().__init__(*args, **kwargs)
        self._offers: tuple[str, ...] = ()
        for key in WISHES:
            self.chips.remove_widget(self.values.chip_of[key])
            self.wishes.add_widget(self.values.chip_of[key])
        self.table.bind(hidden=lambda *_: self.soon())

    def work_out(self, board: Board) -> PairTable:
        """Return the table."""
        return pair_table(board, self.rider, self.asking)

    def show_figures(self) -> None:
        """Show the part of the table in view."""
        self.found = self.answer
        self.rank()

    def rank(self) -> None:
        """Sort what is worked out and show it: this is all that a tap on a head does."""
        wish = wish_of(self.asking)
        asked = wish.speed is not None or wish.grade is not None
        key = self.sorted_by if self.sorted_by is not None else "" if asked else "loaded"
        order = best_pairs(self.found, wish)
        if key:
            rising = (key in RISING) != self.turned
            order = sorted(order, key=lambda item: _place(figure(item[0], key), rising=rising))
        if self.sorted_by is None and not asked:
            # What one compares with comes first, what is doubtful last.
            order = sorted(order, key=lambda item: (not item[0].present, _doubtful(item[0])))
        self.order = order
        self.begin = min(self.begin, max(0, len(order) - 1))
        self._tell(wish, key, asked=asked)
        self._show_rows(key, asked=asked)
        self._show_tools(can_rank=asked and bool(key))

    def sort(self, key: str) -> None:
        """Sort by a column, the other way round at the second tap; "" is by the wish."""
        self.turned = not self.turned if key and key == self.table.sorted_by else False
        self.sorted_by, self.begin = key, 0
        self.rank()

    def next_rows(self) -> None:
        """Bring the next pairs into view, after the last the first."""
        self.begin = 0 if self.begin + SHOWN >= len(self.order) else self.begin + SHOWN
        self.rank()

    def pick(self, index: int) -> None:
        """Open a pair."""
        pair = self.order[self.begin + index][0]
        belt = pair.belt.teeth if pair.belt else None
        self.shell.go("numbers.pair", motor=pair.option.motor_teeth, wheel=pair.option.wheel_teeth, belt=belt)

    def _tell(self, wish: Wish, key: str, *, asked: bool) -> None:
        found, style = self.found, self.style
        if found.missing:
            self.headline = offer(found.missing)
        elif found.problem is not None:
            self.headline = refusal(found.problem, style)
        elif not found.pairs:
            self.headline = NONE_FITS
        elif asked:
            good = sum(not fit.short and self._has_belt(pair) for pair, fit in self.order)
            self.headline = f"{good or 'None'} of {len(found.pairs)} pairs {_does(good)} {self._wish(wish)}."
        else:
            self.headline = f"{len(found.pairs)} pairs fit this board."
        order = f"Sorted by {COLUMNS[key].lower()}" if key else "Ranked by the wish"
        lacking = f" Without a stop: {offer(found.also_missing)}" if found.also_missing else ""
        words = f"{order}. Tap a head to sort, a pair for its figures.{lacking}{self._cap(wish)}"
        self.told = words if found.pairs else ""
        self.caution = CAUTION
        self.travel = self._travel()

    def _cap(self, wish: Wish) -> str:
        cap = speed_cap(self.found) if wish.speed is not None else None
        if cap is None:
            return ""
        speed, limit = cap
        return f" Taller gears gain nothing above {self.style.number(speed, 'speed')}: {LIMITS[limit]} limit."

    def _has_belt(self, pair: Pair) -> bool:
        return self.found.travel is None or pair.belt is not None

    def _wish(self, wish: Wish) -> str:
        parts = []
        if wish.speed is not None:
            parts.append(self.style.number(wish.speed, "speed"))
        if wish.grade is not None:
            parts.append(f"a {self.style.number(wish.grade, 'share')} hill")
        return " and ".join(parts)

    def _travel(self) -> str:
        found = self.found
        if found.travel is None:
            return "Belts are left out: neither the mount's travel nor the present belt is entered."
        low, high = (self.style.number(end, "length") for end in found.travel)
        entered = f"Belts in stock with a centre distance from {low} to {high}"
        if not found.travel_known:
            entered += ", assumed around the present one"
        return f"{entered}. Wheel pulleys up to {found.largest_wheel} teeth clear the ground."

    def _show_rows(self, key: str, *, asked: bool) -> None:
        view = self.order[self.begin : self.begin + SHOWN]
        rows = [self._row(pair, fit, asked=asked) for pair, fit in view]
        style = self.style
        columns = []
        for name, head in COLUMNS.items() if rows else ():
            unit = style.shown(1.0, QUANTITY[name]).unit if name not in ("belt", "in_mesh") else ""
            widest = max((texts[name] for _, texts, *_ in rows), key=len, default="")
            columns.append((name, f"{head} {unit}".strip(), widest))
        self.table.sorted_by = key
        self.table.columns = columns
        self.table.rows = rows

    def _show_tools(self, *, can_rank: bool) -> None:
        """Offer what leads on: more figures, more pairs, the order of the wish."""
        last = min(self.begin + SHOWN, len(self.order))
        offers = {
            f"Pairs {self.begin + 1} to {last} of {len(self.order)}: next": len(self.order) > SHOWN,
            "Next figures": bool(self.order and self.table.hidden),
            "Rank by the wish": can_rank,
        }
        wanted = tuple(text for text, offered in offers.items() if offered)
        if wanted == self._offers:
            return
        self._offers = wanted
        acts = dict(zip(offers, (self.next_rows, self.table.next_columns, self.by_wish), strict=True))
        self.tools.clear_widgets()
        for text in wanted:
            bar = Bar(text=text, kind="plain")
            bar.bind(on_release=partial(_do, acts[text]))
            self.tools.add_widget(bar)

    def by_wish(self) -> None:
        """Go back to the order of the wish."""
        self.sort("")

    def _row(self, pair: Pair, fit: WishFit, *, asked: bool) -> tuple[str, dict[str, str], str, bool]:
        option = pair.option
        texts = {name: self._text(pair, name) for name in COLUMNS}
        notes = []
        if pair.present:
            notes.append("this board")
        if asked:
            notes.append(self._gives(fit))
        if option.spread is not None:
            low, high = (self.style.shown(end, "speed").number for end in option.spread)
            notes.append(f"{low} to {high} loaded, Kv is printed")
        if option.outcome != "meets":
            notes.append(OUTCOMES[option.outcome])
        if pair.belt is not None and pair.belt.few:
            notes.append(f"only {pair.belt.in_mesh} teeth in mesh")
        if self.found.travel is not None and pair.belt is None:
            notes.append("no belt in stock")
        return f"{option.motor_teeth} : {option.wheel_teeth}", texts, ", ".join(notes), pair.present

    def _text(self, pair: Pair, name: str) -> str:
        value = figure(pair, name)
        return "–" if value is None else self.style.shown(value, QUANTITY[name]).number

    def _gives(self, fit: WishFit) -> str:
        """Return what a pair gives against the wish."""
        style, option = self.style, fit.option
        short, spare = [], []
        for margin, value, quantity in (
            (fit.speed_margin, option.loaded or 0.0, "speed"),
            (fit.grade_margin, option.climb or 0.0, "share"),
        ):
            if margin is None:
                continue
            asked = value / (1.0 + margin) if margin > -1.0 else 0.0
            away = style.number(abs(value - asked), quantity, 2)
            (short if margin < 0.0 and fit.short else spare).append(away)
        if short:
            return " and ".join(short) + " short"
        return "does it, " + " and ".join(spare) + " in hand"


def _doubtful(pair: Pair) -> bool:
    return pair.belt is None or pair.belt.few


def _do(act: Callable[[], None], *_: object) -> None:
    act()


def _does(count: int) -> str:
    return "does" if count == 1 else "do"


def _place(value: float | None, *, rising: bool) -> tuple[bool, float]:
    """Return where a value stands in a column; what has no number stands last either way."""
    if value is None:
        return True, 0.0
    return False, value if rising else -value


load_kv(__file__)
