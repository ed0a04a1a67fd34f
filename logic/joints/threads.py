"""Screw threads: the geometry that strength is worked from, and finding a thread by what a person types."""

import re
from functools import cache

from logic.errors import InputError, positive
from logic.frozen import frozen
from logic.si import Metre, PerMetre, SquareMetre
from logic.tables import Row, matching, rows
from logic.workings import cited


@frozen
class Thread:
    """A standard thread: its printed row, and the limits of size that decide stripping in another."""

    designation: str
    system: str
    series: str
    row: Row
    limits: Row

    @property
    def nominal_diameter(self) -> Metre:
        """Nominal diameter, recorded with its source at each reading."""
        return self.row.number("nominal_diameter")

    @property
    def pitch(self) -> Metre:
        """Pitch, as printed or from the threads per inch."""
        if "pitch" in self.row:
            return self.row.number("pitch")
        return pitch_from_count(threads_per_length=self.row.number("threads_per_length"))

    @property
    def stress_area(self) -> SquareMetre:
        """Stress area as printed."""
        return self.row.number("stress_area")

    @property
    def size(self) -> str:
        """Diameter part of the designation, "M8" or "5/16": what tool sizes go by."""
        return re.split(r"[x-]", self.designation)[0]

    def limit(self, name: str) -> Metre:
        """Return a limit of size. Raises InputError where the table has none."""
        if name not in self.limits:
            raise InputError(name, self.designation, "not in the table")
        return self.limits.number(name)


@cited("1 / threads_per_length", source="asme-b1-1 definition of pitch")
def pitch_from_count(*, threads_per_length: PerMetre) -> Metre:
    """Pitch from threads per unit length.

    >>> round(pitch_from_count(threads_per_length=24 / 0.0254) * 1000, 3)
    1.058
    """
    positive(threads_per_length=threads_per_length)
    return 1.0 / threads_per_length


def _real_thread(nominal_diameter: float, pitch: float) -> None:
    positive(nominal_diameter=nominal_diameter, pitch=pitch)
    if pitch >= 0.5 * nominal_diameter:
        raise InputError("pitch", pitch, "too coarse", low=0.0, high=0.5 * nominal_diameter)


@cited("pi / 4 * (nominal_diameter - 0.938194 * pitch)**2", source="iso-898-1 stress area clause")
def stress_area(*, nominal_diameter: Metre, pitch: Metre) -> SquareMetre:
    """Tensile stress area of a metric thread, the circle between pitch and minor diameter.

    >>> round(stress_area(nominal_diameter=0.004, pitch=0.0007) * 1e6, 4)
    8.7787
    """
    _real_thread(nominal_diameter, pitch)
    return 0.7853981633974483 * (nominal_diameter - 0.938194 * pitch) ** 2


@cited("nominal_diameter - 0.649519 * pitch", source="iso-724 pitch diameter d2")
def thread_pitch_diameter(*, nominal_diameter: Metre, pitch: Metre) -> Metre:
    """Pitch diameter, basic, of screw and hole alike.

    >>> round(thread_pitch_diameter(nominal_diameter=0.004, pitch=0.0007) * 1000, 3)
    3.545
    """
    _real_thread(nominal_diameter, pitch)
    return nominal_diameter - 0.649519 * pitch


@cited("nominal_diameter - 1.226869 * pitch", source="iso-724 minor diameter d3")
def minor_diameter(*, nominal_diameter: Metre, pitch: Metre) -> Metre:
    """Minor diameter of the screw, at its rounded root.

    >>> round(minor_diameter(nominal_diameter=0.004, pitch=0.0007) * 1000, 3)
    3.141
    """
    _real_thread(nominal_diameter, pitch)
    return nominal_diameter - 1.226869 * pitch


@cache
def threads() -> tuple[Thread, ...]:
    """Return every thread of the tables, metric first."""
    return tuple(
        Thread(line.text("thread"), system, line.text("series"), line, limits)
        for system in ("metric", "inch")
        for line in rows(f"threads_{system}")
        for limits in matching(f"thread_limits_{system}", thread=line.text("thread"))
    )


def typed_form(text: str) -> str:
    """Return what a person typed in the form of the tables.

    >>> typed_form("m8 × 1,25"), typed_form("#10-32 UNF")
    ('M8x1.25', '10-32')
    >>> typed_form("8mm")
    'M8'
    """
    body = text.strip().lower().replace(",", ".").replace("×", "x").replace("*", "x")
    body = re.sub(r"unc|unf|no\.|#|\"|″|\bin\b|\s", "", body)
    body = re.sub(r"^([0-9.]+)mm$", r"m\1", body)
    return "M" + body[1:] if body.startswith("m") else body


def candidates(text: str) -> tuple[Thread, ...]:
    """Return the threads typed text can mean: one for "M4", two for "5/16", none for a wrong one.

    >>> [thread.designation for thread in candidates("5/16")]
    ['5/16-18', '5/16-24']
    """
    body = typed_form(text)
    exact = [
        thread
        for thread in threads()
        if body == thread.designation
        or (thread.series == "coarse" and body == f"{thread.designation}x{_millimetres(thread)}")
    ]
    if exact:
        return tuple(exact)
    return tuple(thread for thread in threads() if body == thread.size)


def thread(text: str) -> Thread:
    """Return the thread that typed text names; "M8" is the coarse one.

    Raises InputError: "ambiguous" for a diameter with several pitches, "unknown thread" for any other.

    >>> thread("M8x1.25").designation, thread("5/16-24").series
    ('M8', 'UNF')
    """
    found = candidates(text)
    if len(found) == 1:
        return found[0]
    raise InputError("thread", text, "ambiguous" if found else "unknown thread")


def _millimetres(thread: Thread) -> str:
    return f"{float(thread.row.cells['pitch']) * 1000:g}"


def lookalikes(designation: str) -> tuple[tuple[str, str], ...]:
    """Return the threads one can be mistaken for, each with its warning.

    >>> [other for other, warning in lookalikes("10-32")]
    ['M5']
    """
    return tuple(
        (line.text(there), line.text("warning"))
        for line in rows("lookalikes")
        for here, there in (("one", "other"), ("other", "one"))
        if line.text(here) == designation
    )
