"""Wire, fuse and first power: the verdict on the fuse, gauges by step, the saved board alone."""

import pytest

from logic.board import Value
from logic.tables import rows
from logic.units import GAP
from screens.acts import Go
from screens.acts.entering import Ask, Put
from screens.bench.power import HOLD
from screens.blocks import PLAIN, RIGHT, WRONG, FigureRow, Notice
from tests.pages.reader import Reader


@pytest.fixture
def wires(pages: Reader) -> Reader:
    """Give the page of wire and fuse."""
    return pages.open("numbers.wiring")


def put(pages: Reader, **values: float) -> None:
    """Try values: lead in mm2, battery limit and fuse in A."""
    keys = {"lead": "pack.lead_area", "amps": "controller.battery_current", "fuse": "pack.fuse"}
    for name, value in values.items():
        pages.act(Put(keys[name], Value(value * 1e-6 if name == "lead" else value)))


def test_a_thin_lead_has_no_fuse(wires: Reader) -> None:
    # Ours: the ride asks 30 A; 3.31 mm2 carries 12.5 A in a closed deck.
    crown = wires.page.crown
    assert (crown.word, crown.form) == ("No fuse fits this wire", WRONG)
    assert crown.text.endswith("AWG 8 stays cool in a closed deck.")
    assert wires["fuse"].number == "–"
    assert [one.word for one in wires.blocks() if isinstance(one, Notice)] == ["warning"]


@pytest.mark.parametrize(
    ("fuse", "word", "form"), [(15.0, "Fuse 15{}A: right", RIGHT), (5.0, "Fuse 5{}A: no", WRONG)]
)
def test_the_verdict_is_on_the_fuse_that_is_in_it(wires: Reader, fuse: float, word: str, form: str) -> None:
    put(wires, lead=8.37, amps=12.0, fuse=fuse)
    crown = wires.page.crown
    assert crown.word.startswith(word.format(GAP))
    assert crown.form == form
    # Ours: 25 % at 12 A and 8 A for the rest are 9.17 A, three quarters of 12.2 A.
    assert wires["fuse"].number.startswith("over 12.2, to ")
    assert "It protects the wire against a short" in wires["fuse words"].text


def test_a_step_of_the_gauge_is_the_next_printed_wire(wires: Reader) -> None:
    sizes = {str(row.cells["gauge"]): float(row.cells["area"]) for row in rows("wire_ampacity")}
    assert wires["gauge of lead"].value == "12"
    wires.tap("Gauge of the lead, AWG, one less")
    # A smaller number is a thicker wire.
    thicker = wires["gauge of lead"].value
    assert int(thicker) < 12
    assert wires.world.trial["pack.lead_area"].si == pytest.approx(sizes[thicker])
    assert wires["gauge of lead"].trial
    wires.tap("Gauge of the lead, AWG, one more")
    assert wires["gauge of lead"].value == "12"


def test_without_a_lead_the_ride_is_told_and_the_lead_asked_for(bare: Reader) -> None:
    bare.open("numbers.wiring")
    assert (bare.page.crown.word, bare.page.crown.form) == ("Tap to fill in", PLAIN)
    put(bare, amps=30.0)
    # Ours: 25 % at 30 A and 8 A for the rest: sqrt(0.25 * 900 + 0.75 * 64) = 16.5 A.
    assert bare.page.crown.word == f"Rides at 16.5{GAP}A"
    assert isinstance(bare.page.crown.act, Ask)


def test_first_power_is_about_the_saved_board(pages: Reader) -> None:
    pages.open("bench.power")
    # Ours: five times 10 ohm x 2000 uF; ten cells of 3.0 to 4.2 V.
    assert pages[HOLD].number == "0.1"
    assert pages.page.crown.word == f"Resistor first, 2{GAP}s"
    assert pages.page.crown.text.startswith(f"Plus on plus, 30{GAP}V to 42{GAP}V on the meter.")
    assert "trial" not in pages
    pages.act(Put("pack.series", Value(12.0)))
    assert pages["trial"].text == "A trial is open: this page uses the saved board."
    assert pages.page.crown.text.startswith(f"Plus on plus, 30{GAP}V to 42{GAP}V on the meter.")
    assert (pages["pack.series"].value, pages["pack.series"].trial) == ("10", False)
    assert pages["pack.series"].act == Go("board.value", {"key": "pack.series"})
    assert pages["ask.precharge"].act == Ask("ask.precharge")
    assert pages.page.foot.main is None


def test_a_slow_resistor_is_held_on_longer_than_by_hand(pages: Reader) -> None:
    pages.act(Put("ask.precharge", Value(1000.0), "question"))
    # Ours: five times 1000 ohm x 2000 uF.
    assert pages.open("bench.power").page.crown.word == f"Resistor first, 10{GAP}s"


def test_first_power_asks_for_what_it_lacks_on_the_boards_page(bare: Reader) -> None:
    bare.open("bench.power")
    lacking = [one for one in bare.blocks() if isinstance(one, FigureRow) and one.number == "–"]
    assert lacking
    for one in lacking:
        assert isinstance(one.act, Go), one.label
        assert one.act.page == "board.value"


def test_a_pack_out_of_use_stops_first_power(pages: Reader) -> None:
    pages.store.put(f"pack_out/{pages.world.saved.id}", {"sign": "swollen", "at": pages.time.isoformat()})
    pages.open("bench.power")
    assert (pages.page.crown.word, pages.page.crown.form) == ("DANGER: do not connect", WRONG)
    assert not [one for one in pages.blocks() if isinstance(one, FigureRow)]
