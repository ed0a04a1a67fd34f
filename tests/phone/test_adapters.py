"""Each part of the phone: there, missing, refused, failing. Nothing is raised, and what is said is true."""

import pytest
from kivy.clock import Clock
from kivy.metrics import Metrics

from screens.environment import phone_metrics
from screens.phone import (
    bars,
    documents,
    haptics,
    incline,
    light,
    notices,
    permission,
    printing,
    share,
    speech,
)
from screens.phone.bars import Covered, Sides
from screens.phone.configuration import text_scale
from screens.phone.microphone import NONE_HERE, NOT_ALLOWED, Microphone
from tests.phone.classes import CameraManager, PrintManager, TextToSpeech, Uri, View, WebView, WindowInsets


def run_down() -> None:
    for _ in range(3):
        Clock.tick()


# The voice


def test_the_voice_says_the_newest_text_once_it_is_there(phone):
    TextToSpeech.status = None
    told = []
    speech.say("First item", told.append)
    speech.say("Second item", told.append)
    assert [len(TextToSpeech.made), told] == [1, []]
    (engine,) = TextToSpeech.made
    engine.listener.onInit(0)
    run_down()
    assert engine.said == [("Second item", speech.FLUSH)]
    assert told == [""]


def test_a_long_text_is_said_in_parts_that_the_voice_takes(phone):
    told = []
    speech.say("word " * 1000, told.append)
    run_down()
    (engine,) = TextToSpeech.made
    assert [mode for _, mode in engine.said] == [speech.FLUSH, speech.ADD]
    assert " ".join(part for part, _ in engine.said).split() == ["word"] * 1000
    assert all(len(part) <= 4000 for part, _ in engine.said)


@pytest.mark.parametrize("status", [-1, -2])
def test_without_an_engine_it_is_said_once_and_the_next_word_looks_anew(phone, status):
    TextToSpeech.status = status
    told = []
    speech.say("One", told.append)
    run_down()
    assert told == [speech.NO_VOICE]
    assert not TextToSpeech.made[0].open
    TextToSpeech.status = 0
    speech.say("Two", told.append)
    run_down()
    assert told == [speech.NO_VOICE, ""]


def test_a_voice_without_english_says_so(phone):
    TextToSpeech.language = -2
    told = []
    speech.say("One", told.append)
    run_down()
    assert told == [speech.NO_ENGLISH]


@pytest.mark.parametrize("call", ["begin", "setLanguage", "speak"])
def test_a_voice_that_java_refuses_says_so(phone, call):
    phone.fails.add(f"TextToSpeech.{call}")
    told = []
    speech.say("One", told.append)
    run_down()
    assert told == [speech.NO_VOICE]


def test_the_voice_is_shut_when_the_app_ends(phone):
    speech.say("One", lambda _: None)
    run_down()
    speech.close()
    assert not TextToSpeech.made[0].open


def test_a_desktop_without_a_voice_says_so_and_nobody_waits_for_it(monkeypatch, until):
    def none(_name):
        raise ImportError

    monkeypatch.setattr("screens.phone.speech.service", none)
    told = []
    speech.say("One", told.append)
    until(lambda: told)
    speech.close()
    assert told == [speech.NO_VOICE]


# Leave


@pytest.mark.parametrize(
    ("answer", "leave"), [([True], True), ([False], False), ([], False), ([True, False], False)]
)
def test_only_a_plain_yes_is_leave(phone, answer, leave):
    phone.leave = answer
    told = []
    permission.ask("android.permission.RECORD_AUDIO", told.append)
    run_down()
    assert told == [leave]


def test_leave_that_cannot_be_asked_for_is_none(phone):
    phone.fails.add("request_permissions")
    told = []
    permission.ask("android.permission.RECORD_AUDIO", told.append)
    run_down()
    assert told == [False]


# The microphone


def record(until):
    told = []
    microphone = Microphone()
    microphone.record(lambda found, sentence: told.append((found, sentence)), 0.2)
    until(lambda: told)
    assert not microphone.busy
    return told[0]


def test_the_microphone_records(phone, until):
    found, sentence = record(until)
    assert sentence == ""
    assert len(found.samples) == round(0.2 * 44100)
    assert phone.called("detach") == [()]


@pytest.mark.parametrize("answer", [[], [False]])
def test_a_microphone_that_is_not_allowed_says_so(phone, until, answer):
    phone.leave = answer
    assert record(until) == (None, NOT_ALLOWED)


@pytest.mark.parametrize("call", ["getMinBufferSize", "begin", "getState", "startRecording", "read", "stop"])
def test_a_microphone_that_java_refuses_says_so_and_can_be_asked_again(phone, until, call):
    """Java's exceptions are none of Python's own: the thread died of them, and the page said Listening for good."""
    phone.fails.add(f"AudioRecord.{call}")
    assert record(until) == (None, NONE_HERE)
    phone.fails.clear()
    assert record(until)[1] == ""


# Light, incline, touch


def test_the_light_is_that_of_the_camera_that_has_one(phone):
    assert light.switch(on=True) == ""
    assert CameraManager.lit == {"0": True}
    assert light.is_on()
    assert light.switch(on=False) == ""
    assert CameraManager.lit == {"0": False}
    assert not light.is_on()


@pytest.mark.parametrize(
    "call", ["Activity.getSystemService", "CameraManager.getCameraIdList", "CameraManager.setTorchMode"]
)
def test_a_light_that_fails_says_so(phone, call):
    phone.fails.add(call)
    assert light.switch(on=True) == light.NO_LIGHT
    assert not light.is_on()


def test_a_desktop_has_no_light():
    assert light.switch(on=True) == light.NO_LIGHT


class Sensor:
    def __init__(self, *values):
        self.values, self.on = list(values), False

    def enable(self):
        self.on = True

    def disable(self):
        self.on = False

    @property
    def gravity(self):
        return self.values.pop(0) if len(self.values) > 1 else self.values[0]


def felt(monkeypatch, until, sensor):
    monkeypatch.setattr("screens.phone.incline.service", lambda _: sensor)
    monkeypatch.setattr("screens.phone.incline.SECONDS", 0.3)
    told = []
    incline.feel(lambda gravity, sentence: told.append((gravity, sentence)))
    until(lambda: told)
    return told[0]


def test_how_the_phone_lies_is_the_mean_of_what_is_felt(monkeypatch, until):
    sensor = Sensor((None, None, None), (0.0, 1.0, 9.7), (0.0, 1.2, 9.7))
    gravity, sentence = felt(monkeypatch, until, sensor)
    assert (gravity, sentence) == (pytest.approx((0.0, 1.1, 9.7)), "")
    assert not sensor.on


def test_a_sensor_that_gives_nothing_says_so(monkeypatch, until):
    assert felt(monkeypatch, until, Sensor((None, None, None))) == (None, incline.NOT_HERE)


def test_where_there_is_no_sensor_it_is_said_at_once():
    told = []
    incline.feel(lambda gravity, sentence: told.append((gravity, sentence)))
    assert told == [(None, incline.NOT_HERE)]


def test_where_there_is_no_motor_nothing_ticks(monkeypatch):
    asked = []

    class Motor:
        def exists(self):
            asked.append("exists")
            return False

    monkeypatch.setattr(haptics, "feels", {"on": True, "motor": True})
    monkeypatch.setattr("screens.phone.haptics.service", lambda _: Motor())
    haptics.tick()
    haptics.tick()
    assert asked == ["exists"], "a motor that is missing is not looked for at each key"


# Notes


@pytest.mark.parametrize("level", [24, 26, 33, 36])
def test_a_note_is_shown_with_a_way_back_that_nobody_can_change(tmp_path, level):
    from tests.phone.classes import android  # noqa: PLC0415

    with android(tmp_path, level).here() as phone:
        phone.has_leave = True
        assert notices.notice("Due on Towpath 36", "Check after water")
        (flags,) = [given[3] for given in phone.called("PendingIntent.getActivity")]
        assert flags & notices.IMMUTABLE
        assert len(phone.called("NotificationManager.createNotificationChannel")) == (1 if level >= 26 else 0)
        assert len(phone.called("NotificationManager.notify")) == 1


def test_a_note_that_is_not_allowed_is_none(phone):
    assert not notices.notice("Due", "Something")
    assert phone.called("NotificationManager.notify") == []


@pytest.mark.parametrize("call", ["PendingIntent.getActivity", "NotificationManager.notify"])
def test_a_note_that_java_refuses_is_none(phone, call):
    phone.has_leave = True
    phone.fails.add(call)
    assert not notices.notice("Due", "Something")


@pytest.mark.parametrize(("level", "asked"), [(32, []), (33, [notices.POST])])
def test_leave_for_notes_is_asked_for_where_android_wants_it(tmp_path, level, asked):
    from tests.phone.classes import android  # noqa: PLC0415

    with android(tmp_path, level).here() as phone:
        told = []
        notices.allow(told.append)
        run_down()
        assert (told, phone.asked) == ([True], asked)


# Handing on


def test_a_text_goes_to_the_sheet_of_the_phone(phone):
    assert share.share("The left belt is slack.", "Left belt") == share.SHARED
    (chooser,) = phone.classes["org.kivy.android.PythonActivity"].mActivity.started
    assert chooser.inner.action == "android.intent.action.SEND"
    assert chooser.inner.kind == "text/plain"
    assert chooser.inner.extras == {"android.intent.extra.TEXT": "The left belt is slack."}


def test_a_file_goes_by_the_provider_of_the_app_with_leave_to_read(phone, tmp_path):
    page = tmp_path / "copies" / "build-sheet.html"
    page.parent.mkdir()
    page.write_text("<h1>Towpath 36</h1>", "utf-8")
    assert share.share_file(page, "Build sheet") == share.SHARED
    (chooser,) = phone.classes["org.kivy.android.PythonActivity"].mActivity.started
    sent = chooser.inner
    uri = sent.extras["android.intent.extra.STREAM"]
    assert uri.text == "content://org.deckhand.deckhand.files/build-sheet.html"
    assert (sent.kind, sent.flags, sent.clip.uri) == ("text/html", share.READ, uri)
    assert (tmp_path / "shared" / "build-sheet.html").read_text("utf-8") == "<h1>Towpath 36</h1>"


@pytest.mark.parametrize("call", ["Intent.begin", "Intent.putExtra", "Activity.startActivity"])
def test_what_the_sheet_does_not_take_is_copied_or_stays(phone, tmp_path, monkeypatch, call):
    copied = []
    monkeypatch.setattr("screens.phone.share._copy", lambda text, _title: copied.append(text))
    phone.fails.add(call)
    assert share.share("Text", "Title") == share.COPIED
    assert copied == ["Text"]
    page = tmp_path / "sheet.html"
    page.write_text("x", "utf-8")
    assert share.share_file(page, "Sheet") == f"Saved as sheet.html in the folder {tmp_path.name}."


# Printing


def printed(until):
    told = []
    printing.hand("<h1>Towpath 36</h1>", "Build sheet", told.append)
    until(lambda: told)
    run_down()
    (sentence,) = told
    return sentence


def test_a_page_is_printed_once_the_view_has_read_it(phone, until):
    assert printed(until) == printing.OPEN
    ((name, content),) = PrintManager.jobs
    assert (name, content.page) == ("Build sheet", "<h1>Towpath 36</h1>")
    # No script, no network: neither is switched on.
    assert phone.called("WebView.getSettings") == []


@pytest.mark.parametrize(
    "call",
    [
        "WebView.begin",
        "WebView.loadDataWithBaseURL",
        "WebView.getProgress",
        "WebView.createPrintDocumentAdapter",
        "Activity.getSystemService",
        "PrintManager.print",
    ],
)
def test_a_phone_that_refuses_to_print_says_so_once(phone, until, call):
    phone.fails.add(call)
    assert printed(until) == printing.NOT_HERE


def test_a_phone_without_a_printing_service_or_a_view_says_so(phone, until):
    phone.lacks.add("print")
    assert printed(until) == printing.NOT_HERE
    phone.lacks = {"android.webkit.WebView"}
    assert printed(until) == printing.NOT_HERE


def test_a_page_that_is_never_read_is_given_up(phone, until, monkeypatch):
    monkeypatch.setattr("screens.phone.printing.LONGEST", 0.3)
    WebView.stuck = True
    assert printed(until) == printing.NOT_HERE
    assert PrintManager.jobs == []


# Files


def chosen(phone, until, uri, result=-1):
    """Let the person choose a file, or none."""
    told = []
    files = documents.Documents(phone.folder)
    files.open(lambda path, sentence: told.append((path, sentence)))
    answer(phone, documents.OPEN, uri, result)
    until(lambda: told)
    return told[0]


def answer(phone, number, uri, result=-1):
    from tests.phone.classes import Intent  # noqa: PLC0415

    intent = Intent("")
    intent.extras["data"] = uri
    phone.results[-1](number, result, intent if uri is not None else None)


def test_a_file_that_was_chosen_is_read(phone, tmp_path, until):
    far = tmp_path / "board.json"
    far.write_bytes(b"{}")
    path, sentence = chosen(phone, until, Uri("content://elsewhere/document/primary:board.json", far))
    assert (path.name, path.read_bytes(), sentence) == ("file.json", b"{}", "")
    (intent,) = phone.classes["org.kivy.android.PythonActivity"].mActivity.started
    assert (intent.action, intent.category, intent.kind) == (
        "android.intent.action.OPEN_DOCUMENT",
        "android.intent.category.OPENABLE",
        "*/*",
    )


def test_who_chooses_none_is_told_nothing(phone, until):
    assert chosen(phone, until, None, 0) == (None, "")


def test_a_file_that_cannot_be_opened_says_so(phone, tmp_path, until):
    assert chosen(phone, until, Uri("content://x/1")) == (None, documents.NOT_OPENED)
    assert chosen(phone, until, Uri("content://x/1", tmp_path / "gone")) == (None, documents.NOT_OPENED)
    phone.fails.add("ContentResolver.openFileDescriptor")
    assert chosen(phone, until, Uri("content://x/1", tmp_path)) == (None, documents.NOT_OPENED)


def test_a_file_that_is_too_large_is_not_taken(phone, tmp_path, until, monkeypatch):
    monkeypatch.setattr("screens.phone.documents.LARGEST", 10)
    far = tmp_path / "far"
    far.write_bytes(b"12345678901")
    assert chosen(phone, until, Uri("content://x/1", far)) == (None, documents.TOO_LARGE)


def test_a_page_that_the_phone_does_not_open_says_so(phone, tmp_path):
    phone.fails.add("Activity.startActivityForResult")
    told = []
    files = documents.Documents(tmp_path)
    files.open(lambda path, sentence: told.append((path, sentence)))
    page = tmp_path / "copies" / "log.csv"
    files.save(page, told.append)
    assert told == [(None, documents.NOT_OPENED), "Saved as log.csv in the folder copies."]


def test_a_file_is_written_where_the_person_chose(phone, tmp_path, until):
    source, far = tmp_path / "log.csv", tmp_path / "far"
    source.write_bytes(b"a,b\n")
    far.write_bytes(b"something longer that was there before")
    told = []
    documents.Documents(tmp_path).save(source, told.append)
    answer(phone, documents.CREATE, Uri("content://x/1", far))
    until(lambda: told)
    assert (told, far.read_bytes()) == ([documents.WRITTEN], b"a,b\n")
    (intent,) = phone.classes["org.kivy.android.PythonActivity"].mActivity.started
    assert (intent.kind, intent.extras["android.intent.extra.TITLE"]) == ("text/csv", "log.csv")


def test_a_place_that_cannot_be_written_says_so(phone, tmp_path, until):
    source = tmp_path / "log.csv"
    source.write_bytes(b"a")
    told = []
    documents.Documents(tmp_path).save(source, told.append)
    answer(phone, documents.CREATE, Uri("content://x/1"))
    until(lambda: told)
    assert told == [documents.NOT_WRITTEN]


def test_on_a_desktop_a_path_is_typed_and_a_file_lies_in_its_folder(tmp_path):
    told = []
    files = documents.Documents(tmp_path)
    files.open(lambda path, sentence: told.append((path, sentence)))
    files.save(tmp_path / "copies" / "log.csv", told.append)
    assert told == [(None, documents.BY_PATH), "Saved as log.csv in the folder copies."]


# The bars of the system


def screen(phone):
    return phone.classes["org.kivy.android.PythonActivity"].mActivity


def test_under_the_bars_their_room_is_kept_free(phone):
    assert bars.covered() == Covered(Sides(0, 63, 0, 126), 0)


def test_where_android_keeps_the_window_off_the_bars_nothing_is_added(phone):
    """Android 14 and older: the surface begins under the upper bar and ends over the lower one."""
    screen(phone).surface = View(0, 63, 1080, 2400 - 63 - 126)
    assert bars.covered() == Covered()


def test_on_its_side_the_bar_and_the_notch_stand_at_the_sides(phone):
    one = screen(phone)
    one.window.view = View(0, 0, 2400, 1080, WindowInsets((90, 0, 126, 0)))
    one.surface = View(0, 0, 2400, 1080)
    assert bars.covered() == Covered(Sides(90, 0, 126, 0), 0)


def test_in_half_of_a_split_screen_only_the_bar_that_lies_over_it_counts(phone):
    one = screen(phone)
    one.window.view = View(0, 0, 1080, 1180, WindowInsets((0, 0, 0, 126)))
    one.surface = View(0, 0, 1080, 1180)
    assert bars.covered() == Covered(Sides(0, 0, 0, 126), 0)


def test_the_keyboard_covers_what_it_says(phone):
    screen(phone).window.view.insets = WindowInsets((0, 63, 0, 126), keyboard=900)
    assert bars.covered() == Covered(Sides(0, 63, 0, 126), 900)
    assert bars.tells_keyboard()


def test_an_old_phone_says_its_bars_and_not_its_keyboard(old_phone):
    assert bars.covered() == Covered(Sides(0, 63, 0, 126), 0)
    assert not bars.tells_keyboard()


@pytest.mark.parametrize(
    "call",
    ["Activity.getWindow", "View.getRootWindowInsets", "WindowInsets.getInsets", "View.getLocationInWindow"],
)
def test_bars_that_cannot_be_read_leave_the_page_as_it_is(phone, call):
    phone.fails.add(call)
    assert bars.covered() == Covered()


def test_before_there_is_a_window_nothing_is_covered(phone):
    screen(phone).window.view.insets = None
    assert bars.covered() == Covered()
    screen(phone).window.view.insets = WindowInsets((0, 63, 0, 126))
    screen(phone).surface = None
    assert bars.covered() == Covered(Sides(0, 63, 0, 126), 0)


def test_the_icons_of_the_bars_are_dark_on_a_light_page(phone):
    bars.dress(dark=False)
    controller = screen(phone).window.controller
    assert (controller.appearance, controller.mask) == (24, 24)
    bars.dress(dark=True)
    assert (controller.appearance, controller.mask) == (0, 24)


def test_on_an_old_phone_as_well_without_touching_other_flags(old_phone):
    bars.dress(dark=False)
    assert screen(old_phone).window.view.flags == 0x100 | 0x2000
    bars.dress(dark=True)
    assert screen(old_phone).window.view.flags == 0x100


def test_a_phone_that_refuses_to_dress_its_bars_is_left_alone(phone):
    phone.fails.add("WindowInsetsController.setSystemBarsAppearance")
    bars.dress(dark=True)


# The size of text


@pytest.mark.parametrize(
    ("set_to", "scale"), [(0.85, 1.0), (1.0, 1.0), (1.15, 1.0), (1.3, 1.3), (1.5, 1.6), (2.0, 2.0)]
)
def test_text_begins_at_the_size_the_phone_is_set_to(phone, set_to, scale):
    screen(phone).font_scale = set_to
    assert text_scale() == scale


def test_a_phone_that_does_not_tell_begins_at_the_ordinary_size(phone):
    phone.fails.add("Activity.getResources")
    assert text_scale() == 1.0


def test_off_a_phone_nothing_of_it_is_asked_for():
    assert (bars.covered(), text_scale(), bars.tells_keyboard()) == (Covered(), 1.0, False)
    bars.dress(dark=True)


def test_a_density_that_cannot_be_read_stops_no_start(phone):
    before = Metrics.density
    phone.fails.add("Activity.getResources")
    phone_metrics()
    assert Metrics.density == before
