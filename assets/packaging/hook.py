"""Puts the provider of files into the manifest: the packager has no option for one. It runs in the folder of the build."""

from pathlib import Path

MANIFEST = Path("src/main/AndroidManifest.xml")
PROVIDER = """<provider android:name="org.deckhand.deckhand.FilesOut"
                  android:authorities="org.deckhand.deckhand.files"
                  android:exported="false"
                  android:grantUriPermissions="true" />
    """


def before_apk_assemble(_toolchain: object) -> None:
    """Add the provider once. Raises ValueError for a manifest that it cannot stand in."""
    text = MANIFEST.read_text("utf-8")
    if PROVIDER in text:
        return
    if text.count("</application>") != 1:
        raise ValueError("the manifest has not the one application that is expected")
    MANIFEST.write_text(text.replace("</application>", f"{PROVIDER}</application>"), "utf-8")
