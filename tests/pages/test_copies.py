"""The build sheet as text and with pictures, the log as a table: written whole, or one sentence why not."""

import sys
from dataclasses import replace
from pathlib import Path

import pypdfium2
import pytest

from logic.log import Ride, Tension
from logic.store.errors import Full, NotSaved
from screens.acts.boards import Copy
from screens.acts.keeping import Record
from screens.acts.outside import PrintOut, Share
from tests.pages.reader import Reader


@pytest.fixture
def used(pages: Reader) -> Reader:
    """Give a board that was measured and ridden."""
    for side, pull in (("left", 108.0), ("right", 99.0)):
        pages.act(
            Record(Tension(belt=side, method="scale", tension=pull, error=11.0, floor=75.6, ceiling=118.8))
        )
    pages.act(Record(Ride(distance=8400.0)))
    return pages.open("log.export")


def written(pages: Reader) -> dict[str, Path]:
    return {path.suffix: path for path in (pages.folder / "copies").iterdir()}


def test_the_build_sheet_is_written_as_text_and_with_pictures_and_the_log_as_a_table(used: Reader) -> None:
    for title in ("Build sheet with pictures", "Build sheet as text", "Log as a table"):
        used.tap(title)
        assert used["said"].text.startswith("Saved as towpath-36-")
        assert used["said"].text.endswith(" in the folder copies.")
    files = written(used)
    assert len(files) == 3
    page, text, table = (files[end].read_text(encoding="utf-8") for end in (".html", ".txt", ".csv"))
    assert page.count("<svg") == 3
    assert "The drive, to scale" in page
    assert "<script" not in page
    assert "Belt tension to set: 108\u00a0N (Worked out)" in text
    assert "A record, not a promise." in text
    assert len(table.splitlines()) == 4


def test_the_sheet_is_handed_on_and_can_be_read_here(used: Reader) -> None:
    used.tap("Share the build sheet")
    (shared,) = used.out
    assert isinstance(shared, Share)
    assert shared.title == "Build sheet: Towpath 36"
    assert "Tension, left belt" in shared.text
    assert not used.shows("Worked out")
    used.tap("Read the sheet here")
    assert used.shows("Worked out")
    assert used.shows("Tension, right belt")


def test_two_boards_of_one_name_do_not_write_over_each_other(used: Reader) -> None:
    used.tap("Log as a table")
    board = used.world.saved
    used.store.put("board", next(one.id for one in used.world.boards() if one.id != board.id))
    used.restart()
    used.world = replace(used.world, saved=replace(used.world.saved, name=board.name))
    used.open("log.export")
    used.tap("Log as a table")
    assert len(list((used.folder / "copies").iterdir())) == 2


@pytest.mark.parametrize(
    ("problem", "said"), [(Full, "The storage is full."), (NotSaved, "The storage does not answer.")]
)
def test_what_cannot_be_written_is_told_and_the_older_copy_stays(
    used: Reader, monkeypatch: pytest.MonkeyPatch, problem: type[Exception], said: str
) -> None:
    used.tap("Build sheet as text")
    before = written(used)[".txt"].read_text(encoding="utf-8")

    def refused(path: Path, _text: str) -> None:
        raise problem(str(path))

    monkeypatch.setattr("screens.update.copies.write_whole", refused)
    used.tap("Build sheet as text")
    assert used["said"].text.startswith(said)
    assert written(used)[".txt"].read_text(encoding="utf-8") == before


def test_a_file_where_the_folder_should_be_is_told(used: Reader) -> None:
    (used.folder / "copies").write_text("not a folder", encoding="utf-8")
    used.tap("Log as a table")
    assert used["said"].text.startswith("The folder of the data may not be written to.")


def test_a_desktop_writes_the_sheet_as_a_pdf_with_its_text_and_drawings(used: Reader) -> None:
    """Read back and drawn by another library than the one that wrote it."""
    used.act(Copy("sheet pdf"))
    assert used["said"].text.startswith("Saved as towpath-36-")
    with pypdfium2.PdfDocument(written(used)[".pdf"]) as document:
        assert document.get_metadata_value("Title") == "Build sheet: Towpath 36 (example)"
        pages = [page.get_textpage().get_text_bounded() for page in document]
        inks = [page.render(scale=0.5).to_pil().convert("L") for page in document]
    text = " ".join("".join(pages).split())
    assert "The drive, to scale" in text
    # The signs that a plain font of the format lacks.
    assert "45 mΩ" in text
    assert "108 N" in text
    assert "A record, not a promise." in text
    # A drawing leaves ink where no line of text is: the middle of the first page's upper half holds the drive.
    wide, tall = inks[0].size
    box = inks[0].crop((wide // 4, tall // 6, wide * 3 // 4, tall * 2 // 5))
    assert sum(box.histogram()[:128]) > 200
    # No page is left nearly empty but the last.
    for ink in inks[:-1]:
        assert ink.crop((0, tall * 2 // 3, wide, tall * 9 // 10)).getextrema()[0] < 128


def test_the_same_sheet_gives_the_same_pdf(used: Reader) -> None:
    used.act(Copy("sheet pdf"))
    first = written(used)[".pdf"].read_bytes()
    used.act(Copy("sheet pdf"))
    assert written(used)[".pdf"].read_bytes() == first


def test_where_no_pdf_can_be_made_it_is_said(used: Reader, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "screens.sheet.pdf", None)
    used.act(Copy("sheet pdf"))
    assert used["said"].text.startswith("No PDF can be made here.")


def test_printing_is_left_to_the_phone_with_the_whole_sheet(used: Reader) -> None:
    used.tap("Print, or save as PDF")
    (wanted,) = used.out
    assert isinstance(wanted, PrintOut)
    assert wanted.title == "Build sheet: Towpath 36"
    assert wanted.html.count("<svg") == 3
