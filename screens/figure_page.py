"""Pages of figures: verdict, hazards, what is stepped, picture, figures, advice, values. DANGER withholds every figure."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import field, replace
from functools import partial
from string import Formatter
from typing import Any, TypeVar

from logic.answers.hazards import Hazard
from logic.answers.reading import Item, Open, Result
from logic.errors import InputError
from logic.frozen import frozen
from logic.units import quantities
from screens.acts import Act
from screens.acts.entering import Ask
from screens.acts.keeping import Drop
from screens.asked import out_of_use
from screens.asking import asked, choice, field_of, refused_now, stepper, value_line
from screens.blocks import Block, Button, Figure, FigureRow, Line, Notice, Section, Verdict, Words
from screens.nearer import Near
from screens.page import Foot, Page
from screens.showing import figure, fold, once_each, shared_sureness, told_in
from screens.tongue import _, asset, texts
from screens.trying import faults_said, trial_foot, values_heading
from screens.ways import signs_line
from screens.words import sureness
from screens.words.packs import hazard_text
from screens.world import World

A = TypeVar("A")


@frozen
class Figures:
    """Results by name, what they are called, and what is said of them.

    `page` is the row of assets/page_values.toml that they are of. `labels` gives the order. `outcomes` are sentences in place
    of a number, by what stands in its way. `head` is the one that the page leads with.
    """

    world: World
    items: Mapping[str, Item]
    labels: Mapping[str, str]
    page: str = ""
    before: Mapping[str, Item] = field(default_factory=dict)
    details: Mapping[str, str] = field(default_factory=dict)
    outcomes: Mapping[str, str] = field(default_factory=dict)
    faults: Sequence[InputError] = ()
    hazards: Sequence[Hazard] = ()
    ask: Callable[[str], Act] = Ask
    """How a value that is missing is asked for."""
    head: str = ""

    def __getitem__(self, name: str) -> FigureRow:
        """Return a result as a row."""
        found = self._shown(name, row=True)
        assert isinstance(found, FigureRow)  # noqa: S101  (row=True makes one)
        return found

    @property
    def note(self) -> str:
        """Return how sure most of those in sight are: said once, and beside a figure only where it differs."""
        return self.world.kept(_shared, self.items, self.page, self.head)

    def crown(self) -> Figure:
        """Return the one that the page leads with, large."""
        found = self._shown(self.head, row=False)
        assert isinstance(found, Figure)  # noqa: S101  (row=False makes one)
        return found

    def _shown(self, name: str, *, row: bool) -> Figure | FigureRow:
        item = self.items[name]
        detail = self.details.get(name, "")
        if isinstance(item, Result) and sureness(item) != self.note:
            detail = f"{detail} {sureness(item)}.".strip()
        shown = figure(
            self.world,
            item,
            self.labels[name],
            before=self.before.get(name),
            detail=detail,
            unit=told_in(item),
            grey=bool(self.faults) or refused_now(self.world),
            row=row,
            reserve=True,
        )
        if isinstance(item, Open) and item.missing:
            shown = replace(shown, act=self.ask(item.missing[0]))
        instead = isinstance(item, Open) and (item.outcome or (item.problem.reason if item.problem else ""))
        return replace(shown, detail=self.outcomes[instead]) if instead in self.outcomes else shown  # type: ignore[index]

    def rows(self, first: Sequence[str], title: str = "") -> Iterator[Block]:
        """Yield a heading, the first figures, and the rest under "All figures".

        Of those that lack the same value only the first is shown, and none that lacks what the `head` already names. What is
        folded is not worked out, unless something is missing: then it must be known what else it takes away.
        """
        here = [name for name in (self.head, *self.labels) if name in self.items]
        open_here = [name for name in here if name == self.head or name in first]
        known = all(isinstance(self.items[name], Result) for name in open_here)

        def said(names: Sequence[str]) -> list[str]:
            return [name for name in once_each({one: self.items[one] for one in names}) if name != self.head]

        shown = open_here if known else said(here)
        rest = [name for name in (here if known else shown) if name not in open_here]
        shown = [name for name in first if name in shown and name != self.head]
        if shown or rest:
            yield Section("figures", title or _("Figures"), self.note)
        yield from (self[name] for name in shown)
        if rest:
            inside = partial(map, self.__getitem__)
            yield from fold(
                self.world, "all", _("All figures"), lambda: inside(said(rest) if known else rest)
            )


def _shared(items: Mapping[str, Item], page: str, head: str) -> str:
    """Return how sure most of the figures are that a page shows open; of all where it names none."""
    names = (head, *asset("page_values").get(page, {}).get("first", ()))
    return shared_sureness({name: items[name] for name in names if name in items} or items)


def answered(world: World, work_out: Callable[..., A], *asked: object) -> tuple[A, Mapping[str, Item]]:
    """Return the answer for the board with what is tried, and the results of the saved board while there is a trial."""
    answer = world.kept(work_out, world.board, *asked)
    if world.is_scratch or not world.trial:
        return answer, {}
    return answer, _items(world.kept(work_out, world.saved, *asked))


def _items(answer: Any) -> Mapping[str, Item]:  # noqa: ANN401  (each answer is of its own kind)
    return answer if isinstance(answer, Mapping) else answer.items


def figures_of(
    world: World, page: str, work_out: Callable[..., A], *asked: object, **put: str
) -> tuple[A, Figures]:
    """Return an answer for the board and its figures.

    What they are called and what is said of them is as the row of the page in assets/page_values.toml has it, with what is
    `put` in (see `filled`).
    """
    row = asset("page_values")[page]
    answer, before = answered(world, work_out, *asked)
    labels, details, outcomes = (_groups(row.get(name, ())) for name in ("labels", "details", "outcomes"))
    figures = Figures(
        world,
        _items(answer),
        filled(world, labels, **put),
        page,
        before,
        details,
        outcomes,
        getattr(answer, "faults", ()),
        getattr(answer, "hazards", ()),
        head=row.get("head", ""),
    )
    return answer, figures


class _Put(Formatter):
    """Fills texts: {climb_grade} with the answer to that question, {20:speed} with that number, both in the reader's unit."""

    def __init__(self, world: World, put: Mapping[str, str]) -> None:
        self.world, self.put = world, put

    def get_value(self, key: int | str, _args: object, _more: object) -> Any:  # noqa: ANN401  (as Formatter has it)
        """Return what stands in place of a name; of a number itself, which is in the metric unit of a quantity."""
        if isinstance(key, int) or key in self.put:
            return self.put.get(str(key), key)
        question = f"ask.{key}"
        return self.world.style.number(asked(self.world, question), field_of(question).quantity)

    def format_field(self, value: Any, quantity: str) -> str:  # noqa: ANN401  (as Formatter has it)
        """Return a text as it is, a number in the reader's unit."""
        if not quantity:
            return str(value)
        kind = quantities()[quantity]
        return self.world.style.number(kind.home("metric").to_si(value, kind.si), quantity)


def filled(world: World, texts: Mapping[str, str], **put: str) -> dict[str, str]:
    """Return texts with what their names stand for: what is `put` in by name, else answers to questions."""
    fill = _Put(world, put)
    return {name: fill.format(text) if "{" in text else text for name, text in texts.items()}


def _groups(named: Sequence[str]) -> dict[str, str]:
    """Return groups of assets/words together, each by its file and its name there: "packs.descent"."""
    parts = (name.split(".") for name in named)
    return {name: text for file, group in parts for name, text in texts(file)[group].items()}


def figure_page(  # noqa: PLR0913  (the parts of a page, in the order they stand)
    figures: Figures,
    *,
    title: str = "",
    crown: Verdict | Figure | None = None,
    note: Sequence[Block] = (),
    controls: Sequence[str | Block] | None = None,
    picture: Sequence[Block] = (),
    rows: Callable[[], Iterator[Block]] | None = None,
    advice: Sequence[Block] = (),
    values: Sequence[Block] | None = None,
    values_title: str = "",
    line: Callable[[World, str], Line] = value_line,
    offer: Button | None = None,
    near: Near | None = None,
) -> Page:
    """Return a page of figures: what is not given is as its row in assets/page_values.toml has it, the crown is its head.

    `line` shows a value, `rows` makes the figures where they are not merely listed. The row's `stop` follows the word DANGER in
    the verdict while a hazard is one; a page that has it is stopped by a pack out of use, too. All that is left then are the
    notice and the values, and its `fixes` name the one that ends it. Nothing on the page dismisses it. `offer` is what can be
    laid over the board, `near` the first figure while the board lacks values, and what is asked for one after the other.
    """
    world, row = figures.world, asset("page_values").get(figures.page, {})
    stop, near = row.get("stop", ""), near or Near()
    crown = near.crown or crown or figures.crown()
    out = out_of_use(world) if stop else None
    hazards = [Hazard("DANGER", "pack out")] if out is not None else list(figures.hazards)
    stopped = bool(hazards) and hazards[0].word == "DANGER"
    then = near.following(world) or _next_missing(world, crown)
    foot = trial_foot(world, fits=not figures.faults, offer=offer, then=then)
    if stopped:
        hazards, crown = (
            hazards[:1],
            Verdict(f"{_('DANGER')}: {stop}".strip(": "), key="stop", form="wrong"),
        )
        foot = _stopped_foot(world, foot, row.get("fixes", {}).get(hazards[0].key, ""))
    elif figures.faults or refused_now(world):
        crown = replace(crown, grey=True)
    rows = rows or partial(figures.rows, row["first"], row.get("first_title", ""))
    more = () if stopped else (*picture, *rows(), *advice)
    return Page(
        title=title or row["title"],
        crown=crown,
        blocks=(
            *_signals(world, hazards, "" if out is None else out["sign"]),
            *(() if stopped else (*note, *near.more(world))),
            *faults_said(world, figures.faults),
            *(_control(world, one) for one in (row.get("controls", ()) if controls is None else controls)),
            *more,
            Section("values", values_heading(world, values_title or row.get("values_title", ""))),
            *((line(world, key) for key in row["values"]) if values is None else values),
        ),
        foot=foot,
        aside=frozenset(block.key for block in more),
        # A page that is stopped begins at its notice, but for a keypad that must not go deaf.
        card="stopped" if stopped and foot.entry is None else "",
    )


def _next_missing(world: World, crown: Verdict | Figure) -> str:
    """Return the value that the headline still lacks after the one being entered, "" for none."""
    if world.asking is None or not isinstance(crown.act, Ask) or crown.act.key == world.asking.key:
        return ""
    return crown.act.key


def _signals(world: World, hazards: Sequence[Hazard], sign: str) -> Iterator[Block]:
    """Yield the worst hazard with its word, the others plain; a pack out of use leads to what to do with it."""
    for place, hazard in enumerate(hazards):
        text, key = hazard_text(hazard, world.style, sign=sign), f"hazard {place}"
        if hazard.word and not place:
            yield Notice(key, hazard.word.lower(), text)
        else:
            yield Words(key, text, bold=True)
    if sign:
        yield signs_line(_("What to do with this pack"))


def _control(world: World, one: str | Block) -> Block:
    if isinstance(one, Block):
        return one
    return choice(world, one) if field_of(one).kind == "choice" else stepper(world, one)


def _stopped_foot(world: World, foot: Foot, fix: str) -> Foot:
    """Return the foot beside a DANGER: the value that ends it. What led to it can be dropped and not kept."""
    if foot.entry is not None:
        return foot
    change = _("Change: {value}").format(value=field_of(fix).label.lower()) if fix else ""
    return Foot(
        main=Button(change, Ask(fix)) if fix else None,
        beside=(Button(_("Drop the trial"), Drop()),) if world.trial else (),
    )
