"""Handing on a text or a file: by the phone's own sheet, else a text over the clipboard and a file by its name."""

import shutil
from pathlib import Path
from typing import Any

from kivy.logger import Logger

from screens.phone.java import activity, cast, java, on_android, words
from screens.tongue import _

SHARED = _("Handed to the phone: choose where it goes.")
COPIED = _("Copied: paste it where it is wanted.")
NEITHER = _("This phone could neither hand it on nor copy it.")

OUT = "shared"
"""Folder inside the app's own files of which the provider hands out, and of nothing else: see FilesOut.java."""
READ = 1
"""Android's number: who is handed the file may read it."""
TYPES = {
    ".txt": "text/plain",
    ".csv": "text/csv",
    ".html": "text/html",
    ".pdf": "application/pdf",
    ".json": "application/json",
    ".png": "image/png",
    ".db": "application/octet-stream",
}
"""Kind of a file by its ending."""


def share(text: str, title: str) -> str:
    """Hand a text on and return the sentence that says where it went."""
    for way, said in ((_sheet, SHARED), (_copy, COPIED)):
        try:
            way(text, title)
        except Exception as problem:  # noqa: BLE001  (whatever a phone's service raises, the next way is tried)
            Logger.debug("Deckhand: not handed on: %s", problem)
            continue
        return said
    return NEITHER


def share_file(path: Path, title: str) -> str:
    """Hand a file on and return the sentence that says where it went: off a phone it stays where it lies."""
    try:
        _send_file(path, title)
    except Exception as problem:  # noqa: BLE001  (whatever Java raises, the file is there)
        Logger.debug("Deckhand: not handed on: %s", problem)
        return _("Saved as {name} in the folder {folder}.").format(name=path.name, folder=path.parent.name)
    return SHARED


def _sheet(text: str, title: str) -> None:
    """Open Android's own sheet. Raises whatever is amiss; on other systems there is none."""
    intent = _sending("text/plain")
    intent.putExtra(java("android.content.Intent").EXTRA_TEXT, words(text))
    _choose(intent, title)


def _send_file(path: Path, title: str) -> None:
    """Open Android's own sheet for a copy of a file that only the provider of the app hands out."""
    intent = _sending(TYPES.get(path.suffix, "application/octet-stream"))
    folder = Path(activity().getFilesDir().getAbsolutePath()) / OUT
    folder.mkdir(exist_ok=True)
    for old in folder.iterdir():
        old.unlink()
    shutil.copyfile(path, folder / path.name)
    uri = (
        java("android.net.Uri$Builder")()
        .scheme("content")
        .authority(f"{activity().getPackageName()}.files")
        .appendPath(path.name)
        .build()
    )
    intent.putExtra(java("android.content.Intent").EXTRA_STREAM, cast("android.os.Parcelable", uri))
    # Leave to read goes with what lies in the clip; the extra alone would hand out a closed door.
    intent.setClipData(java("android.content.ClipData").newRawUri(words(path.name), uri))
    intent.addFlags(READ)
    _choose(intent, title)


def _sending(kind: str) -> Any:  # noqa: ANN401  (an Intent)
    if not on_android():
        raise NotImplementedError
    intent_class = java("android.content.Intent")
    intent = intent_class(intent_class.ACTION_SEND)
    intent.setType(kind)
    return intent


def _choose(intent: Any, title: str) -> None:  # noqa: ANN401  (as above)
    activity().startActivity(java("android.content.Intent").createChooser(intent, words(title)))


def _copy(text: str, _title: str) -> None:
    from kivy.core.clipboard import Clipboard  # noqa: PLC0415  (opened when it is wanted, not at the start)

    Clipboard.copy(text)
