"""Target, window and marks, with the numbers worked by hand (ours), and what a working shows of them."""

import pytest

from logic.belt.catalogue import Belt, belt
from logic.belt.tension import Target, installation_tension, target, window
from logic.errors import InputError
from logic.workings import Call, Given, recording, standing_of, trace
from tests.loose import put_in

BELT = Belt(
    "HTD 5M", 0.015, pitch=0.005, differential=0.0005715, mass_factor=0.04, stretch=110.0,
    least_tension=50.0, working_tension=270.0, stiffness=225280.0,
)  # fmt: skip


def at(torque: float, service_factor: float = 1.5) -> Target:
    """Return the target on a 25 mm pulley at 10 m/s: a speed term of 4 N, a swing of 40 N per N m."""
    return target(
        belt=BELT, torque=torque, service_factor=service_factor, pitch_diameter=0.025, belt_speed=10.0
    )


def test_torque_decides() -> None:
    """2.5 N m: 0.812 x 1.5 x 100 + 4 = 125.8 N; the tight span sees 225.8 N, under the 270 N."""
    found = at(2.5)
    assert found.tension == pytest.approx(125.8)
    assert found.tight == pytest.approx(225.8)
    assert (found.held_down, found.over_working) == (False, False)


def test_the_least_for_the_width_decides() -> None:
    """0.5 N m asks for 28.36 N; the belt wants 50 N."""
    found = at(0.5)
    assert found.installation == pytest.approx(28.36)
    assert found.tension == 50.0
    assert (found.held_down, found.over_working) == (False, False)


def test_held_down_to_the_working_tension() -> None:
    """4 N m asks for 198.88 N, with the swing of 160 N far over 270 N: 110 N is left."""
    found = at(4.0)
    assert found.installation == pytest.approx(198.88)
    assert found.tension == pytest.approx(110.0)
    assert found.tight == pytest.approx(270.0)
    assert (found.held_down, found.over_working) == (True, False)


def test_held_down_to_the_least_and_still_over() -> None:
    """6 N m swings by 240 N: 30 N would be left, so 50 N it is and the tight span sees 290 N."""
    found = at(6.0)
    assert found.tension == 50.0
    assert (found.held_down, found.over_working) == (True, True)


def test_on_the_least_and_over_is_not_held_down() -> None:
    """A belt whose least alone is too much was never held down, but goes over all the same."""
    weak = Belt(**{**BELT.__dict__, "least_tension": 200.0})
    found = target(belt=weak, torque=2.5, service_factor=1.5, pitch_diameter=0.025, belt_speed=10.0)
    assert found.tension == 200.0
    assert (found.held_down, found.over_working) == (False, True)


def test_held_down_never_looks_over_the_limit() -> None:
    """Whatever the last digits do, a target held to the limit is not reported as over it."""
    for hundredths in range(310, 540):
        found = at(hundredths / 100)
        assert found.held_down
        assert not found.over_working


@pytest.mark.parametrize("service_factor", [1.29, 1.0, 0.0, float("nan"), float("inf")])
def test_service_factor_where_the_formula_changes(service_factor: float) -> None:
    """The reason tells why; the limit is in the refusal."""
    with pytest.raises(InputError) as refused:
        at(2.5, service_factor)
    assert refused.value.reason == "formula changes below"
    assert refused.value.low == 1.3


def test_least_service_factor_is_accepted() -> None:
    """0.812 x 1.3 x 100 = 105.56 N at rest; a speed below zero is a slip."""
    numbers = {"torque": 2.5, "service_factor": 1.3, "pitch_diameter": 0.025, "mass_factor": 0.04}
    assert installation_tension(**numbers, belt_speed=0.0) == pytest.approx(105.56)
    with pytest.raises(InputError):
        installation_tension(**numbers, belt_speed=-1.0)


def test_window_and_marks() -> None:
    """Of 125 N: 87.5 to 137.5, new 125 to 137.5, run in 100."""
    found = window(target=125.0, least=50.0)
    assert (found.floor, found.ceiling) == (pytest.approx(87.5), pytest.approx(137.5))
    assert (found.new_low, found.new_high) == (125.0, found.ceiling)
    assert found.run_in == pytest.approx(100.0)


def test_window_of_a_light_drive_stands_on_the_least() -> None:
    """Of 60 N with 50 N least: no mark and no edge under 50."""
    found = window(target=60.0, least=50.0)
    assert (found.floor, found.run_in) == (50.0, 50.0)
    assert found.ceiling == pytest.approx(66.0)


def test_working_shows_rows_and_the_proportion() -> None:
    """A 12 mm belt is not printed: its working has the 15 mm row, the proportion and the target formula."""
    with recording():
        figures = belt(profile="HTD 5M", width=put_in("width", 0.012))
        found = target(
            belt=figures,
            torque=put_in("torque", 2.5),
            service_factor=put_in("service factor", 1.3),
            pitch_diameter=put_in("pitch diameter", 0.02546),
            belt_speed=put_in("belt speed", 8.0),
        )
    made_of = trace(found.tension)
    calls = [entry.formula.name for entry in made_of if isinstance(entry, Call)]
    read = [(entry.name, entry.where) for entry in made_of if isinstance(entry, Given)]
    assert calls[-1] == "target_tension"
    assert {"force_for_width", "mass_factor_for_width", "installation_tension", "tension_swing"} <= set(calls)
    assert ("least_tension", "table 9, p. T-30") in read
    assert ("working_tension", "table 3") in read
    assert standing_of(made_of) == "derived"


def test_printed_width_needs_no_proportion() -> None:
    """A 15 mm belt takes m and the least tension as printed; only the working tension is in proportion."""
    with recording():
        figures = belt(profile="HTD 5M", width=put_in("width", 0.015))
    assert [entry.name for entry in trace(figures.least_tension)] == ["least_tension"]
    assert [getattr(entry, "name", "proportion") for entry in trace(figures.working_tension)] == [
        "working_tension",
        "width",
        "width",
        "proportion",
    ]
