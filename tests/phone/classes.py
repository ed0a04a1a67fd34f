"""Android's classes as the adapters use them, signature by signature, for the phone that is played."""

from pathlib import Path
from types import SimpleNamespace
from typing import Any

from tests.phone.android import JavaException, JavaObject, Phone, java


class String(JavaObject):
    kinds = ("java/lang/String", "java/lang/CharSequence")

    def __init__(self, text: str) -> None:
        self.text = text


class TextToSpeech(JavaObject):
    """Answers its listener at once, as a phone without an engine does, or when `answer` is called."""

    status: int | None = 0
    language = 1
    made: "list[TextToSpeech]" = []  # noqa: RUF012  (begun anew by each phone)

    @java("(Landroid/content/Context;Landroid/speech/tts/TextToSpeech$OnInitListener;)V")
    def begin(self, _context: Any, listener: Any) -> None:
        self.listener = listener
        self.made.append(self)
        if self.status is not None:
            listener.onInit(self.status)

    def __init__(self, context: Any, listener: Any) -> None:
        self.said: list[tuple[str, int]] = []
        self.open = True
        self.begin(context, listener)

    @java("(Ljava/util/Locale;)I")
    def setLanguage(self, _locale: Any) -> int:  # noqa: N802
        return self.language

    @java(
        "(Ljava/lang/CharSequence;ILandroid/os/Bundle;Ljava/lang/String;)I",
        "(Ljava/lang/String;ILjava/util/HashMap;)I",
    )
    def speak(self, text: Any, mode: int, _options: Any, _name: str) -> int:
        self.said.append((text.text, mode))
        return 0

    @java("()I")
    def stop(self) -> int:
        return 0

    @java("()V")
    def shutdown(self) -> None:
        self.open = False


class Locale(JavaObject):
    kinds = ("java/util/Locale",)


class View(JavaObject):
    kinds = ("android/view/View",)

    def __init__(self, x: int, y: int, width: int, height: int, insets: Any = None) -> None:
        self.x, self.y, self.width, self.height, self.insets = x, y, width, height, insets
        self.flags = 0x100

    @java("()Landroid/view/WindowInsets;")
    def getRootWindowInsets(self) -> Any:  # noqa: N802
        return self.insets

    @java("([I)V")
    def getLocationInWindow(self, place: list[int]) -> None:  # noqa: N802
        place[:] = [self.x, self.y]

    @java("()I")
    def getWidth(self) -> int:  # noqa: N802
        return self.width

    @java("()I")
    def getHeight(self) -> int:  # noqa: N802
        return self.height

    @java("()I")
    def getSystemUiVisibility(self) -> int:  # noqa: N802
        return self.flags

    @java("(I)V")
    def setSystemUiVisibility(self, flags: int) -> None:  # noqa: N802
        self.flags = flags


class WindowInsets(JavaObject):
    """Bars, and the keyboard, of a window: left, top, right, bottom."""

    def __init__(self, bars: tuple[int, int, int, int], keyboard: int = 0) -> None:
        self.bars, self.keyboard = bars, keyboard

    @java("(I)Landroid/graphics/Insets;")
    def getInsets(self, kinds: int) -> Any:  # noqa: N802
        sides = (0, 0, 0, self.keyboard) if kinds == Type.IME else self.bars
        return SimpleNamespace(**dict(zip(("left", "top", "right", "bottom"), sides, strict=True)))

    @java("()I")
    def getStableInsetLeft(self) -> int:  # noqa: N802
        return self.bars[0]

    @java("()I")
    def getStableInsetTop(self) -> int:  # noqa: N802
        return self.bars[1]

    @java("()I")
    def getStableInsetRight(self) -> int:  # noqa: N802
        return self.bars[2]

    @java("()I")
    def getStableInsetBottom(self) -> int:  # noqa: N802
        return self.bars[3]


class Type(JavaObject):
    """android.view.WindowInsets$Type."""

    BARS, CUTOUT, IME = 7, 128, 8

    systemBars = staticmethod(lambda: Type.BARS)  # noqa: N815
    displayCutout = staticmethod(lambda: Type.CUTOUT)  # noqa: N815
    ime = staticmethod(lambda: Type.IME)


class WindowInsetsController(JavaObject):
    @java("(II)V")
    def setSystemBarsAppearance(self, appearance: int, mask: int) -> None:  # noqa: N802
        self.appearance, self.mask = appearance, mask


class Window(JavaObject):
    def __init__(self, view: View) -> None:
        self.view, self.controller = view, WindowInsetsController()

    @java("()Landroid/view/View;")
    def getDecorView(self) -> View:  # noqa: N802
        return self.view

    @java("()Landroid/view/WindowInsetsController;")
    def getInsetsController(self) -> WindowInsetsController:  # noqa: N802
        assert Phone.now is not None
        if Phone.now.level < 30:
            raise JavaException("NoSuchMethodError")
        return self.controller


class Intent(JavaObject):
    kinds = ("android/content/Intent", "android/os/Parcelable")
    ACTION_SEND = "android.intent.action.SEND"
    ACTION_OPEN_DOCUMENT = "android.intent.action.OPEN_DOCUMENT"
    ACTION_CREATE_DOCUMENT = "android.intent.action.CREATE_DOCUMENT"
    CATEGORY_OPENABLE = "android.intent.category.OPENABLE"
    EXTRA_TEXT, EXTRA_TITLE = "android.intent.extra.TEXT", "android.intent.extra.TITLE"
    EXTRA_STREAM = "android.intent.extra.STREAM"

    @java(
        "()V",
        "(Ljava/lang/String;)V",
        "(Landroid/content/Intent;)V",
        "(Landroid/content/Context;Ljava/lang/Class;)V",
    )
    def begin(self, *given: Any) -> None:
        self.action = given[0] if given else ""

    def __init__(self, *given: Any) -> None:
        self.extras: dict[str, Any] = {}
        self.kind = self.category = ""
        self.flags, self.clip, self.inner = 0, None, None
        self.begin(*given)

    @java("(Ljava/lang/String;)Landroid/content/Intent;")
    def setType(self, kind: str) -> "Intent":  # noqa: N802
        self.kind = kind
        return self

    @java("(Ljava/lang/String;)Landroid/content/Intent;")
    def addCategory(self, category: str) -> "Intent":  # noqa: N802
        self.category = category
        return self

    @java(
        "(Ljava/lang/String;Ljava/lang/CharSequence;)Landroid/content/Intent;",
        "(Ljava/lang/String;Ljava/lang/String;)Landroid/content/Intent;",
        "(Ljava/lang/String;Landroid/os/Parcelable;)Landroid/content/Intent;",
    )
    def putExtra(self, name: str, value: Any) -> "Intent":  # noqa: N802
        self.extras[name] = value.text if isinstance(value, String) else value
        return self

    @java("(Landroid/content/ClipData;)V")
    def setClipData(self, clip: Any) -> None:  # noqa: N802
        self.clip = clip

    @java("(I)Landroid/content/Intent;")
    def addFlags(self, flags: int) -> "Intent":  # noqa: N802
        self.flags |= flags
        return self

    @java("()Landroid/net/Uri;")
    def getData(self) -> Any:  # noqa: N802
        return self.extras.get("data")

    @staticmethod
    def createChooser(intent: "Intent", title: Any) -> "Intent":  # noqa: N802
        chooser = Intent("android.intent.action.CHOOSER")
        chooser.inner = intent
        chooser.putExtra(Intent.EXTRA_TITLE, title)
        return chooser


class Uri(JavaObject):
    kinds = ("android/net/Uri", "android/os/Parcelable")

    def __init__(self, text: str, path: Path | None = None) -> None:
        self.text, self.path = text, path

    @java("()Ljava/lang/String;")
    def getLastPathSegment(self) -> str:  # noqa: N802
        return self.text.rpartition("/")[2]


class UriBuilder(JavaObject):
    def __init__(self) -> None:
        self.parts = ["", "", ""]

    @java("(Ljava/lang/String;)Landroid/net/Uri$Builder;")
    def scheme(self, text: str) -> "UriBuilder":
        self.parts[0] = text
        return self

    @java("(Ljava/lang/String;)Landroid/net/Uri$Builder;")
    def authority(self, text: str) -> "UriBuilder":
        self.parts[1] = text
        return self

    @java("(Ljava/lang/String;)Landroid/net/Uri$Builder;")
    def appendPath(self, text: str) -> "UriBuilder":  # noqa: N802
        self.parts[2] = text
        return self

    @java("()Landroid/net/Uri;")
    def build(self) -> Uri:
        return Uri("{}://{}/{}".format(*self.parts))


class ClipData(JavaObject):
    kinds = ("android/content/ClipData",)

    @staticmethod
    @java("(Ljava/lang/CharSequence;Landroid/net/Uri;)Landroid/content/ClipData;")
    def newRawUri(_label: Any, uri: Uri) -> "ClipData":  # noqa: N802
        clip = ClipData()
        clip.uri = uri
        return clip


class FileDescriptor(JavaObject):
    """android.os.ParcelFileDescriptor of a real file."""

    def __init__(self, path: Path, mode: str) -> None:
        self.path, self.mode = path, mode

    @java("()I")
    def detachFd(self) -> int:  # noqa: N802
        # The file stays open: it belongs to who asked from now on.
        import os  # noqa: PLC0415

        return os.open(
            self.path, os.O_RDONLY if self.mode == "r" else os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600
        )


class ContentResolver(JavaObject):
    @java("(Landroid/net/Uri;Ljava/lang/String;)Landroid/os/ParcelFileDescriptor;")
    def openFileDescriptor(self, uri: Uri, mode: str) -> FileDescriptor | None:  # noqa: N802
        return None if uri.path is None else FileDescriptor(uri.path, mode)


class CameraManager(JavaObject):
    """Two cameras, the second with a light."""

    kinds = ("android/hardware/camera2/CameraManager",)
    lit: dict[str, bool] = {}  # noqa: RUF012  (begun anew by each phone)

    @java("()[Ljava/lang/String;")
    def getCameraIdList(self) -> list[str]:  # noqa: N802
        return ["1", "0"]

    @java("(Ljava/lang/String;Z)V")
    def setTorchMode(self, name: str, on: bool) -> None:  # noqa: N802, FBT001
        if name == "1":
            raise JavaException("IllegalArgumentException: camera 1 has no flash unit")
        self.lit[name] = on


class NotificationChannel(JavaObject):
    kinds = ("android/app/NotificationChannel",)

    @java("(Ljava/lang/String;Ljava/lang/CharSequence;I)V")
    def begin(self, *_given: Any) -> None:
        pass

    def __init__(self, *given: Any) -> None:
        self.begin(*given)


class Notification(JavaObject):
    kinds = ("android/app/Notification",)


class NotificationBuilder(JavaObject):
    @java("(Landroid/content/Context;)V", "(Landroid/content/Context;Ljava/lang/String;)V")
    def begin(self, *_given: Any) -> None:
        pass

    def __init__(self, *given: Any) -> None:
        self.begin(*given)

    @java("(I)Landroid/app/Notification$Builder;", "(II)Landroid/app/Notification$Builder;")
    def setSmallIcon(self, _icon: int) -> None:  # noqa: N802
        pass

    @java("(Ljava/lang/CharSequence;)Landroid/app/Notification$Builder;")
    def setContentTitle(self, _text: Any) -> None:  # noqa: N802
        pass

    @java("(Ljava/lang/CharSequence;)Landroid/app/Notification$Builder;")
    def setContentText(self, _text: Any) -> None:  # noqa: N802
        pass

    @java("(Landroid/app/PendingIntent;)Landroid/app/Notification$Builder;")
    def setContentIntent(self, _intent: Any) -> None:  # noqa: N802
        pass

    @java("(Z)Landroid/app/Notification$Builder;")
    def setAutoCancel(self, _yes: bool) -> None:  # noqa: N802, FBT001
        pass

    @java("()Landroid/app/Notification;")
    def build(self) -> Notification:
        return Notification()


class PendingIntent(JavaObject):
    """Refused without a word on whether it may be changed, as Android does from level 31 on."""

    kinds = ("android/app/PendingIntent",)

    @staticmethod
    @java("(Landroid/content/Context;ILandroid/content/Intent;I)Landroid/app/PendingIntent;")
    def getActivity(_context: Any, _code: int, _intent: Any, flags: int) -> "PendingIntent":  # noqa: N802
        if not flags & (0x04000000 | 0x02000000):
            raise JavaException("IllegalArgumentException: FLAG_IMMUTABLE or FLAG_MUTABLE")
        return PendingIntent()


class NotificationManager(JavaObject):
    kinds = ("android/app/NotificationManager",)

    @java("()Z")
    def areNotificationsEnabled(self) -> bool:  # noqa: N802
        assert Phone.now is not None
        return Phone.now.has_leave

    @java("(Landroid/app/NotificationChannel;)V")
    def createNotificationChannel(self, _channel: Any) -> None:  # noqa: N802
        pass

    @java("(ILandroid/app/Notification;)V", "(Ljava/lang/String;ILandroid/app/Notification;)V")
    def notify(self, _number: int, _note: Any) -> None:
        pass


class AudioRecord(JavaObject):
    """Gives a square wave, a buffer at a time."""

    @java("(IIIII)V")
    def begin(self, *_given: int) -> None:
        pass

    def __init__(self, *given: int) -> None:
        self.begin(*given)

    @staticmethod
    @java("(III)I")
    def getMinBufferSize(_rate: int, _channels: int, _form: int) -> int:  # noqa: N802
        return 3584

    @java("()I")
    def getState(self) -> int:  # noqa: N802
        return 1

    @java("()V", "(Landroid/media/MediaSyncEvent;)V")
    def startRecording(self) -> None:  # noqa: N802
        pass

    @java("([BII)I", "([SII)I", "(Ljava/nio/ByteBuffer;I)I")
    def read(self, part: bytearray, start: int, size: int) -> int:
        part[start : start + size] = (b"\x00\x20" * 50 + b"\x00\xe0" * 50) * (size // 200) + bytes(size % 200)
        return size

    @java("()V")
    def stop(self) -> None:
        pass

    @java("()V")
    def release(self) -> None:
        pass


class PrintDocumentAdapter(JavaObject):
    kinds = ("android/print/PrintDocumentAdapter",)


class PrintManager(JavaObject):
    kinds = ("android/print/PrintManager",)
    jobs: list[tuple[str, PrintDocumentAdapter]] = []  # noqa: RUF012  (begun anew by each phone)

    @java(
        "(Ljava/lang/String;Landroid/print/PrintDocumentAdapter;Landroid/print/PrintAttributes;)Landroid/print/PrintJob;"
    )
    def print(self, name: str, content: PrintDocumentAdapter, _wishes: Any) -> Any:
        self.jobs.append((name, content))
        return JavaObject()


class WebView(JavaObject):
    """Has read its page at the third look."""

    kinds = ("android/webkit/WebView", "android/view/View")
    stuck = False

    @java(
        "(Landroid/content/Context;)V",
        "(Landroid/content/Context;Landroid/util/AttributeSet;)V",
        "(Landroid/content/Context;Landroid/util/AttributeSet;I)V",
    )
    def begin(self, *_given: Any) -> None:
        self.looks = 0

    def __init__(self, *given: Any) -> None:
        self.begin(*given)

    @java("(Ljava/lang/String;Ljava/lang/String;Ljava/lang/String;Ljava/lang/String;Ljava/lang/String;)V")
    def loadDataWithBaseURL(  # noqa: N802
        self, _base: Any, page: str, kind: str, _encoding: str, _history: Any
    ) -> None:
        assert kind == "text/html"
        self.page = page

    @java("()I")
    def getProgress(self) -> int:  # noqa: N802
        self.looks += 1
        return 100 if self.looks > 2 and not self.stuck else 50

    @java(
        "(Ljava/lang/String;)Landroid/print/PrintDocumentAdapter;", "()Landroid/print/PrintDocumentAdapter;"
    )
    def createPrintDocumentAdapter(self, _name: str) -> PrintDocumentAdapter:  # noqa: N802
        adapter = PrintDocumentAdapter()
        adapter.page = self.page
        return adapter


class Activity(JavaObject):
    """org.kivy.android.PythonActivity."""

    kinds = ("android/content/Context", "android/app/Activity")

    def __init__(self, phone: Phone) -> None:
        self.phone = phone
        self.window = Window(View(0, 0, 1080, 2400, WindowInsets((0, 63, 0, 126))))
        self.surface: View | None = View(0, 0, 1080, 2400)
        self.started: list[Intent] = []
        self.font_scale = 1.0

    @java("()Landroid/view/Window;")
    def getWindow(self) -> Window:  # noqa: N802
        return self.window

    @java("(Ljava/lang/String;)Ljava/lang/Object;")
    def getSystemService(self, name: str) -> Any:  # noqa: N802
        kinds = {"camera": CameraManager, "notification": NotificationManager, "print": PrintManager}
        assert Phone.now is not None
        return None if name in Phone.now.lacks else kinds[name]()

    @java("(Landroid/content/Intent;)V", "(Landroid/content/Intent;Landroid/os/Bundle;)V")
    def startActivity(self, intent: Intent) -> None:  # noqa: N802
        self.started.append(intent)

    @java("(Landroid/content/Intent;I)V", "(Landroid/content/Intent;ILandroid/os/Bundle;)V")
    def startActivityForResult(self, intent: Intent, _number: int) -> None:  # noqa: N802
        self.started.append(intent)

    @java("()Ljava/lang/String;")
    def getPackageName(self) -> str:  # noqa: N802
        return "org.deckhand.deckhand"

    @java("()Ljava/lang/Class;")
    def getClass(self) -> Any:  # noqa: N802
        return _Class()

    @java("()Landroid/content/pm/ApplicationInfo;")
    def getApplicationInfo(self) -> Any:  # noqa: N802
        return SimpleNamespace(icon=7)

    @java("()Ljava/io/File;")
    def getFilesDir(self) -> Any:  # noqa: N802
        return SimpleNamespace(getAbsolutePath=lambda: str(self.phone.folder))

    @java("()Landroid/content/ContentResolver;")
    def getContentResolver(self) -> ContentResolver:  # noqa: N802
        return ContentResolver()

    @java("()Landroid/content/res/Resources;")
    def getResources(self) -> Any:  # noqa: N802
        configuration = SimpleNamespace(fontScale=self.font_scale, uiMode=0x11)
        metrics = SimpleNamespace(density=1.0)
        return SimpleNamespace(getConfiguration=lambda: configuration, getDisplayMetrics=lambda: metrics)


class _Class(JavaObject):
    kinds = ("java/lang/Class",)


def android(folder: Path, level: int = 34) -> Phone:
    """Return a phone of a level of Android with all that the adapters ask for."""
    phone = Phone(folder, level)
    activity = Activity(phone)
    TextToSpeech.status, TextToSpeech.language, TextToSpeech.made = 0, 1, []
    CameraManager.lit, PrintManager.jobs, WebView.stuck = {}, [], False
    phone.classes = {
        "org.kivy.android.PythonActivity": SimpleNamespace(
            mActivity=activity, getSurface=lambda: activity.surface
        ),
        "android.os.Build$VERSION": SimpleNamespace(SDK_INT=level),
        "java.lang.String": String,
        "java.util.Locale": SimpleNamespace(ENGLISH=Locale()),
        "android.content.Context": SimpleNamespace(
            CAMERA_SERVICE="camera", NOTIFICATION_SERVICE="notification", PRINT_SERVICE="print"
        ),
        "android.speech.tts.TextToSpeech": TextToSpeech,
        "android.content.Intent": Intent,
        "android.net.Uri$Builder": UriBuilder,
        "android.content.ClipData": ClipData,
        "android.app.Notification$Builder": NotificationBuilder,
        "android.app.PendingIntent": PendingIntent,
        "android.media.AudioRecord": AudioRecord,
        "android.webkit.WebView": WebView,
    }
    if level >= 26:
        phone.classes["android.app.NotificationChannel"] = NotificationChannel
    if level >= 30:
        phone.classes["android.view.WindowInsets$Type"] = Type
    return phone
