"""The app on a phone that is played: what it asks of the phone, and what stands on the screen when that fails."""

from collections.abc import Callable, Iterator
from pathlib import Path
from time import monotonic, sleep

import pytest

from logic.exchange.board_file import board_text
from screens.acts.keeping import Settle
from screens.phone import documents, incline, light, notices, printing, share, speech
from screens.phone.microphone import NONE_HERE, NOT_ALLOWED
from tests.phone.android import Phone
from tests.phone.classes import CameraManager, Intent, PrintManager, TextToSpeech, Uri, android
from tests.screens.session import Session


@pytest.fixture
def phone(tmp_path: Path) -> Iterator[Phone]:
    """Give an Android 14 phone that has everything."""
    with android(tmp_path / "phone").here() as one:
        one.folder.mkdir()
        yield one
        light.switch(on=False)


@pytest.fixture
def app(phone: Phone, begin: Callable[..., Session]) -> Session:
    """Give the app on that phone."""
    return begin(demo=True)


def wait(app: Session, text: str) -> None:
    """Draw frames until something is said: what a thread does comes when it comes."""
    end = monotonic() + 5.0
    while not app.shows(text):
        assert monotonic() < end, f"never said: {text}"
        sleep(0.01)
        app.frame(seconds=0.2)


def choose(phone: Phone, number: int, uri: Uri | None) -> None:
    intent = Intent("")
    intent.extras["data"] = uri
    phone.results[-1](number, -1 if uri is not None else 0, intent)


def usable(app: Session) -> None:
    """Go to another place by a touch."""
    app.front.place("numbers")
    app.settle()
    app.tap("Bench")
    assert app.page.title == "Bench"


def test_a_board_of_another_phone_comes_in_by_the_page_of_the_system(app, phone, tmp_path):
    board = app.front.world.saved
    far = tmp_path / "far.json"
    far.write_text(board_text(board, at=app.time), "utf-8")
    app.front.go("settings.files")
    app.tap("Choose a file")
    choose(phone, documents.OPEN, Uri("content://x/document/far.json", far))
    wait(app, "What it would change")
    usable(app)


def test_a_file_goes_where_the_person_chose(app, phone, tmp_path):
    far = tmp_path / "far.json"
    far.write_bytes(b"")
    app.front.go("settings.files")
    app.tap("Towpath 36, with its log")
    assert app.shows("Saved as")
    choose(phone, documents.CREATE, Uri("content://x/1", far))
    wait(app, documents.WRITTEN)
    assert b"Towpath 36" in far.read_bytes()


def test_the_sheet_with_pictures_goes_to_another_app(app, phone):
    app.front.go("log.export")
    app.tap("Send it with pictures")
    assert app.shows(share.SHARED)
    (page,) = (phone.folder / "shared").iterdir()
    assert page.suffix == ".html"


@pytest.mark.parametrize(
    ("fails", "page", "tap", "said"),
    [
        ("Activity.startActivityForResult", "settings.files", "Choose a file", documents.NOT_OPENED),
        ("Activity.startActivityForResult", "settings.files", "Copy of everything", "Saved as"),
        ("Activity.startActivity", "log.export", "Send it with pictures", "Saved as"),
        ("AudioRecord.read", "bench.sound", "Record a pluck", NONE_HERE),
        ("request_permissions", "bench.sound", "Record a pluck", NOT_ALLOWED),
        ("CameraManager.setTorchMode", "ride.run", "Light", light.NO_LIGHT),
        ("TextToSpeech.speak", "ride.run", "Say it", speech.NO_VOICE),
        ("WebView.begin", "log.export", "Print, or save as PDF", printing.NOT_HERE),
        ("PrintManager.print", "log.export", "Print, or save as PDF", printing.NOT_HERE),
        ("TextToSpeech.begin", "ride.run", "Say it", speech.NO_VOICE),
        ("", "numbers.hold", "Measure this hill", incline.NOT_HERE),
    ],
)
def test_what_fails_leaves_a_true_sentence_and_a_page_that_goes_on(app, phone, fails, page, tap, said):  # noqa: PLR0913
    phone.fails.add(fails)
    args = {"ride.run": {"list": "before_ride"}, "bench.sound": {"side": "left"}}.get(page, {})
    app.front.go(page, **args)
    app.frame(3, seconds=0.2)
    app.tap(tap)
    wait(app, said)
    usable(app)


def test_the_light_of_a_run_is_switched_on_and_off_and_goes_with_the_app(app, phone):
    app.front.go("ride.run", list="before_ride")
    app.frame(3, seconds=0.2)
    app.tap("Light")
    assert CameraManager.lit == {"0": True}
    app.tap("Light")
    assert CameraManager.lit == {"0": False}
    app.tap("Light")
    app.stop()
    assert CameraManager.lit == {"0": False}
    Session.__init__(app, app.folder)


def test_a_run_says_its_items_and_the_voice_goes_with_the_app(app, phone):
    app.front.go("ride.run", list="before_ride")
    app.frame(3, seconds=0.2)
    app.tap("Say it")
    app.frame(3)
    (engine,) = TextToSpeech.made
    assert engine.said
    app.restart(minutes=1)
    assert not engine.open


def test_a_page_goes_to_another_app_as_a_picture(app, phone, monkeypatch):
    """Without graphics here: that the picture is the page is proved by `tests/phone/test_lost.py`."""
    monkeypatch.setattr(
        type(app.front.paper), "export_to_png", lambda _, path: Path(path).write_bytes(b"png")
    )
    app.front.go("numbers.gearing")
    app.tap("Share as a picture")
    wait(app, share.SHARED)
    (page,) = (phone.folder / "shared").iterdir()
    assert page.suffix == ".png"


def test_a_page_goes_to_another_app_with_its_drawings(app, phone):
    app.front.go("numbers.gearing")
    app.tap("Share with its drawings")
    wait(app, share.SHARED)
    (page,) = (phone.folder / "shared").iterdir()
    text = page.read_text("utf-8")
    assert page.suffix == ".html"
    assert "<svg" in text
    assert "39.9" in text


def test_the_sheet_goes_to_the_page_for_printing(app, phone):
    app.front.go("log.export")
    app.tap("Print, or save as PDF")
    wait(app, printing.OPEN)
    ((name, content),) = PrintManager.jobs
    assert name == "Build sheet: Towpath 36"
    assert "The drive, to scale" in content.page
    usable(app)


def test_on_a_desktop_the_sheet_becomes_a_pdf(begin, tmp_path):
    app = begin(demo=True)
    app.front.go("log.export")
    app.tap("Print, or save as PDF")
    assert app.shows("Saved as towpath-36-")
    (page,) = (tmp_path / "data" / "copies").glob("*.pdf")
    assert page.read_bytes().startswith(b"%PDF-")


@pytest.mark.parametrize("page", ["settings.files", "ride", "numbers.gearing"])
def test_a_board_dropped_on_the_window_of_a_desktop_is_looked_into(begin, tmp_path, page):
    app = begin(demo=True)
    far = tmp_path / "far é.json"
    far.write_text(board_text(app.front.world.saved, at=app.time), "utf-8")
    app.front.go(page)
    app.frame(2)
    app.window.dispatch("on_drop_file", str(far).encode(), 0, 0)
    app.frame(2)
    assert app.shows("What it would change")
    usable(app)


def test_a_file_that_is_chosen_on_a_desktop_is_looked_into(begin, tmp_path, monkeypatch):
    app = begin(demo=True)
    far = tmp_path / "far.json"
    far.write_text(board_text(app.front.world.saved, at=app.time), "utf-8")
    monkeypatch.setattr("screens.phone.dialogs.ask", lambda _, answered: answered(far, False) or True)  # noqa: FBT003
    app.front.go("settings.files")
    app.tap("Choose a file")
    assert app.shows("What it would change")


def test_where_a_desktop_has_no_dialog_the_ways_by_path_and_by_dropping_are_said(begin):
    app = begin(demo=True)
    app.front.go("settings.files")
    app.tap("Choose a file")
    assert app.shows(documents.BY_PATH)


def test_a_page_that_cannot_be_drawn_into_a_file_says_so(app, monkeypatch):
    monkeypatch.setattr(type(app.front.paper), "export_to_png", lambda *_: None)
    app.front.go("numbers.gearing")
    app.tap("Share as a picture")
    wait(app, "No file could be made here.")
    usable(app)


@pytest.mark.parametrize("answer", [[], [False]])
def test_notes_that_are_not_allowed_are_switched_off_again(app, phone, answer):
    phone.leave = answer
    app.front.go("settings", fold="phone")
    app.front.perform(Settle({"remind": True}))
    app.frame(2)
    assert phone.asked == [notices.POST]
    assert not app.front.world.person.remind
    assert app.shows(notices.NOT_ALLOWED)


def test_notes_that_are_allowed_stay_on(app, phone):
    app.front.perform(Settle({"remind": True}))
    app.frame(2)
    assert app.front.world.person.remind
