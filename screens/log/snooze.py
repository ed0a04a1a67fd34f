"""Putting something off until the next ride; a stop item only with a reason."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.log import Snooze
from screens.app_page import AppPage
from screens.widgets.load import load_kv


class SnoozePage(AppPage):
    """Asks why `rule` is put off."""

    name = StringProperty()
    asks = StringProperty()
    sentence = StringProperty()
    writing = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build without the four places."""
        super().__init__(*args, nav=False, chip=False, title="Put off", **kwargs)
        self.writing.bind(text=self._on_text)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Ask."""
        super().open(**args)
        self.name = str(args["label"])
        self.asks = (
            "This one stops a ride. Say why it can wait; the log keeps the reason."
            if args["stop"]
            else "It comes back after the next ride. A reason is optional."
        )
        self.sentence = ""
        self.writing.text = self.state.typed.get(f"snooze/{args['rule']}", "")

    def _on_text(self, _writing: object, text: str) -> None:
        self.sentence = ""
        if self.args:
            self.state.note_typed(f"snooze/{self.args['rule']}", text)

    def save(self) -> None:
        """Put it off, in the log."""
        reason = self.writing.text.strip()
        if self.args["stop"] and not reason:
            self.sentence = "A reason is wanted: this one stops a ride."
            return
        self.writing.focus = False
        self.state.note_typed(f"snooze/{self.args['rule']}", "")
        self.state.record(
            Snooze(rule=self.args["rule"], name=self.name, reason=reason, stop=bool(self.args["stop"]))
        )
        self.shell.back()


load_kv(__file__)
