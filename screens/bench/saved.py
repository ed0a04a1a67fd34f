"""What was saved from the bench: the verdict, what is next, and the way back."""

from collections.abc import Iterator

from logic.answers.tension_entry import word_of
from logic.store import Record
from screens.acts import Back, Swap
from screens.belt_verdict import form_of
from screens.blocks import Block, Button, Verdict, Words
from screens.page import Foot, Page
from screens.tongue import _, texts
from screens.words.tension import MOVES, SIGNS, belt_name, tension_text, tile
from screens.world import World

NEXT = {
    "motor": _("Set, not verified. Locked now? Turn the wheel and measure the span by another way."),
    "": _("After moving a motor: lock its screws, turn the wheel, measure again."),
}


def saved_page(world: World) -> Page:
    """Return the reading of `ids`, saved."""
    record = next((world.store.entry(number) for number in world.args["ids"]), None)
    word = "" if record is None else word_of(record.body)
    other = "" if record is None else next((one for one in world.saved.sides if one != record.body.belt), "")
    return Page(
        title=_("Tension saved"),
        crown=Verdict(
            word=tile(word) if word else _("Saved"),
            text=_("Saved."),
            form=form_of(word),
            sign=SIGNS.get(word, ""),
        ),
        blocks=tuple(_blocks(world, record, word)) if record is not None else (),
        foot=Foot(main=Button(_("Finish"), Back()), beside=_other(other)),
        places=False,
    )


def _blocks(world: World, record: Record, word: str) -> Iterator[Block]:
    said = record.body
    name = _("Belt") if len(world.saved.sides) == 1 else belt_name(said.belt)
    way = texts("belt")["short_way"].get(said.method, "")
    reading = f"{name}: {tension_text(record, world.style)}, {way}."
    yield Words(key="reading", text=reading, role="lead", bold=True)
    if word in MOVES:
        yield Words(key="move", text=MOVES[word], role="lead", bold=True)
    yield Words(key="next", text=NEXT.get(said.method, NEXT[""]), tone="second")
    if said.method != "together":
        # It brings what listens to a belt with it, which one way alone does not need.
        from screens.bench.together import together_blocks  # noqa: PLC0415

        yield from together_blocks(world, said.belt)


def _other(side: str) -> tuple[Button, ...]:
    if not side:
        return ()
    text = _("The left belt") if side == "left" else _("The right belt")
    return (Button(text, Swap("bench.belt", {"side": side})),)
