"""Tools and spares: what a board needs, what is missing to say a size, and the list as a text."""

from logic.answers.spares import spares
from screens.acts import Go
from screens.acts.outside import Share
from screens.words import STANDING
from tests.pages.reader import Reader


def test_parts_tools_and_the_bag_stand_apart(pages: Reader) -> None:
    pages.open("bench.spares")
    titles = [block.title for block in pages.blocks() if block.key in ("spare", "tool", "bag")]
    assert titles == ["Parts", "Tools", "In the bag"]
    # Towpath 36 has a belt for each of its two motors: teeth and width are its own.
    belt = next(block for block in pages.blocks() if "elt" in getattr(block, "title", ""))
    assert belt.value == "2 ×"
    assert f"{pages.world.saved.drive.belt_teeth.si:.0f}" in belt.detail


def test_how_it_is_known_stands_once_and_where_it_differs(pages: Reader) -> None:
    pages.open("bench.spares")
    needs = spares(pages.world.saved, pages.world.person, pages.world.style.number)
    assert pages["spare"].note == "Common practice, no source."
    for need in needs:
        said = pages[need.kind].note + pages[f"{need.kind} {need.part}"].detail
        assert STANDING[need.row.standing].capitalize() in said
    assert "Common practice" not in pages["spare Belt"].detail


def test_what_a_size_lacks_is_one_tap_away(bare: Reader) -> None:
    bare.open("bench.spares")
    lacking = [block for block in bare.blocks() if "is missing: tap to add it." in block.said()]
    assert lacking
    assert all(isinstance(block.act, Go) and block.act.page == "board.value" for block in lacking)
    assert {"drive.profile", "drive.motor_teeth"} & {block.act.args["key"] for block in lacking}


def test_the_list_is_shared_as_a_text(pages: Reader) -> None:
    pages.open("bench.spares")
    pages.tap("Share the list")
    (shared,) = pages.out
    assert isinstance(shared, Share)
    assert shared.title == "Tools and spares: Towpath 36"
    lines = shared.text.splitlines()
    rows = [block for block in pages.blocks() if hasattr(block, "value")]
    assert lines[:2] == [shared.title, ""]
    assert len(lines) == len(rows) + 2
    assert any(line.startswith("2 x ") for line in lines)


def test_a_size_that_is_not_known_is_no_sentence_of_gaps(bare: Reader) -> None:
    bare.open("bench.spares")
    texts = bare.texts()
    assert not [one for one in texts if "not set" in one]
    assert any(one.endswith("Not known yet. Belt profile is missing: tap to add it.") for one in texts)
    assert "not set" not in bare.page.foot.main.act.text
