"""What a page says, line by line, whatever it is told in: no ways on, no shut fold; what is said over its bars comes last."""

from collections.abc import Iterator
from dataclasses import field

from logic.frozen import frozen
from screens import blocks as b
from screens.page import Page

WAYS_ON = ("page handed on", "page as a file", "page as a picture", "words of the page")
"""Keys of what every page with an answer has at its end: ways to hand it on, which are no part of what it says."""
ANSWERS = (b.Verdict, b.Figure, b.FigureRow, b.Columns)


@frozen
class Told:
    """One thing that is said: a heading (`level` 1 or 2), a label with its value, or a sentence; what is less is its `note`."""

    text: str
    label: str = ""
    note: str = ""
    level: int = 0
    strong: bool = False
    block: b.Block = field(default_factory=lambda: b.Block(""))


def has_answer(page: Page) -> bool:
    """Tell whether a page answers something: that can be handed on."""
    return any(isinstance(block, ANSWERS) for block in page.matter)


def told(page: Page) -> Iterator[Told]:
    """Yield what a page says from top to bottom."""
    yield Told(page.title, level=1)
    for block in page.matter:
        one = None if block.key in WAYS_ON else _one(block)
        if one is not None and (one.text or one.label):
            yield one
    if page.foot.note:
        yield Told(page.foot.note, strong=True)


def _one(block: b.Block) -> Told | None:  # noqa: C901, PLR0911  (one branch for each kind)
    match block:
        case b.Verdict():
            return Told(block.word, note=block.text, strong=True, block=block)
        case b.Figure() | b.FigureRow():
            note = ". ".join(part.rstrip(".") for part in (block.change, block.detail) if part)
            return Told(f"{block.number} {block.unit}".strip(), block.label, note, block=block)
        case b.Columns():
            return Told("; ".join(cell.text for cell in block.cells), block.label, block.detail, block=block)
        case b.Line():
            # A row without a value or a word under it is only a way on.
            return (
                Told(block.value, block.title, block.detail, block=block)
                if block.value or block.detail
                else None
            )
        case b.Stepper():
            return Told(block.value, block.label, block.note, block=block)
        case b.Choice():
            return Told(", ".join(one.text for one in block.options if one.chosen), block.label, block=block)
        case b.Field():
            return Told(block.text, block.label, block=block) if block.text else None
        case b.Notice():
            return Told(block.text, block.head, strong=True, block=block)
        case b.Section() | b.Fold():
            return (
                Told(block.title, note=block.note, level=2, block=block)
                if getattr(block, "open", True)
                else None
            )
        case b.Words():
            return Told(block.text, strong=block.bold, block=block)
        case _:
            return Told(block.said(), block=block)
