"""Numbers: each row with its present answer, so that opening it is often not needed."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty

from logic.answers.asked import Asked
from logic.answers.belt_choice import centre_of
from logic.answers.belt_fit import narrowest_gap
from logic.answers.charging import charging, wrong_charger
from logic.answers.descents import descent
from logic.answers.energy import pack_energy
from logic.answers.gearing import top_speed
from logic.answers.joining import joining
from logic.answers.range import range_alone
from logic.answers.reading import Item
from logic.answers.stopping import stop_alone
from logic.answers.wiring import wiring
from screens.app_page import AppPage
from screens.asked import answers, logged_rides
from screens.asking import lead
from screens.widgets.load import load_kv
from screens.widgets.row import Row, Section

ROWS = (
    ("Speed, hills and stopping", (
        ("numbers.gearing", "drive", "Gearing and speed", "Top speed, loaded."),
        ("numbers.push", "gauge", "Speed and push in full", "Curves, grade, wind, and what rules where."),
        ("numbers.pairs", "swap", "Pairs of pulleys", "Which teeth, which belt, what each pair does."),
        ("numbers.compare", "numbers", "Two set-ups side by side", "The board against its trial or another board."),
        ("numbers.stopping", "road", "Stopping", "Way to a stop, dry, 2.5 s to react."),
        ("numbers.hold", "gauge", "Hold for how long", "Motor heating on a climb, an estimate."),
    )),
    ("Packs", (
        ("numbers.packs", "battery", "Pack energy and limits", "Energy, sag, heat, the weakest limit."),
        ("numbers.range", "road", "Range", "And Wh/km: by speed, climb and cold, or from the log."),
        ("numbers.charging", "battery", "Charging", "Time on the charger, amps, temperature."),
        ("numbers.joining", "swap", "Joining packs", "Difference these packs allow."),
        ("numbers.wiring", "wires", "Wiring and fuse", "Riding current against the wire."),
        ("numbers.descents", "road", "Long descents", "Drop the packs take back."),
        ("numbers.care", "battery", "Storage and care", "Charge for storage, stop signs, fire."),
    )),
    ("Belts and wheels", (
        ("numbers.belt", "ruler", "Belt length and load", "Centre distance of its belt."),
        ("numbers.fit", "swap", "Does it fit", "Narrowest gap."),
        ("numbers.wheel", "ruler", "Wheel wear and size", "Measured across or rolled out."),
    )),
    ("Bench and desk", (
        ("numbers.bench_motor", "bench", "Motor from the bench", "Kv, resistance and pole pairs, measured."),
        ("numbers.units", "swap", "Units", "Typed in one, read in the others."),
    )),
)  # fmt: skip
"""Heading and rows: page, picture, title, what its answer is."""


class NumbersHome(AppPage):
    """The list of what can be worked out."""

    rows = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build the rows once; later only their answers change."""
        self._rows: dict[str, Row] = {}
        super().__init__(*args, title="Numbers", **kwargs)
        for heading, rows in ROWS:
            self.rows.add_widget(Section(title=heading))
            for name, icon, title, detail in rows:
                row = Row(icon=icon, title=title, detail=detail)
                row.bind(on_release=partial(self._open, name))
                self._rows[name] = row
                self.rows.add_widget(row)

    def _open(self, name: str, *_: object) -> None:
        self.shell.go(name)

    def refresh(self) -> None:
        """Show the present answers."""
        for name, item in self._answers().items():
            self._rows[name].value = lead(item, self.style)
        trying = self.state.trial and not self.state.is_scratch
        self._rows["numbers.gearing"].detail = "Top speed, loaded." + (" Trial open." if trying else "")
        danger = wrong_charger(self.state.board)
        charger = self._rows["numbers.charging"]
        charger.value, charger.value_tone = ("wrong charger", "bad") if danger else (charger.value, "text")

    def _answers(self) -> dict[str, Item | None]:
        state = self.state
        board, rider, asking = state.board, state.person.rider, answers(state)
        joined = joining(board, asking)
        return {
            "numbers.gearing": top_speed(board, rider),
            "numbers.stopping": stop_alone(board, rider, asking),
            "numbers.packs": pack_energy(board),
            "numbers.range": range_alone(board, rider, asking, logged_rides(state)),
            "numbers.charging": charging(board, asking).items.get("time"),
            "numbers.joining": joined.items.get(joined.head),
            "numbers.wiring": wiring(board, asking).items["riding"],
            "numbers.descents": descent(board, rider, asking).items["drop_back"],
            "numbers.belt": centre_of(board),
            "numbers.fit": narrowest_gap(board, Asked(asking)("ask.wheel_wear")),
        }


load_kv(__file__)
