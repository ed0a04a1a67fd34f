"""Does it fit: gaps to the ground, the deck, the hanger and the other motor."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.belt_fit import FIT, belt_fit
from logic.board import Field
from screens.trying import TryingPage
from screens.widgets.load import load_kv
from screens.words.belt import FIT as WORDS
from screens.words.belt import TOUCHES

WEAR = Field(
    "wheel_wear",
    "Wear asked about, off the diameter",
    "number",
    0,
    "",
    quantity="length",
    low=0.001,
    high=0.05,
)
USUAL_WEAR = 0.01
"""Wear that is asked about until the person chooses: 10 mm off the diameter."""


class FitPage(TryingPage):
    """The narrowest gap first, then every one."""

    chip_keys = (
        WEAR.key,
        "drive.wheel_diameter",
        "drive.wheel_teeth",
        "drive.motor_teeth",
        "drive.belt_teeth",
        "mount.angle",
        "mount.deck_height",
        "mount.can_diameter",
        "mount.can_length",
        "mount.hanger_length",
        "mount.hanger_width",
        "mount.inset",
        "mount.plate",
    )
    own_fields = {WEAR.key: WEAR}  # noqa: RUF012  (declared as a ClassVar above)
    labels = WORDS

    touching = StringProperty()
    head = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        self._narrowest = ""
        super().__init__(*args, title="Does it fit", **kwargs)
        self.head.bind(on_open=lambda *_: self._narrowest and self.open_working(self._narrowest))

    def own_value(self, key: str) -> float | None:
        """Return the wear asked about."""
        found = super().own_value(key)
        return USUAL_WEAR if found is None else found

    def show(self) -> None:
        """Show every gap."""
        answer = belt_fit(self.state.board, self.own_value(WEAR.key) or USUAL_WEAR)
        self.items = dict(answer.items)
        self._narrowest = answer.narrowest
        if answer.narrowest:
            name = answer.narrowest
            self.fill(self.head, answer.items[name], f"Narrowest: {WORDS[name][0].lower()}{WORDS[name][1:]}")
        else:
            self.head.label, self.head.value, self.head.unit = "Narrowest gap", "\N{EN DASH}", ""
            self.head.has_working = False
            self.head.detail = "The gaps need the measures below."
        self.show_cards(answer.items, tuple(FIT), self.flow)
        self.touching = " ".join(TOUCHES[name] for name in answer.tight)


load_kv(__file__)
