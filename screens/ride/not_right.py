"""What opens when an item is not right: the hazard, the remedy, and the ways on that the item allows."""

from functools import partial
from typing import Any

from kivy.metrics import dp
from kivy.properties import ListProperty, ObjectProperty, StringProperty

from logic.answers.checks import snapshot
from logic.checks.lists import Item
from logic.checks.run import FAILED, NOTED
from logic.checks.session import Session
from logic.errors import InputError
from screens.app_page import AppPage
from screens.widgets.bar import Bar
from screens.widgets.load import load_kv
from screens.widgets.notice import Notice
from screens.widgets.refill import refill
from screens.widgets.row import Foot, Row
from screens.words.checks import REFUSALS


class NotRight(AppPage):
    """Shows `item` of `list`. Whatever is chosen, the item itself is never answered right from here."""

    action = StringProperty()
    fix = StringProperty()
    sentence = StringProperty()
    signs = ListProperty()
    sign = StringProperty()
    notice = ObjectProperty()
    links = ObjectProperty()
    writing = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        super().__init__(*args, nav=False, chip=False, title="Not right", **kwargs)
        self.writing.bind(text=self._on_text)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Show the item; words written before the page was left are still there."""
        super().open(**args)
        of = self.state.checklist(args["list"])
        self.session = Session(self.state.store, self.state.saved.id, of, self.state.clock)
        item = of.item(args["item"])
        self.action = item.action
        self.fix = f"Do: {item.fix[0].lower() + item.fix[1:]}" if item.fix else ""
        self.signs, self.sign = list(item.signs), ""
        self.writing.text = self.state.typed.get(self._typed_key, "")
        self.sentence = ""
        self._show_links(item)
        self._show_stop(item)

    def _show_stop(self, item: Item) -> None:
        """Show the hazard and the ways on: a stop sign makes the item a stop item."""
        dangerous = bool(item.hazard) and (item.stops(self.sign) or not item.stop_signs)
        hazard = (item.word, item.hazard) if dangerous else None
        new = refill(
            self.notice, hazard, lambda: [Notice(word=item.word, text=item.hazard)] if dangerous else []
        )
        if new and dangerous:
            self.scroll.scroll_y = 1
        self._show_foot(item)

    def _show_links(self, item: Item) -> None:
        from screens.register import PAGES  # noqa: PLC0415  (the register imports the pages' packages)

        self.links.clear_widgets()
        wanted: list[tuple[str, str, dict[str, str]]] = []
        if item.belt:
            wanted.append(("Tension check", "ride.tension", {}))
        if item.joint and "bench.joint" in PAGES:
            wanted.append(("Joint: torque and locker", "bench.joint", {"joint": item.joint}))
        wanted.append(("Fault guide", "bench.faults", {}))
        for title, page, args in wanted:
            row = Row(title=title)
            row.bind(on_release=partial(self._go, page, args))
            self.links.add_widget(row)

    def _go(self, page: str, args: dict[str, str], *_: object) -> None:
        self.shell.go(page, **args)

    def _show_foot(self, item: Item) -> None:
        foot = Foot(padding=(0, dp(8)), spacing=dp(16))
        bars = [(self.session.of.halt, "bad-outline", self.stop, False)]
        if not item.stops(self.sign):
            bars.append(("Note it and go on", "plain", self.note_it, False))
        bars.append(("FIXED: CHECK IT AGAIN", "main", self.shell.back, True))
        for text, kind, act, tall in bars:
            bar = Bar(text=text, kind=kind, tall=tall)
            bar.bind(on_release=partial(self._act, act))
            foot.add_widget(bar)
        self.foot = foot

    def _act(self, act: Any, *_: object) -> None:  # noqa: ANN401  (a function without arguments)
        act()

    @property
    def _typed_key(self) -> str:
        return f"note/{self.args['list']}/{self.args['item']}"

    @property
    def note(self) -> str:
        """Return what is not right: the sign tapped and the words written."""
        return ". ".join(part for part in (self.sign, self.writing.text.strip()) if part)

    def choose(self, sign: str) -> None:
        """Take up a sign."""
        self.sign, self.sentence = sign, ""
        self._show_stop(self.session.of.item(self.args["item"]))

    def _on_text(self, _writing: object, text: str) -> None:
        self.sentence = ""
        if self.args:
            self.state.note_typed(self._typed_key, text)

    def note_it(self) -> None:
        """Go on with the note; the closing card and the log keep it, and next time the item comes first."""
        if self._say(NOTED):
            self.shell.back()

    def stop(self) -> None:
        """End the run here, with the reason, in the log."""
        if not self._say(FAILED):
            return
        row = self.session.finish(snapshot(self.state.saved))
        self.state.changed()
        # Past the run's own page: opened once more it would begin a new run.
        self.shell.trail.pop()
        about_pack = self.session.of.item(self.args["item"]).opens == "ride.pack_signs"
        self.shell.replace("ride.run_over", list=self.args["list"], row=row, about_pack=about_pack)

    def _say(self, state: str) -> bool:
        try:
            self.session.answer(self.args["item"], state, note=self.note, sign=self.sign)
        except InputError as problem:
            self.sentence = REFUSALS.get(problem.reason, "This item has been answered already.")
            return False
        self.writing.focus = False
        self.state.note_typed(self._typed_key, "")
        return True


load_kv(__file__)
