"""How each kind of block is laid out at a width. A new kind of block has one function, named here in KINDS."""

from collections.abc import Callable
from typing import Any

from screens import blocks as b
from screens.paper import bars, controls, crowns, furniture, keypad, prose, rows
from screens.paper.scale import Look
from screens.paper.sheet import Laid, Sheet

KINDS: dict[type[b.Block], Callable[[Any, Sheet], None]] = {
    b.Verdict: crowns.verdict,
    b.Figure: crowns.figure,
    b.FigureRow: rows.figure_row,
    b.Columns: rows.columns,
    b.Line: rows.line,
    b.Fold: rows.fold,
    b.Words: prose.words,
    b.Notice: prose.notice,
    b.Picture: prose.picture,
    b.Progress: prose.progress,
    b.Section: prose.section,
    b.Stepper: controls.stepper,
    b.Choice: controls.choice,
    b.Field: controls.text_field,
    furniture.Header: furniture.header,
    furniture.Places: furniture.places,
    furniture.WayBack: furniture.way_back,
    keypad.Typed: keypad.typed,
    keypad.Keys: keypad.keys,
    keypad.Options: keypad.options,
    bars.Bars: bars.bars,
}


def measure(block: b.Block, width: float, look: Look) -> Laid:
    """Return a block laid out at a width in pixels."""
    sheet = Sheet(width, look)
    KINDS[type(block)](block, sheet)
    return sheet.done(block.said())
