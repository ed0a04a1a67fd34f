"""Does it fit: gaps to the ground, the deck, the hanger and the other motor."""

from kivy.properties import StringProperty

from logic.answers.belt_fit import FIT, BeltFit, belt_fit
from logic.board import Board
from screens.answering import AnsweringPage
from screens.widgets.load import load_kv
from screens.words.belt import FIT as WORDS
from screens.words.belt import TOUCHES


class FitPage(AnsweringPage):
    """The narrowest gap first, then every one."""

    CHIPS = (
        "ask.wheel_wear",
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
    LABELS = WORDS

    title = StringProperty("Does it fit")
    touching = StringProperty()

    def work_out(self, board: Board) -> BeltFit:
        """Return every gap."""
        return belt_fit(board, self.asked("ask.wheel_wear") or 0.0)

    def show_figures(self) -> None:
        """Show the narrowest gap, then every one."""
        self.HEAD = self.answer.narrowest
        if self.HEAD:
            words = WORDS[self.HEAD]
            self.cards.fill(self.head, self.items[self.HEAD], f"Narrowest: {words[0].lower()}{words[1:]}")
        else:
            self.head.label, self.head.value, self.head.unit = "Narrowest gap", "\N{EN DASH}", ""
            self.head.difference, self.head.standing, self.head.has_working = "", "", False
            self.head.detail = "The gaps need the measures below."
        self.cards.show(self.flow, *FIT)

    def show(self, answer: BeltFit) -> None:
        """Say what touches."""
        self.touching = " ".join(TOUCHES[name] for name in answer.tight)


load_kv(__file__)
