"""What was saved of a tension: after a check the belt that asks for most, after another way what is next."""

from collections.abc import Iterator

from logic.answers.tension_entry import word_of
from logic.store import Record
from screens.acts import Back, Swap
from screens.blocks import Block, Button, Line, Verdict, Words
from screens.page import Foot, Page
from screens.tongue import _, texts
from screens.words.tension import MOVES, SIGNS, belt_name, form_of, tension_text, tile
from screens.world import World

ORDER = ("wrong", "unsure", "plain", "right")
"""What asks for most comes first."""
AFTER = _("After moving a motor: lock its screws, turn the wheel, measure again.")
NOT_VERIFIED = _("Set, not verified. Locked now? Turn the wheel and measure the span by another way.")


def checked_page(world: World) -> Page:
    """Return the readings of `ids` of a check, saved: a belt to set anew in front, each belt with what to do."""
    records = _saved_here(world)
    if not records:
        return _taken_back(Button(_("Measure again"), Swap("ride.tension")))
    one = len(world.saved.sides) == 1
    words = {record.body.belt: word_of(record.body) for record in records}
    first = min(words, key=lambda belt: ORDER.index(form_of(words[belt])), default="")
    word = words.get(first, "")
    return _saved(
        word,
        "" if one or not word else f"{belt_name(first)}: ",
        _("Saved. Checked by you.") if word else _("Checked by you."),
        (
            *(_line(world, record, one=one) for record in records),
            Words("after", AFTER, tone="second"),
        ),
        Button(_("Measure again"), Swap("ride.tension")),
    )


def saved_page(world: World) -> Page:
    """Return the reading of `ids`, saved from the bench."""
    record = next(iter(_saved_here(world)), None)
    if record is None:
        return _taken_back()
    word = word_of(record.body)
    other = [side for side in world.saved.sides if side != record.body.belt]
    beside = [
        Button(
            _("The left belt") if side == "left" else _("The right belt"), Swap("bench.belt", {"side": side})
        )
        for side in other
    ]
    return _saved(word, "", _("Saved."), tuple(_told(world, record, word)), *beside)


def _saved_here(world: World) -> list[Record]:
    """Return the readings of `ids` that have not been taken back."""
    records = (world.store.entry(number) for number in world.args["ids"])
    return [record for record in records if record.voided_by is None]


def _taken_back(*beside: Button) -> Page:
    """Return the page of readings that were all taken back."""
    text = _("The log holds nothing of this measurement.")
    return Page(
        title=_("Tension saved"),
        crown=Verdict(_("Taken back"), text),
        foot=Foot(main=Button(_("Finish"), Back()), beside=beside),
        places=False,
    )


def _saved(word: str, before: str, text: str, blocks: tuple[Block, ...], *beside: Button) -> Page:
    return Page(
        title=_("Tension saved"),
        crown=Verdict(
            f"{before}{tile(word)}" if word else _("Saved"),
            text,
            form=form_of(word),
            sign=SIGNS.get(word, ""),
        ),
        blocks=blocks,
        foot=Foot(main=Button(_("Finish"), Back()), beside=beside),
        places=False,
    )


def _line(world: World, record: Record, *, one: bool) -> Line:
    word = word_of(record.body)
    name = _("Belt") if one else belt_name(record.body.belt)
    return Line(
        f"belt {record.body.belt}",
        f"{name}: {tension_text(record, world.style)}",
        MOVES.get(word, ""),
        icon=SIGNS.get(word, ""),
    )


def _told(world: World, record: Record, word: str) -> Iterator[Block]:
    said = record.body
    name = _("Belt") if len(world.saved.sides) == 1 else belt_name(said.belt)
    way = texts("belt")["short_way"].get(said.method, "")
    yield Words("reading", f"{name}: {tension_text(record, world.style)}, {way}.", role="lead", bold=True)
    if word in MOVES:
        yield Words("move", MOVES[word], role="lead", bold=True)
    yield Words("next", NOT_VERIFIED if said.method == "motor" else AFTER, tone="second")
    if said.method != "together":
        # It brings what listens to a belt with it, which one way alone does not need.
        from screens.bench.other_ways import together_blocks  # noqa: PLC0415

        yield from together_blocks(world, said.belt)
