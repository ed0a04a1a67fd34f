"""Laws of screwed joints that hold whatever the numbers."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logic.errors import InputError
from logic.joints.advice import advise
from logic.joints.insert_nut import reuse
from logic.joints.limits import Joint, limits_of
from logic.joints.materials import feel_reason, materials
from logic.joints.reach import reach
from logic.joints.rules import setting_for, shown_ceiling
from logic.joints.shaft import holding, safe_torque
from logic.joints.strength import strength, strengths
from logic.joints.threadlocker import cure
from logic.joints.threads import candidates, thread, threads
from logic.joints.torque import preload_from_torque, torque_long, torque_short
from logic.tables import matching, rows

laws = settings(max_examples=150, derandomize=True, deadline=None)

names = st.sampled_from([screw.designation for screw in threads()])
metals = st.sampled_from(strengths())
conditions = st.sampled_from([row.text("condition") for row in rows("friction")])
tapped = st.sampled_from([key for key, _ in materials() if not feel_reason(key)])
lengths = st.floats(0.002, 0.03)


@st.composite
def joints(draw: st.DrawFn) -> Joint:
    """Draw a screw in a tapped hole with more than one thread in it."""
    return Joint(
        thread=draw(names),
        strength=draw(metals),
        condition=draw(conditions),
        into=draw(tapped),
        engagement=draw(lengths),
        member=draw(st.none() | tapped),
        head=draw(st.sampled_from(["socket", "hexagon"])),
        washer=draw(st.booleans()),
    )


@given(st.floats(0.02, 900.0))
@laws
def test_setting_stays_below_its_ceiling_with_a_tool_that_errs(ceiling: float) -> None:
    setting, shown = setting_for(ceiling), shown_ceiling(ceiling)
    assert setting * 1.06 <= ceiling * (1.0 + 1e-9)
    assert setting <= shown + 1e-9
    assert shown <= ceiling * (1.0 + 1e-9)


@given(st.floats(0.02, 900.0), st.floats(1.0, 3.0))
@laws
def test_setting_never_falls_when_the_ceiling_rises(ceiling: float, times: float) -> None:
    assert setting_for(ceiling * times) >= setting_for(ceiling) - 1e-9


@given(joints())
@laws
def test_advice_is_the_weakest_limit(joint: Joint) -> None:
    told = advise(joint)
    assert told.limits == limits_of(joint)
    weakest = min(told.limits, key=lambda limit: limit.torque)
    if told.feel:
        assert told.feel == "too small for a wrench"
        assert setting_for(weakest.torque) == 0.0
        return
    assert told.limit == weakest.name
    assert told.ceiling == weakest.torque
    assert told.lower_preload is not None
    assert told.upper_preload is not None
    assert told.lower_preload < told.upper_preload
    for limit in told.limits:
        assert limit.preload is None or told.upper_preload <= limit.preload / 1.06 * (1 + 1e-9)


@given(joints(), st.floats(1.01, 3.0))
@laws
def test_deeper_thread_never_lowers_the_ceiling(joint: Joint, times: float) -> None:
    assert joint.engagement is not None
    deeper = replace(joint, engagement=joint.engagement * times)
    before = {limit.name: limit.torque for limit in limits_of(joint)}
    after = {limit.name: limit.torque for limit in limits_of(deeper)}
    assert after["hole strips"] > before["hole strips"]
    assert min(after.values()) >= min(before.values())


@given(joints())
@laws
def test_more_slippery_threads_lower_every_limit_of_preload(joint: Joint) -> None:
    dry, oiled = replace(joint, condition="stainless dry"), replace(joint, condition="anti-seize")
    for hard, slippery in zip(limits_of(dry), limits_of(oiled), strict=True):
        assert hard.name == slippery.name
        assert slippery.torque < hard.torque or hard.preload is None


@given(names, metals, conditions)
@laws
def test_stronger_screw_bears_more(name: str, metal: str, condition: str) -> None:
    def bears(grade: str) -> float:
        return limits_of(Joint(thread=name, strength=grade, condition=condition))[0].torque

    stronger = [
        grade for grade in strengths() if strength(grade).number("yield") > strength(metal).number("yield")
    ]
    for grade in stronger:
        assert bears(grade) > bears(metal)


@given(st.floats(0.05, 0.6), st.floats(0.001, 0.02), st.floats(10.0, 1e5))
@laws
def test_torque_and_preload_are_a_round_trip(nut_factor: float, diameter: float, preload: float) -> None:
    torque = torque_short(nut_factor=nut_factor, nominal_diameter=diameter, preload=preload)
    back = preload_from_torque(torque=torque, nut_factor=nut_factor, nominal_diameter=diameter)
    assert back == pytest.approx(preload, rel=1e-12)


@given(names, st.sampled_from(["", " ", "#"]), st.sampled_from(["", " UNF", " unc "]))
@laws
def test_a_thread_is_found_however_it_is_typed(name: str, before: str, after: str) -> None:
    if not name.startswith("M"):
        assert thread(before + name + after).designation == name
    assert thread(name.lower().replace("x", " × ").replace(".", ",")).designation == name


@given(st.text(max_size=8))
@laws
def test_any_text_is_found_or_refused(text: str) -> None:
    found = candidates(text)
    if len(found) == 1:
        assert thread(text) == found[0]
    else:
        with pytest.raises(InputError):
            thread(text)


@pytest.mark.parametrize(
    ("friction", "reason"),
    [
        (-0.01, "below zero"),
        (float("-inf"), "not a number"),
        (float("nan"), "not a number"),
        (float("inf"), "not a number"),
    ],
)
@pytest.mark.parametrize("name", ["thread_friction", "head_friction"])
def test_a_friction_that_cannot_be_is_refused_by_its_own_name(
    name: str, friction: float, reason: str
) -> None:
    """One without end was refused as below zero."""
    screw = {"preload": 4300.0, "pitch": 0.0007, "pitch_diameter": 0.003545, "mean_bearing_diameter": 0.00519}
    with pytest.raises(InputError) as told:
        torque_long(**{**screw, "thread_friction": 0.14, "head_friction": 0.14, name: friction})
    assert (told.value.field, told.value.reason) == (name, reason)


@given(
    st.floats(0.004, 0.03),
    st.floats(0.001, 0.01),
    st.floats(0.0, 0.003),
    st.floats(0.002, 0.01),
    st.floats(1.0, 2.0),
)
@laws
def test_a_screw_that_is_enough_is_neither_short_nor_long(
    screw_length: float, plate: float, washers: float, thread_depth: float, deeper: float
) -> None:
    hole_depth = thread_depth * deeper
    try:
        told = reach(
            "M4",
            screw_length=screw_length,
            plate=plate,
            washers=washers,
            thread_depth=thread_depth,
            hole_depth=hole_depth,
            material="6061-T6",
        )
    except InputError as problem:
        assert problem.reason == "does not reach"  # noqa: PT017  (the only refusal there is)
        assert screw_length <= plate + washers
        return
    # On the windings, to a tenth of a micrometre, is too far.
    past = screw_length - plate - washers > hole_depth - 1e-7
    assert (told.verdict == "reaches the windings") == past
    if not past:
        assert (told.verdict == "too short") == (told.engaged < told.least)
    assert told.engaged <= thread_depth


@given(st.sampled_from(["M3", "M4", "M5", "M6"]), st.floats(0.003, 0.02), st.floats(0.01, 10.0))
@laws
def test_two_set_screws_hold_more_than_one_and_less_than_three(
    name: str, shaft: float, torque: float
) -> None:
    one = holding(name, shaft_diameter=shaft, screws="one", drive_torque=torque)
    assert one.holds == (torque <= one.slip / 8.0)
    for screws in (row.text("name") for row in matching("set_screw_points", of="screws")):
        told = holding(name, shaft_diameter=shaft, screws=screws, drive_torque=torque)
        assert one.slip <= told.slip <= 2.0 * one.slip
        assert told.least < told.most < told.slip
        assert not one.holds or told.holds


@given(st.sampled_from(["M3", "M5", "M8", "5/16-24", "3/8-24"]), st.floats(0.0, 3.0), st.floats(0.0, 3.0))
@laws
def test_a_nut_that_drags_more_is_never_worse(name: str, drag: float, more: float) -> None:
    if reuse(name, drag=drag).verdict == "pass":
        assert reuse(name, drag=drag + more).verdict == "pass"


@given(st.floats(278.15, 313.15), st.floats(0.0, 10.0))
@laws
def test_cold_never_cures_faster(temperature: float, colder: float) -> None:
    warm, cold = cure(temperature=temperature).time, cure(temperature=max(temperature - colder, 278.15)).time
    assert warm is not None
    assert cold is not None
    assert cold >= warm >= 86400.0 * (1 - 1e-12)


def test_a_safety_factor_of_one_is_the_least() -> None:
    assert safe_torque(holding_torque=6.84, safety=1.0) == 6.84
    with pytest.raises(InputError, match="below 1"):
        safe_torque(holding_torque=6.84, safety=0.999)
