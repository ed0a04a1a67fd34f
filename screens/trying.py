"""What pages share that try values, and those that read the saved board: there nothing is tried."""

from collections.abc import Sequence
from dataclasses import replace

from logic.answers.asked import questions
from logic.board import Value, board_fields
from logic.errors import InputError
from screens.acts import Act, Go
from screens.acts.entering import Ask, Done, Put
from screens.acts.keeping import Drop, Keep
from screens.asking import choice, entry_of, value_line
from screens.blocks import Button, Choice, Line, Words
from screens.page import Foot
from screens.tongue import _, asset
from screens.words import label_of, refusal
from screens.world import World

KEEP_THIS_BOARD = Go("board.name", {"purpose": "keep"})
"""Gives what was typed without any board a name."""


def trying(world: World) -> str:
    """Return which values are on trial: it stands over the bars that keep or drop it, where nothing moves when it comes."""
    if world.is_scratch or not world.trial:
        return ""
    return _("Trying: {values}").format(values=", ".join(label_of(key) for key in world.trial))


def values_heading(world: World, title: str = "") -> str:
    """Return what stands over the values: where no board is saved they are from none."""
    if world.is_scratch:
        return _("Values: tap one to change it")
    return title or _("From the board: tap one to try another value")


def values_of(page: str) -> tuple[str, ...]:
    """Return the values that a page of figures rests on, in the order in which assets/page_values.toml has them."""
    return tuple(asset("page_values")[page]["values"])


def faults_said(world: World, faults: Sequence[InputError]) -> tuple[Words, ...]:
    """Return what does not fit together on the board."""
    return tuple(
        Words(f"fault {place}", refusal(fault, world.style), tone="bad", bold=True)
        for place, fault in enumerate(faults)
    )


def try_measured(
    world: World, key: str, found: float, shown: str, note: str = ""
) -> tuple[Button | None, tuple[Words, ...]]:
    """Return the bar that tries what was measured, unless the board has it; or why the board cannot have it."""
    present = world.board.value(key)
    if present is not None and present.si == found:
        return None, ()
    try:
        board_fields()[key].check(found)
    except InputError as problem:
        return None, (Words("refused", refusal(problem, world.style), tone="bad", bold=True),)
    text = _("Try {value} on the board").format(value=shown)
    return Button(text, Put(key, Value(float(found), "measured", note=note))), ()


def trial_foot(world: World, *, fits: bool = True, offer: Button | None = None, then: str = "") -> Foot:
    """Return what is being entered, else the bars that keep or drop the trial, else nothing.

    `offer` is what can be laid over the board: it comes before the trial that there is. `then` is the value that is asked for
    after the one being entered.
    """
    entry = entry_of(world)
    if entry is not None and then:
        return Foot(main=Button(_("Next"), Ask(then)), beside=(Button(_("Done"), Done()),), entry=entry)
    if entry is not None:
        return Foot(main=Button(_("Done"), Done()), entry=entry)
    if not world.trial:
        return Foot(main=offer)
    if world.is_scratch:
        drop, kept = Button(_("Clear all values"), Drop()), Button(_("Keep this board"), KEEP_THIS_BOARD)
    else:
        drop, kept = Button(_("Drop the trial"), Drop()), Button(_("Keep on board"), Keep())
    # What does not fit together can be kept, but it is not what is offered first.
    if offer is not None or not fits:
        return Foot(main=offer, beside=(drop, kept), note=trying(world))
    return Foot(main=kept, beside=(drop,), note=trying(world))


def untried(world: World) -> World:
    """Return the world with the saved board in front; the scratch board's values are its own."""
    return world if world.is_scratch or not world.trial else replace(world, trial={})


def trial_note(world: World, text: str = "") -> tuple[Words, ...]:
    """Return the line that says that a trial does not count here."""
    if world.is_scratch or not world.trial:
        return ()
    text = text or _("A trial is open: this page uses the saved board.")
    return (Words("trial", text, tone="trial", bold=True),)


def board_ask(key: str) -> Act:
    """Return how a value is asked for: one of the board on the board's own page."""
    return Ask(key) if key in questions() else Go("board.value", {"key": key})


def board_line(world: World, key: str) -> Line:
    """Return a value of the board that is changed on the board's own page, or a question."""
    return replace(value_line(untried(world), key), act=board_ask(key))


def board_choice(world: World, key: str) -> Choice:
    """Return a choice that is written onto the saved board at once, with undo."""
    shown = choice(untried(world), key)
    # Where no board is saved a value can only be tried.
    options = tuple(replace(one, act=replace(one.act, keeps="saved")) for one in shown.options)  # type: ignore[type-var]
    return replace(shown, options=options)
