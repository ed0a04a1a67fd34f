"""The plucked belt: the pitch to expect, and the tension a pitch tells, relative until it is calibrated."""

from functools import cached_property, partial

from logic.answers.belt_bench import BenchParts
from logic.answers.reading import Item, Reading, Result
from logic.answers.run import Figures, Run, answer
from logic.answers.tension import BeltReading, judged, put_in
from logic.belt.combine import with_bias
from logic.belt.pitch import Pitch, pitch
from logic.belt.pluck import (
    calibrated_error,
    calibration,
    frequency_from_tension,
    mass_for_width,
    pluck_error,
    tension_from_frequency,
)
from logic.belt.recording import Recording, from_pcm, from_wav
from logic.belt.verdict import Measured
from logic.board import Board
from logic.frozen import frozen
from logic.person import Person
from logic.si import Hertz, KilogramPerMetre, Metre, Newton, One
from logic.tables import Row, matching, pick
from logic.workings import Given, given

__all__ = [
    "Calibration",
    "Pitch",
    "Recording",
    "SoundParts",
    "SoundPlan",
    "calibrate",
    "from_pcm",
    "from_wav",
    "pitch",
    "sound_plan",
    "sound_reading",
]


@frozen
class Calibration:
    """A pluck set against a pull of one belt: the factor, the tension then, the pull's error share."""

    factor: One
    pulled: Newton
    share: One

    def put_in(self) -> dict[str, float]:
        """Return its numbers as measured ones, by the names that a calibrated error takes."""
        return {
            "factor": given(Given("Factor of this belt", float(self.factor), "1", known="measured")),
            "pulled": put_in("Tension it was set at", self.pulled),
            "pull_share": given(
                Given("Error of that pull", float(self.share), "1", "share", known="measured")
            ),
        }


class SoundParts(BenchParts):
    """The parts of a board that a pluck rests on."""

    @cached_property
    def _mass_row(self) -> Row:
        profile = self.read.choice("drive.profile")
        return next(row for row in matching("belt_mass", profile=profile) if row.cells["used"])

    @cached_property
    def weighed(self) -> bool:
        """Tell whether the belt was weighed."""
        return self.read.board.drive.belt_mass is not None

    @cached_property
    def mass(self) -> KilogramPerMetre:
        """Mass of the belt by its length."""
        if self.weighed:
            return self.read("drive.belt_mass") / self.belt_length
        row = self._mass_row
        return mass_for_width(
            printed_mass=row.number("mass"), width=self.belt.width, printed_width=row.number("width")
        )

    @cached_property
    def mass_share(self) -> One:
        """Share to which the mass is known."""
        if self.weighed:
            return pick("belt_practice", name="weighing error").number("fraction")
        row = self._mass_row
        return row.number("spread") / row.number("mass")

    @cached_property
    def span_error(self) -> Metre:
        """Limit of the span."""
        return pick("belt_practice", name="span error").number("length")

    @cached_property
    def most_bias(self) -> One:
        """How much too high a pluck may read before it is calibrated."""
        return pick("belt_practice", name="bending, most").number("fraction")

    @cached_property
    def pluck_share(self) -> One:
        """Share to which several plucks tell a frequency."""
        return pick("belt_practice", name="pluck error").number("fraction")

    def frequency(self, tension: Newton) -> Hertz:
        """Return the pitch of a tension without bending stiffness."""
        return frequency_from_tension(mass_per_length=self.mass, span=self.span, tension=tension)

    def error(self, tension: Newton, frequency: Hertz, error: Hertz) -> Newton:
        """Return the error of a plucked tension without the bending stiffness's."""
        return pluck_error(
            tension=tension,
            mass_share=self.mass_share,
            frequency=frequency,
            frequency_error=error,
            span=self.span,
            span_error=self.span_error,
        )


SOUND: Figures[SoundParts] = {
    "mass": ("mass_per_length", lambda parts: parts.mass),
    "pitch_target": ("frequency", lambda parts: parts.frequency(parts.target.tension)),
    "pitch_floor": ("frequency", lambda parts: parts.frequency(parts.window.floor)),
    "pitch_ceiling": ("frequency", lambda parts: parts.frequency(parts.window.ceiling)),
}
"""Quantity and computation of what a pluck should sound like."""

LOOSE, STIFF = 0.5, 2.2
"""The pitch is looked for from half the floor's, and up to a tension of so many times the ceiling's."""


@frozen
class SoundPlan:
    """What to expect, by name; `band` in Hz is where a pitch is believed, (0, 0) where it is not known."""

    items: dict[str, Item]
    band: tuple[Hertz, Hertz]
    weighed: bool


@answer()
def sound_plan(board: Board, person: Person) -> SoundPlan:
    """Return the pitch of the target and of the window, and where a pitch is looked for."""
    run = Run(lambda: SoundParts(Reading(board), person))
    items = run.figures(SOUND)
    low, high = items["pitch_floor"], items["pitch_ceiling"]
    band = (0.0, 0.0)
    if isinstance(low, Result) and isinstance(high, Result):
        # Under half and over twice the pitch a reading would be an octave away from a likely tension.
        band = (float(low.value) * LOOSE, float(high.value) * STIFF**0.5)
    return SoundPlan(items, band, run.plain.weighed)


@answer(frequency=300.0, error=5.0)
def sound_reading(
    board: Board,
    person: Person,
    frequency: Hertz,
    error: Hertz,
    calibrated: Calibration | None = None,
) -> BeltReading:
    """Return the tension of a pitch. Without a calibration it has no verdict: it reads too high."""
    run = Run(lambda: SoundParts(Reading(board), person))
    if calibrated is None:
        found = judged(run, partial(_plain, frequency, error))
        return BeltReading(found.tension, found.error, None)
    return judged(run, partial(_calibrated, frequency, error, calibrated))


def _heard(frequency: Hertz, error: Hertz) -> tuple[Hertz, Hertz]:
    return (
        given(Given("Pitch", float(frequency), "Hz", "frequency", known="measured")),
        given(Given("Error of the pitch", float(error), "Hz", "frequency", known="measured")),
    )


def _plain(frequency: Hertz, error: Hertz, parts: SoundParts) -> Measured:
    heard, off = _heard(frequency, error)
    tension = tension_from_frequency(mass_per_length=parts.mass, span=parts.span, frequency=heard)
    return Measured(
        tension, with_bias(error=parts.error(tension, heard, off), bias=parts.most_bias, tension=tension)
    )


def _calibrated(frequency: Hertz, error: Hertz, of: Calibration, parts: SoundParts) -> Measured:
    heard, off = _heard(frequency, error)
    pulled = of.put_in()
    plucked = tension_from_frequency(mass_per_length=parts.mass, span=parts.span, frequency=heard)
    tension = pulled["factor"] * plucked
    return Measured(
        tension, calibrated_error(tension=tension, frequency=heard, frequency_error=off, **pulled)
    )


def calibrate(
    board: Board, person: Person, frequency: Hertz, pulled: Newton, error: Newton
) -> Calibration | None:
    """Return the calibration of a belt whose pitch and pull are known; None without its mass and span."""

    def made(parts: SoundParts) -> Calibration:
        plucked = tension_from_frequency(mass_per_length=parts.mass, span=parts.span, frequency=frequency)
        return Calibration(calibration(pulled=pulled, plucked=plucked), pulled, error / pulled)

    return Run(lambda: SoundParts(Reading(board), person)).view(made, None)
