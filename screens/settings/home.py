"""Settings: the rider, the tools in the hand, units, and how the app is read."""

from typing import Any

from kivy.properties import DictProperty, ListProperty, ObjectProperty, StringProperty

from logic.answers.reading import RIDER
from logic.fields import ARM
from logic.person import TEXT_SCALES
from logic.tables import rows
from logic.units import quantities
from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.words import KNOWN
from screens.words.typed import not_used

SWITCHES = ("say", "bench", "vibrate", "remind")
"""Settings that are on or off."""


class SettingsHome(AppPage):
    """Every choice acts at once."""

    person = ObjectProperty(rebind=False)
    rider = StringProperty()
    rider_known = StringProperty()
    scales = ListProperty()
    depth_tools = ListProperty()
    arm = StringProperty()
    arm_known = StringProperty()
    scale_units = ListProperty()
    text_sizes = ListProperty()
    text_size = StringProperty()
    on_off = ListProperty([("on", "On"), ("off", "Off")])
    switches = DictProperty(dict.fromkeys(SWITCHES, "off"))

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Fill the choices from the tables."""
        super().__init__(*args, title="Settings", nav=False, chip=False, **kwargs)
        tools = rows("measuring_tools")
        self.scales = [(row.text("name"), row.text("label")) for row in tools if "scale_error" in row]
        self.depth_tools = [(row.text("name"), row.text("label")) for row in tools if "depth_error" in row]
        self.scale_units = [unit.shown for unit in quantities()["force"].units]
        self.text_sizes = [(str(scale), f"{scale:.0%}".replace("%", "\u202f%")) for scale in TEXT_SCALES]

    def refresh(self) -> None:
        """Show the settings in force."""
        self.person = person = self.state.person
        self.text_size = str(person.text)
        self.switches = {name: "on" if getattr(person, name) else "off" for name in SWITCHES}
        rider = person.rider
        self.rider = (
            "not set" if rider is None else self.style.typed(float(rider.si), "mass", rider.typed_unit)
        )
        self.rider_known = self._left(f"board/{RIDER.key}") or ("" if rider is None else KNOWN[rider.known])
        arm = person.key_arm
        self.arm = "not set" if arm is None else self.style.typed(float(arm.si), "length", arm.typed_unit)
        known = "a usual length is assumed" if arm is None else KNOWN[arm.known]
        self.arm_known = self._left(f"value/{ARM.key}") or known

    def _left(self, key: str) -> str:
        return not_used(self.state.typed.get(key, ""))

    def switch(self, name: str, to: str) -> None:
        """Switch something on or off."""
        self.state.set_person(**{name: to == "on"})

    def change(self, name: str, value: str) -> None:
        """Take up a choice."""
        self.state.set_person(**{name: float(value) if name == "text" else value})


load_kv(__file__)
