"""Threadlocker: which grade for a size and a need, where not, surfaces, cure, on and off again. All from the tables."""

from typing import Any

from kivy.properties import ListProperty, ObjectProperty, StringProperty

from logic.answers.joint_guide import (
    choose_locker,
    cure_hours,
    locker_grades,
    locker_needs,
    locker_places,
    locker_steps,
    locker_surfaces,
)
from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Section
from screens.widgets.text import Text
from screens.words.joints import CAUTIONS

SIZES = ("M3", "M4", "M5", "M6", "M8", "M10")
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
        self.needs = [(need, need.capitalize()) for need in locker_needs()]
        self.need = locker_needs()[1]

    def change(self, name: str, key: str) -> None:
        """Take up a size or a need."""
        setattr(self, name, key)
        self.refresh()

    def refresh(self) -> None:
        """Show the grade, then the guide."""
        locker = choose_locker(self.thread_size, need=self.need)
        grade = next(one for one in locker_grades() if one.name == locker.grade)
        self.answer = f"{locker.grade.capitalize()} strength"
        cautions = " ".join(CAUTIONS[key] for key in locker.cautions)
        self.more = f"The label reads: {locker.label}. Off again: {grade.removal} {cautions}".strip()
        if not self.guide.children:
            self._build()

    def _build(self) -> None:
        self._part("Put on", locker_steps("put on"))
        self._part(
            "Where it must not go",
            tuple(f"{name[0].upper()}{name[1:]}: {why}" for name, why in locker_places()),
        )
        yes, no, never = (", ".join(locker_surfaces(active)) for active in ("yes", "no", "never"))
        self._part(
            "Surfaces",
            (
                f"Start the cure: {yes}.",
                f"Slow, activator helps: {no}.",
                f"Never: {never}.",
                "Activator on the threads, let it dry, join. It is quicker and slightly weaker.",
            ),
        )
        self._part("Cure by temperature, rough", (*(self._cure(day) for day in DAYS), COLD))
        self._part("Take off", locker_steps("take off"))
        lines = (
            f"{one.name.capitalize()}: breaks loose at {self.style.number(one.low, 'torque')} to"
            f" {self.style.number(one.high, 'torque')}."
            for one in locker_grades()
        )
        self._part(
            "Strength on M10 steel, from memory", (*lines, "Grades differ by half from maker to maker.")
        )

    def _cure(self, day: float) -> str:
        time = cure_hours(day)
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
