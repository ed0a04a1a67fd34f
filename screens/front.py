"""What is in front: one World, and the paper that shows its page. Each touch is an act; `update` makes the next World of it."""

import logging
from contextlib import suppress
from dataclasses import replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from kivy.clock import Clock
from kivy.core.window import Window
from kivy.logger import Logger

from logic.store.errors import CannotStore, Damaged
from logic.store.opening import look_next_time
from screens import faults
from screens.acts import Act, Arrive, Back, Both, Dismiss, Go, Place, Turn
from screens.acts.entering import Done
from screens.acts.keeping import Remember
from screens.acts.outside import Share
from screens.beside import around, beside
from screens.blocks import Block
from screens.coming_back import PLACE, outlasting, way_here, way_left
from screens.lighting import lit
from screens.log_book import LogBook
from screens.page import Page
from screens.paper.edges import Edges
from screens.paper.fade import Veil
from screens.paper.keys import Keys
from screens.paper.paper import Paper
from screens.paper.room import list_width
from screens.paper.written import written
from screens.phone import awake, bars, haptics
from screens.phone.configuration import theme_of
from screens.phone.java import on_android
from screens.register import page_function
from screens.theme import theme
from screens.told.tools import with_tools
from screens.tongue import _
from screens.update import update
from screens.warming import warm
from screens.world import CLOSE, HOME, Step, TakeBack, World

if TYPE_CHECKING:
    from collections.abc import Iterator

    from screens.outside import Outside

BACK = 27
UNTIL_SAID = 1.0
"""Seconds after the last key until a verdict is said: not while the number is half typed."""
UNDO_FOR = 10.0
"""Seconds for which a step can be taken back by the bar; a notice stays until it is closed."""
NOT_COME_BACK_TO = _(
    "The page you left could not be shown again, so this is Ride. Nothing that was saved is lost."
)


class Front:
    """Holds the World and shows its page; hears Back and the hardware keyboard."""

    def __init__(self, world: World) -> None:
        """Open where the person left off a short while ago, else at the first place."""
        self.world = world
        self._met: Exception | None = None
        self.paper = Paper(self.perform, size=Window.size)
        self._list: tuple[tuple[object, ...], tuple[Block, ...]] = ((None,) * 4, ())
        self.veil = Veil(self.paper)
        self.keys = Keys(Window, self.paper)
        Window.bind(on_keyboard=self._on_keyboard)
        self._say_later = Clock.create_trigger(lambda *_: self.outside.say(self.page.say), UNTIL_SAID)
        self._undo_over = Clock.create_trigger(self._forget_undo, UNDO_FOR)
        self._cold: Iterator[None] = iter(())
        self._warming = Clock.create_trigger(lambda _: next(self._cold, False), 0, interval=True)
        self.dress()
        self.edges = Edges(self.paper)
        self._resume()
        self.paper.bind(size=self._resized)
        self._tell_fault()

    @cached_property
    def outside(self) -> "Outside":
        """What the phone is asked for: loaded when something is, or when the first frame stands."""
        from screens.outside import Outside  # noqa: PLC0415  (said above)

        return Outside(self)

    # Acts

    def perform(self, act: Act) -> None:
        """Carry an act out and show what came of it. What it wrote is on the disk when this returns."""
        if isinstance(act, Back):
            self.back()
        elif isinstance(act, Turn | Share) and self._met is not None and self.paper.lost:
            # The record is read and handed on where it stands: the page that failed is not tried again for it.
            world = update(self.world, act)
            self.world = replace(world, out=())
            self._put(self._lost(self._met))
            for wanted in world.out:
                self.outside(wanted)
        else:
            self._accept(update(self.world, act))

    def go(self, page: str, **args: Any) -> None:  # noqa: ANN401  (each page names its own)
        """Open a page on top of the one in front."""
        self.perform(Go(page, args))

    def place(self, page: str) -> None:
        """Open one of the places."""
        self.perform(Place(page))

    def back(self) -> bool:
        """Take one step back; return False when there is nowhere to go but out."""
        if self.paper.entering.choosing:
            self.paper.entering.choose(units=False)
            return True
        own = None if self.world.asking is not None else self.paper.page.back
        if self.paper.lost:
            self.world, own = update(self.world, Done()), None
        after = update(self.world, own or Back())
        if after is self.world:
            return False
        self._accept(after)
        return True

    def _accept(self, world: World) -> None:
        """Take the next world; a page that has come in front is first made ready."""
        before, self.world = self.world, replace(world, out=()) if world.out else world
        if world.person is not before.person:
            self.dress()
        if world.undo is not before.undo:
            self._undo_over.cancel()
            if world.undo is not None and world.undo.word != CLOSE:
                self._undo_over()
        for act in world.out:
            self.outside(act)
        if _way(world) != _way(before):
            self._arrive()
        else:
            self.show()
            if outlasting(world) != outlasting(before):
                self._remember()

    def _arrive(self) -> None:
        after = update(self.world, Arrive())
        if _way(after) != _way(self.world) or after.out:
            self._accept(after)
            return
        self.world = after
        self.show()
        self._remember()

    def reread(self) -> None:
        """Show what was put into the file past the pages: by a walk, or by a test."""
        world = self.world
        self._accept(replace(world, log=LogBook(world.store, world.saved.id)))

    def _forget_undo(self, *_: object) -> None:
        if self.paper.pressed:
            # What lies under a finger does not move.
            self._undo_over()
        else:
            self.perform(Dismiss())

    def tell(self, text: str, *, stays: bool = True) -> None:
        """Say something over the places, until it is closed or for a while."""
        self._accept(replace(self.world, undo=TakeBack(text, Both(()), self.world.saved.id, CLOSE)))
        if not stays:
            self._undo_over()

    # What is shown

    @property
    def page(self) -> Page:
        """Return the page in front, as it is shown."""
        return self.paper.page

    def show(self) -> None:
        """Show the page of the world."""
        name = self.world.trail[-1].page
        try:
            page = lit(page_function(name)(self.world), self.world.person)
        except Exception as problem:
            logging.getLogger(__name__).exception("page %s cannot be shown", name)
            if isinstance(problem, CannotStore):
                self.note(problem)
            page = self._lost(problem)
        self._put(page)

    def note(self, problem: BaseException) -> None:
        """Keep a record of a fault for the next start; after damage the whole file is looked at then."""
        folder = self.world.store.path.parent
        if isinstance(problem, Damaged):
            with suppress(CannotStore):
                look_next_time(folder)
        elif not isinstance(problem, CannotStore):
            faults.keep(folder, problem, self.world.clock())

    def _put(self, page: Page) -> None:
        world, paper = self.world, self.paper
        page = with_tools(page, hears=world.person.say, shines=on_android())
        if page.awake:
            awake.hold()
        else:
            awake.release()
        before, where = paper.page, _way(world)
        fresh = where != paper.where or page.card != before.card
        paper.show(page, where, **around(world), list=self._rows())
        if fresh and paper.parent is not None and world.person.fade:
            self.veil.drop()
        if page.say != before.say or fresh:
            self._say_later.cancel()
            if world.person.say and page.say:
                self.outside.say(page.say) if fresh else self._say_later()

    def _rows(self) -> tuple[Block, ...]:
        """Return the list of the place, read anew when the way, the board or the log has changed: not at each key."""
        world, paper = self.world, self.paper
        if paper.lost or not list_width(paper.width, paper.height, theme.scale):
            return ()
        of = (world.trail, world.saved, world.log, world.person)
        if any(one is not two for one, two in zip(of, self._list[0], strict=True)):
            self._list = (of, beside(world))
        return self._list[1]

    def _resized(self, *_: object) -> None:
        """Read the list where a window has become wide enough for it."""
        if self._rows() != self.paper.frame["list"]:
            self.show()

    def picture(self, path: Path) -> None:
        """Write what is on the screen as a PNG. Raises OSError where no file came of it."""
        self.paper.export_to_png(str(path))
        if not path.is_file():
            raise OSError("nothing was written")

    def cannot_show(self, problem: Exception) -> None:
        """Put a plain page in place of the one that failed; Back and the places lead on, and it is not come back to."""
        Logger.error("Deckhand: a page failed", exc_info=problem)
        self._put(self._lost(problem))
        self._remember()

    def _lost(self, problem: Exception) -> Page:
        from screens.lost import lost_page  # noqa: PLC0415  (most starts need none)

        self._met = problem
        return lost_page(self.world, problem)

    def dress(self) -> None:
        """Take the theme and the text size of the person; the phone's own may have changed meanwhile."""
        person = self.world.person
        theme.apply(theme_of(person), person.text)
        Window.clearcolor = theme.colour("ground")
        bars.dress(dark=theme.name == "night")
        haptics.feels["on"] = person.vibrate

    def wake(self, *, anew: bool = False) -> None:
        """Come back from behind: what the graphics lost is painted anew, what is due and how the phone is set read again.

        `anew` paints all of it: the size of a dp has changed.
        """
        if written.lost() or anew:
            written.forget()
            self.paper.repaint()
        haptics.feels["motor"] = True
        self.edges.read()
        self.dress()
        self._accept(replace(self.world, log=LogBook(self.world.store, self.world.saved.id)))

    def warm_up(self) -> None:
        """Load what the first frame did not need, a piece at each frame."""
        self._cold = warm(self)
        self._warming()

    # From one start to the next

    def _resume(self) -> None:
        """Show the way that was stored, where it is fresh and can be shown."""
        trail = way_left(self.world)
        if trail in ((), (Step(HOME, {}),)):
            # Nothing is done on the way to the first frame but what is seen.
            self.show()
            return
        first, self.world = self.world, replace(self.world, trail=trail)
        try:
            self._arrive()
        except Exception as problem:  # noqa: BLE001  (whatever a page does, it does not stop the start)
            self.cannot_show(problem)
        if self.paper.lost:
            self.world = first
            self.tell(NOT_COME_BACK_TO)
            self._remember()

    def _tell_fault(self) -> None:
        """Show what went wrong the last time, over the page that was come back to."""
        record = faults.take(self.world.store.path.parent)
        if record:
            self.go("settings.fault", _record=record)

    def _remember(self) -> None:
        """Store the way here. A page that failed is not come back to."""
        # A way that could not be stored is not worth a word: what the person did is told of by itself.
        with suppress(CannotStore):
            update(self.world, Remember(PLACE, way_here(self.world, failed=self.paper.lost)))

    def _on_keyboard(self, _window: object, code: int, *_: object) -> bool:
        return code == BACK and self.back()

    def release(self) -> None:
        """Let go of the window, for an app that ends inside a running process."""
        awake.release()
        for event in (self._say_later, self._undo_over, self._warming):
            event.cancel()
        self.veil.lift()
        if "outside" in self.__dict__:
            self.outside.release()
        self.edges.release()
        self.keys.stop()
        Window.unbind(on_keyboard=self._on_keyboard)


def _way(world: World) -> tuple[str, ...]:
    return tuple(step.page for step in world.trail)
