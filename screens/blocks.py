"""Blocks: what a page is made of, top to bottom, as frozen data. No colours, sizes or fonts: those are the paper's.

Each block has a `key` that stays the same while the page changes, so that the paper knows which one it was. It comes
first, then what the block says; all else goes by name. What a touch does stands in its acts; they are left out when two
blocks are compared, since they change nothing that is seen.
"""

from collections.abc import Mapping
from dataclasses import KW_ONLY
from dataclasses import field as part
from typing import ClassVar

from logic.fields import Field as ValueField
from logic.frozen import frozen
from screens.acts import Act
from screens.pictures.strokes import Later
from screens.pictures.strokes import Picture as Strokes
from screens.tongue import _

RIGHT, WRONG, UNSURE, PLAIN = "right", "wrong", "unsure", "plain"
"""Forms of a verdict: filled, thick frame with a cross, dashed frame with a question mark, a quiet panel."""


@frozen
class Block:
    """One thing on a page."""

    says: ClassVar[tuple[str, ...]] = ()
    """The fields that are said of it."""

    key: str

    def acts(self) -> Mapping[str, Act | None]:
        """Return what touching each part does, by the part's name; None for a part that does nothing now."""
        return {}

    def said(self) -> str:
        """Return the block as one would say it."""
        return _joined(*(getattr(self, name) for name in self.says))

    def looks_like(self, other: "Block") -> bool:
        """Tell whether another block would be drawn the same."""
        return self == other and self.live() == other.live()

    def live(self) -> object:
        """Return which of its parts do something now."""
        return [act is not None for act in self.acts().values()]


def _joined(*parts: str) -> str:
    return ", ".join(part for part in parts if part)


@frozen
class Tappable(Block):
    """A block that does one thing when it is touched, or nothing."""

    act: Act | None = part(default=None, compare=False, kw_only=True)

    def acts(self) -> Mapping[str, Act | None]:
        """Return the one act."""
        return {"act": self.act}

    def live(self) -> object:
        """Return whether it does something now."""
        return self.act is not None


@frozen
class Verdict(Tappable):
    """The answer in a word: a tile with its sign. `form` is right, wrong, unsure, or plain before there is an answer.

    `sign` is an icon in place of the form's own, where a form has two ways: too little and too much.
    """

    says = ("word", "text")
    key: str = part(default="verdict", kw_only=True)
    word: str
    text: str = ""
    _: KW_ONLY
    form: str = PLAIN
    sign: str = ""
    grey: bool = False
    lines: int = 1
    """Lines kept free for the text, so that the tile does not grow when it comes."""

    def __post_init__(self) -> None:
        """Hold to the forms that there are. Raises ValueError for another."""
        if self.form not in (RIGHT, WRONG, UNSURE, PLAIN):
            raise ValueError(f"a verdict is no {self.form!r}")


@frozen
class Number(Tappable):
    """One number with its label. `reserve` keeps a line for the change where values can be tried."""

    label: str
    number: str
    _: KW_ONLY
    unit: str = ""
    change: str = ""
    detail: str = ""
    grey: bool = False
    reserve: bool = False

    def said(self) -> str:
        """Return label and number."""
        return _joined(self.label, f"{self.number} {self.unit}".strip(), self.change, self.detail)


@frozen
class Figure(Number):
    """A number, large: for the crown. `held_up` is for one read at arm's length: as large as the width lets it be."""

    _: KW_ONLY
    held_up: bool = False


@frozen
class FigureRow(Number):
    """A number in a row of its own: label left, number right."""


@frozen
class Cell:
    """One number among several. `better` marks the one that wins."""

    text: str
    act: Act | None = part(default=None, compare=False)
    better: bool = False


@frozen
class Columns(Block):
    """The same figure of several things beside each other; `head` is the row that says which they are."""

    cells: tuple[Cell, ...]
    _: KW_ONLY
    label: str = ""
    detail: str = ""
    head: bool = False
    grey: bool = False

    def acts(self) -> Mapping[str, Act | None]:
        """Return an act for each cell."""
        return {f"cell {place}": cell.act for place, cell in enumerate(self.cells)}

    def said(self) -> str:
        """Return the label and its numbers."""
        return _joined(self.label, *(cell.text for cell in self.cells), self.detail)


@frozen
class Line(Tappable):
    """A row that opens something or asks for a value. `bad` colours the detail, `trial` marks a value that is tried.

    `strokes` is a small drawing at its end, which the words say too: it is left out where there is no room for it. `room` is
    what the row may say in a moment: it is as high as that one from the start. `leads` says that its value is not what a touch
    asks for.
    """

    says = ("title", "value", "detail")
    title: str
    detail: str = ""
    _: KW_ONLY
    value: str = ""
    icon: str = ""
    trial: bool = False
    bad: bool = False
    chosen: bool = False
    strokes: Strokes | None = None
    room: "Line | None" = None
    leads: bool = False


@frozen
class Words(Block):
    """Sentences. `role` is title (28), lead (20), text (16) or small (14); `tone` text, second, bad, good or trial."""

    says = ("text",)
    text: str
    _: KW_ONLY
    role: str = "text"
    tone: str = "text"
    bold: bool = False
    reserve: int = 0
    """Lines that are kept free while there is nothing to say."""


SIGNALS = {
    "danger": _("DANGER"),
    "warning": _("WARNING"),
    "caution": _("CAUTION"),
    "notice": _("NOTICE"),
}


@frozen
class Notice(Block):
    """A signal word (danger, warning, caution, notice) with what can happen and what to do."""

    word: str
    text: str

    @property
    def head(self) -> str:
        """Return the signal word as it is shown."""
        return SIGNALS[self.word]

    def said(self) -> str:
        """Return word and text."""
        return f"{self.head}. {self.text}"


@frozen
class Stepper(Block):
    """A number with a button on each side; None in `less` or `more` where it cannot go on. A touch on it asks for it."""

    says = ("label", "value", "note")
    label: str
    value: str
    _: KW_ONLY
    note: str = ""
    """What was typed and could not be used."""
    trial: bool = False
    less: Act | None = part(default=None, compare=False)
    more: Act | None = part(default=None, compare=False)
    act: Act | None = part(default=None, compare=False)

    def acts(self) -> Mapping[str, Act | None]:
        """Return the three acts."""
        return {"less": self.less, "act": self.act, "more": self.more}


@frozen
class Option:
    """One answer of a choice."""

    text: str
    act: Act | None = part(default=None, compare=False)
    chosen: bool = False


@frozen
class Choice(Block):
    """One of a few answers, each a button; short ones stand in one row. `small` is for what goes with a value: three chips."""

    label: str
    options: tuple[Option, ...]
    _: KW_ONLY
    small: bool = False

    def acts(self) -> Mapping[str, Act | None]:
        """Return an act for each option."""
        return {f"option {place}": option.act for place, option in enumerate(self.options)}

    def said(self) -> str:
        """Return the label and what is chosen."""
        return _joined(self.label, *(option.text for option in self.options if option.chosen))


@frozen
class Field(Block):
    """Free text. The paper opens a text field over it and sends Write(key, text)."""

    says = ("label", "text")
    label: str
    text: str
    _: KW_ONLY
    hint: str = ""

    def acts(self) -> Mapping[str, Act | None]:
        """Return the act that a touch stands for; the paper knows what to do with it."""
        return {"field": Act()}


@frozen
class Picture(Block):
    """A drawing (strokes), what it shows in words, and its height in dp where its shape leaves it open."""

    says = ("text",)
    strokes: Strokes | Later
    text: str
    _: KW_ONLY
    height: float = 0.0


@frozen
class Progress(Block):
    """How far one is: a mark for each step, `states` of open, front, right or noted. `place` stands behind the marks."""

    says = ("text",)
    states: tuple[str, ...]
    text: str
    _: KW_ONLY
    place: str = ""


@frozen
class Section(Block):
    """A heading; `note` says once what all below it share."""

    says = ("title", "note")
    title: str
    note: str = ""


@frozen
class Fold(Tappable):
    """A heading that opens and shuts what is below it. Made by `screens.asking.fold`."""

    says = ("title", "note")
    title: str
    note: str = ""
    _: KW_ONLY
    open: bool = False


# In the foot


@frozen
class Button:
    """A bar in the foot. Without an act it is dashed and `why` says why. `bad` is for what stops something."""

    text: str
    act: Act | None = part(default=None, compare=False)
    why: str = ""
    bad: bool = False
    icon: str = ""


@frozen(kw_only=True)
class Entry(Block):
    """What is being entered, with the keypad for it, or the options of a choice.

    `keeps` says where a value goes: "trial", "saved", "question", "rider", or "typed" for one that stays as typed text, which
    the page reads with `screens.asking.typed_value`.
    """

    field: ValueField
    label: str
    text: str = ""
    unit: str = ""
    units: tuple[str, ...] = ()
    mark: str = "."
    signed: bool = False
    sentence: str = ""
    """What is wrong; the paper says it once the typing pauses."""
    read_back: str = ""
    offer: str = ""
    """What else may have been meant, as a question; `take` takes it."""
    take: Act | None = part(default=None, compare=False)
    keeps: str = "trial"
    chosen: str = ""

    def said(self) -> str:
        """Return label and text."""
        return _joined(self.label, f"{self.text} {self.unit}".strip())
