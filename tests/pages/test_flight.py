"""Pack for a flight: the verdict first, its reasons, two packs, the classes at their edges."""

import pytest

from logic.board import Value
from logic.board_saved import to_dict
from logic.units import GAP
from screens.acts import Go
from screens.acts.entering import Put
from screens.blocks import RIGHT, UNSURE, WRONG, Verdict
from tests.pages.reader import Reader

HOUR = 3600.0


def use(pages: Reader, name: str) -> None:
    pages.store.put("board", next(board.id for board in pages.world.boards() if board.name == name))
    pages.restart()


def packed(pages: Reader, loose: float = 0.0, marked: float | None = None) -> None:
    """Open the page for the two packs of Ferry, apart."""
    use(pages, "Ferry")
    if marked is not None:
        value = Value(marked * HOUR, "label", typed_unit="Wh")
        board = pages.world.saved.with_value("pack.marked_energy", value)
        pages.store.save_board(board.id, board.name, to_dict(board))
        pages.restart()
    pages.act(Put("ask.carried", Value("apart"), "question"))
    pages.act(Put("ask.loose", Value(loose), "question"))
    pages.open("ride.flight")


def offers_the_card(pages: Reader) -> bool:
    main = pages.page.foot.main
    return main is not None and main.act == Go("ride.flight_card")


def test_not_marked_gives_do_not_pack_and_no_card(pages: Reader) -> None:
    pages.open("ride.flight")
    crown = pages.page.crown
    assert (crown.word, crown.form) == ("Do not pack it", WRONG)
    first, after = (crown.text.index(said) for said in ("over 160", "tested to UN 38.3"))
    assert first < after
    # No label is entered: the page says whose watt-hours these are, and what is not known as such.
    assert crown.text.startswith("By its cells 288\u00a0Wh")
    assert crown.text.endswith("Whether it is tested to UN 38.3 is not known.")
    assert not offers_the_card(pages)
    tested = next(one for one in pages["pack.tested"].options if one.text == "Yes")
    pages.act(tested.act)
    assert pages.world.saved.pack.tested.si == "yes"
    assert pages.world.trial == {}
    # A test does not make it smaller; a figure that is not on the case ends it.
    assert pages.page.crown.word == "Not as baggage"
    pages.act(next(one.act for one in pages["pack.marked"].options if one.text == "No"))
    assert pages.page.crown.word == "Do not pack it"
    assert next(one for one in pages["pack.tested"].options if one.chosen).text == "Yes"


def test_two_packs_may_fly_if_they_are_apart_and_the_card_waits_for_all_answers(pages: Reader) -> None:
    use(pages, "Ferry")
    pages.open("ride.flight")
    assert (pages.page.crown.word, pages.page.crown.form) == ("May fly, ask the airline", UNSURE)
    assert "the packs are apart, not joined by a lead" in pages.page.crown.text
    pages.tap("Apart")
    assert pages.page.crown.text.startswith("Only if all of them stay in the board.")
    assert not offers_the_card(pages)
    pages.tap("Packs out of the board, one more")
    pages.type("0")
    pages.tap("Done")
    assert offers_the_card(pages)


def test_a_counter_reads_one_figure(pages: Reader) -> None:
    """Ours: 10S of 2.75 Ah is 99 Wh; the label says 101.8 and the card shows no sum beside it."""
    use(pages, "Ferry")
    board = pages.world.saved.with_value("pack.cell_capacity", Value(2.75 * HOUR, "label"))
    pages.store.save_board(board.id, board.name, to_dict(board))
    packed(pages, marked=101.8)
    assert (pages["each"].number, pages["each"].unit) == ("101.8", "Wh")
    cells = f"By its cells: 36{GAP}V × 2.75{GAP}Ah = 99{GAP}Wh. The label counts."
    assert pages["each"].detail.startswith(cells)


def test_rules_that_are_over_say_so(pages: Reader) -> None:
    packed(pages)
    assert "in force 2026-03-27 to 2026-12-31." in pages["edition"].text
    assert "They are over" not in pages["edition"].text
    pages.restart(hours=24 * 60)
    assert "They are over: ask the airline for those of today." in pages["edition"].text


@pytest.mark.parametrize(
    ("marked", "verdict", "form"),
    [
        # IATA lithium battery guidance, table for passengers: up to 100 Wh, to 160 Wh with approval, above not at all.
        (100.0, "May fly, ask the airline", RIGHT),
        (100.1, "Only with the airline's approval", UNSURE),
        (160.0, "Only with the airline's approval", UNSURE),
        (160.1, "Not as baggage", WRONG),
    ],
)
def test_the_classes_at_their_edges(pages: Reader, marked: float, verdict: str, form: str) -> None:
    packed(pages, marked=marked)
    assert pages["each"].number == f"{marked:g}"
    assert (pages.page.crown.word, pages.page.crown.form) == (verdict, form)
    assert offers_the_card(pages) is (form != WRONG)


def test_a_pack_out_of_use_withholds_every_figure(pages: Reader) -> None:
    use(pages, "Ferry")
    pages.store.put(f"pack_out/{pages.world.saved.id}", {"sign": "swollen", "at": "2026-11-25T09:00:00"})
    packed(pages)
    assert isinstance(pages.page.crown, Verdict)
    assert pages.page.crown.word == "DANGER: do not pack it"
    assert pages.page.blocks[0].word == "danger"
    assert "each" not in pages
    assert not offers_the_card(pages)
    pages.tap("What to do with this pack")
    assert pages.name == "ride.pack_signs"
