"""Every part of the phone that an act asks for, in every way it can fail: the page says a true sentence once and goes on."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from screens.phone import bars, documents, light, notices, permission, printing, share, speech
from screens.phone.bars import Covered
from screens.phone.configuration import text_scale
from screens.phone.microphone import NONE_HERE, NOT_ALLOWED, Microphone
from tests.phone.android import Phone
from tests.phone.classes import PrintManager, TextToSpeech, Uri, WebView, android


def voice(_phone, tell):
    speech.say("One", tell)


def microphone(_phone, tell):
    Microphone().record(lambda _found, sentence: tell(sentence), 0.1)


def torch(_phone, tell):
    tell(light.switch(on=True))


def notes(_phone, tell):
    tell("" if notices.notice("Due", "Something") else "none")


def leave(_phone, tell):
    permission.ask("android.permission.RECORD_AUDIO", lambda yes: tell("" if yes else "no"))


def text(_phone, tell):
    tell(share.share("Text", "Title"))


def file(phone, tell):
    page = phone.folder / "sheet.html"
    page.write_text("x", "utf-8")
    tell(share.share_file(page, "Sheet"))


def printer(_phone, tell):
    printing.hand("<p>", "Sheet", tell)


def chosen(phone, number, uri):
    from tests.phone.classes import Intent  # noqa: PLC0415  (as the answer of Android comes)

    for result in phone.results[-1:]:
        intent = Intent("")
        intent.extras["data"] = uri
        result(number, -1, intent)


def opened(phone, tell):
    far = phone.folder / "far.json"
    far.write_bytes(b"{}")
    documents.Documents(phone.folder).open(lambda _path, sentence: tell(sentence))
    chosen(phone, documents.OPEN, Uri("content://x/far.json", far))


def saved(phone, tell):
    page, far = phone.folder / "log.csv", phone.folder / "far"
    page.write_bytes(b"a")
    documents.Documents(phone.folder).save(page, tell)
    chosen(phone, documents.CREATE, Uri("content://x/1", far))


def edges(_phone, tell):
    bars.dress(dark=True)
    tell("" if bars.covered() != Covered() else "nothing covered")


def size(_phone, tell):
    tell("" if text_scale() == 1.3 else "ordinary")


KEPT = "Saved as"
PARTS: dict[str, tuple[Callable[..., None], str, tuple[str, ...], tuple[str, ...], str]] = {
    "voice": (
        voice,
        "",
        ("android.speech.tts.TextToSpeech", "java.util.Locale", "java.lang.String"),
        ("TextToSpeech.begin", "TextToSpeech.setLanguage", "TextToSpeech.speak"),
        speech.NO_VOICE,
    ),
    "microphone": (
        microphone,
        "",
        ("android.media.AudioRecord",),
        (
            "AudioRecord.begin",
            "AudioRecord.getMinBufferSize",
            "AudioRecord.startRecording",
            "AudioRecord.read",
        ),
        NONE_HERE,
    ),
    "light": (
        torch,
        "",
        ("android.content.Context", "org.kivy.android.PythonActivity"),
        ("Activity.getSystemService", "CameraManager.getCameraIdList", "CameraManager.setTorchMode"),
        light.NO_LIGHT,
    ),
    "notes": (
        notes,
        "",
        ("android.app.Notification$Builder", "android.app.PendingIntent", "android.app.NotificationChannel"),
        ("NotificationManager.notify", "PendingIntent.getActivity", "NotificationBuilder.build"),
        "none",
    ),
    "leave": (leave, "", (), ("request_permissions",), "no"),
    "text": (
        text,
        share.SHARED,
        ("android.content.Intent", "java.lang.String"),
        ("Intent.begin", "Intent.setType", "Intent.putExtra", "Activity.startActivity"),
        share.COPIED,
    ),
    "file": (
        file,
        share.SHARED,
        ("android.content.Intent", "android.net.Uri$Builder", "android.content.ClipData"),
        ("Intent.begin", "UriBuilder.build", "ClipData.newRawUri", "Activity.startActivity"),
        KEPT,
    ),
    "printer": (
        printer,
        printing.OPEN,
        ("android.webkit.WebView", "android.content.Context"),
        ("WebView.begin", "WebView.getProgress", "Activity.getSystemService", "PrintManager.print"),
        printing.NOT_HERE,
    ),
    "opened": (
        opened,
        "",
        ("android.content.Intent",),
        ("Activity.startActivityForResult", "ContentResolver.openFileDescriptor", "FileDescriptor.detachFd"),
        documents.NOT_OPENED,
    ),
    "saved": (
        saved,
        documents.WRITTEN,
        ("android.content.Intent",),
        ("Activity.startActivityForResult",),
        KEPT,
    ),
    "place": (
        saved,
        documents.WRITTEN,
        (),
        ("ContentResolver.openFileDescriptor", "FileDescriptor.detachFd"),
        documents.NOT_WRITTEN,
    ),
    "bars": (
        edges,
        "",
        ("android.view.WindowInsets$Type", "org.kivy.android.PythonActivity", "android.os.Build$VERSION"),
        ("Activity.getWindow", "View.getRootWindowInsets", "WindowInsets.getInsets"),
        "nothing covered",
    ),
    "size": (size, "", ("org.kivy.android.PythonActivity",), ("Activity.getResources",), "ordinary"),
}
"""Each part: how it is asked, what it says when all is well, the classes and the calls that may fail, and what it says then."""

ABSENT = [(part, name) for part, row in PARTS.items() for name in row[2]]
REFUSED = [(part, name) for part, row in PARTS.items() for name in row[3]]


@pytest.fixture(params=[24, 30, 36])
def any_phone(request: pytest.FixtureRequest, tmp_path: Path, monkeypatch) -> Iterator[Phone]:
    """Give a phone of the oldest, of a middle and of the newest Android, and a clipboard."""
    monkeypatch.setattr("screens.phone.share._copy", lambda *_: None)
    with android(tmp_path, request.param).here() as one:
        one.has_leave = True
        one.classes["org.kivy.android.PythonActivity"].mActivity.font_scale = 1.3
        yield one
        speech.close()
        light.switch(on=False)


def said(phone: Phone, part: str, until) -> str:
    told: list[str] = []
    PARTS[part][0](phone, told.append)
    until(lambda: told)
    (sentence,) = told
    return sentence


SINCE = {
    "android.app.NotificationChannel": 26,
    "android.view.WindowInsets$Type": 30,
    "WindowInsets.getInsets": 30,
}
"""From which Android on one is asked for it."""


def fits(told: str, phone: Phone, part: str, name: str) -> bool:
    """Tell whether the right thing was said: of what this Android is not asked for, nothing is missed."""
    if phone.level < SINCE.get(name, 0):
        return told == PARTS[part][1]
    return told.startswith(PARTS[part][4])


@pytest.mark.parametrize("part", PARTS)
def test_all_is_well(any_phone, until, part):
    assert said(any_phone, part, until) == PARTS[part][1]


@pytest.mark.parametrize(("part", "name"), ABSENT)
def test_a_class_that_is_absent(any_phone, until, part, name):
    any_phone.lacks.add(name)
    assert fits(said(any_phone, part, until), any_phone, part, name)


@pytest.mark.parametrize(("part", "name"), REFUSED)
def test_a_call_that_raises(any_phone, until, part, name):
    any_phone.fails.add(name)
    any_phone.has_leave = name != "request_permissions"
    assert fits(said(any_phone, part, until), any_phone, part, name)


@pytest.mark.parametrize("part", ["microphone", "leave"])
@pytest.mark.parametrize("answer", [[], [False]], ids=["put away", "no"])
def test_leave_that_is_not_given(any_phone, until, part, answer):
    any_phone.has_leave, any_phone.leave = False, answer
    assert said(any_phone, part, until) == {"microphone": NOT_ALLOWED, "leave": "no"}[part]


@pytest.mark.parametrize(
    ("part", "name"),
    [
        ("light", "Activity.getSystemService"),
        ("notes", "Activity.getSystemService"),
        ("printer", "Activity.getSystemService"),
        ("opened", "ContentResolver.openFileDescriptor"),
        ("place", "ContentResolver.openFileDescriptor"),
        ("bars", "View.getRootWindowInsets"),
        ("microphone", "AudioRecord.read"),
    ],
)
def test_a_call_that_gives_nothing(any_phone, until, part, name, monkeypatch):
    from tests.phone import classes  # noqa: PLC0415  (one of them is changed)

    owner, _, method = name.partition(".")
    found = getattr(classes, owner).__dict__[method]
    monkeypatch.setattr(found, "function", lambda *_: 0 if method == "read" else None)
    assert said(any_phone, part, until).startswith(PARTS[part][4])


def test_a_voice_that_answers_late_says_the_last_text_and_one_that_never_does_blocks_nothing(
    any_phone, until
):
    TextToSpeech.status = None
    told: list[str] = []
    speech.say("One", told.append)
    speech.say("Two", told.append)
    assert told == []
    TextToSpeech.made[0].listener.onInit(0)
    until(lambda: told)
    assert (told, TextToSpeech.made[0].said) == ([""], [("Two", speech.FLUSH)])


def test_a_voice_that_answers_after_the_app_let_it_go_is_heard_by_nobody(any_phone, until):
    TextToSpeech.status = None
    told: list[str] = []
    speech.say("One", told.append)
    speech.close()
    TextToSpeech.made[0].listener.onInit(0)
    late: list[str] = []
    permission.ask("x", lambda _: late.append("a frame later"))
    until(lambda: late)
    assert told == []


def test_a_page_that_is_never_read_is_given_up_and_said_once(any_phone, until, monkeypatch):
    monkeypatch.setattr("screens.phone.printing.LONGEST", 0.2)
    WebView.stuck = True
    assert said(any_phone, "printer", until) == printing.NOT_HERE
    assert PrintManager.jobs == []


def test_an_answer_of_the_page_of_files_that_nobody_waits_for_is_nothing(any_phone):
    files = documents.Documents(any_phone.folder)
    told: list[str] = []
    files.open(lambda _path, sentence: told.append(sentence))
    any_phone.results[-1](documents.OPEN + 9, -1, None)
    any_phone.results[-1](documents.CREATE, 0, None)
    assert told == []
