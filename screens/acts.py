"""Acts: what a person can do on a page, as frozen data. `screens.update` is the one place that carries them out.

A block names its act; the paper hands it to `update(world, act)` when the block is touched. Nothing happens while a page is
made, so a page can be made as often as one likes.
"""

from collections.abc import Mapping
from dataclasses import field
from typing import TYPE_CHECKING, Any

from logic.board import Board, Value
from logic.checks.lists import Checklist
from logic.fields import Field
from logic.frozen import frozen
from logic.log import Entry

if TYPE_CHECKING:
    from logic.answers.belt_sound import Recording


@frozen
class Act:
    """Something a person does."""


# Moving about


@frozen
class Go(Act):
    """Open a page on top of this one, with its parameters."""

    page: str
    args: Mapping[str, Any] = field(default_factory=dict)


@frozen
class Swap(Act):
    """Open a page in place of this one. `gather` makes a parameter of the next page out of several of this one, as a list."""

    page: str
    args: Mapping[str, Any] = field(default_factory=dict)
    gather: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


@frozen
class Back(Act):
    """Go one level back: close what is being entered, else leave the page."""


@frozen
class Place(Act):
    """Open one of the four places; what was open in another is left."""

    page: str


@frozen
class Explain(Act):
    """Open the words of the trade that stand on the page in front."""


@frozen
class Turn(Act):
    """Change parameters of this page; None takes one away. A name that begins with "_" does not outlive a restart."""

    changes: Mapping[str, Any]


@frozen
class Arrive(Act):
    """A page came in front: sent by whoever shows it, for what must be done before it can be read."""


# Entering


@frozen
class Ask(Act):
    """Ask for a value with the keypad or a choice, under the page."""

    key: str


@frozen
class Done(Act):
    """Close what is being entered. Text that is no value stays typed and counts for nothing."""


@frozen
class Type(Act):
    """The text of a field changed to this, read in a unit. `keeps` says where a value of it goes (see blocks.Entry)."""

    key: str
    field: Field
    text: str
    unit: str = ""
    keeps: str = "trial"


@frozen
class Write(Act):
    """Free text of a Field block changed to this."""

    key: str
    text: str


@frozen
class Put(Act):
    """Put a value: on trial over the board, onto the board itself, as the answer to a question, or as the rider."""

    key: str
    value: Value | None
    keeps: str = "trial"


@frozen
class Forget(Act):
    """Take back the text typed for some fields; `undo` is what is said beside the way back, "" offers none."""

    keys: tuple[str, ...]
    undo: str = ""


@frozen
class Retype(Act):
    """Put text typed for some fields back; what Undo holds after Forget."""

    texts: Mapping[str, str]


# What is kept


@frozen
class Set(Act):
    """Write values onto the saved board as they are given, with how they are known and one undo; None takes one out.

    Where no board is saved they join its trial.
    """

    values: Mapping[str, Value | None]


@frozen
class Keep(Act):
    """Make the trial's values the board's."""


@frozen
class Drop(Act):
    """Put the saved values back."""


@frozen
class Save(Act):
    """Put a whole board back as it was; what Undo holds after a change of it."""

    board: Any


@frozen
class Retry(Act):
    """Open a dropped trial again; what Undo holds after Drop."""

    trial: Mapping[str, Value]


@frozen
class Record(Act):
    """Write into the log of the board; `then` follows once it is on the disk."""

    entry: Entry
    then: tuple[Act, ...] = ()
    key: str = ""
    """Name of the parameter of the page that is given the number of the entry."""
    undo: str = ""
    """What is said beside the way back; "" offers none."""


@frozen
class Void(Act):
    """Hide a row of the log: an entry, a correction, or a row that hid one, which shows that one again."""

    entry: int
    undo: str = ""
    """What is said beside the way back; "" offers none."""


@frozen
class Correct(Act):
    """Give a log entry another body, what it was kept; `then` follows once it is on the disk."""

    entry: int
    body: Entry
    then: tuple[Act, ...] = ()


@frozen
class Copy(Act):
    """Make a copy for others: "share" hands the build sheet on, the others write a file (`screens.update.copies`)."""

    what: str


@frozen
class OpenFile(Act):
    """Look into a file that came from outside, by its path: a board, or a copy of everything. Nothing is changed."""

    path: str


@frozen
class OpenText(Act):
    """Look into the text of a board's file. Nothing is changed."""

    text: str


@frozen
class TakeIn(Act):
    """Take in what was looked into: add a board with its log, or put a copy in the place of everything."""


@frozen
class Settle(Act):
    """Change settings of the person."""

    changes: Mapping[str, Any]


@frozen
class Remember(Act):
    """Keep a setting that no page shows, such as the tool that was used last."""

    key: str
    value: Any


@frozen
class TakeOut(Act):
    """Take the pack of the board in use out of use, for a sign that was seen."""

    sign: str


@frozen
class PutBack(Act):
    """Put that pack into use again, for a reason."""

    why: str


# Boards


@frozen
class Choose(Act):
    """Put another board in use. Its own trial comes back with it; the other's is parked."""

    board: str


@frozen
class AddBoard(Act):
    """Save a new board and put it in use; `like` is what it begins as, else it is empty."""

    name: str
    like: Board | None = None


@frozen
class Rename(Act):
    """Give the board in use another name."""

    name: str


@frozen
class KeepAs(Act):
    """Save what was tried without a board as a new board, and put it in use."""

    name: str


@frozen
class Bin(Act):
    """Put the board in use into the bin; the next one comes in front."""


@frozen
class Unbin(Act):
    """Take a board out of the bin and put it in use."""

    board: str


@frozen
class Examples(Act):
    """Save the example boards and put the first in use."""


@frozen
class NotKnown(Act):
    """Say that nobody knows a value of the board in use: it is not asked for again. `again` takes that back."""

    key: str
    again: bool = False


# Lists of one's own


@frozen
class CopyList(Act):
    """Make a list of one's own from another one and open it."""

    key: str


@frozen
class KeepList(Act):
    """Keep a list of one's own, changed."""

    list: Checklist


@frozen
class DropList(Act):
    """Take a list of one's own out."""

    key: str


@frozen
class PutList(Act):
    """Put a list of one's own back as it was, or away again; what Undo holds after a change of it."""

    key: str
    list: Checklist | None


# The way back


@frozen
class Undo(Act):
    """Take back the step that the bar at the foot names, on the board it was done to."""


@frozen
class Dismiss(Act):
    """Close the bar at the foot."""


@frozen
class Both(Act):
    """Several acts, one after the other."""

    acts: tuple[Act, ...]


def asks(act: Act | None) -> str:
    """Return the key that an act asks for, "" for one that does not ask."""
    if isinstance(act, Both):
        return next((key for one in act.acts if (key := asks(one))), "")
    return act.key if isinstance(act, Ask) else ""


# Sound


@frozen
class Listen(Act):
    """Record a pluck; what is heard comes back as Heard."""


@frozen
class Heard(Act):
    """What the microphone gave, or the sentence that says why it gave nothing."""

    recording: "Recording | None"
    sentence: str = ""


@frozen
class OpenSound(Act):
    """Read a recording that was made elsewhere, by the path of its file."""

    path: str


# Checklists


@frozen
class Answer(Act):
    """Say what an item of the run in front is."""

    state: str
    value: float | str | None = None
    note: str = ""
    sign: str = ""


@frozen
class Rerun(Act):
    """Go on with a broken-off run, or begin it again."""

    again: bool


@frozen
class BackOne(Act):
    """Put the item before in front; its answer is taken back."""


@frozen
class PutInFront(Act):
    """Put an item of the run in front; what was said of it is taken back."""

    item: str


@frozen
class Halt(Act):
    """End the run at the item in front, for what is not right with it."""

    note: str
    sign: str = ""


@frozen
class Finish(Act):
    """Sign the run off: it goes into the log, and the page gives way to what follows."""


# Outside the app: put into `World.out`, done by the phone


@frozen
class Say(Act):
    """Say something aloud."""

    text: str


@frozen
class Share(Act):
    """Hand a text to another app."""

    title: str
    text: str


@frozen
class HandOn(Act):
    """Hand what the page in front says to another app."""


@frozen
class HandOnFile(Act):
    """Hand the page in front on as a file: "picture" as it is on the screen, "page" as HTML with its drawings."""

    kind: str


@frozen
class ReadOut(Act):
    """Say what the page in front says aloud."""


@frozen
class PickFile(Act):
    """Let the person choose a file by the phone's own page; it is then opened as one that is dropped on the window."""


@frozen
class PutFile(Act):
    """Let the person choose where a file that was written here goes."""

    path: str


@frozen
class SendFile(Act):
    """Hand a file that was written here to another app."""

    path: str
    title: str


@frozen
class AllowNotes(Act):
    """Ask for leave to show notes, where the phone wants to be asked."""


@frozen
class Shine(Act):
    """Switch the phone's light on, or off again."""


@frozen
class Tilt(Act):
    """Feel how the phone lies; what it felt comes back as Tilted, for the question of a grade."""

    key: str


@frozen
class Tilted(Act):
    """What was felt, along the short edge, the long edge and out of the screen in m/s2, or why there is nothing."""

    key: str
    gravity: tuple[float, float, float] | None
    sentence: str = ""
