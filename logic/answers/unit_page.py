"""Units: what was typed, in every unit of its kind; wire gauges and threads by their rules."""

from logic.answers.asked import Asked, Asking, questions
from logic.answers.reading import Item
from logic.answers.run import Figures, Run, answer
from logic.joints.threads import pitch_from_count
from logic.pack.wiring import gauge_diameter, gauge_of_diameter, wire_area, wire_diameter
from logic.si import Metre, PerMetre
from logic.tables import pick
from logic.units import Shown, quantities, show_in
from logic.workings import cited

PLAIN = (
    "ask.unit_length",
    "ask.unit_force",
    "ask.unit_torque",
    "ask.unit_speed",
    "ask.unit_energy",
    "ask.unit_pressure",
    "ask.unit_temperature",
)
"""Kinds that only change their unit."""


@cited("1 / pitch", source="asme-b1-1 definition of pitch")
def count_from_pitch(*, pitch: Metre) -> PerMetre:
    """Return the threads in a length.

    >>> round(count_from_pitch(pitch=0.0254 / 24) * 0.0254, 9)
    24.0
    """
    return 1.0 / pitch


def _thinnest() -> float:
    return pick("wire_constants", name="gauge 36").number("diameter")


def _gauge(diameter: float) -> float:
    return gauge_of_diameter(diameter=diameter, thinnest=_thinnest())


def _by_gauge(asked: Asked) -> float:
    return gauge_diameter(gauge=asked("ask.unit_gauge"), thinnest=_thinnest())


def _by_area(asked: Asked) -> float:
    return wire_diameter(area=asked("ask.unit_area"))


RULES: dict[str, Figures[Asked]] = {
    "ask.unit_gauge": {
        "diameter": ("length", _by_gauge),
        "area": ("section", lambda asked: wire_area(diameter=_by_gauge(asked))),
    },
    "ask.unit_area": {
        "gauge": ("gauge", lambda asked: _gauge(_by_area(asked))),
        "diameter": ("length", _by_area),
    },
    "ask.unit_threads": {
        "pitch": (
            "length",
            lambda asked: pitch_from_count(threads_per_length=asked("ask.unit_threads")),
        ),
    },
    "ask.unit_pitch": {
        "threads": (
            "threads_per_length",
            lambda asked: count_from_pitch(pitch=asked("ask.unit_pitch")),
        ),
    },
}
"""Quantity and computation of what a rule gives, by the kind that was typed."""


def in_every_unit(asking: Asking, key: str, *, mark: str = ".") -> tuple[Shown, ...]:
    """Return the value of a kind in each of its units; empty for a kind that goes by a rule."""
    value = Asked(asking).value(key)
    if key not in PLAIN or value is None:
        return ()
    quantity = questions()[key].field.quantity
    return tuple(
        show_in(float(value.si), quantity, unit.shown, mark=mark, digits=6)
        for unit in quantities()[quantity].units
    )


@answer(key="ask.unit_gauge")
def by_rule(asking: Asking, key: str) -> dict[str, Item]:
    """Return what a wire or thread rule gives, with its working; empty for a plain kind."""
    return Run(lambda: Asked(asking)).figures(RULES.get(key, {}))
