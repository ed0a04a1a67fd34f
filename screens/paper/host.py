"""The bridge: pages of data inside the shell that still holds the old ones. It goes when the last old page has gone.

The shell's way and the old State stay the truth; a World is made from them, and what an act changed goes back into them.
"""

import logging
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from kivy.clock import Clock
from kivy.core.window import Window
from kivy.properties import BooleanProperty

from screens.acts import (
    Act,
    Arrive,
    Back,
    Dismiss,
    HandOn,
    Heard,
    Listen,
    OpenSound,
    Place,
    ReadOut,
    Say,
    Share,
    Turn,
    Undo,
)
from screens.lighting import lit
from screens.page import Page
from screens.paper import hand
from screens.paper.icons import ICON_FONT, POINTS
from screens.paper.ink import texture, width_of
from screens.paper.paper import LOST, Paper
from screens.paper.scale import LEAD, NUMBERS, SMALL, TEXT, TITLE, grown
from screens.phone import awake, share, speech
from screens.register import is_data, page_function
from screens.state import State
from screens.theme import theme
from screens.told.speech import as_speech
from screens.told.text import as_text
from screens.told.tools import with_tools
from screens.update import update
from screens.words.spoken import spoken
from screens.world import LogBook, Memo, Step, World

if TYPE_CHECKING:
    from logic.answers.belt_sound import Recording
    from screens.shell import Shell

WARM = ("ride.tension", "numbers.gearing", "ride.run", "bench.joints")
"""Pages that are loaded before they are asked for."""
UNTIL_SAID = 1.0
"""Seconds after the last key until a verdict is said: not while the number is half typed."""


class PaperPage(Paper):
    """What the shell shows for every page that is a function: one paper for all of them."""

    nav = BooleanProperty(defaultvalue=False)
    chip = BooleanProperty(defaultvalue=False)
    data = True

    def __init__(self, state: State, shell: "Shell", **kwargs: Any) -> None:  # noqa: ANN401  (Kivy's properties)
        """Show pages of a state inside a shell."""
        self.state, self.shell = state, shell
        self.world: World | None = None
        self._memo = Memo()
        self._units: dict[str, str] = {}
        self._ours = False
        self._say_later = Clock.create_trigger(lambda *_: self._say(self.page.say), UNTIL_SAID)
        super().__init__(self._perform, **kwargs)
        self.microphone: Any = None
        state.bind(revision=self._changed, undo=self._undo_changed)
        Window.bind(on_drop_file=self._dropped)

    # What the shell asks of a page

    @property
    def in_front(self) -> bool:
        """Tell whether this is what is seen."""
        return self.parent is not None

    @property
    def args(self) -> Any:  # noqa: ANN401  (parameters of the page in front)
        """Return the parameters of the page in front."""
        return self.shell.trail[-1][1]

    @property
    def keypad(self) -> object | None:
        """Return the entry while a number is asked for."""
        return self.entry

    def open(self, **_args: Any) -> None:  # noqa: ANN401  (they are in the shell's way)
        """Show the page in front."""
        self.world = self._world()
        self._accept(update(self.world, Arrive()))

    def warm_up(self) -> None:
        """Load fonts and pages, so that the first one opens as fast as any."""
        for name in WARM:
            page_function(name)
        for size in (SMALL, TEXT, LEAD, TITLE, *NUMBERS):
            for bold in (False, True):
                width_of("0", grown(size, theme.scale), bold)
        for name in POINTS:
            texture((chr(POINTS[name]),), 24.0, False, "left", ICON_FONT)  # noqa: FBT003  (the cache wants plain arguments)
            break

    def back(self) -> bool:
        """Take one step back inside the page; return whether there was one."""
        if self.choosing:
            return self.press("escape")
        if self.world is not None and self.world.asking is not None:
            self._perform(Back())
        elif self.page.back is not None:
            self._perform(self.page.back)
        else:
            return False
        return True

    def refresh(self) -> None:
        """Show the state as it is now."""
        asking = self.world.asking if self.world is not None else None
        self.world = self._world(asking=asking)
        self._show()

    def on_parent(self, _paper: object, parent: object) -> None:
        """Let the screen sleep when another page comes in front."""
        if parent is None:
            awake.release()
            self.close_writing()

    # Between State and World

    def _world(self, **more: Any) -> World:  # noqa: ANN401  (fields of World)
        state, old = self.state, self.world
        # A page that wrote to the log did not say so here: what it holds is read anew.
        ledger = state._ledger  # noqa: SLF001  (shared until State has gone)
        return World(
            state.store,
            state.clock,
            state.saved,
            LogBook(state.store, state.saved.id, ledger),
            state.person,
            old.trial if old is not None and old.trial == state.trial else dict(state.trial),
            dict(state.typed),
            self._units,
            tuple(Step(name, args) for name, args in self.shell.trail),
            kept=self._memo,
            **more,
        )

    def _perform(self, act: Act) -> None:
        if isinstance(act, (Undo, Dismiss)) and self.state.undo is not None:
            step = self.state.undo
            self.state.undo = None
            if isinstance(act, Undo):
                step.act()
            return
        if isinstance(act, Back) and self.world.asking is None:
            if self.page.back is None:
                self.shell.back()
                return
            act = self.page.back
        if isinstance(act, Place):
            self.shell.place(act.page)
            return
        self._accept(update(self.world, act))

    def _accept(self, world: World) -> None:
        """Put a world into the state and the shell, then show it."""
        before, self.world = self.world, replace(world, out=(), undo=None)
        self._units = dict(world.units)
        self._ours = True
        try:
            self.state.adopt(world, before)
        finally:
            self._ours = False
        if world.undo is not None:
            self.state.tell_undo(world.undo, self._take_back)
        moved = _way(world) != _way(before)
        self.shell.trail = [Step(*step) for step in world.trail]
        for act in world.out:
            self._out(act)
        if moved:
            self.shell._show()  # noqa: SLF001  (the bridge)
        else:
            if _stored(world) != _stored(before):
                self.shell.note_args()
            self._show()

    def _take_back(self, step: Any) -> None:  # noqa: ANN401  (a TakeBack)
        self.world = replace(self._world(), undo=step)
        after = update(self.world, Undo())
        if self.in_front:
            self._accept(after)
        else:
            self.state.adopt(after, self.world)

    def _show(self) -> None:
        name = self.world.trail[-1].page
        if not is_data(name):
            return
        try:
            page = lit(page_function(name)(self.world), self.world.person)
        except Exception:
            logging.getLogger(__name__).exception("page %s cannot be shown", name)
            page = LOST
        page = with_tools(page, hears=self.state.person.say)
        self._dress(page)
        hand.feels["on"] = self.state.person.vibrate
        before, where = self.page, _where(self.world)
        fresh = where != self._where or page.card != before.card
        self.show(page, where, **self._frame())
        if page.say != before.say or fresh:
            self._say_later.cancel()
            if self.state.person.say and page.say:
                self._say(page.say) if fresh else self._say_later()

    def _dress(self, page: Page) -> None:
        if page.awake:
            awake.hold()
        else:
            awake.release()

    def _frame(self) -> dict[str, Any]:
        state = self.state
        notes = ["Example"] if state.saved.example else []
        notes += ["not saved"] if state.is_scratch else ["trial open"] if state.trial else []
        return {
            "back": len(self.shell.trail) > 1,
            "place": self.shell.trail[0][0],
            "board": state.saved.name,
            "note": ", ".join(notes),
            "bar": state.undo,
        }

    def _out(self, act: Act) -> None:
        if isinstance(act, Say):
            self._say(act.text)
        elif isinstance(act, Share):
            self._perform(Turn({"_said": share.share(act.text, act.title)}))
        elif isinstance(act, HandOn):
            self.shell.tell(share.share(as_text(self.page), self.page.title))
        elif isinstance(act, ReadOut):
            self._say(as_speech(self.page))
        elif isinstance(act, Listen):
            self._listen()

    def _listen(self) -> None:
        if self.microphone is None:
            from screens.phone.microphone import Microphone  # noqa: PLC0415  (nobody plucks at the start)

            self.microphone = Microphone()
        self.microphone.record(self._heard)

    def _heard(self, recording: "Recording | None", sentence: str) -> None:
        if self.in_front:
            self._perform(Heard(recording, sentence))

    def _dropped(self, _window: object, path: bytes, *_: object) -> None:
        if self.in_front:
            self._perform(OpenSound(path.decode("utf-8", "replace")))

    def _say(self, text: str) -> None:
        """Say something; where the phone cannot, the page says so."""
        said = speech.say(spoken(text))
        if self.args.get("_hint") != (None if said else speech.NO_VOICE):
            self._perform(Turn({"_hint": None if said else speech.NO_VOICE}))

    def _changed(self, *_: object) -> None:
        if not self._ours and self.in_front:
            self.refresh()

    def _undo_changed(self, *_: object) -> None:
        if self.in_front and self.world is not None and not self._ours:
            self.frame["bar"] = self.state.undo
            self.arrange()


def _where(world: World) -> tuple[Any, ...]:
    return tuple(step.page for step in world.trail)


def _stored(world: World) -> list[tuple[str, dict[str, Any]]]:
    """Return of the way what outlives a restart."""
    return [
        (page, {name: one for name, one in args.items() if not name.startswith("_")})
        for page, args in world.trail
    ]


def _way(world: World) -> list[tuple[str, int]]:
    return [(step.page, len(world.trail)) for step in world.trail]
