"""One way for every screw: torque, locker, reach and the drive without a wrench on one page."""

import re

import pytest

from logic.answers.joint_guide import find_joints
from logic.board_joints import joint_places
from screens.acts import Act, Both, Undo
from screens.acts.entering import Write
from screens.bench.lookup import look_up
from screens.blocks import Fold, Line
from screens.tongue import texts
from tests.pages.hand import Hand
from tests.pages.reader import Reader


def test_a_joint_of_the_board_is_three_taps_away(pages: Reader) -> None:
    hand = Hand(pages)
    hand.place("bench")
    hand.tap("Screws")
    hand.tap("Motor face screws")
    assert hand.taps == 3
    assert (pages.name, pages.page.crown.word) == ("bench.joint", "1.7\u00a0N·m, never over 1.8")


def test_all_else_is_behind_folds(bare: Reader) -> None:
    bare.open("bench.joints")
    bare.tap("Motor face screws")
    bare.tap("5 mm")
    folds = [block.title for block in bare.blocks() if isinstance(block, Fold)]
    assert folds == [
        "Threadlocker",
        "Without a torque wrench",
        "Tool and order",
        "Why",
        "Other sizes, class, head",
    ]
    assert not any(block.open for block in bare.blocks() if isinstance(block, Fold))


def test_reach_and_threadlocker_stand_with_the_screws(pages: Reader) -> None:
    pages.open("bench.joints")
    opened = {block.act.page for block in pages.blocks() if isinstance(block, Line)}
    assert opened == {"bench.joint", "bench.lookup_card", "bench.reach", "bench.locker"}


@pytest.mark.parametrize(("joint", "there"), [("motor_face", True), ("axle_nut", False)])
def test_a_motor_screw_leads_to_its_reach(pages: Reader, joint: str, *, there: bool) -> None:
    pages.open("bench.joint", joint=joint)
    assert ("reach" in pages) is there
    if there:
        pages.tap("Screw reach")
        assert pages.name == "bench.reach"


def test_a_screw_that_was_looked_up_is_kept_with_the_board(bare: Reader) -> None:
    bare.open("bench.joints")
    bare.tap("Motor face screws")
    bare.tap("5 mm")
    answer = bare.page.crown.word
    bare.tap("Keep it with the board")
    assert (bare.name, bare.page.crown.word) == ("bench.joint", answer)
    assert bare.world.trial["joints.motor_face.engagement"].si == pytest.approx(0.005)
    # The bar records it, which nothing did before.
    assert bare.page.foot.main.text == "Done: 0.7\u00a0N·m, torque wrench"
    bare.back()
    assert bare["motor_face"].value == "0.7\u00a0N·m"


def test_keeping_a_look_up_on_a_saved_board_can_be_undone(pages: Reader) -> None:
    before = pages.world.saved
    pages.open("bench.joints")
    pages.act(Write("lookup", "motor face"))
    pages.tap("Motor face screws")
    pages.tap("5 mm")
    keep: Act = pages["keep"].act
    assert isinstance(keep, Both)
    pages.act(keep)
    assert pages.world.saved.joint("motor_face").engagement.si == pytest.approx(0.005)
    pages.act(Undo())
    assert pages.world.saved == before


def test_a_screw_of_no_joint_cannot_be_kept(pages: Reader) -> None:
    pages.open("bench.joints")
    pages.tap("Any screw, by size")
    assert "keep" not in pages


def test_what_is_searched_for_is_cleared_with_one_tap(pages: Reader) -> None:
    pages.open("bench.joints")
    pages.act(Write("lookup", "axle"))
    assert "motor_face" not in pages
    pages.tap("Show all screws")
    assert pages["motor_face"].value == "1.7\u00a0N·m"


def sentences(pages: Reader) -> set[str]:
    """Every sentence of the page in front, its folds open."""
    for block in pages.blocks():
        if isinstance(block, Fold) and not block.open:
            pages.act(block.act)
    said = (
        getattr(block, name, "")
        for block in pages.blocks()
        for name in ("text", "detail", "title", "word", "label", "note")
    )
    return {one.strip() for text in said for one in re.split(r"(?<=[.!?:;])\s+|\n", text)}


def test_no_sentence_of_the_screws_has_more_than_fifteen_words(pages: Reader) -> None:
    said: set[str] = set()
    for board in pages.world.boards():
        pages.store.put("board", board.id)
        pages.restart()
        for joint in joint_places():
            said |= sentences(pages.open("bench.joint", joint=joint))
    for kind in find_joints("").kinds:
        pages.act(look_up(pages.world, kind))
        said |= sentences(pages)
    for name in ("bench", "bench.build", "bench.joints", "bench.reach", "bench.locker"):
        said |= sentences(pages.open(name))
    said |= {one for text in texts("joints")["notices"].values() for one in re.split(r"(?<=[.!?:])\s+", text)}
    assert [one for one in said if len(one.replace("\u00a0", "").split()) > 15] == []
