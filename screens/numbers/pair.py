"""One pair of pulleys: every figure with its working, and the way to try it on the board."""

from typing import Any

from kivy.properties import StringProperty

from logic.answers.pair import pair_board, pair_details
from logic.answers.reading import Item
from logic.board import Board, Value
from screens.answering import AnsweringPage
from screens.widgets.load import load_kv
from screens.words.pairs import LABELS

DRIVEN = ("motor", "wheel", "belt")
KEYS = dict(zip(DRIVEN, ("drive.motor_teeth", "drive.wheel_teeth", "drive.belt_teeth"), strict=True))


class PairPage(AnsweringPage):
    """Shows the pair named by `motor`, `wheel` and `belt` teeth."""

    CHIPS = ("ask.climb_grade", "ask.climb_speed")
    HEAD = "top_loaded"
    LABELS = LABELS
    DETAILS = {  # noqa: RUF012  (words, never changed)
        "top_loaded": "Nominal pack, level road, no wind.",
        "stop": "Motors alone, as the controller is set, dry.",
    }

    title = StringProperty("Pair")
    told = StringProperty()

    @property
    def teeth(self) -> dict[str, Any]:
        """Return the teeth the pair is named by."""
        return {name: self.args.get(name) for name in DRIVEN}

    def work_out(self, board: Board) -> dict[str, Item]:
        """Return the figures of the pair."""
        return pair_details(pair_board(board, **self.teeth), self.rider, self.asking)

    def before(self, _name: str) -> Item | None:
        """Tell no difference: the saved board has another pair."""
        return None

    def show(self, _answer: dict[str, Item]) -> None:
        """Name the pair."""
        teeth = self.teeth
        self.title = f"Pair {teeth['motor']} : {teeth['wheel']}"
        belt = f"Belt of {teeth['belt']} teeth." if teeth["belt"] else "No belt in stock fits the mount."
        self.told = f"{teeth['motor']} teeth on the motor, {teeth['wheel']} on the wheel. {belt}"

    def bars(self) -> list[tuple[str, str, Any]]:
        """Offer to try the pair, unless it is what is on."""
        wanted = {KEYS[name]: self.args[name] for name in DRIVEN if self.args.get(name)}
        present = {key: self.board.value(key) for key in wanted}
        if all(value is not None and value.si == wanted[key] for key, value in present.items()):
            return super().bars()
        return [("Try this pair on the board", "main", self.try_it)]

    def try_it(self) -> None:
        """Lay the pair's teeth over the board as a trial."""
        for name in DRIVEN:
            if self.args.get(name):
                self.state.try_value(KEYS[name], Value(float(self.args[name]), "guess"))

    def label(self, name: str) -> str:
        """Return the words of a figure; the climb is named by its grade."""
        if name == "climb_heat":
            grade = self.style.number(self.asked("ask.climb_grade") or 0.0, "share")
            speed = self.style.number(self.asked("ask.climb_speed") or 0.0, "speed")
            return f"Heat of one motor, {grade} at {speed}"
        return super().label(name)


load_kv(__file__)
