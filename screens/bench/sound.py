"""Pluck and listen: record plucks, see the spectrum, take the median, set it against a pull of this belt."""

from statistics import median
from typing import Any

from kivy.properties import BooleanProperty, ListProperty, ObjectProperty, StringProperty

from logic.answers.belt_sound import (
    Calibration,
    Pitch,
    Recording,
    SoundPlan,
    calibrate,
    pitch,
    sound_plan,
    sound_reading,
)
from logic.answers.reading import Item, Result
from logic.answers.tension import BeltReading
from logic.board import Field
from screens.bench.measure import MeasurePage
from screens.phone.microphone import Microphone
from screens.widgets.chart import Curve, Mark
from screens.widgets.column import Column
from screens.widgets.load import load_kv
from screens.widgets.row import Foot
from screens.words.belt import REFUSALS

PITCH = Field("pitch", "Pitch", "number", 0, "", quantity="frequency", low=20.0, high=2000.0)
LEAST_SPREAD = 0.005
"""Several plucks of a belt never agree better than to half a per cent."""


class SoundPage(MeasurePage):
    """The foot records; a row opens the keypad for the pitch of another meter."""

    way = "pluck"

    said = StringProperty()
    plucks = StringProperty()
    typing = BooleanProperty(defaultvalue=False)
    listening = BooleanProperty(defaultvalue=False)
    calibrated = StringProperty()
    can_calibrate = BooleanProperty(defaultvalue=False)
    lines = ListProperty()
    marks = ListProperty()
    panel = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Have the microphone at hand, shut."""
        self.microphone = Microphone()
        self.heard: list[Pitch] = []
        self.pitch: Pitch | None = None
        self.sound: SoundPlan | None = None
        super().__init__(*args, **kwargs)
        self._keys = self.foot
        self._bars = SoundFoot(page=self)
        self.panel = SoundPanel(page=self)
        self.extra.add_widget(self.panel)

    def open(self, **args: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Begin without a pluck; coming back from a working or a file keeps what was heard."""
        if self._place != (self.state.saved.id, args.get("side") or self.state.saved.sides[0]):
            self.heard, self.pitch, self.said = [], None, ""
        self.typing = False
        super().open(**args)
        self.show_foot()

    def show_foot(self) -> None:
        """Show the keypad or the bars."""
        self.foot = self._keys if self.typing else self._bars

    @property
    def keypad(self) -> Any:  # noqa: ANN401  (as MeasurePage)
        """Return the keypad while a pitch is typed."""
        return self.entry.keypad if self.typing else None

    def fields(self) -> tuple[Field, ...]:
        """Return the pitch."""
        return (PITCH,)

    def refresh(self) -> None:
        """Work out what to expect first."""
        self.sound = sound_plan(self.board, self.state.person)
        super().refresh()
        self._show_heard()

    # What was heard

    def record_pluck(self) -> None:
        """Open the microphone for a second and a half."""
        self.listening = True
        self.said = "Listening: pluck now, once."
        self.microphone.record(self.listened)

    def listened(self, recording: Recording | None, sentence: str) -> None:
        """Take what the microphone gave."""
        self.listening = False
        if recording is None:
            self.said = sentence
            return
        self.take_recording(recording)

    def take_recording(self, recording: Recording) -> None:
        """Find the pitch of a recording and add it to the plucks when it can be relied on."""
        low, high = self.sound.band if self.sound is not None else (0.0, 0.0)
        self.pitch = pitch(recording, low, high)
        if self.pitch.refusal:
            self.said = REFUSALS[self.pitch.refusal]
        else:
            self.heard.append(self.pitch)
            self.said = f"Heard {self.style.number(self.pitch.frequency, 'frequency')}."
        self.refresh()

    def forget(self) -> None:
        """Forget the plucks as well."""
        self.heard, self.pitch, self.said = [], None, ""
        super().forget()

    def toggle_typing(self) -> None:
        """Show or hide the keypad."""
        self.typing = not self.typing
        self.show_foot()
        if self.typing:
            self.ask(PITCH.key)
        else:
            self.refresh()

    def _frequency(self) -> tuple[float, float] | None:
        """Return the pitch and its error: the median of the plucks, or what was typed."""
        typed = self.number(PITCH.key)
        if typed is not None:
            return typed, 0.01 * typed
        if not self.heard:
            return None
        pitches = [one.frequency for one in self.heard]
        middle = median(pitches)
        away = max(abs(one - middle) for one in pitches)
        return middle, max(away, median([one.error for one in self.heard]), LEAST_SPREAD * middle)

    def _calibration(self) -> Calibration | None:
        stored = self.state.store.get(f"pluck/{self.state.saved.id}/{self.side}")
        fitted = self.state.last("belt_fitted", belt=self.side)
        if stored is None or (fitted is not None and fitted.at.isoformat() > stored["at"]):
            return None
        return Calibration(stored["factor"], stored["pulled"], stored["share"])

    def read(self) -> BeltReading | None:
        """Return what the pitch tells."""
        found = self._frequency()
        self.known = self._calibration()
        if found is None:
            return None
        return sound_reading(self.board, self.state.person, *found, self.known)

    def _pulled(self) -> Any:  # noqa: ANN401  (a Record)
        """Return the last reading of this belt that was not by sound and has a tension."""
        for record in self.state.entries("tension"):
            said = record.body
            if said.belt == self.side and said.method in ("scale", "pulls", "weight", "together"):
                return record if said.tension and said.error is not None else None
        return None

    def set_against_pull(self) -> None:
        """Make the pluck of now mean the tension of the last pull."""
        found, record = self._frequency(), self._pulled()
        if found is None or record is None:
            return
        made = calibrate(self.board, self.state.person, found[0], record.body.tension, record.body.error)
        if made is not None:
            self.state.remember(
                f"pluck/{self.state.saved.id}/{self.side}",
                {
                    "factor": made.factor,
                    "pulled": made.pulled,
                    "share": made.share,
                    "at": self.state.clock().isoformat(),
                },
            )
            self.refresh()

    # Words

    def instructions(self) -> str:
        """Return what to do with the hands."""
        target = self.sound.items["pitch_target"]
        aim = (
            " At the target a string of its weight sounds at"
            f" {self.style.number(target.value, 'frequency')}; a short"
            " belt sounds higher."
            if isinstance(target, Result)
            else ""
        )
        return (
            "Turn the wheel a few times, drive at rest. Microphone a hand's width from the middle of the"
            " span. Record,"
            f" then pluck it once, softly, like a string.{aim}"
        )

    def remarks(self) -> list[str]:
        """Return what the reading is worth."""
        said = []
        if self.known is None:
            said.append(
                "Bending stiffness makes a short belt sound too high, by perhaps 10 to 40 % of the"
                " tension. Until it is"
                " set against a pull of this very belt, use it for the change since last time and left"
                " against right."
            )
        if self.sound is not None and not self.sound.weighed:
            said.append("The belt's weight is from a table; weighing the belt is better.")
        return said

    def cards(self) -> dict[str, Item]:
        """Return the pitches to expect."""
        return dict(self.sound.items) if self.sound is not None else {}

    def _show_heard(self) -> None:
        style = self.style
        pitches = ", ".join(style.shown(one.frequency, "frequency").number for one in self.heard)
        found = self._frequency()
        several = f" Median {style.number(found[0], 'frequency')}." if found and len(self.heard) > 1 else ""
        self.plucks = f"Plucks: {pitches} Hz.{several}" if self.heard else ""
        if self.number(PITCH.key) is not None:
            self.plucks = f"Typed: {style.number(self.number(PITCH.key), 'frequency')}."
        record = self._pulled()
        self.can_calibrate = found is not None and record is not None
        if self.known is not None:
            self.calibrated = (
                f"Set against a pull of {style.number(self.known.pulled, 'force')}: factor"
                f" {style.plain(self.known.factor)}."
            )
        elif self.can_calibrate:
            self.calibrated = f"The last pull told {style.number(record.body.tension, 'force')}."
        else:
            self.calibrated = ""
        points = self.pitch.points if self.pitch is not None else ()
        self.lines = [Curve("", list(points))] if points else []
        self.marks = (
            [Mark(self.pitch.frequency, self._level(), style.number(self.pitch.frequency, "frequency"))]
            if points and self.pitch.frequency
            else []
        )

    def _level(self) -> float:
        near = min(self.pitch.points, key=lambda point: abs(point[0] - self.pitch.frequency))
        return near[1]

    def _show_save(self) -> None:
        self.save_text, self.can_go = "SAVE", self.savable

    def go_on(self) -> None:
        """Save what was heard or typed."""
        self.refresh()
        if self.savable:
            self.save()

    def save(self) -> None:
        """Save, and begin anew next time."""
        super().save()
        self.heard, self.pitch, self.said = [], None, ""

    def own(self) -> dict[str, Any]:
        """Keep the pitch and how many plucks it is of."""
        found = self._frequency()
        return {
            "pitch": found[0],
            "pitch_error": found[1],
            "plucks": tuple(one.frequency for one in self.heard),
            "calibrated": self.known is not None,
        }

    def back(self) -> bool:
        """Close the keypad first."""
        if not self.typing:
            return False
        self.toggle_typing()
        return True


class SoundPanel(Column):
    """What was heard: plucks, spectrum, calibration."""

    page = ObjectProperty()


class SoundFoot(Foot):
    """Record and save."""

    page = ObjectProperty()


load_kv(__file__)
