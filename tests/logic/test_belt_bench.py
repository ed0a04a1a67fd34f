"""The best depth, several pulls fitted together and what that gains, by simulated pulls (ours)."""

import random
from math import cos, sqrt

import pytest

from logic.belt.best_depth import best_depth, error_at, tension_while_pulled
from logic.belt.geometry import centre_distance
from logic.belt.pull_fit import Pull, Tools, fit_pulls
from logic.belt.pull_reading import read_pull
from logic.belt.scale import pull_force
from logic.belt.shaft_reading import shaft_tension_error
from logic.belt.travel import nudge, stretch_since
from logic.errors import InputError

DRIVE = {"span": 0.0636, "length": 0.265, "stiffness": 226800.0}
TENSION = 107.0
TOOLS = {"force_error": 0.5, "deflection_error": 1e-4, "stiffness_error": 0.2 * 226800.0}
TRIALS = 300


@pytest.mark.parametrize("force_error", [0.1, 0.5, 1.0])
@pytest.mark.parametrize("depth_error", [5e-5, 1e-4, 2.5e-4])
def test_no_depth_is_better_than_the_best(force_error: float, depth_error: float) -> None:
    tools = {**TOOLS, "force_error": force_error, "deflection_error": depth_error}
    best = best_depth(tension=TENSION, **DRIVE, **tools, step=1e-4, working=268.0)
    least = error_at(tension=TENSION, deflection=best, **DRIVE, **tools)
    for number in range(1, 40):
        depth = number * 1e-4
        if tension_while_pulled(tension=TENSION, deflection=depth, **DRIVE) <= 268.0:
            assert error_at(tension=TENSION, deflection=depth, **DRIVE, **tools) >= least * (1 - 1e-12)


def test_a_poor_scale_wants_a_deeper_pull_and_a_doubtful_belt_a_shallower() -> None:
    def best(**changes: float) -> float:
        return best_depth(tension=TENSION, **DRIVE, **{**TOOLS, **changes}, step=1e-4, working=400.0)

    assert best(force_error=3.0) > best()
    assert best(stiffness_error=0.4 * 226800.0) < best()


def test_a_pull_never_takes_the_belt_over_its_working_tension() -> None:
    depth = best_depth(
        tension=TENSION,
        **DRIVE,
        force_error=3.0,
        deflection_error=1e-3,
        stiffness_error=1.0,
        step=1e-4,
        working=150.0,
    )
    assert tension_while_pulled(tension=TENSION, deflection=depth, **DRIVE) <= 150.0


@pytest.mark.parametrize(("step", "least", "most"), [(1e-4, 0.15, 0.30), (2.5e-4, 0.35, 0.55)])
def test_one_reading_is_only_so_good(step: float, least: float, most: float) -> None:
    """On a span of 64 mm one pull is good to about 15 to 45 % with a ruler step of 0.1 to 0.25 mm."""
    share = (
        error_at(tension=TENSION, deflection=0.001, **DRIVE, **{**TOOLS, "deflection_error": step}) / TENSION
    )
    assert least < share < most


def simulated(dice: random.Random, depths: tuple[float, ...]) -> list[Pull]:
    """Return pulls at depths read wrong by a common and a fresh error, on a belt a little off the table."""
    stiffness = DRIVE["stiffness"] * (1 + dice.gauss(0.0, 0.1))
    zero = dice.gauss(0.0, 0.8 * TOOLS["deflection_error"] / 2)
    pulls = []
    for depth in depths:
        true = depth + zero + dice.gauss(0.0, 0.6 * TOOLS["deflection_error"] / 2)
        force = pull_force(tension=TENSION, deflection=true, **{**DRIVE, "stiffness": stiffness})
        pulls.append(Pull(force + dice.gauss(0.0, TOOLS["force_error"] / 2), depth))
    return pulls


def spread_of(errors: list[float]) -> float:
    return sqrt(sum(error**2 for error in errors) / len(errors))


def test_what_fitting_gains_and_that_its_band_holds() -> None:
    """Bands of 95 % hold 95 % of the trials; two pulls gain nothing worth the name, five about a sixth."""
    dice = random.Random(11)
    tools = Tools(0.5, 1e-4, 0.8, TOOLS["stiffness_error"])
    errors: dict[str, list[float]] = {"one": [], "two": [], "five": []}
    held = {"one": 0, "five": 0}
    for _ in range(TRIALS):
        five = simulated(dice, (0.001, 0.0015, 0.002, 0.0025, 0.003))
        single = read_pull(force=five[0].force, deflection=0.001, **DRIVE, **TOOLS)
        two = fit_pulls([five[0], five[2]], tools, **DRIVE)
        all_five = fit_pulls(five, tools, **DRIVE)
        errors["one"].append(single.tension - TENSION)
        errors["two"].append(two.tension - TENSION)
        errors["five"].append(all_five.tension - TENSION)
        held["one"] += abs(errors["one"][-1]) <= single.error
        held["five"] += abs(errors["five"][-1]) <= all_five.error
    assert held["one"] / TRIALS == pytest.approx(0.95, abs=0.035)
    assert held["five"] / TRIALS == pytest.approx(0.95, abs=0.035)
    assert 0.9 < spread_of(errors["two"]) / spread_of(errors["one"]) < 1.08
    assert 0.7 < spread_of(errors["five"]) / spread_of(errors["one"]) < 0.92


def test_a_clear_zero_error_is_found() -> None:
    """Ours: exact pulls, every depth read 0.15 mm short, tools that leave it open."""
    pulls = [
        Pull(pull_force(tension=80.0, deflection=depth + 1.5e-4, **DRIVE), depth)
        for depth in (5e-4, 1e-3, 2e-3, 3e-3)
    ]
    fit = fit_pulls(pulls, Tools(0.01, 5e-4, 0.99999, 0.01 * DRIVE["stiffness"]), **DRIVE)
    assert fit.tension == pytest.approx(80.0, rel=0.01)
    assert fit.zero == pytest.approx(1.5e-4, rel=0.05)
    assert fit.misfit < 0.1


def test_pulls_that_do_not_belong_together_are_seen() -> None:
    pulls = [Pull(pull_force(tension=80.0, deflection=depth, **DRIVE), depth) for depth in (1e-3, 2e-3)]
    held = Pull(3 * pulls[1].force, 2.5e-3)
    assert fit_pulls([*pulls, held], Tools(0.5, 1e-4, 0.8, TOOLS["stiffness_error"]), **DRIVE).misfit > 1.5


@pytest.mark.parametrize(
    ("pulls", "reason"), [([Pull(8.0, 1e-3)], "range"), ([Pull(8.0, 1e-3), Pull(8.2, 1e-3)], "one depth")]
)
def test_too_little_to_fit(pulls: list[Pull], reason: str) -> None:
    with pytest.raises(InputError) as refused:
        fit_pulls(pulls, Tools(0.5, 1e-4, 0.8, 1e4), **DRIVE)
    assert refused.value.reason == reason


def test_pulling_the_motor_holds_what_it_says() -> None:
    """Ours: scale, friction and askew pull drawn at random; about 95 % lie within the error."""
    dice = random.Random(5)
    inside = 0
    for _ in range(2000):
        pull = 200.0 * (1 + dice.gauss(0.0, 0.075)) * cos(dice.gauss(0.0, 0.1)) + dice.gauss(0.0, 0.25)
        tension = 100.0 * pull / 200.0
        error = shaft_tension_error(tension=tension, pull=pull, scale_error=0.5, friction=0.15, angle=0.2)
        inside += abs(tension - 100.0) <= error
    assert inside / 2000 == pytest.approx(0.95, abs=0.02)


def test_a_nudge_is_what_the_belt_needs() -> None:
    """Ours: moving the shaft by the nudge lengthens the belt's way by the strain of the tension asked for."""
    large, small = 0.0572958, 0.0254648
    centre = centre_distance(length=0.265, large=large, small=small)
    way = nudge(
        wanted=110.0, tension=60.0, length=0.265, stiffness=226800.0, large=large, small=small, centre=centre
    )
    longer = centre_distance(length=0.265 * (1 + 50.0 / 226800.0), large=large, small=small) - centre
    assert way == pytest.approx(longer, rel=1e-3)
    assert way == pytest.approx(3.0e-5, rel=0.05)


def test_stretch_is_lost_tension_over_stiffness() -> None:
    assert stretch_since(before=110.0, now=87.32, length=0.25, stiffness=226800.0) == pytest.approx(
        2.5e-5, rel=1e-6
    )
