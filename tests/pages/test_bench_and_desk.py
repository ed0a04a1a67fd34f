"""Climbs held, wheels measured, motors on the bench, units, care of packs: what is typed and laid over the board."""

import pytest

from logic.board import Value
from logic.units import GAP, MINUS
from screens.acts.entering import Ask, Put, asks
from screens.blocks import PLAIN, RIGHT, UNSURE, FigureRow, Notice
from tests.pages.reader import Reader


def ask(pages: Reader, label: str, text: str) -> None:
    """Type a value and close the keypad."""
    pages.tap(label)
    pages.rub(len(pages.typed))
    pages.type(text)
    pages.tap("Done")


# Motor heat on a climb


def test_a_climb_is_held_for_a_time_or_without_end(pages: Reader) -> None:
    pages.open("numbers.hold")
    ask(pages, "Climb", "14")
    assert pages.page.crown.unit in ("min", "s")
    assert pages.page.crown.label.endswith(f"on a climb of 14{GAP}%")
    assert pages.page.crown.detail.endswith("if it cools well.")
    assert "if it cools badly" in pages.page.crown.detail
    ask(pages, "Climb", "2")
    assert pages.page.crown.detail == "Stays below the limit however long it climbs."


def test_more_teeth_on_the_motor_hold_it_for_a_shorter_time(pages: Reader) -> None:
    pages.open("numbers.hold")
    ask(pages, "Climb", "14")
    pages.act(Put("drive.motor_teeth", Value(18.0)))
    assert pages.page.crown.change.startswith(MINUS)
    pages.tap("Drop the trial")
    assert pages.page.crown.change == ""


def test_the_temperature_is_drawn_against_the_limit(pages: Reader) -> None:
    pages.open("numbers.hold")
    ask(pages, "Climb", "14")
    texts = [stroke.text for stroke in pages["chart"].strokes.strokes if hasattr(stroke, "text")]
    assert {"limit", "as entered", "Time, min"} <= set(texts)


def test_a_board_without_values_is_told_what_it_lacks(bare: Reader) -> None:
    bare.open("numbers.hold")
    assert (bare.page.crown.number, bare.page.crown.unit) == ("8", "values to give")
    assert bare["chart"].text == "The chart needs the values that are missing above."
    bare.act(bare.page.crown.act)
    assert bare.world.asking is not None


# Wheel wear and size


def test_a_rolled_out_wheel_is_laid_over_the_board(pages: Reader) -> None:
    pages.open("numbers.wheel")
    ask(pages, "Rolled from mark to mark", "3.02")
    # Ours: 3.02 m / 10 / pi = 96.13 mm.
    assert pages.page.crown.number == "96.1"
    pages.tap(f"Try 96.1{GAP}mm on the board")
    tried = pages.world.board.drive.wheel_diameter
    assert (float(tried.si), tried.known) == (pytest.approx(0.09613, abs=5e-6), "measured")
    assert pages.page.foot.main.text == "Keep on board"


def test_a_way_that_fits_no_wheel_is_refused_and_not_offered(pages: Reader) -> None:
    pages.open("numbers.wheel")
    ask(pages, "Rolled from mark to mark", "40")
    assert "refused" in pages
    assert pages.page.foot.main is None


def test_a_wheel_worn_too_far_says_so(pages: Reader) -> None:
    pages.open("numbers.wheel")
    assert "low" not in pages
    ask(pages, "Measured across", "72")
    assert pages["low"].text.startswith("The wheel pulley comes close to the ground")


# Motor from the bench


def test_a_motor_is_measured_on_the_bench(pages: Reader) -> None:
    pages.open("numbers.bench_motor")
    assert [block.word for block in pages.blocks() if isinstance(block, Notice)] == ["warning"]
    assert (pages.page.crown.word, pages.page.crown.form) == ("Not measured yet", PLAIN)
    ask(pages, "Magnets in the can", "13")
    assert pages.shows("Magnets come in pairs of poles: an odd count was miscounted.")
    ask(pages, "Volts between two wires", "0.46")
    ask(pages, "Amps through them", "10")
    assert (pages["resistance"].number, pages["resistance"].unit) == ("46", "mΩ")
    assert (pages.page.crown.word, pages.page.crown.form) == (f"46{GAP}mΩ", UNSURE)
    pages.tap("Try the measured values on the board")
    assert float(pages.world.board.motor.resistance.si) == pytest.approx(0.046)


def test_all_three_are_told_in_one_verdict(pages: Reader) -> None:
    pages.open("numbers.bench_motor")
    for label, text in (
        ("Volts while spinning", "30"),
        ("Motor turns at", "5080"),
        ("Volts between two wires", "0.46"),
        ("Amps through them", "10"),
        ("Magnets in the can", "14"),
    ):
        ask(pages, label, text)
    assert pages.page.crown.form == RIGHT
    assert pages.page.crown.word.startswith("Kv ")
    assert pages.page.crown.word.endswith("7 pole pairs")


def test_what_the_bench_lacks_is_asked_for(pages: Reader) -> None:
    pages.open("numbers.bench_motor")
    pages.act(pages.page.crown.act)
    assert pages.world.asking.key.startswith("ask.")


# Units


def numbers(pages: Reader) -> set[str]:
    """Return the numbers in the rows."""
    return {block.number for block in pages.blocks() if isinstance(block, FigureRow)}


def test_units_are_read_as_they_are_typed(pages: Reader) -> None:
    pages.open("numbers.units")
    pages.tap("Torque")
    pages.rub(len(pages.typed))
    pages.type("1.5 Nm")
    # NIST SP 811, appendix B.8: 1 lbf in = 0.1129848 N m, 1 lbf ft = 1.355818 N m, 1 kgf m = 9.80665 N m.
    assert {"13.2761", "1.10634", "15.2957"} <= numbers(pages)
    pages.tap("Done")
    assert pages.page.crown.label == "Torque"
    pages.tap("Wire gauge")
    pages.rub(len(pages.typed))
    pages.type("12")
    assert (pages["area"].number, pages["area"].unit) == ("3.31", "mm²")
    pages.restart()
    assert pages.page.crown.label == "Wire gauge"


def test_a_wrong_unit_is_named_and_stays_typed(pages: Reader) -> None:
    pages.open("numbers.units")
    pages.tap("Length")
    pages.rub(len(pages.typed))
    pages.type("3 furlong")
    assert "unit is not known" in pages.page.foot.entry.sentence
    pages.tap("Done")
    assert pages["ask.unit_length"].bad
    pages.tap("Length")
    assert pages.typed == "3 furlong"


def test_a_row_that_turns_and_asks_is_found_by_tab(pages: Reader) -> None:
    pages.open("numbers.units")
    assert asks(pages["ask.unit_force"].act) == "ask.unit_force"
    assert asks(Ask("load.drag_area")) == "load.drag_area"
    assert asks(None) == ""


# Care


def test_storage_begins_with_the_charge_and_leads_to_the_signs(pages: Reader) -> None:
    pages.open("numbers.care")
    # Battery University BU-702: about 40 % charge, 15 degrees C.
    assert f"40{GAP}%" in pages.page.crown.text
    pages.tap("Pack hot or swollen?")
    assert pages.name == "ride.pack_signs"
