"""Where a hardware keyboard is on the page: Tab and the arrows go through all that can be touched, in the order of reading."""

from collections.abc import Callable

from screens.acts import Act
from screens.acts.entering import asks
from screens.blocks import Block, Entry, Stepper
from screens.paper.keypad import Keys
from screens.paper.parts import Parts
from screens.paper.sheet import Touch

Stop = tuple[Block, Touch]
STEPS = {"left": "less", "down": "less", "right": "more", "up": "more"}
"""What an arrow does on a stepper; elsewhere it goes on."""
MOVES = {"next": 1, "previous": -1, "left": -1, "up": -1, "right": 1, "down": 1}


class Focus:
    """The area that Enter would touch. It is known by its block's key: the page may be laid out anew around it."""

    def __init__(self, parts: Parts, act: Callable[[Act], None]) -> None:
        """Begin nowhere."""
        self.parts, self._act = parts, act
        self._at: tuple[str, str] | None = None

    def area(self, entry: Entry | None = None) -> Stop | None:
        """Return the block and the area; None while it is nowhere, or on the value that is being entered."""
        stop = next((one for one in self._stops() if _name(one) == self._at), None)
        return None if stop is None or (entry is not None and _asked(stop) == entry.key) else stop

    def ask(self) -> None:
        """Ask for the value that it is on: it is entered by typing it."""
        stop = self.area()
        act = None if stop is None else stop[0].acts().get(stop[1].part)
        if act is not None and asks(act):
            self._act(act)

    def leave(self) -> None:
        """Be nowhere: another page comes, or a finger."""
        self._at = None
        self._paint(None)

    def obey(self, key: str, entry: Entry | None) -> bool:
        """Step the number it is on, or go on to the next stop; a value is asked for at once where one is being entered."""
        stops = self._stops()
        here = next((one for one in stops if _name(one) == self._at), None)
        if here is not None and key in STEPS and isinstance(here[0], Stepper):
            act = here[0].acts()[STEPS[key]]
            if act is not None:
                self._act(act)
            return True
        if not stops:
            return False
        stop = stops[self._next(stops, MOVES[key], entry)]
        self._at = _name(stop)
        act = stop[0].acts().get(stop[1].part)
        if entry is not None and act is not None and asks(act):
            self._act(act)
        self.show()
        return True

    def _next(self, stops: list[Stop], step: int, entry: Entry | None) -> int:
        names = [_name(one) for one in stops]
        if self._at in names:
            return (names.index(self._at) + step) % len(stops)
        asked = [place for place, one in enumerate(stops) if entry is not None and _asked(one) == entry.key]
        if asked:
            return (asked[0] + step) % len(stops)
        # From nowhere it goes to what the page is about, not to the tools over it.
        inside = {block.key for pane in self.parts.panes for block in pane.blocks}
        places = [place for place, one in enumerate(stops) if one[0].key in inside] or list(range(len(stops)))
        return places[0] if step > 0 else len(stops) - 1

    def _stops(self) -> list[Stop]:
        """Return what can be stopped at: a stepper once, the keys of the keypad never, for they are on the keyboard too."""
        return [
            (block, touch)
            for block, touch in self.parts.areas()
            if not isinstance(block, Keys)
            and not (isinstance(block, Stepper) and block.act is not None and touch.part != "act")
        ]

    def show(self) -> None:
        """Show it on what is painted now, scrolled into sight."""
        if self._at is None:
            return
        stop = self.area()
        if stop is None:
            self.leave()
            return
        for spot in self.parts.spots():
            if spot.touch is stop[1]:
                spot.bring()
        self._paint(stop)

    def _paint(self, stop: Stop | None) -> None:
        for view, shown in self.parts.views():
            view.ring(stop[1] if stop is not None and shown is stop[0] else None)


def _name(stop: Stop) -> tuple[str, str]:
    return stop[0].key, stop[1].part


def _asked(stop: Stop) -> str:
    """Return the key of the value that a stop asks for, "" for one that does not ask."""
    return asks(stop[0].acts().get(stop[1].part))
