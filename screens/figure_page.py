"""Pages of figures: verdict, hazards, what is stepped, picture, figures, advice, values. DANGER withholds every figure."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import field, replace
from functools import partial
from typing import Any, TypeVar

from logic.answers.hazards import Hazard
from logic.answers.reading import Item, Open, Result
from logic.errors import InputError
from logic.frozen import frozen
from screens.acts import Act
from screens.acts.entering import Ask
from screens.acts.keeping import Drop
from screens.asked import out_of_use
from screens.asking import choice, field_of, refused_now, stepper, value_line
from screens.blocks import WRONG, Block, Button, Figure, FigureRow, Line, Notice, Section, Verdict, Words
from screens.page import Foot, Page
from screens.showing import figure, fold, once_each, shared_sureness, told_in
from screens.tongue import _
from screens.trying import faults_said, page_rows, trial_foot, values_heading
from screens.ways import signs_line
from screens.words import sureness
from screens.words.packs import hazard_text
from screens.world import World

A = TypeVar("A")


def answered(world: World, work_out: Callable[..., A], *asked: object) -> tuple[A, Mapping[str, Item]]:
    """Return the answer for the board with what is tried, and the results of the saved board while there is a trial."""
    answer = world.kept(work_out, world.board, *asked)
    if world.is_scratch or not world.trial:
        return answer, {}
    saved: Any = world.kept(work_out, world.saved, *asked)
    return answer, saved if isinstance(saved, Mapping) else saved.items


@frozen
class Figures:
    """Results by name, what they are called, and what is said of them.

    `labels` gives the order. `outcomes` are sentences in place of a number, by what stands in its way. `head` is the one that
    the page leads with.
    """

    world: World
    items: Mapping[str, Item]
    labels: Mapping[str, str]
    before: Mapping[str, Item] = field(default_factory=dict)
    details: Mapping[str, str] = field(default_factory=dict)
    outcomes: Mapping[str, str] = field(default_factory=dict)
    grey: bool = False
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
        """Return how sure most of them are: said once, and beside a figure only where it differs."""
        return self.world.kept(shared_sureness, self.items)

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
            grey=self.grey or refused_now(self.world),
            row=row,
            reserve=True,
        )
        if isinstance(item, Open) and item.missing:
            shown = replace(shown, act=self.ask(item.missing[0]))
        instead = isinstance(item, Open) and (item.outcome or (item.problem.reason if item.problem else ""))
        return replace(shown, detail=self.outcomes[instead]) if instead in self.outcomes else shown  # type: ignore[index]

    def rows(self, first: Sequence[str], title: str = "") -> Iterator[Block]:
        """Yield a heading, the first figures, and the rest under "All figures".

        Of those that lack the same value only the first is shown, and none that lacks what the `head` already names.
        """
        here = {name: self.items[name] for name in self.labels if name in self.items}
        said = once_each(({self.head: here[self.head]} if self.head in here else {}) | here)
        said = tuple(name for name in said if name != self.head)
        if said:
            yield Section(key="figures", title=title or _("Figures"), note=self.note)
        yield from (self[name] for name in first if name in said)
        rest = [name for name in said if name not in first]
        if rest:
            yield from fold(self.world, "all", _("All figures"), lambda: (self[name] for name in rest))


def figure_page(  # noqa: PLR0913  (the parts of a page, in the order they stand)
    world: World,
    page: str = "",
    *,
    title: str = "",
    crown: Verdict | Figure,
    faults: Sequence[InputError] = (),
    hazards: Sequence[Hazard] = (),
    stop: str = "",
    fixes: Mapping[str, str] | None = None,
    note: Sequence[Block] = (),
    controls: Sequence[str | Block] = (),
    picture: Sequence[Block] = (),
    figures: Figures | Callable[[], Iterator[Block]],
    advice: Sequence[Block] = (),
    values: Sequence[Block] | None = None,
    values_title: str = "",
    line: Callable[[World, str], Line] = value_line,
    offer: Button | None = None,
    then: str = "",
) -> Page:
    """Return a page of figures: title, figures that stand first and values are those of its row in assets/page_values.toml.

    `line` shows a value. `stop` follows the word DANGER in the verdict while a hazard is one; a page that has it is stopped by
    a pack out of use, too. All that is left then are the notice and the values, and `fixes` names the one that ends it.
    Nothing on the page dismisses it. `offer` is what the page can lay over the board, `then` the value that is asked for after
    the one being entered: the next one that the headline lacks, unless it is given.
    """
    row = page_rows().get(page, {})
    title, values_title = title or row["title"], values_title or row.get("values_title", "")
    out = out_of_use(world) if stop else None
    hazards = [Hazard("DANGER", "pack out")] if out is not None else list(hazards)
    stopped = bool(hazards) and hazards[0].word == "DANGER"
    foot = trial_foot(world, fits=not faults, offer=offer, then=then or _next_missing(world, crown))
    if stopped:
        hazards, crown = (
            hazards[:1],
            Verdict(key="stop", word=f"{_('DANGER')}: {stop}".strip(": "), form=WRONG),
        )
        foot = _stopped_foot(world, foot, (fixes or {}).get(hazards[0].key, ""))
    elif faults or refused_now(world):
        crown = replace(crown, grey=True)
    if isinstance(figures, Figures):
        figures = partial(figures.rows, row["first"], row.get("first_title", ""))
    more = () if stopped else (*picture, *figures(), *advice)
    return Page(
        title=title,
        crown=crown,
        blocks=(
            *_signals(world, hazards, "" if out is None else out["sign"]),
            *(() if stopped else note),
            *faults_said(world, faults),
            *(_control(world, one) for one in controls),
            *more,
            Section(key="values", title=values_heading(world, values_title)),
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
            yield Notice(key=key, word=hazard.word.lower(), text=text)
        else:
            yield Words(key=key, text=text, bold=True)
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
