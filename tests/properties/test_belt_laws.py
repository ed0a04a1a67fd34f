"""Laws of a belt drive that hold whatever the numbers."""

from math import acos, asin, cos, pi, radians
from random import Random

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from logic.belt.catalogue import NARROWEST, WIDEST, belt
from logic.belt.geometry import (
    belt_length,
    centre_distance,
    length_of_teeth,
    pitch_diameter,
    span_length,
    teeth_in_mesh,
    whole_teeth_in_mesh,
    wrap_angle,
)
from logic.belt.pull_reading import (
    read_pull,
    tension_per_deflection,
    tension_per_force,
    tension_per_stiffness,
)
from logic.belt.running import shaft_pull, tension_from_shaft_pull
from logic.belt.scale import (
    misread_tension,
    pull_force,
    pull_force_locked,
    tension_from_pull,
)
from logic.belt.stock import nearest, stock
from logic.errors import InputError
from logic.tables import rows

laws = settings(max_examples=200, derandomize=True, deadline=None)


@st.composite
def drives(draw: st.DrawFn) -> dict[str, float]:
    """Draw the pitch diameters and the shaft distance of a drive whose pulleys do not overlap."""
    small = draw(st.floats(0.01, 0.12))
    large = small * draw(st.floats(1.0, 6.0))
    return {"large": large, "small": small, "centre": (large + small) / 2 * draw(st.floats(1.0001, 8.0))}


@st.composite
def pulls(draw: st.DrawFn) -> dict[str, float]:
    """Draw a tensioned span with a depth a person might pull."""
    span = draw(st.floats(0.03, 0.3))
    return {
        "tension": draw(st.floats(5.0, 600.0)),
        "deflection": span * draw(st.floats(0.004, 0.06)),
        "span": span,
        "length": span * draw(st.floats(2.1, 8.0)),
        "stiffness": draw(st.floats(3e4, 6e5)),
    }


def without(numbers: dict[str, float], *names: str) -> dict[str, float]:
    """Return the numbers but for some names."""
    return {name: value for name, value in numbers.items() if name not in names}


@laws
@given(drives())
def test_length_and_centre_are_inverse(drive: dict[str, float]) -> None:
    """A belt made to the drive's length brings the shafts back to where they were."""
    length = belt_length(**drive)
    assert centre_distance(length=length, **without(drive, "centre")) == pytest.approx(
        drive["centre"], rel=1e-9
    )


@settings(laws, max_examples=500)
@given(st.integers(8, 60), st.integers(0, 80), st.integers(1, 200), st.sampled_from([0.003, 0.005]))
def test_centre_against_another_solver(small: int, more: int, longer: int, pitch: float) -> None:
    """Two independent root finders on an equation written out a second time, over whole-toothed drives."""
    d, large = pitch * small / pi, pitch * (small + more) / pi
    teeth = small + more + longer + 8

    def residual(centre: float) -> float:
        tilt = asin((large - d) / 2 / centre)
        on_large, on_small = pi + 2 * tilt, pi - 2 * tilt
        return 2 * centre * cos(tilt) + on_large * large / 2 + on_small * d / 2 - pitch * teeth

    touching = (large + d) / 2
    length = length_of_teeth(pitch=pitch, teeth=teeth)
    numbers = {
        "large": pitch_diameter(pitch=pitch, teeth=small + more),
        "small": pitch_diameter(pitch=pitch, teeth=small),
    }
    if residual(touching) > 0.0:
        with pytest.raises(InputError, match="too short"):
            centre_distance(length=length, **numbers)
        return
    expected = brentq(residual, touching, pitch * teeth / 2, xtol=1e-15)
    assert centre_distance(length=length, **numbers) == pytest.approx(expected, abs=1e-10)


@laws
@given(drives(), st.floats(1.0001, 1.5))
def test_a_longer_belt_moves_the_shafts_apart(drive: dict[str, float], factor: float) -> None:
    """Centre, span and wrap all grow with the length."""
    further = {**drive, "centre": drive["centre"] * factor}
    assert belt_length(**further) > belt_length(**drive)
    assert span_length(**further) > span_length(**drive)
    assert wrap_angle(**further) >= wrap_angle(**drive)


@laws
@given(drives(), st.floats(0.1, 10.0))
def test_geometry_scales(drive: dict[str, float], factor: float) -> None:
    """A drawing twice as large is the same drive: lengths double, angles stay."""
    scaled = {name: value * factor for name, value in drive.items()}
    assert belt_length(**scaled) == pytest.approx(factor * belt_length(**drive), rel=1e-12)
    assert span_length(**scaled) == pytest.approx(factor * span_length(**drive), rel=1e-9)
    assert wrap_angle(**scaled) == pytest.approx(wrap_angle(**drive), rel=1e-9)


@laws
@given(drives())
def test_the_belt_is_its_spans_and_its_arcs(drive: dict[str, float]) -> None:
    """Two spans and the two arcs, from the functions for each, make up the length."""
    wrap = wrap_angle(**drive)
    arcs = wrap * drive["small"] / 2 + (2 * pi - wrap) * drive["large"] / 2
    assert 2 * span_length(**drive) + arcs == pytest.approx(belt_length(**drive), rel=1e-12)


@laws
@given(st.floats(0.01, 0.2), st.floats(1.01, 8.0))
def test_equal_pulleys(diameter: float, apart: float) -> None:
    """Nothing is left to solve: half the belt less half the circumference, half a turn of wrap."""
    drive = {"large": diameter, "small": diameter, "centre": diameter * apart}
    length = belt_length(**drive)
    assert length == pytest.approx(2 * drive["centre"] + pi * diameter, rel=1e-12)
    assert wrap_angle(**drive) == pytest.approx(pi, rel=1e-12)
    assert span_length(**drive) == pytest.approx(drive["centre"], rel=1e-12)


@laws
@given(drives(), st.integers(8, 60))
def test_handbook_wrap_is_close(drive: dict[str, float], teeth: int) -> None:
    """The handbooks' 180 - 60 (D - d) / C degrees lies within 1.2 degrees above 110 degrees of wrap."""
    exact = wrap_angle(**drive)
    assume(exact > radians(110))
    approximate = radians(180 - 60 * (drive["large"] - drive["small"]) / drive["centre"])
    assert approximate == pytest.approx(exact, abs=radians(1.2))
    whole = whole_teeth_in_mesh(**drive, teeth=teeth)
    assert abs(whole + 0.5 - teeth_in_mesh(wrap=exact, teeth=teeth)) < 0.5 + teeth * 1.2 / 360
    assert exact == pytest.approx(
        2 * acos((drive["large"] - drive["small"]) / 2 / drive["centre"]), rel=1e-12
    )


@pytest.mark.parametrize(
    ("numbers", "field", "reason"),
    [
        ({"large": 0.02, "small": 0.03, "centre": 0.1}, "small", "larger than the large pulley"),
        ({"large": 0.06, "small": 0.03, "centre": 0.04}, "centre", "pulleys overlap"),
        ({"large": 0.06, "small": 0.0, "centre": 0.1}, "small", "not positive"),
        ({"large": 0.06, "small": 0.03, "centre": float("nan")}, "centre", "not a number"),
    ],
)
def test_drives_that_cannot_be_are_refused(numbers: dict[str, float], field: str, reason: str) -> None:
    """Every function of a drive names the field and the reason."""
    for function in (belt_length, span_length, wrap_angle):
        with pytest.raises(InputError) as refused:
            function(**numbers)
        assert (refused.value.field, refused.value.reason) == (field, reason)


def test_a_belt_too_short_says_how_long_it_must_be() -> None:
    """The least length is that of pulleys side by side, and it is accepted with a hair on top."""
    numbers = {"large": 0.06, "small": 0.03}
    with pytest.raises(InputError, match="too short") as refused:
        centre_distance(length=0.1, **numbers)
    assert refused.value.low == pytest.approx(belt_length(centre=0.045, **numbers))
    assert centre_distance(length=refused.value.low * 1.000001, **numbers) == pytest.approx(0.045, rel=1e-5)


@laws
@given(pulls())
def test_force_and_tension_are_inverse(pull: dict[str, float]) -> None:
    free = pull_force(**pull)
    assert tension_from_pull(force=free, **without(pull, "tension")) == pytest.approx(
        pull["tension"], rel=1e-8
    )


@laws
@given(pulls(), st.floats(1.001, 2.0))
def test_force_grows_with_everything_that_tightens(pull: dict[str, float], factor: float) -> None:
    """Tension, depth and stiffness raise the pull; a longer belt, which gives more, lowers it."""
    force = pull_force(**pull)
    for name in ("tension", "deflection", "stiffness"):
        assert pull_force(**{**pull, name: pull[name] * factor}) > force
    assert pull_force(**{**pull, "length": pull["length"] * factor}) < force


@laws
@given(pulls())
def test_locked_pulleys_always_read_too_tight(pull: dict[str, float]) -> None:
    """The misreading is what the locked pull gives when it is taken for a free one."""
    held = pull_force_locked(**without(pull, "length"))
    assert held > pull_force(**pull)
    taken_for_free = tension_from_pull(force=held, **without(pull, "tension"))
    assert taken_for_free == pytest.approx(misread_tension(**pull), rel=1e-9)
    assert taken_for_free > pull["tension"]


@laws
@given(pulls())
def test_slopes_against_finite_differences(pull: dict[str, float]) -> None:
    """Each closed derivative equals the central difference of the tension it belongs to."""
    numbers = {**without(pull, "tension"), "force": pull_force(**pull)}
    place = without(numbers, "force", "stiffness")
    slopes = {
        "force": tension_per_force(**without(place, "length")),
        "deflection": tension_per_deflection(**numbers),
        "stiffness": tension_per_stiffness(**place),
    }
    for name, slope in slopes.items():
        step = numbers[name] * 1e-5
        above = tension_from_pull(**{**numbers, name: numbers[name] + step})
        below = tension_from_pull(**{**numbers, name: numbers[name] - step})
        assert slope == pytest.approx((above - below) / (2 * step), rel=1e-5)


@laws
@given(pulls(), st.floats(0.0, 0.02), st.floats(0.0, 0.02), st.floats(0.0, 0.02))
def test_error_holds_what_it_says(
    pull: dict[str, float], force: float, deflection: float, stiff: float
) -> None:
    """Each error alone moves the tension by what the slopes say; the whole is the root of their squares."""
    numbers = {**without(pull, "tension"), "force": pull_force(**pull)}
    size = {
        "force": force * numbers["force"],
        "deflection": deflection * pull["deflection"],
        "stiffness": stiff * pull["stiffness"],
    }
    none = {"force_error": 0.0, "deflection_error": 0.0, "stiffness_error": 0.0}
    alone = []
    for name, error in size.items():
        reading = read_pull(**numbers, **{**none, f"{name}_error": error})
        moved = tension_from_pull(**{**numbers, name: numbers[name] + error}) - reading.tension
        # First order: what is left is of the order of the relative error squared, 2 % at most here.
        assert reading.error == pytest.approx(abs(moved), rel=0.05, abs=1e-6)
        alone.append(reading.error)
    together = read_pull(**numbers, **{f"{name}_error": error for name, error in size.items()})
    assert together.error**2 == pytest.approx(sum(error**2 for error in alone), rel=1e-9, abs=1e-12)


@laws
@given(st.floats(5.0, 500.0), st.floats(0.5, pi))
def test_shaft_pull_and_tension_are_inverse(tension: float, wrap: float) -> None:
    """And the shaft never sees more than both spans straight on."""
    pull = shaft_pull(tension=tension, wrap=wrap)
    assert tension_from_shaft_pull(pull=pull, wrap=wrap) == pytest.approx(tension, rel=1e-12)
    assert pull <= 2 * tension * (1 + 1e-12)


@laws
@given(
    st.sampled_from([row.text("profile") for row in rows("belt_profiles")]),
    st.floats(0.004, 0.03),
    st.floats(1.001, 1.5),
)
def test_a_wider_belt_carries_more(profile: str, width: float, factor: float) -> None:
    """Stretch factor, mass factor, working and least tension all grow with the width."""
    try:
        narrow, wide = belt(profile=profile, width=width), belt(profile=profile, width=width * factor)
    except InputError as refused:
        assert refused.field == "belt width"  # noqa: PT017  (a draw beyond the table is no failure)
        assume(False)  # noqa: FBT003  (hypothesis asks for it this way)
    assert wide.working_tension > narrow.working_tension
    # Across a printed row the rounding of the row may undo a change of width smaller than itself.
    assert wide.stretch > narrow.stretch * 0.99
    assert wide.mass_factor > narrow.mass_factor * 0.95
    assert wide.least_tension > narrow.least_tension * 0.99


@pytest.mark.parametrize(
    ("profile", "narrowest", "widest"), [("HTD 5M", 0.009, 0.025), ("GT 3M", 0.006, 0.015)]
)
def test_widths_far_from_the_table_are_refused(profile: str, narrowest: float, widest: float) -> None:
    """The limits themselves are accepted; both stand in the refusal."""
    low, high = narrowest * NARROWEST, widest * WIDEST
    belt(profile=profile, width=low)
    belt(profile=profile, width=high)
    for width in (low * 0.99, high * 1.01):
        with pytest.raises(InputError) as refused:
            belt(profile=profile, width=width)
        assert (refused.value.low, refused.value.high) == (pytest.approx(low), pytest.approx(high))


def test_the_nearest_belts_are_those_of_the_whole_stock() -> None:
    """Only belts around the wanted length are solved for; every belt solved for by another root finder tells the same."""
    dice = Random(5)
    for _ in range(60):
        small, large = sorted((dice.uniform(0.01, 0.06), dice.uniform(0.01, 0.09)))
        wanted, count = dice.uniform(0.005, 0.4), dice.randint(1, 7)
        away = []
        for one in stock("HTD 5M"):
            touching = (small + large) / 2

            def over(centre: float, length: float = one.length, by: float = large - small) -> float:
                angle = asin(min(1.0, by / (2 * centre)))
                return 2 * centre * cos(angle) + pi * (large + small) / 2 + by * angle - length  # noqa: B023  (used at once)

            if over(touching) <= 0.0:
                away.append((abs(brentq(over, touching, one.length / 2) - wanted), one.teeth))
        expected = sorted(teeth for _, teeth in sorted(away)[:count])
        found = nearest(profile="HTD 5M", large=large, small=small, wanted=wanted, count=count)
        assert [one.teeth for one in found] == expected
