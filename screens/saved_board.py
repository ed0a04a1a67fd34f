"""What pages share that read the saved board: nothing is tried there, and a value opens the board's own page."""

from dataclasses import replace

from logic.answers.asked import questions
from screens.acts import Act, Go
from screens.acts.entering import Ask
from screens.asking import choice, value_line
from screens.blocks import Choice, Line, Words
from screens.tongue import _
from screens.world import World


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
