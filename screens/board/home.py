"""The board in use: every value, how it is known, and what is missing."""

from collections.abc import Iterator

from logic.board import Board, Field, board_fields, groups
from screens.acts import Both, Go, Swap, Turn
from screens.acts.boards import Bin
from screens.asked import not_known
from screens.asked_value import with_refused
from screens.blocks import Block, Button, Fold, Line, Section, Verdict, Words
from screens.board.guide import guide, missing, written
from screens.page import Foot, Page
from screens.tongue import _
from screens.trying import trial_note
from screens.ways import ways_from
from screens.words import known_text
from screens.words.typed import value_words
from screens.world import World

OPEN = "drive"
"""The part whose values are in sight before one has opened any."""


def board_page(world: World) -> Page:
    """Return how far the board is known, where else to go, and its values by part."""
    done, asked = written(world).filled()
    gaps = missing(world)
    return Page(
        title=_("Board"),
        crown=Verdict(
            _("{done} of {asked} filled").format(done=done, asked=asked),
            _("The rest show “not set”.") if gaps else _("Nothing more is asked."),
            key="filled",
            form="plain" if gaps else "right",
        ),
        blocks=(*_notes(world), *ways_from("board"), *_parts(world), *_whole(world)),
        foot=Foot(main=Button(_("Add the next missing value"), _next(world)) if gaps else None),
        aside=frozenset({*groups(), *board_fields()}),
        chip=True,
    )


def _next(world: World) -> Go:
    """Return the way to the guided entry: to the few values of the first round until they are all there."""
    return Go("board.value", {"guided": True, "rest": not guide(world, rest=False).open})


def _notes(world: World) -> Iterator[Words]:
    yield from trial_note(world, _("A trial is open. This page shows the saved board."))
    kept = ", ".join(".".join(place) for place, _text in written(world).kept)
    if kept:
        yield Words("kept", _("Could not be read, and kept as it is: {kept}.").format(kept=kept))


def _parts(world: World) -> Iterator[Block]:
    """Yield the parts of the board; what is inside of one is made only while it is open."""
    for group, heading in groups().items():
        fields = [field for field in board_fields().values() if field.group == group]
        name = f"open_{group}"
        opened = world.args.get(name, group == OPEN)
        known = sum(written(world).value(field.key) is not None for field in fields)
        lacks = sum(_lacks(written(world), field) for field in fields)
        note = (_("{done} set, {lacks} still needed") if lacks else _("{done} set")).format(
            done=known, lacks=lacks
        )
        yield Fold(group, heading, note, open=opened, act=Turn({name: not opened}))
        if opened:
            yield from (_value(world, field) for field in fields)


def _lacks(board: Board, field: Field) -> bool:
    """Tell whether a board lacks a value that its answers need."""
    return bool(field.need) and board.applies(field) and board.value(field.key) is None


def _value(world: World, field: Field) -> Line:
    shown, detail = _words(world, field)
    act = Go("board.value", {"key": field.key})
    return with_refused(
        world, Line(field.key, field.label, detail, value=shown, act=act), f"board/{field.key}"
    )


def _words(world: World, field: Field) -> tuple[str, str]:
    board = written(world)
    value = board.value(field.key)
    if value is None and not board.applies(field):
        return "–", _("for a board with one motor")
    if value is None:
        if field.key in not_known(world):
            return _("not known"), ""
        assumed = _("a usual value is assumed") if field.stand_in else _("optional")
        return _("not set"), "" if field.need else assumed
    return value_words(field, value, world.style), known_text(value)


def _whole(world: World) -> Iterator[Block]:
    if world.is_scratch:
        return
    yield Section("whole", _("The whole board"))
    yield from ways_from("board.whole")
    # The next board is not shown after it: its own bin would stand under the same thumb.
    yield Line("bin", _("Put in the bin"), icon="bin", act=Both((Bin(), Swap("board.boards"))))
