"""Motor from the bench: Kv from a spin-up, resistance from volts and amps, pole pairs from magnets."""

from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.answers.bench_motor import bench_motor, mixings, to_lay_over
from logic.board import Value
from screens.numbers.figures import FiguresPage
from screens.widgets.load import load_kv
from screens.words.bench_motor import CONVENTION, LABELS, SAFE


class BenchMotorPage(FiguresPage):
    """What was measured, what follows, and the way to lay it over the board."""

    CHIPS = (
        "ask.spin_voltage",
        "ask.spin_duty",
        "ask.spin_rotation",
        "ask.bench_voltage",
        "ask.bench_current",
        "ask.magnets",
        "motor.no_load_current",
        "motor.resistance",
        "motor.kv",
        "controller.current_meaning",
    )
    LABELS = LABELS

    convention = StringProperty()
    safe = StringProperty(SAFE)
    flow = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Name the page."""
        super().__init__(*args, title="Motor from the bench", **kwargs)

    def show(self) -> None:
        """Show what the bench tells."""
        self.show_items(bench_motor(self.state.board, self.asking), self.flow)
        worst = mixings()[0]
        self.convention = CONVENTION.format(
            taken=worst.taken, meant=worst.meant, error=self.style.number(abs(worst.error), "share", 2)
        )

    def bars(self) -> tuple[tuple[str, str, Any], ...]:
        """Offer what was measured, unless the board has it."""
        if not to_lay_over(self.state.board, self.items):
            return super().bars()
        return (("Try the measured values on the board", "main", self.try_them),)

    def try_them(self) -> None:
        """Lay what was measured over the board as a trial."""
        for key, value in to_lay_over(self.state.board, self.items).items():
            self.state.try_value(key, Value(value, "measured"))


load_kv(__file__)
