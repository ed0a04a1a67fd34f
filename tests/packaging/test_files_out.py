"""The provider that hands files on: compiled and run against stand-ins with true signatures; its place in the manifest.

Signatures: developer.android.com, ContentProvider, ParcelFileDescriptor, MatrixCursor, OpenableColumns.
"""

import importlib.util
import shutil
import subprocess
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

ROOT = Path(__file__).parents[2]
FOLDER = ROOT / "assets" / "packaging"
ANDROID = "{http://schemas.android.com/apk/res/android}"

STANDINS = {
    "android/content/Context": "public abstract class Context { public abstract java.io.File getFilesDir(); }",
    "android/content/ContentValues": "public final class ContentValues { }",
    "android/database/Cursor": "public interface Cursor { int getCount(); }",
    "android/provider/OpenableColumns": (
        'public interface OpenableColumns { String DISPLAY_NAME = "_display_name"; String SIZE = "_size"; }'
    ),
    "android/net/Uri": """public class Uri {
        private final String last;
        public Uri(String last) { this.last = last; }
        public String getLastPathSegment() { return last; }
    }""",
    "android/os/ParcelFileDescriptor": """public class ParcelFileDescriptor {
        public static final int MODE_READ_ONLY = 0x10000000;
        public java.io.File file;
        public static ParcelFileDescriptor open(java.io.File file, int mode) throws java.io.FileNotFoundException {
            if (mode != MODE_READ_ONLY) throw new java.io.FileNotFoundException("written");
            ParcelFileDescriptor made = new ParcelFileDescriptor();
            made.file = file;
            return made;
        }
    }""",
    "android/database/MatrixCursor": """public class MatrixCursor implements Cursor {
        public final java.util.List<Object[]> rows = new java.util.ArrayList<>();
        public MatrixCursor(String[] columns) { }
        public void addRow(Object[] row) { rows.add(row); }
        public int getCount() { return rows.size(); }
    }""",
    "android/content/ContentProvider": """public abstract class ContentProvider {
        public Context here;
        public final Context getContext() { return here; }
        public abstract boolean onCreate();
        public abstract android.database.Cursor query(android.net.Uri a, String[] b, String c, String[] d, String e);
        public abstract String getType(android.net.Uri a);
        public abstract android.net.Uri insert(android.net.Uri a, ContentValues b);
        public abstract int delete(android.net.Uri a, String b, String[] c);
        public abstract int update(android.net.Uri a, ContentValues b, String c, String[] d);
        public android.os.ParcelFileDescriptor openFile(android.net.Uri a, String b) throws java.io.FileNotFoundException {
            throw new java.io.FileNotFoundException();
        }
    }""",
    "Main": """public class Main {
        static org.deckhand.deckhand.FilesOut out = new org.deckhand.deckhand.FilesOut();
        static void open(String name, String mode) {
            try { System.out.println(out.openFile(new android.net.Uri(name), mode).file.getName()); }
            catch (java.io.FileNotFoundException problem) { System.out.println("refused"); }
        }
        public static void main(String[] given) {
            out.here = new android.content.Context() {
                public java.io.File getFilesDir() { return new java.io.File(given[0]); }
            };
            open("sheet.html", "r"); open("sheet.html", "w"); open("../secret.db", "r"); open("..", "r");
            open("gone.txt", "r"); open(null, "r");
            android.database.MatrixCursor rows = (android.database.MatrixCursor)
                out.query(new android.net.Uri("sheet.html"), null, null, null, null);
            System.out.println(rows.rows.get(0)[0] + " " + rows.rows.get(0)[1]);
            System.out.println(out.query(new android.net.Uri("gone"), null, null, null, null).getCount());
            System.out.println(out.getType(new android.net.Uri("sheet.html")));
        }
    }""",
}


@pytest.mark.skipif(not shutil.which("javac"), reason="no JDK is installed")
def test_only_what_is_in_its_folder_is_handed_out_and_only_to_be_read(tmp_path):
    sources = [FOLDER / "java" / "org" / "deckhand" / "deckhand" / "FilesOut.java"]
    for name, body in STANDINS.items():
        path = tmp_path / "src" / f"{name}.java"
        path.parent.mkdir(parents=True, exist_ok=True)
        package = name.rpartition("/")[0].replace("/", ".")
        path.write_text(f"package {package};\n{body}" if package else body, "utf-8")
        sources.append(path)
    classes, files = tmp_path / "classes", tmp_path / "files"
    made = subprocess.run(  # noqa: S603  (the JDK and our own sources)
        ["javac", "-Werror", "-Xlint:all", "--release", "11", "-d", str(classes), *map(str, sources)],  # noqa: S607
        capture_output=True,
        text=True,
        check=False,
    )
    assert made.returncode == 0, made.stderr
    (files / "shared").mkdir(parents=True)
    (files / "shared" / "sheet.html").write_text("<h1>Towpath</h1>", "utf-8")
    (files / "secret.db").write_text("boards", "utf-8")
    done = subprocess.run(  # noqa: S603  (as above)
        ["java", "-cp", str(classes), "Main", str(files)],  # noqa: S607
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout.split("\n") == [
        "sheet.html",
        *["refused"] * 5,
        "sheet.html 16",
        "0",
        "text/html",
        "",
    ]


def test_the_provider_is_in_the_manifest_once_and_reached_by_leave_alone(tmp_path, monkeypatch):
    found = importlib.util.spec_from_file_location("hook", FOLDER / "hook.py")
    hook = importlib.util.module_from_spec(found)
    found.loader.exec_module(hook)
    path = tmp_path / hook.MANIFEST
    path.parent.mkdir(parents=True)
    path.write_text(
        '<manifest xmlns:android="http://schemas.android.com/apk/res/android"><application></application></manifest>',
        "utf-8",
    )
    monkeypatch.chdir(tmp_path)
    hook.before_apk_assemble(None)
    hook.before_apk_assemble(None)
    (provider,) = ET.parse(path).getroot().findall("application/provider")  # noqa: S314  (our own file)
    assert {name.removeprefix(ANDROID): value for name, value in provider.attrib.items()} == {
        "name": "org.deckhand.deckhand.FilesOut",
        "authorities": "org.deckhand.deckhand.files",
        "exported": "false",
        "grantUriPermissions": "true",
    }
    path.write_text("<manifest/>", "utf-8")
    with pytest.raises(ValueError, match="one application"):
        hook.before_apk_assemble(None)


def test_the_names_are_those_of_the_package():
    spec = (FOLDER / "buildozer.spec").read_text("utf-8")
    assert "package.domain = org.deckhand\n" in spec
    assert "package.name = deckhand\n" in spec
    assert "android.add_src = java\n" in spec
    assert "p4a.hook = hook.py\n" in spec
