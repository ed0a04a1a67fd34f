"""Answers for whole joints. The hand calculations are worked examples of our own, done step by step."""

from dataclasses import replace

import pytest

from logic.errors import InputError, Missing
from logic.joints.advice import Advice, advise
from logic.joints.limits import Joint, friction_ends, limits_of
from logic.joints.rules import setting_for, shown_ceiling
from logic.joints.torque import pull_on_arm
from logic.workings import Call, recording, standing_of, trace
from tests.printed import agrees


def motor_screw(thread: str, engagement: float, grade: str = "8.8", **more: object) -> Joint:
    """Screws of the demo boards: threadlocker wet, socket head on a bare aluminium mount, tapped 6061-T6."""
    return Joint(
        thread=thread,
        strength=grade,
        into="6061-T6",
        engagement=engagement,
        member="6061-T6",
        kind="motor face",
        **more,  # type: ignore[arg-type]
    )


def torques(told: Advice) -> dict[str, float]:
    return {limit.name: limit.torque for limit in told.limits}


def test_m4_with_five_millimetres_in_6061() -> None:
    """Worked example of our own (the demo board Lock-keeper).

    Hole strips: sheared share of a pitch = 0.7 / 2 + 0.57735 (3.838 - 3.663) = 0.35 + 0.10104 = 0.45104 mm;
      area of 1 mm = pi x 3.838 / 0.7 x 0.45104 = 7.769 mm2; carrying length 5 - 0.7 = 4.3 mm -> 33.41 mm2;
      x 186.16 MPa = 6219 N; over 1.5 x 1.35 = 3071 N; K lowest 0.12 -> 0.12 x 0.004 x 3071 = 1.474 N m.
    Screw 8.8: mu = (0.12 - 0.026) / 1.165 = 0.0807; twist term 1.5 x 3.545 / 3.343 x (0.7 / (pi 3.545)
      + 1.155 x 0.0807) = 1.5906 x (0.06285 + 0.09319) = 0.2482; sqrt(1 + 3 x 0.2482^2) = 1.0884;
      0.9 x 640 x 8.78 / 1.0884 = 4646 N -> 2.23 N m.
    Head: pi / 4 (6.53^2 - 4.5^2) = 17.59 mm2 x 260 MPa = 4572 N -> 2.19 N m.
    The hole is the weakest: ceiling 1.474, shown 1.45. Setting 1.474 / 1.06 = 1.391, rounded down to 1.3 N m.
    Clamp: 1.3 / (0.20 x 0.004) = 1625 N at least, 1.3 / (0.12 x 0.004) = 2708 N at most.
    """
    told = advise(motor_screw("M4", 0.005))
    assert agrees(torques(told)["hole strips"], "1.474")
    assert agrees(torques(told)["screw strength"], "2.23")
    assert agrees(torques(told)["head sinks in"], "2.19")
    assert told.limit == "hole strips"
    assert told.setting == pytest.approx(1.3)
    assert told.shown_ceiling == pytest.approx(1.45)
    assert told.lower_preload == pytest.approx(1625.0)
    assert agrees(told.upper_preload or 0.0, "2708")
    assert told.not_checked == ()
    assert told.wrench is told.setting


def test_m4_with_six_millimetres_in_6061() -> None:
    """Worked example of our own (the demo boards Towpath 36 and Ferry).

    Hole: carrying length 5.3 mm x 7.769 = 41.17 mm2 x 186.16 MPa = 7665 N / 2.025 = 3785 N -> 1.817 N m.
    Screw 2.23 and
    head 2.19 N m as with 5 mm. The hole is the weakest: 1.817 / 1.06 = 1.714 -> set 1.7, never above 1.8.
    """
    told = advise(motor_screw("M4", 0.006))
    assert agrees(torques(told)["hole strips"], "1.817")
    assert told.limit == "hole strips"
    assert told.setting == pytest.approx(1.7)
    assert told.shown_ceiling == pytest.approx(1.8)


def test_m5_of_class_12_9_with_eight_millimetres_in_6061() -> None:
    """Worked example of our own (the demo board Weir).

    Hole: share 0.4 + 0.57735 (4.826 - 4.605) = 0.52759 mm; pi x 4.826 / 0.8 x 0.52759 = 9.999 mm2 a
    millimetre;
      x (8 - 0.8) = 71.99 mm2 x 186.16 MPa = 13 402 N / 2.025 = 6618 N x 0.12 x 0.005 = 3.971 N m.
    Head: pi / 4 (8.03^2 - 5.5^2) = 26.88 mm2 x 260 = 6990 N -> 4.194 N m: the thread strips before the
    head sinks in, with and without a washer.
    Screw 12.9: 0.9 x 1100 x 14.2 / 1.08 = 13.0 kN -> 7.8 N m, far above.
    Setting 3.971 / 1.06 = 3.746 -> 3.7, shown ceiling 3.95. With 9 mm the hole bears 4.522 and the head is the limit:
    4.194 / 1.06 = 3.957 -> 3.9, ceiling 4.15; a hard washer (10 mm over 5.3 mm) lifts it to 4.522 / 1.06 -> 4.2.
    """
    bare = advise(motor_screw("M5", 0.008, "12.9"))
    assert agrees(torques(bare)["hole strips"], "3.971")
    assert agrees(torques(bare)["head sinks in"], "4.194")
    assert agrees(torques(bare)["screw strength"], "7.8")
    assert bare.limit == "hole strips"
    assert bare.setting == pytest.approx(3.7)
    assert bare.shown_ceiling == pytest.approx(3.95)
    deep = advise(motor_screw("M5", 0.009, "12.9"))
    assert deep.limit == "head sinks in"
    assert deep.setting == pytest.approx(3.9)
    assert deep.shown_ceiling == pytest.approx(4.15)
    washer = advise(motor_screw("M5", 0.009, "12.9", washer=True))
    assert washer.limit == "hole strips"
    assert washer.setting == pytest.approx(4.2)
    assert washer.shown_ceiling == pytest.approx(4.5)


def test_mount_clamp_m6_ten_millimetres_dry() -> None:
    """Worked example of our own: M6 8.8 zinc plated and dry, lowest K 0.15, in a 6082-T6 mount, 0.6 x 290 MPa.

    Hole: share 0.5 + 0.57735 (5.794 - 5.5) = 0.66974; pi x 5.794 x 0.66974 = 12.191 mm2 a millimetre; x 9 mm
    = 109.72 mm2 x 174 MPa = 19 091 N / 2.025 = 9428 N x 0.15 x 0.006 = 8.485 N m.
    Head: pi / 4 (9.38^2 - 6.6^2) = 34.89 mm2 x 260 = 9072 N -> 8.16 N m.
    Setting 8.165 / 1.06 = 7.70 -> 7.5 (steps of 0.5), ceiling 8.1.
    """
    told = advise(
        Joint(
            thread="M6",
            into="6082-T6",
            engagement=0.010,
            member="6082-T6",
            condition="zinc dry",
            kind="mount clamp",
        )
    )
    assert agrees(torques(told)["hole strips"], "8.485")
    assert agrees(torques(told)["head sinks in"], "8.16")
    assert told.limit == "head sinks in"
    assert told.setting == pytest.approx(7.5)
    assert told.shown_ceiling == pytest.approx(8.1)


def test_wheel_pulley_bolt_through_polycarbonate_into_an_insert_nut() -> None:
    """Worked example of our own: M5 through a PC hub with a washer, nut running torque measured 0.8 N m.

    Washer: pi / 4 (10^2 - 5.3^2) = 56.48 mm2 x 20 MPa = 1130 N x 0.15 x 0.005 = 0.847 N m. 0.847 /
    1.06 = 0.799
    -> 0.7; on the wrench 0.7 + 0.8 = 1.5, never above 0.847 + 0.8 = 1.647.
    """
    told = advise(
        Joint(
            thread="M5",
            into="insert nut",
            member="PC",
            washer=True,
            running=0.8,
            condition="steel dry",
            kind="wheel pulley",
        )
    )
    assert told.limit == "head sinks in"
    assert told.setting == pytest.approx(0.7)
    assert told.wrench == pytest.approx(1.5)
    assert told.wrench_ceiling is not None
    assert agrees(told.wrench_ceiling, "1.647")


def test_enclosure_screw_in_a_brass_insert() -> None:
    """M3: the table's 0.5 N m (an estimate); 0.5 / 1.06 = 0.47 -> 0.4."""
    told = advise(Joint(thread="M3", into="brass insert", condition="steel dry", kind="enclosure"))
    assert told.limit == "insert spins"
    assert told.setting == pytest.approx(0.45)
    assert told.ceiling == 0.5


@pytest.mark.parametrize(
    ("joint", "reason"),
    [
        (Joint(thread="10-32", into="insert nut", member="wood", kind="deck bolt"), "wood"),
        (Joint(thread="M5", into="nut", kind="deck bolt"), "wood"),
        (Joint(thread="M8", into="insert nut", kind="axle nut"), "bearing play"),
        (Joint(thread="5/16-24", into="insert nut", kind="bearing stack"), "bearing play"),
        (Joint(thread="3/8-24", into="insert nut", kind="kingpin nut"), "bushing setting"),
        (Joint(thread="M5", member="urethane", kind="wheel pulley"), "soft hub"),
        (Joint(thread="M4", into="wood", engagement=0.01), "wood"),
        (Joint(thread="M8", into="insert nut", kind="axle nut", solid_stack=True), "bearing play"),
        (
            Joint(thread="M4", into="ABS", engagement=0.006, member="ABS", kind="enclosure"),
            "too small for a wrench",
        ),
    ],
)
def test_joints_that_are_set_by_feel(joint: Joint, reason: str) -> None:
    told = advise(joint)
    assert told.feel == reason
    assert (told.setting, told.ceiling, told.shown_ceiling, told.wrench) == (None, None, None, None)


def test_crushing_of_the_deck_stays_in_the_working_as_an_estimate() -> None:
    with recording():
        told = advise(Joint(thread="10-32", into="insert nut", member="wood", kind="deck bolt"))
    (crushed,) = told.limits
    assert crushed.name == "wood crushes"
    assert standing_of(trace(crushed.torque)) == "estimate"


def test_axle_nut_on_a_solid_stack() -> None:
    """AC 43.13-1B: 5/16-24 100 to 140 lbf in = 11.3 to 15.8 N m. The low end, rounded
    down, plus the nut's drag."""
    told = advise(Joint(thread="5/16-24", into="insert nut", kind="axle nut", solid_stack=True, running=1.5))
    assert told.setting == pytest.approx(11.0)
    assert told.shown_ceiling == pytest.approx(15.8)
    assert told.wrench == pytest.approx(12.5)


@pytest.mark.parametrize(
    ("ceiling", "setting", "shown"),
    [
        (1.64, 1.5, 1.6),
        (0.5, 0.45, 0.5),
        (0.234, 0.2, 0.23),
        (2.02, 1.9, 2.0),
        (5.2, 4.9, 5.2),
        (5.44, 5.0, 5.4),
        (12.3, 11.5, 12.3),
        (0.1, 0.0, 0.1),
        (0.09, 0.0, 0.09),
    ],
)
def test_setting_and_shown_ceiling(ceiling: float, setting: float, shown: float) -> None:
    """By hand: ceiling / 1.06, nothing below 0.1 N m, then down to 0.05, from 0.5 to 0.1, from 5 to 0.5;
    ceiling down to 0.01, from 0.5 to 0.05, from 5 to 0.1."""
    assert setting_for(ceiling) == pytest.approx(setting)
    assert shown_ceiling(ceiling) == pytest.approx(shown)


def test_locker_on_a_dry_screw_is_wet_while_it_turns() -> None:
    """Ours: M4 with 4 mm in 6061: 4773 N / 2.025 = 2357 N x 0.12 x 4 mm = 1.131, whatever it was before."""
    joint = motor_screw("M4", 0.004)
    for condition in ("zinc dry", "steel dry"):
        assert agrees(
            torques(advise(replace(joint, condition=condition, locker=True)))["hole strips"], "1.131"
        )
    assert agrees(torques(advise(replace(joint, condition="zinc dry")))["hole strips"], "1.414")


@pytest.mark.parametrize(
    ("into", "lowest"), [("nut", 0.30), ("stainless", 0.30), ("6061-T6", 0.10), ("brass insert", 0.10)]
)
def test_stainless_rubs_hard_on_stainless_only(into: str, lowest: float) -> None:
    assert friction_ends(Joint(thread="M4", condition="stainless dry", into=into))[0] == lowest


def test_a_button_head_sinks_in_no_later_than_a_cap() -> None:
    """Ours: M4, ring 17.59 mm2 on 6061 x 260 MPa = 4573 N x 0.12 x 4 mm = 2.195."""
    for head in ("socket", "button"):
        limits = limits_of(Joint(thread="M4", strength="12.9", head=head, member="6061-T6"))
        assert agrees(next(one.torque for one in limits if one.name == "head sinks in"), "2.195")


def test_pull_on_the_persons_own_key() -> None:
    """1.5 N m on a 60 mm arm is 25 N."""
    assert pull_on_arm(torque=1.5, arm=0.060) == pytest.approx(25.0)


def test_the_working_of_a_setting_leads_back_to_the_tables() -> None:
    with recording():
        told = advise(motor_screw("M4", 0.005))
    assert told.setting is not None
    entries = trace(told.setting)
    formulas = [entry.formula.name for entry in entries if isinstance(entry, Call)]
    assert formulas == [
        "effective_engagement",
        "hole_shear_area",
        "strip_force",
        "allowed_preload",
        "torque_short",
        "setting_below",
        "rounded_down",
    ]
    given = {entry.name for entry in entries if not isinstance(entry, Call)}
    assert {"nut_factor_low", "shear", "pitch", "strip safety", "strip scatter", "tool error"} <= given
    # Friction of wet threadlocker is from memory, and the setting says so.
    assert standing_of(entries) == "estimate"


def test_tapped_hole_without_engagement_is_an_offer() -> None:
    with pytest.raises(Missing) as offer:
        advise(Joint(thread="M4", into="6061-T6"))
    assert offer.value.fields == ("engagement",)


@pytest.mark.parametrize(
    ("joint", "reason"),
    [
        (Joint(thread="M4", into="6061-T6", engagement=0.0006), "less than one thread"),
        (Joint(thread="5/16"), "ambiguous"),
        (Joint(thread="M7"), "unknown thread"),
        (Joint(thread="M4", strength="nylon"), "not in the table"),
        (Joint(thread="M4", condition="soap"), "not in the table"),
        (Joint(thread="M4", into="cheese", engagement=0.005), "not in the table"),
        (Joint(thread="M4", kind="pulley set screw"), "set screw"),
    ],
)
def test_refusals(joint: Joint, reason: str) -> None:
    with pytest.raises(InputError) as problem:
        advise(joint)
    assert problem.value.reason == reason


def test_inch_screw_says_that_its_head_was_not_checked() -> None:
    assert advise(Joint(thread="1/4-20", strength="grade 5", member="6061-T6")).not_checked == (
        "head sinks in",
    )
