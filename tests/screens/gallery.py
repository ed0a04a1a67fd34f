"""Every widget in each of its states on a few pages, for the audit and for looking at."""

from typing import Any

from kivy.app import App
from kivy.core.window import Window
from kivy.uix.widget import Widget

from screens.theme import theme
from screens.widgets.bar import Bar, IconButton
from screens.widgets.chip import ChipFlow, ValueChip
from screens.widgets.choice import Choice
from screens.widgets.column import Flow
from screens.widgets.icon import POINTS
from screens.widgets.keypad import Keypad
from screens.widgets.notice import Notice
from screens.widgets.result import Result, ResultFlow
from screens.widgets.row import Foot, Page, Row, Section
from screens.widgets.text import Text
from screens.widgets.undo import UndoBar


def texts() -> list[Widget]:
    """Roles, tones, rows."""
    return [
        Section(title="Gearing and speed"),
        *(
            Text(text=f"Role {role}: 14.5 N", role=role)
            for role in ("small", "body", "strong", "title", "value")
        ),
        Text(text="57", role="big", bold=True),
        *(
            Text(text=f"Tone {tone}", tone=tone)
            for tone in ("text", "second", "main", "good", "bad", "trial")
        ),
        Row(title="Motor pulley", value="16 teeth", detail="Measured on 12 November"),
        Row(title="Tension, threadlocker and torque", value="2 rides late", icon="due", value_tone="bad"),
        Row(title="Save a copy of the log"),
        Row(title="Reachable only with a board", value="not set", disabled=True),
        Row(title="Pressed", state="down"),
    ]


def chips() -> list[Widget]:
    """Chips, choices."""
    flow = ChipFlow()
    for chip in (
        ValueChip(label="Wheel diameter", value="100 mm", known="measured"),
        ValueChip(label="Motor constant", value="190 rpm/V", known="label"),
        ValueChip(label="Rolling resistance", value="0.015", known="assumed"),
        ValueChip(label="Motor pulley", value="18 teeth", known="guess", trial=True),
        ValueChip(label="Belt", value="56 teeth", selected=True, known="label"),
        ValueChip(label="Wheel pulley", value="4 teeth", error=True),
        ValueChip(label="Capacity", value="not set"),
        ValueChip(label="Pressed", value="12 mm", state="down"),
        ValueChip(label="Fixed", value="12 mm", disabled=True),
    ):
        flow.add_widget(chip)
    return [
        flow,
        Choice(options=["One motor", "Two motors"], chosen="Two motors"),
        Choice(options=[("m", "Measured"), ("l", "On a label"), ("g", "A guess")], chosen="l"),
        Choice(options=["N", "kg", "oz", "lb"]),
    ]


def results() -> list[Widget]:
    """Results and workings."""
    flow = ResultFlow()
    for result in (
        Result(label="Top speed", value="37.4", unit="km/h", difference="+4.6 km/h", compact=True),
        Result(label="Steepest climb", value="18", unit="%", detail="At 10 km/h", compact=True),
        Result(label="Range", value="14.2", unit="km", greyed=True, compact=True),
        Result(
            label="Stop from top speed",
            value="21 to 26",
            unit="m",
            standing="Rough: an estimate",
            compact=True,
        ),
    ):
        flow.add_widget(result)
    return [
        Result(
            label="Tension for each span",
            value="103 to 118",
            unit="N",
            detail="Full pack, level road, no wind.",
            difference="\N{MINUS SIGN}11 % push",
            standing="Published",
        ),
        flow,
        Result(label="Pressed", value="2.5", unit="N·m", state="down"),
    ]


def notices() -> list[Widget]:
    """Notices and pictures."""
    pictures = Flow(least=64)
    for name in POINTS:
        icon = IconButton(icon=name, a11y_label=name)
        icon.create_property("least_width", 64)
        icon.create_property("least_height", 64)
        pictures.add_widget(icon)
    return [
        Notice(
            word="danger", text="Swollen or smoking pack. It can burn at any moment. Leave it, move away."
        ),
        Notice(word="warning", text="Belt drives the brake. With missing teeth it can slip. Do not ride."),
        Notice(word="caution", text="Motor may be hot after a ride. Let it cool before you touch it."),
        Notice(word="notice", text="More than this can strip the thread in the motor."),
        Notice(text="No maker's figure found. This is a rule of thumb for M4 steel screws."),
        UndoBar(text="Scale now reads kg. 14.5 N is shown as 1.48 kg.", stay=0),
        pictures,
    ]


def bars() -> Foot:
    """Bars of every kind."""
    foot = Foot()
    for bar in (
        Bar(text="Pre-ride", detail="8 points, about 80 seconds", icon="checklist"),
        Bar(text="Not right", kind="bad-outline"),
        Bar(text="Keep on board", kind="plain", disabled=True),
    ):
        foot.add_widget(bar)
    return foot


def pad(**more: Any) -> Foot:
    """A keypad over a bar."""
    foot = Foot()
    foot.add_widget(Keypad(**more))
    foot.add_widget(Bar(text="Save left, go to right", tall=True))
    return foot


PAGES: dict[str, tuple[Any, Any]] = {
    "texts": (texts, lambda: Foot()),
    "chips": (chips, lambda: pad(unit="mm", units=["mm", "cm", "m", "in"])),
    "results": (results, bars),
    "notices": (notices, lambda: Bar(text="Show the drive", tall=True)),
    "inches": (
        lambda: [Text(text="1 1/4 in", role="big")],
        lambda: pad(unit="in", units=["mm", "in"], signed=True),
    ),
    "glove": (
        lambda: [Text(text="14.5 N", role="big")],
        lambda: pad(glove=True, unit="N", units=["N", "kg"], mark=","),
    ),
    "units": (
        lambda: [Text(text="Torque", role="title")],
        lambda: pad(unit="N·m", units=["N·m", "kg·cm", "in·lb", "ft·lb", "N·mm"], choosing=True),
    ),
}


class Gallery(App):
    """Shows one page of widgets."""

    page: Page

    def build(self) -> Widget:
        """Start with an empty page."""
        self.root_box = Page()
        return self.root_box

    def show(self, name: str) -> Page:
        """Put a page of widgets on the screen."""
        content, foot = PAGES[name]
        Window.clearcolor = theme.ground
        Window.remove_widget(self.root)
        self.root = self.page = Page(foot=foot())
        for widget in content():
            self.page.add_widget(widget)
        Window.add_widget(self.root)
        return self.page
