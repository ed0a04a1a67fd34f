"""The manifest as the packager makes it: its own template filled from our spec, then our hook.

Skipped where the packager is not installed: `pip install python-for-android` at the commit of the spec brings it.
"""

import importlib.util
import xml.etree.ElementTree as ET
from collections import Counter
from pathlib import Path
from types import SimpleNamespace

import pytest

from tests.packaging.test_package import FOLDER, spec

__all__ = ["spec"]

PACKAGER = importlib.util.find_spec("pythonforandroid")
ANDROID = "{http://schemas.android.com/apk/res/android}"
TEMPLATE = "bootstraps/_sdl_common/build/templates/AndroidManifest.tmpl.xml"


@pytest.mark.skipif(PACKAGER is None, reason="the packager is not installed here")
def test_the_manifest_of_the_packager_asks_for_what_is_used_and_nothing_else(spec, tmp_path, monkeypatch):
    jinja2 = pytest.importorskip("jinja2")
    folder = Path(next(iter(PACKAGER.submodule_search_locations)))
    args = SimpleNamespace(
        numeric_version=1,
        version=spec["version"],
        min_sdk_version=int(spec["android.minapi"]),
        permissions=[{"name": name.strip()} for name in spec["android.permissions"].split(",")],
        extra_manifest_xml=(FOLDER / spec["android.extra_manifest_xml"]).read_text("utf-8"),
        extra_manifest_application_arguments=(
            FOLDER / spec["android.extra_manifest_application_arguments"]
        ).read_text("utf-8"),
        allow_backup=str(spec["android.allow_backup"]).lower(),
        backup_rules=spec["android.backup_rules"].removesuffix(".xml"),
        android_apptheme="@android:style/Theme.NoTitleBar",
        window=True,
        android_used_libs=[],
        meta_data=[],
        android_entrypoint="org.kivy.android.PythonActivity",
        manifest_orientation="fullUser",
        package=f"{spec['package.domain']}.{spec['package.name']}",
        add_activity=[],
    )
    text = (
        jinja2.Environment(autoescape=False)
        .from_string((folder / TEMPLATE).read_text("utf-8"))
        .render(args=args, android_api=spec["android.api"], service_data=[], native_services=[])
    )
    found = importlib.util.spec_from_file_location("hook", FOLDER / "hook.py")
    hook = importlib.util.module_from_spec(found)
    found.loader.exec_module(hook)
    path = tmp_path / hook.MANIFEST
    path.parent.mkdir(parents=True)
    path.write_text(text, "utf-8")
    monkeypatch.chdir(tmp_path)
    hook.before_apk_assemble(None)
    # A parser refuses an attribute that stands twice: the template's own beside ours.
    root = ET.parse(path).getroot()  # noqa: S314  (made above)
    permissions = Counter(one.get(f"{ANDROID}name") for one in root.findall("uses-permission"))
    assert permissions == Counter(one.strip() for one in spec["android.permissions"].split(","))
    sdk = root.find("uses-sdk")
    assert (sdk.get(f"{ANDROID}minSdkVersion"), sdk.get(f"{ANDROID}targetSdkVersion")) == ("24", "36")
    features = {
        one.get(f"{ANDROID}name"): one.get(f"{ANDROID}required") for one in root.findall("uses-feature")
    }
    assert features["android.hardware.microphone"] == "false"
    assert root.find("queries/intent/action") is not None
    application = root.find("application")
    assert {
        name: application.get(f"{ANDROID}{name}")
        for name in ("allowBackup", "fullBackupContent", "dataExtractionRules", "enableOnBackInvokedCallback")
    } == {
        "allowBackup": "true",
        "fullBackupContent": "@xml/backup_rules",
        "dataExtractionRules": "@xml/data_extraction_rules",
        "enableOnBackInvokedCallback": "false",
    }
    assert [one.tag for one in application].count("provider") == 1
    (activity,) = application.findall("activity")
    assert {"fontScale", "uiMode", "density", "screenSize"} <= set(
        activity.get(f"{ANDROID}configChanges").split("|")
    )
