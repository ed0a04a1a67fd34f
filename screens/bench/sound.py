"""Pluck and listen: record plucks, see the spectrum, take the median, set it against a pull of this belt."""

from collections.abc import Iterator, Mapping
from dataclasses import asdict, replace
from statistics import median
from typing import Any

from logic.answers.belt_sound import Pitch, calibrate, sound_plan, sound_reading
from logic.answers.reading import Item, Result
from logic.answers.tension import BeltReading
from logic.board import Field
from logic.store import Record as Entered
from screens.acts import Act, Turn
from screens.acts.keeping import Remember
from screens.acts.outside import Listen, OpenSound, PickFile
from screens.bench.measure import Measure
from screens.bench.other_ways import calibration
from screens.blocks import Block, Button, Line, Picture, Words
from screens.blocks import Field as TextField
from screens.page import Foot, Page
from screens.pictures.chart import Curve, Mark, chart
from screens.showing import fold
from screens.tongue import _, texts
from screens.words.tension import ago
from screens.world import World

PITCH = Field("pitch", _("Pitch"), "number", 0, "", quantity="frequency", low=20.0, high=2000.0)
LEAST_SPREAD = 0.005
"""Several plucks of a belt never agree better than to half a per cent."""
TYPED_SHARE = 0.01
"""Share to which the pitch of another meter is taken."""
PATH = "wav"
"""Key under which the path of a recording is typed."""
PULLED = ("scale", "pulls", "weight", "together")
"""Ways a pluck can be set against."""
FORGOTTEN = Turn({"heard": None, "_pitch": None, "_told": None})
"""Forgets what was heard."""


class Pluck(Measure):
    """The foot records; a row opens the keypad for the pitch of another meter."""

    way = "pluck"
    heading = _("Pluck and listen")

    def prepare(self) -> None:
        """Work out what to expect."""
        self.sound = self.world.kept(sound_plan, self.board, self.world.person)
        self.known = calibration(self.world, self.side)
        self.heard = tuple(Pitch(tone, error, "") for tone, error in self.world.args.get("heard", ()))
        self.pitch: Pitch | None = self.world.args.get("_pitch")

    def asks(self) -> tuple[Field, ...]:
        """Return the pitch."""
        return (PITCH,)

    @property
    def frequency(self) -> tuple[float, float] | None:
        """Return the pitch and its error: the median of the plucks, or what was typed."""
        typed = self.number(PITCH.key)
        if typed is not None:
            return typed, TYPED_SHARE * typed
        if not self.heard:
            return None
        pitches = [one.frequency for one in self.heard]
        middle = median(pitches)
        away = max(abs(one - middle) for one in pitches)
        return middle, max(away, median([one.error for one in self.heard]), LEAST_SPREAD * middle)

    def read(self) -> BeltReading | None:
        """Return what the pitch tells."""
        found = self.frequency
        if found is None:
            return None
        return sound_reading(self.board, self.world.person, *found, self.known)

    def pulled(self) -> Entered | None:
        """Return the last reading of this belt that was not by sound and has a tension."""
        for record in self.world.log.tensions:
            said = record.body
            if said.belt == self.side and said.method in PULLED:
                return record if said.tension and said.error is not None else None
        return None

    def set_against(self) -> Act | None:
        """Return the act that makes the pluck of now mean the tension of the last pull."""
        found, record = self.frequency, self.pulled()
        if found is None or record is None:
            return None
        said = record.body
        made = calibrate(self.board, self.world.person, found[0], said.tension, said.error)
        if made is None:
            return None
        at = self.world.now.isoformat()
        return Remember(f"pluck/{self.world.saved.id}/{self.side}", {**asdict(made), "at": at})

    # Words

    def headline(self) -> tuple[str, str]:
        """Return the pitch to expect."""
        target = self.sound.items["pitch_target"]
        if not isinstance(target, Result):
            return _("Pluck once"), self.aim()
        pitch = self.style.number(target.value, "frequency")
        return _("Near {pitch}").format(pitch=pitch), texts("belt")["said"]["plain string"]

    def lacks(self) -> str:
        """Return why a pitch has no verdict."""
        if self.reading is not None and self.reading.known and self.known is None:
            return _("For change only, until it is set against a pull.")
        return super().lacks()

    def remarks(self) -> list[str]:
        """Return what the reading is worth."""
        said = []
        if self.known is None:
            said.append(texts("belt")["said"]["sounds high"])
        if not self.sound.weighed:
            said.append(_("The belt's weight is from a table; weighing the belt is better."))
        return said

    def figures(self) -> Mapping[str, Item]:
        """Return the pitches to expect."""
        return self.sound.items

    def own(self) -> dict[str, Any]:
        """Keep the pitch and how many plucks it is of."""
        found = self.frequency
        assert found is not None  # noqa: S101  (who saves has a pitch)
        return {
            "pitch": found[0],
            "pitch_error": found[1],
            "plucks": tuple(one.frequency for one in self.heard),
            "calibrated": self.known is not None,
        }

    # Blocks

    @property
    def typing(self) -> bool:
        """Tell whether the pitch of another meter is typed."""
        return bool(self.world.args.get("_typing"))

    def before(self) -> Iterator[Block]:
        """Yield what was heard."""
        said = self.world.args.get("_told", "")
        if said:
            yield Words("said", texts("belt")["refusals"].get(said, said), role="lead", bold=True)
        elif self.pitch is not None and not self.pitch.refusal:
            heard = self.style.number(self.pitch.frequency, "frequency")
            yield Words("said", _("Heard {pitch}.").format(pitch=heard), role="lead", bold=True)
        if self.heard:
            yield Words("plucks", self._plucks())

    def _plucks(self) -> str:
        pitches = ", ".join(self.style.shown(one.frequency, "frequency").number for one in self.heard)
        said = _("Plucks: {pitches} Hz.").format(pitches=pitches)
        if len(self.heard) > 1:
            middle = median(one.frequency for one in self.heard)
            said += " " + _("Median {pitch}.").format(pitch=self.style.number(middle, "frequency"))
        return said

    def pictures(self) -> Iterator[Block]:
        """Yield the spectrum of the last pluck."""
        points = self.pitch.points if self.pitch is not None else ()
        if not points or self.pitch is None:
            return
        at = self.pitch.frequency
        marks: tuple[Mark, ...] = ()
        if at:
            level = min(points, key=lambda point: abs(point[0] - at))[1]
            marks = (Mark(at, level, self.style.number(at, "frequency")),)
        drawn = chart(
            [Curve("", list(points))],
            marks,
            x_title=_("Pitch, Hz"),
            y_title=_("Loudness, dB under the loudest"),
            from_zero=False,
            mark=self.style.mark,
        )
        yield Picture("spectrum", drawn, _("The spectrum of the last pluck."))

    def rest(self) -> Iterator[Block]:
        """Yield the calibration, the ways to a pitch without a microphone, and what is folded."""
        yield from self._against()
        yield Line(
            "typing",
            _("Type the pitch of a tuner"),
            icon="edit",
            act=Turn({"_typing": None if self.typing else True}),
        )
        yield from fold(self.world, "file", _("Open a recording"), self._file)
        yield from super().rest()
        if self.heard and not self.world.typed.get(self.typed_key(PITCH)):
            yield Line("forget", _("Forget these numbers"), icon="undo", act=FORGOTTEN)

    def _against(self) -> Iterator[Block]:
        record = self.pulled()
        if self.known is not None:
            text = _("Set against a pull of {force}: factor {factor}.").format(
                force=self.style.number(self.known.pulled, "force"),
                factor=self.style.plain(self.known.factor),
            )
            yield Words("calibrated", text)
        act = self.set_against()
        if act is not None and record is not None:
            detail = _("The last pull at the span told {force}, {when}.").format(
                force=self.style.number(record.body.tension, "force"), when=ago(record.at, self.world.now)
            )
            yield Line("against", _("Set this pitch against a pull"), detail, icon="sum", act=act)

    def _file(self) -> Iterator[Block]:
        """Yield what opens a recording that was made elsewhere."""
        yield Line("pick", _("Choose a recording"), icon="take_in", act=PickFile())
        yield TextField(
            PATH,
            _("Path of a WAV file of 16 bits, or drop it here"),
            self.world.typed.get(PATH, ""),
            hint="pluck.wav",
        )
        path = self.world.typed.get(PATH, "").strip()
        yield Line("open", _("Open this recording"), icon="file", act=OpenSound(path) if path else None)

    def foot(self) -> Foot:
        """Return the bar that records, or the keypad for the pitch of another meter."""
        if self.typing:
            return Foot(main=self.save_bar(), entry=self.entry)
        listening = bool(self.world.args.get("_listening"))
        record = (
            Button(_("Listening"), None, _("Pluck now, once."), icon="microphone")
            if listening
            else Button(_("Record a pluck"), Listen(), icon="microphone")
        )
        return Foot(main=record, beside=(Button(_("Save"), self.save(), self.why_not()),))

    def why_not(self) -> str:
        """Return why nothing can be saved."""
        return _("Record a pluck first.") if self.reading is None else super().why_not()


def sound_page(world: World) -> Page:
    """Return the page on which a belt is plucked."""
    pluck = Pluck(world)
    page = pluck.page()
    back = Turn({"_typing": None}) if pluck.typing else None
    return replace(page, back=back, aside=page.aside | {"spectrum"})
