"""Finding joints, their tools and lockers, and the figures beside a setting: cases of our own."""

import pytest

from logic.errors import InputError
from logic.joints.lookup import engagement_needed, find, locker_for, proof_torques, tools
from logic.joints.rules import rule
from logic.joints.strength import strength, strengths
from logic.tables import rows, sources
from tests.printed import agrees


def test_stainless_has_no_printed_proof_stress() -> None:
    with pytest.raises(InputError) as problem:
        proof_torques("M4", strength_name="A2-70", frictions=(0.3, 0.4, 0.5))
    assert problem.value.reason == "no proof stress printed"


def test_stresses_of_every_screw_are_in_order() -> None:
    for name in strengths():
        metal = strength(name)
        assert metal.number("yield") < metal.number("tensile")
        assert "proof" not in metal or metal.number("proof") < metal.number("yield")


def test_engagement_in_strong_steel_is_set_by_the_screws_own_thread() -> None:
    """M5 8.8 by hand: 2 x 14.2 / (pi x 4.334 (0.5 + 0.57735 x 0.027 / 0.8)) = 4.02 mm and one pitch: 4.8 mm.

    In 7075-T6 the hole wants 800 x 14.2 / (9.999 x 330) = 3.44 mm, which is less.
    """
    needed = engagement_needed("M5", strength_name="8.8", material="7075-T6")
    assert agrees(needed * 1000, "4.8")


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("grub", "pulley set screw"),
        ("axle", "axle nut"),
        ("5/16", "axle nut"),
        ("3/8", "kingpin nut"),
        ("king", "kingpin nut"),
        ("riser", "deck bolt"),
        ("motor face", "motor face"),
        ("lid", "enclosure"),
        ("m3 motor", "motor face"),
        ("8mm axle", "axle nut"),
        ("king pin", "kingpin nut"),
        ("setscrew", "pulley set screw"),
        ("sprocket", "pulley set screw"),
        ("locknut", "axle nut"),
        ("allen", "motor face"),
        ("Screw M4", "motor face"),
        ("nut axle", "axle nut"),
    ],
)
def test_search_by_what_one_sees(text: str, kind: str) -> None:
    assert find(text).kinds[0].text("kind") == kind


def test_search_for_a_size_offers_its_threads() -> None:
    assert [screw.designation for screw in find("5/16").threads] == ["5/16-18", "5/16-24"]
    assert [screw.designation for screw in find("M10").threads] == ["M10"]
    assert find("zzz").kinds == ()


def test_every_kind_of_joint_has_what_a_card_shows() -> None:
    for row in rows("joint_kinds"):
        for column in ("name", "order", "again", "reuse", "grade"):
            assert row.text(column)
        assert row.text("way") in ("torque", "set screw", "feel")
        assert (row.text("way") == "feel") == ("feel" in row) == ("how" in row)
        assert (row.text("grade") == "none") == ("no_locker" in row)
        assert row.source in sources()


def test_locker_of_each_joint() -> None:
    assert locker_for("motor face", "M4", surfaces=("steel", "aluminium")).grade == "medium"
    assert locker_for("motor face", "M3").grade == "low"
    assert locker_for("mount clamp", "M6").grade == "medium"
    assert locker_for("pulley set screw", "M4").grade == "low"
    assert locker_for("pulley set screw", "M5").grade == "medium"
    for kind in ("axle nut", "kingpin nut", "deck bolt", "enclosure", "bearing stack", "wheel pulley"):
        told = locker_for(kind, "M5")
        assert told.grade == "none"
        assert told.reason.startswith("None: ")


def test_tools_of_every_thread() -> None:
    for row in rows("threads_metric") + rows("threads_inch"):
        assert tools(row.text("thread")).standing == "estimate"


def test_rules_are_refused_by_a_wrong_name() -> None:
    assert rule("strip safety") == 1.5
    with pytest.raises(InputError):
        rule("guess")
