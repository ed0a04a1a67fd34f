"""What pages leave to the phone, and what becomes of its answers, in plain Python."""

from math import cos as cosine
from math import radians, sin, tan

import pytest

from logic.answers.incline import grade_of
from screens.acts.keeping import Settle
from screens.acts.outside import AllowNotes, PickFile, PutFile, SendFile, Shine, Tilt, Tilted
from screens.blocks import Line
from screens.paper.furniture import Header
from screens.paper.measure import measure
from screens.paper.scale import Look
from screens.told.tools import with_tools
from tests.pages.reader import Reader
from tests.pages.test_layout import faults


@pytest.mark.parametrize("slope", [0.0, 2.0, 5.7, 12.0, -8.0])
@pytest.mark.parametrize("lean", [0.0, 6.0, -15.0])
def test_a_grade_is_that_of_the_long_edge_however_the_phone_leans_across(slope: float, lean: float) -> None:
    """Plane trigonometry: gravity turned by the slope along the road, then by the lean across it."""
    along = 9.81 * sin(radians(slope))
    level = 9.81 * cosine(radians(slope))
    felt = (level * sin(radians(lean)), along, level * cosine(radians(lean)))
    assert grade_of(felt) == pytest.approx(abs(tan(radians(slope))), rel=1e-12, abs=1e-12)


def test_a_hill_is_measured_by_the_phone_on_the_deck(pages: Reader) -> None:
    pages.open("numbers.hold").tap("Measure this hill")
    assert pages.out[-1] == Tilt("ask.hold_grade")
    assert pages["tilt"].detail == "Hold still."
    # Ours: 1.2 over the rest of 9.81 is 0.123, a hill of 12.3 %.
    pages.act(Tilted("ask.hold_grade", (0.3, 1.2, 9.731)))
    assert pages.world.answers["ask.hold_grade"].si == 0.123
    assert "12.3" in pages["tilt"].detail


def test_a_phone_on_its_edge_is_no_hill(pages: Reader) -> None:
    pages.open("numbers.hold")
    for gravity in ((0.0, 9.81, 0.0), (0.0, 0.0, 0.0), (0.0, 9.0, 3.9)):
        pages.act(Tilted("ask.hold_grade", gravity))
        assert "ask.hold_grade" not in pages.world.answers
        assert "0" in pages["tilt"].detail
    pages.act(Tilted("ask.hold_grade", None, "This phone cannot tell how it lies. Type the grade."))
    assert pages["tilt"].detail == "This phone cannot tell how it lies. Type the grade."


def test_leave_for_notes_is_asked_for_once_they_are_wanted(pages: Reader) -> None:
    pages.act(Settle({"text": 1.3}))
    assert pages.out == []
    pages.act(Settle({"remind": True}))
    assert pages.out == [AllowNotes()]
    pages.act(Settle({"text": 1.0}))
    pages.act(Settle({"remind": False}))
    assert pages.out == [AllowNotes()]


def test_what_is_written_is_handed_to_the_phone(pages: Reader) -> None:
    pages.open("log.export")
    pages.tap("Build sheet with pictures")
    pages.tap("Send it with pictures")
    put, sent = pages.out
    assert isinstance(put, PutFile)
    assert isinstance(sent, SendFile)
    assert (sent.path, sent.title) == (put.path, "Towpath 36")
    pages.open("settings.files").tap("Choose a file")
    assert pages.out[-1] == PickFile()


def test_a_run_has_the_light_where_the_phone_has_one_and_its_header_has_room(pages: Reader) -> None:
    pages.open("ride.run", list="before_ride")
    tools = with_tools(pages.page, hears=True, shines=True).tools
    assert Shine() in [one.act for one in tools]
    assert Shine() not in [one.act for one in with_tools(pages.page, hears=True).tools]
    for width in (320, 412):
        for scale in (1.0, 2.0):
            header = Header(key="header", title=pages.page.title, tools=tools, back=True)
            assert list(faults(measure(header, width, Look(scale).framed()))) == []
    pages.open("numbers.hold")
    assert Shine() not in [one.act for one in with_tools(pages.page, hears=True, shines=True).tools]
    assert isinstance(pages["tilt"], Line)
