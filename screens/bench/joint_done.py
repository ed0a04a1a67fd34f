"""What was done to a joint, in full: tightened or looked at, to what, with what, by whom, and a note."""

from collections.abc import Iterable, Iterator
from functools import cached_property

from logic.answers.joint_entry import tightening
from logic.answers.joints import JointCard, joint_card
from logic.answers.reading import Result
from logic.board import Field, Value
from logic.frozen import frozen
from screens.acts import Act, Back, Turn
from screens.acts.entering import Write
from screens.acts.keeping import Record, Remember
from screens.asking import number_entry, page_choice, read_entry
from screens.bench.joint_card import board_of
from screens.blocks import Block, Button, Choice, Line, Words
from screens.blocks import Field as TextField
from screens.page import Foot, Page
from screens.tongue import _, texts
from screens.words.joints import answer_text, torque_text
from screens.words.typed import not_used
from screens.world import World

TORQUE = Field("torque", _("Set to"), "number", 0, "", quantity="torque", low=0.05, high=100.0)
DONE = (("tightened", _("Tightened")), ("looked", _("Looked at, line whole")))
LOCKERS = (("none", _("None")), ("low", _("Low")), ("medium", _("Medium")), ("high", _("High")))
TOOL = "joint_tool"
"""Key of the setting that holds the tool used last."""
TEXTS = ("by", "note")


def joint_done_page(world: World) -> Page:
    """Return what one entry for the joint `joint` will say. Nothing typed: the card's setting."""
    done = _Done(world)
    return Page(
        title=done.card.kind.text("name"),
        blocks=(
            done.choice("done", "", DONE),
            *(() if done.looked else done.torque()),
            *(() if done.looked else (done.choice("tool", _("With"), texts("joints")["tools"].items()),)),
            *(() if done.looked else (done.choice("locker", _("Threadlocker"), LOCKERS),)),
            done.text("by", _("By whom, if wanted")),
            done.text("note", _("Note")),
        ),
        foot=done.foot(),
        places=False,
        back=Turn({"typing": None}) if world.args.get("typing") else None,
    )


@frozen
class _Done:
    """What is chosen and typed so far, else what the card says."""

    world: World

    @cached_property
    def card(self) -> JointCard:
        return self.world.kept(joint_card, board_of(self.world), self.world.args["joint"], self.world.person)

    def key(self, name: str) -> str:
        """Return the key under which a text of this page is typed."""
        return f"done/{self.world.args['joint']}/{name}"

    @property
    def unit(self) -> str:
        return "lbf·in" if self.world.style.system == "inch" else "N·m"

    def chosen(self, name: str) -> str:
        """Return what is chosen."""
        locker = self.card.locker
        begins = {
            "done": "tightened",
            "tool": self.world.store.get(TOOL, "torque wrench") if self.card.torque else "by feel",
            "locker": "none" if locker is None else locker.grade,
        }
        return str(self.world.args.get(name, begins[name]))

    @property
    def looked(self) -> bool:
        """Tell whether it was looked at only: nothing was set then."""
        return self.chosen("done") == "looked"

    @property
    def typed(self) -> str:
        return self.world.typed.get(self.key("torque"), "")

    @cached_property
    def value(self) -> Value | None:
        """Return the torque that is typed."""
        unit = self.world.units.get(self.key("torque"), self.unit)
        return read_entry(self.world, self.typed, TORQUE, unit).value

    def choice(self, name: str, label: str, options: Iterable[tuple[str, str]]) -> Choice:
        """Return one of the choices."""
        return page_choice(name, label, options, self.chosen(name))

    def text(self, name: str, label: str) -> TextField:
        """Return one of the texts."""
        key = self.key(name)
        return TextField(key, label, self.world.typed.get(key, ""))

    def torque(self) -> Iterator[Block]:
        """Yield what was set, with what is recorded when nothing is typed, and that it is too much."""
        world, card = self.world, self.card
        if self.value is not None:
            shown = world.style.typed(float(self.value.si), "torque", self.value.typed_unit)
            said = ""
        elif self.typed and not world.args.get("typing"):
            shown, said = "–", not_used(self.typed)
        else:
            shown = answer_text(card, world.style)
            said = _("as the card says") if card.torque else ""
        yield Line(
            "torque",
            TORQUE.label,
            said,
            value=shown,
            bad=bool(self.typed) and self.value is None,
            chosen=bool(world.args.get("typing")),
            act=Turn({"typing": True}),
        )
        limit = card.items["wrench_ceiling"]
        # A reading with a drag that is not known cannot be held against a ceiling without it.
        if self.value is None or not isinstance(limit, Result) or card.drag_missing:
            return
        if float(self.value.si) > limit.value + 1e-9:
            most = torque_text(limit.value, world.style, inch=world.style.system == "inch")
            over = _("Above {most}, the most for this joint. Renew screw and hole before riding.")
            yield Words("over", over.format(most=most), tone="bad", bold=True)

    def foot(self) -> Foot:
        """Return the keypad while a torque is typed, and the bar that writes the entry."""
        act = self.save() if self.looked or self.value is not None or not self.typed else None
        save = Button(_("Save"), act, why="" if act else _("The torque cannot be used."))
        if not self.world.args.get("typing") or self.looked:
            return Foot(main=save)
        entry = number_entry(self.world, self.key("torque"), TORQUE, self.unit)
        return Foot(main=Button(_("Done"), Turn({"typing": None})), entry=entry)

    def save(self) -> Act:
        """Return the act that writes the entry, empties the page and goes back."""
        card, tool = self.card, self.chosen("tool")
        torque = None if self.looked else card.torque if self.value is None else float(self.value.si)
        entry = tightening(
            card,
            torque=torque,
            tool=tool,
            locker=self.chosen("locker"),
            by=self.world.typed.get(self.key("by"), "").strip(),
            note=self.world.typed.get(self.key("note"), "").strip(),
            looked=self.looked,
        )
        keep = (Remember(TOOL, tool),) if torque and tool != "by feel" else ()
        empty = (Write(self.key(name), "") for name in ("torque", *TEXTS))
        return Record(entry, (*keep, *empty, Back()), undo=_("Recorded"))
