"""Every page of data in its states: as it opens, with its folds open, and with a value being entered rightly and wrongly.

A page is found through the register. The parameters of one that needs some are in `examples.py`.
"""

import tempfile
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

from screens.acts import Go, Place
from screens.acts.entering import Ask
from screens.blocks import Fold
from screens.page import Page
from screens.register import PAGES
from tests.pages.examples import EXAMPLES
from tests.pages.reader import Reader


def names() -> list[str]:
    """The pages that are functions."""
    return list(PAGES)


def examples(name: str) -> tuple[dict[str, Any], ...]:
    """The parameters a page is looked at with."""
    return EXAMPLES.get(name, ({},))


@cache
def states(name: str) -> tuple[tuple[str, Page], ...]:
    """Return each state of a page with a name for it. Pages are frozen: what is made for one test serves all of a process."""
    with tempfile.TemporaryDirectory() as folder:
        return tuple(_states(name, Path(folder)))


def _states(name: str, folder: Path) -> Iterator[tuple[str, Page]]:
    for number, args in enumerate(examples(name)):
        for demo in (True, False):
            reader = Reader(folder / f"{number} {demo}", demo=demo)
            reader.act(Place("ride"))
            reader.act(Go(name, args))
            if reader.name == name:
                what = f"{name} {args} {'example board' if demo else 'no board'}"
                yield from _of(reader, what)
            reader.close()


def _of(reader: Reader, what: str) -> Iterator[tuple[str, Page]]:
    yield what, reader.page
    reader.rest()
    for block in reader.blocks():
        if isinstance(block, Fold) and block.act is not None and not block.open:
            reader.act(block.act)
    yield f"{what}, folds open", reader.page
    asked = [act for block in reader.blocks() for act in block.acts().values() if isinstance(act, Ask)]
    for act in asked[:1] + asked[-1:] if reader.page.foot.entry is None else []:
        reader.act(act)
        yield f"{what}, {act.key}", reader.page
    entry = reader.page.foot.entry
    if entry is not None and entry.field.kind != "choice":
        reader.type("1024.5")
        yield f"{what}, typed", reader.page
