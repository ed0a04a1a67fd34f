"""Threadlocker: which grade for a size and a need, where not, surfaces, cure, on and off again. All from the tables."""

from typing import Any

from kivy.properties import ListProperty, ObjectProperty, StringProperty

from logic.joints.threadlocker import choose, cure, grades, steps
from logic.tables import rows
from screens.page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Section
from screens.widgets.text import Text
from screens.words.joints import CAUTIONS

SIZES = ("M3", "M4", "M5", "M6", "M8", "M10")
HOUR = 3600.0
COLD = "Below 5 °C it may never cure: warm the parts first."
DAYS = (278.15, 283.15, 288.15, 295.15)
"""Temperatures of the cure that are listed, in K."""


class LockerPage(AppPage):
    """A choice of size and need above what holds for all of them."""

    thread_size = StringProperty("M4")
    sizes = ListProperty([(size, size) for size in SIZES])
    need = StringProperty()
    needs = ListProperty()
    answer = StringProperty()
    more = StringProperty()
    guide = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Take the needs from the table of grades."""
        super().__init__(*args, title="Threadlocker", nav=False, **kwargs)
        self.needs = [(row.text("need"), row.text("need").capitalize()) for row in grades()]
        self.need = grades()[1].text("need")

    def change(self, name: str, key: str) -> None:
        """Take up a size or a need."""
        setattr(self, name, key)
        self.refresh()

    def refresh(self) -> None:
        """Show the grade, then the guide."""
        locker = choose(self.thread_size, need=self.need)
        row = next(line for line in grades() if line.text("grade") == locker.grade)
        self.answer = f"{locker.grade.capitalize()} strength"
        cautions = " ".join(CAUTIONS[key] for key in locker.cautions)
        self.more = f"The label reads: {locker.label}. Off again: {row.text('removal')} {cautions}".strip()
        if not self.guide.children:
            self._build()

    def _build(self) -> None:
        self._part("Put on", steps("put on"))
        self._part(
            "Where it must not go",
            tuple(
                f"{row.text('name').capitalize()}: {row.text('why')}" for row in rows("threadlocker_places")
            ),
        )
        metals = {
            active: [
                row.text("name") for row in rows("threadlocker_surfaces") if row.text("active") == active
            ]
            for active in ("yes", "no", "never")
        }
        self._part(
            "Surfaces",
            (
                f"Start the cure: {', '.join(metals['yes'])}.",
                f"Slow, activator helps: {', '.join(metals['no'])}.",
                f"Never: {', '.join(metals['never'])}.",
                "Activator on the threads, let it dry, join. It is quicker and slightly weaker.",
            ),
        )
        self._part(
            "Cure by temperature, rough",
            (*(self._cure(day) for day in DAYS), COLD),
        )
        self._part("Take off", steps("take off"))
        lines = [
            f"{row.text('grade').capitalize()}: breaks loose at {self._torque(row, 'breakaway_low')} to"
            f" {self._torque(row, 'breakaway_high')}."
            for row in grades()
        ]
        self._part(
            "Strength on M10 steel, from memory", (*lines, "Grades differ by half from maker to maker.")
        )

    def _torque(self, row: Any, column: str) -> str:  # noqa: ANN401  (a table row)
        return str(self.style.number(float(row.cells[column]), "torque"))

    def _cure(self, day: float) -> str:
        time = cure(temperature=day, surfaces=("steel",)).time
        shown = self.style.number(day, "temperature")
        return (
            f"{shown}: {self.style.number(time, 'long_time', 2)}"
            if time is not None
            else f"{shown}: too cold"
        )

    def _part(self, title: str, lines: tuple[str, ...]) -> None:
        self.guide.add_widget(Section(title=title))
        for line in lines:
            self.guide.add_widget(Text(text=line))


load_kv(__file__)
