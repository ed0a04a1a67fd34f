"""What a tension check found: the belt that asks for most in front, each belt with what to do."""

from logic.answers.tension_entry import word_of
from logic.store import Record
from screens.acts import Back, Swap
from screens.belt_verdict import form_of, worst
from screens.blocks import Button, Line, Verdict, Words
from screens.page import Foot, Page
from screens.tongue import _
from screens.words.tension import MOVES, SIGNS, belt_name, tension_text, tile
from screens.world import World


def saved_page(world: World) -> Page:
    """Return the readings of `ids`, saved."""
    records = [world.store.entry(number) for number in world.args["ids"]]
    one = len(records) == 1
    return Page(
        title=_("Tension saved"),
        crown=_crown(records, one=one),
        blocks=(
            *(_line(world, record, one=one) for record in records),
            Words(
                key="after",
                text=_("After moving a motor: lock its screws, turn the wheel, measure again."),
                tone="second",
            ),
        ),
        foot=Foot(
            main=Button(_("Finish"), Back()),
            beside=(Button(_("Measure again"), Swap("ride.tension")),),
        ),
        places=False,
    )


def _crown(records: list[Record], *, one: bool) -> Verdict:
    said = _("Saved. Checked by you.")
    none = Verdict(word=_("Saved"), text=_("Checked by you."))
    if not records:
        return none
    first = worst(records).body
    word = word_of(first)
    if not word:
        return none
    name = "" if one else f"{belt_name(first.belt)}: "
    return Verdict(word=f"{name}{tile(word)}", text=said, form=form_of(word), sign=SIGNS.get(word, ""))


def _line(world: World, record: Record, *, one: bool) -> Line:
    word = word_of(record.body)
    name = _("Belt") if one else belt_name(record.body.belt)
    return Line(
        key=f"belt {record.body.belt}",
        title=f"{name}: {tension_text(record, world.style)}",
        detail=MOVES.get(word, ""),
        icon=SIGNS.get(word, ""),
    )
