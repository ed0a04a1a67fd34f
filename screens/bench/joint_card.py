"""The card of a joint as blocks: for a joint of the board and for a screw that is looked up."""

from collections.abc import Iterator
from dataclasses import replace

from logic.answers.joint_guide import locker_steps
from logic.answers.joints import JointCard
from logic.answers.reading import Item, Open, Result
from logic.board import Board
from logic.board_joints import joint_places
from logic.fields import ARM, Field
from logic.frozen import frozen
from logic.store import Record
from logic.units import show_in
from screens.acts import Go
from screens.acts.keeping import Settle
from screens.asked_value import with_refused
from screens.bench.explained import explained
from screens.blocks import Block, FigureRow, Line, Notice, Picture, Section, Stepper, Verdict, Words
from screens.pictures.tightening import pull_on_key
from screens.showing import figure, fold, shared_sureness, working
from screens.tongue import _, texts
from screens.ways import way_from, words_if
from screens.words import KNOWN, begun, offer, refusal, sureness
from screens.words import joints as words
from screens.world import World

ITEMS = texts("joints")["items"]
REACHES = "motor face"
"""The kind of joint behind whose holes the windings lie."""
COLDEST, HOTTEST, STEP = 263.15, 313.15, 5.0
"""Temperatures of the bench that can be asked for, in K, and the step of the buttons."""


def board_of(world: World) -> Board:
    """Return the board whose joints are shown: the saved one, or the scratch board with its trial."""
    return world.board if world.is_scratch else world.saved


def joint_value_line(key: str, world: World, field: Field, path: str, shown: str, known: str) -> Line:  # noqa: PLR0913
    """Return a value under its whole name, `path`, with how it is known or what could not be used; a touch asks for it."""
    act = Go("bench.joint_value", {"key": path})
    return with_refused(world, Line(key, field.label, known, value=shown, act=act), f"value/{path}")


def rides_since(world: World, record: Record | None) -> int:
    """Return how many rides the log has after an entry, by their order: a date may be of a clock that was wrong."""
    if record is None:
        return 0
    return len(world.store.page(world.saved.id, "ride", limit=50, after=record.id))


def _lacking(missing: tuple[str, ...]) -> tuple[str, str]:
    """Return what is asked in place of a torque, as a question where one value settles it."""
    if missing[0].endswith(".engagement"):
        return _("How deep is the thread?"), _("How many mm of the screw hold in the hole.")
    return _("Not known yet"), offer(missing)


@frozen
class CardBlocks:
    """The blocks of one card."""

    world: World
    card: JointCard

    def crown(self) -> Verdict:
        """Return torque and ceiling, locker and pull; or how it is set by feel; or what is missing."""
        card, style, item = self.card, self.world.style, self.card.items["wrench"]
        form = "wrong" if card.notice[0] == "warning" else "plain"
        if isinstance(item, Result):
            number, never = words.wrench_texts(card, style, inch=style.system == "inch")
            word = _("{torque}, never over {ceiling}").format(
                torque=number, ceiling=never.partition("\u00a0")[0]
            )
            over = words.ABOVE_DRAG if card.drag_missing else ""
            text = "\n".join(part for part in (self._locker(), self._pull()) if part)
            return Verdict(f"{word}{over}", text, form=form, act=working(item, ITEMS["wrench"]))
        if isinstance(item, Open) and item.missing:
            # Locker and pull need two lines: what is tapped stays where it is when they come.
            word, text = _lacking(item.missing)
            return Verdict(word, text, lines=2)
        if isinstance(item, Open) and item.problem is not None:
            text = refusal(item.problem, style)
            return Verdict(_("Not known"), text, form=form)
        how = card.kind.text("how") if "how" in card.kind else texts("joints")["how"].get(card.feel, "")
        return Verdict(texts("joints")["feel"].get(card.feel, _("By feel")), how, form=form)

    def _locker(self) -> str:
        locker, cure = self.card.locker, self.card.items.get("cure")
        if locker is None:
            return ""
        if locker.grade == "none":
            return _("No locker")
        grade = _("{grade} locker").format(grade=begun(words.GRADES[locker.grade]))
        if not isinstance(cure, Result):
            return grade
        wait = self.world.style.number(cure.value, cure.quantity)
        return _("{locker}, ride after {wait}").format(locker=grade, wait=wait)

    def _pull(self) -> str:
        item = self.card.items.get("pull")
        if not isinstance(item, Result):
            return ""
        return _("No wrench: {scale} at {arm}").format(scale=self._scale(item), arm=self._arm(item))

    def _scale(self, item: Result) -> str:
        unit = self.world.person.scale_unit
        return str(show_in(item.value, "force", unit, mark=self.world.style.mark, digits=3))

    def _arm(self, item: Result) -> str:
        arm = next(float(one.value) for one in item.inputs if one.name == ARM.label)
        return self.world.style.number(arm, "length")

    def hazard(self) -> Iterator[Notice]:
        """Yield the one hazard with its word."""
        word, key = self.card.notice
        if word:
            yield Notice("hazard", word, texts("joints")["notices"][key])

    def told(self, said_already: tuple[str, ...] = ()) -> Iterator[Block]:
        """Yield what was assumed, but for options whose names say so already, and what deserves a word."""
        card = self.card
        yield from words_if("assumed", words.assumed_text(card, said_already), tone="second")
        for note in card.notes:
            yield Words(f"note {note}", texts("joints")["notes"][note])

    def alike(self) -> Iterator[Block]:
        """Yield look-alikes; the first is a notice where no other hazard is named."""
        card = self.card
        for place, (other, warning) in enumerate(card.alike):
            text, key = (
                _("Looks alike: {other}. {warning}").format(other=other, warning=warning),
                f"alike {place}",
            )
            plain = place or card.notice[0]
            yield Words(key, text) if plain else Notice(key, "notice", text)

    def folds(self) -> Iterator[Block]:
        """Yield threadlocker, pull, tool and order, and why it is so much: each opens on a tap."""
        card, world = self.card, self.world
        yield from fold(world, "locker", _("Threadlocker"), self._put_on)
        if isinstance(card.items.get("pull"), Result):
            yield from fold(world, "no wrench", _("Without a torque wrench"), self._pulled)
        yield from fold(world, "tool", _("Tool and order"), self._work)
        if self._reasons():
            yield from fold(world, "why", _("Why"), self._why)
        if card.kind.text("kind") == REACHES:
            yield way_from("bench.joint", "reach")

    def _reasons(self) -> bool:
        return isinstance(self.card.items["wrench"], Result) or bool(words.shown_items(self.card))

    def _why(self) -> Iterator[Block]:
        """Yield the torque in the other unit, the nut's drag, what limits it, and every other result with its working."""
        card, style = self.card, self.world.style
        if isinstance(card.items["wrench"], Result):
            limit = _("What limits it: {limit}.").format(limit=texts("joints")["limits"][card.limit])
            yield Words("limit", limit, bold=True)
            yield Words("other unit", words.set_text(card, style, inch=style.system != "inch"))
            yield from words_if("drag", words.drag_text(card, style), bold=card.drag_missing)
        for name in ("drive_torque", "carried"):
            item = card.items.get(name)
            if item is not None and not (isinstance(item, Open) and item.outcome):
                yield self.row(name)
        names = words.shown_items(card)
        note = self.world.kept(shared_sureness, card.items)
        if names:
            yield Section("figures", _("Figures"), note)
        yield from map(self.row, names)

    def _put_on(self) -> Iterator[Block]:
        """Yield grade, preparation and cure; or none and why."""
        card, world = self.card, self.world
        yield Words("grade", words.locker_text(card), bold=True)
        locker = card.locker
        if locker is None or locker.grade == "none":
            return
        dry = _("Activator on the threads, let it dry.") if locker.activator else ""
        yield Words("put on", f"{locker_steps('put on')[0]} {dry}".strip())
        for caution in locker.cautions:
            yield Words(f"caution {caution}", texts("joints")["cautions"][caution], tone="second")
        if isinstance(card.items["cure"], Result):
            yield self.row("cure", _("Longer in the cold. Then ride."))
        else:
            yield Words("cure", _("Too cold to cure: warm the parts and the bench first."), bold=True)
        yield Stepper(
            "day",
            _("Temperature at the bench"),
            world.style.number(world.person.day, "temperature"),
            less=self._day(-1),
            more=self._day(1),
        )

    def _day(self, sign: int) -> Settle | None:
        day = min(max(self.world.person.day + sign * STEP, COLDEST), HOTTEST)
        return None if day == self.world.person.day else Settle({"day": day})

    def _pulled(self) -> Iterator[Block]:
        """Yield the same torque as a pull on the person's own key or spanner."""
        card, world, item = self.card, self.world, self.card.items["pull"]
        assert isinstance(item, Result)  # noqa: S101  (the fold is there only then)
        spanner = words.by_spanner(card)
        detail = _("{scale} on the scale{over}, {arm} from the {turned}, square to the {tool}.").format(
            scale=self._scale(item),
            over=_(", over what turns the loose nut") if card.drag_missing else "",
            arm=self._arm(item),
            turned=_("nut") if spanner else _("screw"),
            tool=_("spanner") if spanner else _("hex key"),
        )
        error = card.items["pull_error"]
        if isinstance(error, Result):
            share = world.style.number(error.value, "share", 2)
            detail += _(" Your scale is good to ± {share} of it.").format(share=share)
        arm = world.person.key_arm
        yield Picture(
            "key",
            pull_on_key(self._arm(item), self._scale(item), spanner=spanner),
            _("Pull square to the arm, at its end."),
        )
        yield self.row("pull", detail)
        yield joint_value_line(
            "arm", world, ARM, ARM.key, self._arm(item), KNOWN["assumed" if arm is None else arm.known]
        )

    def _work(self) -> Iterator[Block]:
        card, style = self.card, self.world.style
        name = card.kind.text("picture") if "picture" in card.kind else ""
        yield from explained(
            self.world, board_of(self.world), name, card.key if card.key in joint_places() else ""
        )
        tool = words.tool_text(card)
        if tool:
            size = _("{tool}. Try the tool first: its size is from memory.").format(tool=tool)
            yield Words("tool text", size, bold=True)
        yield Words("order", card.kind.text("order"))
        yield Words("reuse", card.kind.text("reuse"))
        item = card.items.get("drag_reuse")
        if isinstance(item, Result):
            least = words.torque_text(item.value, style, inch=style.system == "inch")
            text = _("An insert nut is used again only from a drag of {least}.").format(least=least)
            yield Words("drag reuse", f"{text}{words.reuse_text(card)}")

    def row(self, name: str, detail: str = "") -> FigureRow:
        """Return one result, how sure it is where that differs from the others."""
        item: Item = self.card.items[name]
        if isinstance(item, Result) and sureness(item) != self.world.kept(shared_sureness, self.card.items):
            detail = f"{detail} {sureness(item)}.".strip()
        row = figure(self.world, item, ITEMS[name], detail=detail)
        # What is missing is added on the joint's own page, not asked for here.
        return row if isinstance(item, Result) else replace(row, act=None)  # type: ignore[return-value]
