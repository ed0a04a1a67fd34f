"""A person who reads pages and touches them, in plain Python: no window, no widget. An act is one step of a World."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import datetime, timedelta, timezone
from pathlib import Path
from typing import Any

from logic.board import Value
from logic.board_saved import to_dict
from logic.exchange import demo_boards
from logic.person import person_to_dict
from logic.store import Store
from screens import blocks as b
from screens.acts import Act, Arrive, Back, Go
from screens.acts.entering import Put, Type
from screens.page import Page
from screens.register import page_function
from screens.update import update
from screens.world import Step, World, open_world

RIDER = Value(80.0, "guess", typed_unit="kg", note="example")
CANAL_TIME = timezone(timedelta(hours=1))


class Reader:
    """One person with the app's pages. `time` is what the clock says."""

    def __init__(self, folder: Path, *, demo: bool = True) -> None:
        """Open the pages on a folder, with the example boards or without any."""
        self.folder = folder
        self.time = datetime(2026, 11, 25, 9, 30, tzinfo=CANAL_TIME)
        self.out: list[Act] = []
        folder.mkdir(parents=True, exist_ok=True)
        self.store = Store(folder / "deckhand.db", lambda: self.time)
        if demo:
            boards = demo_boards()
            for board in boards:
                self.store.save_board(board.id, board.name, to_dict(board))
            self.store.put("board", boards[0].id)
        self.world: World = open_world(self.store, lambda: self.time)
        if demo and self.world.person.rider is None:
            person = replace(self.world.person, rider=RIDER)
            self.store.put("person", person_to_dict(person))
            self.world = replace(self.world, person=person)

    def close(self) -> None:
        """Close the file."""
        self.store.close()

    def restart(self, **later: float) -> None:
        """Close the app and open it again some time later, on the same page."""
        trail = [
            Step(page, {name: one for name, one in args.items() if not name.startswith("_")})
            for page, args in self.world.trail
        ]
        self.store.close()
        self.time += timedelta(**later)
        self.store = Store(self.folder / "deckhand.db", lambda: self.time)
        self.world = replace(open_world(self.store, lambda: self.time), trail=tuple(trail))
        self.act(Arrive())

    @property
    def name(self) -> str:
        """Name of the page in front."""
        return self.world.trail[-1].page

    @property
    def page(self) -> Page:
        """The page in front."""
        return page_function(self.name)(self.world)

    def open(self, name: str, **args: Any) -> "Reader":
        """Go to a page."""
        self.act(Go(name, args))
        return self

    def act(self, act: Act) -> None:
        """Have an act done; a page that comes in front says so."""
        before = self.world.trail
        self.world = update(self.world, act)
        self.out += self.world.out
        self.world = replace(self.world, out=())
        if [step.page for step in before] != [step.page for step in self.world.trail]:
            self.world = update(self.world, Arrive())

    def rest(self) -> "Reader":
        """Wait until the page has nothing left to do by itself."""
        for _ in range(100):
            if self.page.then is None:
                return self
            self.act(self.page.then)
        raise AssertionError(f"{self.name} does not come to rest: {self.page.then}")

    def blocks(self) -> list[b.Block]:
        """What stands on the page, the crown first."""
        page = self.page
        return [*([page.crown] if page.crown is not None else []), *page.blocks]

    def __getitem__(self, key: str) -> Any:
        """The block of a key."""
        return next(block for block in self.blocks() if block.key == key)

    def __contains__(self, key: str) -> bool:
        """Tell whether a block stands on the page."""
        return any(block.key == key for block in self.blocks())

    def texts(self) -> list[str]:
        """Everything that is said on the page."""
        page = self.page
        bars = [bar.text for bar in (*page.foot.beside, *([page.foot.main] if page.foot.main else []))]
        entry = (
            [page.foot.entry.said(), page.foot.entry.sentence, page.foot.entry.read_back]
            if page.foot.entry
            else []
        )
        undo = [self.world.undo.text] if self.world.undo else []
        return [page.title, *(block.said() for block in self.blocks()), *bars, *entry, *undo]

    def shows(self, text: str) -> bool:
        """Tell whether a text stands on the page."""
        return any(text in one for one in self.texts())

    def parts(self) -> Iterator[tuple[str, Act | None]]:
        """Everything that can be touched: what it is called, and its act."""
        page = self.page
        for block in self.blocks():
            acts: Mapping[str, Act | None] = block.acts()
            if isinstance(block, b.Stepper):
                yield f"{block.label}, one less", acts["less"]
                yield f"{block.label}, one more", acts["more"]
                yield block.label, acts["act"]
            elif isinstance(block, b.Choice):
                yield from ((option.text, option.act) for option in block.options)
            elif isinstance(block, b.Columns):
                yield from ((f"{block.label}, {cell.text}", cell.act) for cell in block.cells)
            elif "act" in acts:
                yield (
                    getattr(block, "title", getattr(block, "label", getattr(block, "word", ""))),
                    acts["act"],
                )
        foot = page.foot
        for bar in (*foot.beside, *([foot.main] if foot.main else []), *page.tools):
            yield bar.text, bar.act
        if foot.entry is not None and foot.entry.field.kind == "choice":
            for option in foot.entry.field.options:
                yield option.label, Put(foot.entry.key, Value(option.key), foot.entry.keeps)

    def tap(self, text: str) -> None:
        """Touch what is called so; nothing happens where it does nothing now. Raises LookupError for what is not there."""
        parts = list(self.parts())
        found = [act for name, act in parts if name == text] or [act for name, act in parts if text in name]
        if not found:
            raise LookupError(f"nothing to touch is called {text!r}; there is {[name for name, _ in parts]}")
        if found[0] is not None:
            self.act(found[0])

    def type(self, text: str, unit: str = "") -> None:
        """Type letter after letter into what is being entered."""
        for letter in text:
            entry = self.page.foot.entry
            assert entry is not None, "nothing is being entered"
            self.act(Type(entry.key, entry.field, entry.text + letter, unit or entry.unit, entry.keeps))

    def rub(self, count: int = 1) -> None:
        """Take back the last letters."""
        for _ in range(count):
            entry = self.page.foot.entry
            assert entry is not None, "nothing is being entered"
            self.act(Type(entry.key, entry.field, entry.text[:-1], entry.unit, entry.keeps))

    @property
    def typed(self) -> str:
        """What is typed now."""
        entry = self.page.foot.entry
        return "" if entry is None else entry.text

    def back(self) -> None:
        """Press Back."""
        if self.world.asking is None and self.page.back is not None:
            self.act(self.page.back)
        else:
            self.act(Back())

    def enter(self) -> None:
        """Press Enter."""
        main = self.page.foot.main
        if main is not None and main.act is not None:
            self.act(main.act)

    def records(self, kind: str | None = None) -> list[Any]:
        """The log of the board, the newest first."""
        return list(self.store.page(self.world.saved.id, kind))
