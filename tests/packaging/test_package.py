"""What the packager is told, held against the project, and the packaged form run here: no sources, listed modules only.

Tokens: default.spec of buildozer 1.6.0. Manifest attributes: developer.android.com, <manifest>, <application>,
<uses-feature>, <queries>, auto backup and data extraction rules. Wheel tags: PEP 738.
"""

import compileall
import configparser
import runpy
import shutil
import sys
import tomllib
from importlib.metadata import version
from pathlib import Path
from types import SimpleNamespace
from xml.etree import ElementTree as ET

import pytest

from tests.alone import NEEDS_GRAPHICS, alone

ROOT = Path(__file__).parents[2]
FOLDER = ROOT / "assets" / "packaging"
TOKENS = {
    "title",
    "package.name",
    "package.domain",
    "version",
    "source.dir",
    "source.include_exts",
    "source.exclude_dirs",
    "source.exclude_patterns",
    "requirements",
    "orientation",
    "fullscreen",
    "icon.filename",
    "icon.adaptive_foreground.filename",
    "icon.adaptive_background.filename",
    "presplash.filename",
    "android.presplash_color",
    "android.api",
    "android.minapi",
    "android.ndk_api",
    "android.ndk",
    "android.archs",
    "android.permissions",
    "android.add_src",
    "p4a.hook",
    "android.extra_manifest_xml",
    "android.extra_manifest_application_arguments",
    "android.allow_backup",
    "android.backup_rules",
    "android.res_xml",
    "android.release_artifact",
    "p4a.bootstrap",
    "p4a.branch",
    "p4a.commit",
    "p4a.local_recipes",
    "p4a.setup_py",
}
"""Those that stand in default.spec, of the ones that are used; android.features does nothing there."""
COMPILED = {"kivy", "python3", "hostpython3", "sqlite3", "android", "pyjnius"}
"""Requirements that have a recipe: not plain modules."""
DESKTOP = {"reportlab"}
"""What only a desktop has: a phone prints by its own page."""
MASKED = (
    "reportlab",
    "PIL",
    "cairo",
    "numpy",
    "requests",
    "docutils",
    "pygments",
    "materialshapes",
    "materialyoucolor",
    "asynckivy",
    "asyncgui",
    "certifi",
    "idna",
    "urllib3",
    "scipy",
    "pytest",
)
"""Modules that stand in this environment and not in the package."""
ANDROID = "{http://schemas.android.com/apk/res/android}"


@pytest.fixture(scope="module")
def spec() -> dict[str, str]:
    parser = configparser.ConfigParser(interpolation=None)
    parser.read(FOLDER / "buildozer.spec")
    return dict(parser["app"])


def listed(text: str) -> list[str]:
    return [part.strip() for part in text.split(",")]


def shipped(spec: dict[str, str]) -> list[Path]:
    """Return the files that go into the package, as the packager chooses them."""
    endings, folders = listed(spec["source.include_exts"]), listed(spec["source.exclude_dirs"])
    patterns = listed(spec["source.exclude_patterns"])
    found = []
    for path in sorted(ROOT.rglob("*")):
        inside = path.relative_to(ROOT).as_posix()
        hidden = any(part.startswith(".") or part == "__pycache__" for part in path.relative_to(ROOT).parts)
        left_out = any(inside == one or inside.startswith(f"{one}/") for one in folders) or inside in patterns
        if path.is_file() and not hidden and not left_out and path.suffix[1:] in endings:
            found.append(path)
    return found


def test_every_token_is_one_of_the_packagers(spec):
    assert set(spec) <= TOKENS


def test_what_is_built_for(spec):
    assert (spec["android.api"], spec["android.minapi"], spec["android.ndk_api"]) == ("36", "24", "24")
    assert listed(spec["android.archs"]) == ["arm64-v8a", "x86_64"]
    assert len(spec["p4a.commit"]) == 40


def test_pins_are_those_of_the_project_and_of_what_is_tested(spec):
    pins = dict(one.split("==") for one in listed(spec["requirements"]) if "==" in one)
    with (ROOT / "pyproject.toml").open("rb") as file:
        project = tomllib.load(file)
    wanted = dict(one.split("==") for one in project["project"]["dependencies"])
    held = dict(one.split("==") for one in project["tool"]["uv"]["constraint-dependencies"])
    plain = {name.replace("_", "-"): pin for name, pin in pins.items()}
    assert {name: pin for name, pin in wanted.items() if name not in DESKTOP}.items() <= pins.items()
    assert not DESKTOP & pins.keys()
    assert {name: pin for name, pin in held.items() if name in plain}.items() <= plain.items()
    loose = {one for one in listed(spec["requirements"]) if "==" not in one}
    assert loose == {"sqlite3", "android", "pyjnius"}, (
        "what has a recipe is held by the commit of the packager"
    )
    assert plain.keys() <= wanted.keys() | held.keys() | {"python3", "hostpython3"}
    assert pins["python3"] == pins["hostpython3"]
    for name, pin in pins.items():
        if name not in ("python3", "hostpython3"):
            assert version(name) == pin


def test_no_permission_reaches_a_network(spec):
    assert set(listed(spec["android.permissions"])) == {
        f"android.permission.{name}" for name in ("VIBRATE", "POST_NOTIFICATIONS", "RECORD_AUDIO")
    }


def test_what_is_added_to_the_manifest_is_whole(spec):
    inside = (FOLDER / spec["android.extra_manifest_xml"]).read_text("utf-8")
    more = (FOLDER / spec["android.extra_manifest_application_arguments"]).read_text("utf-8")
    page = ET.fromstring(  # noqa: S314  (our own file)
        '<manifest xmlns:android="http://schemas.android.com/apk/res/android">'
        f"{inside}<application {more}/></manifest>"
    )
    (feature,) = page.findall("uses-feature")
    assert feature.attrib == {f"{ANDROID}name": "android.hardware.microphone", f"{ANDROID}required": "false"}
    (action,) = page.findall("queries/intent/action")
    assert action.get(f"{ANDROID}name") == "android.intent.action.TTS_SERVICE"
    application = page.find("application")
    assert application.get(f"{ANDROID}enableOnBackInvokedCallback") == "false"
    assert application.get(f"{ANDROID}dataExtractionRules") == "@xml/data_extraction_rules"


def test_the_backup_holds_the_database_and_the_copies(spec):
    from logic.exchange.copies import FOLDER as COPIES  # noqa: PLC0415  (only here)
    from logic.store.opening import NAME  # noqa: PLC0415  (only here)

    want = {f"deckhand/{NAME}", f"deckhand/{NAME}-wal", f"deckhand/{COPIES}/"}
    old = ET.parse(FOLDER / spec["android.backup_rules"]).getroot()  # noqa: S314  (our own file)
    new = ET.parse(FOLDER / spec["android.res_xml"]).getroot()  # noqa: S314  (our own file)
    for part in (old, *new):
        assert {one.get("path") for one in part.findall("include")} == want
        assert {one.get("domain") for one in part.findall("include")} == {"file"}


@pytest.mark.parametrize(
    ("token", "side"),
    [
        ("icon.filename", 512),
        ("icon.adaptive_foreground.filename", 432),
        ("icon.adaptive_background.filename", 432),
        ("presplash.filename", 1024),
    ],
)
def test_pictures_are_there(spec, token, side):
    data = Path(spec[token].replace("%(source.dir)s", str(ROOT))).read_bytes()
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    assert (int.from_bytes(data[16:20], "big"), int.from_bytes(data[20:24], "big")) == (side, side)


def test_what_the_app_reads_is_shipped_and_nothing_else(spec):
    names = {path.relative_to(ROOT).as_posix() for path in shipped(spec)}
    assert {"main.py", "logic/store/migrations.py", "screens/app.py", "assets/LICENSE"} - names == {
        "assets/LICENSE"
    }
    assert {
        f"assets/{name}" for name in ("units.txt", "factors.toml", "colours.toml", "sources.toml")
    } <= names
    assert {
        path.relative_to(ROOT).as_posix() for path in (ROOT / "assets" / "tables").glob("*.toml")
    } <= names
    assert not any(name.startswith(("tests", "assets/packaging", ".")) for name in names)


def test_every_plain_module_that_the_app_loads_is_listed(spec):
    """The packager takes no dependency of a dependency that it has no recipe of."""
    names = {one.split("==")[0].replace("-", "_") for one in listed(spec["requirements"])} - COMPILED
    assert names == {
        "kivymd", "filetype", "pint", "flexparser", "flexcache", "platformdirs", "typing_extensions", "plyer", "segno",
    }  # fmt: skip


def test_kivy_brings_nothing_that_asks_a_network(spec, monkeypatch):
    """The packager's recipe of Kivy adds five modules for that: its python_depends, at the commit of the spec."""
    theirs = type("KivyRecipe", (), {"python_depends": ["certifi", "chardet", "idna", "requests", "urllib3"]})
    for name, inside in {
        "pythonforandroid.recipes": {"__path__": ["packager/recipes"]},
        "pythonforandroid.recipes.kivy": {"KivyRecipe": theirs},
    }.items():
        monkeypatch.setitem(sys.modules, name, SimpleNamespace(**inside))
    (place,) = (FOLDER / spec["p4a.local_recipes"]).glob("*/__init__.py")
    ours = runpy.run_path(str(place))["recipe"]
    assert isinstance(ours, theirs)
    assert (ours.name, ours.get_recipe_dir()) == (place.parent.name, str(Path("packager/recipes/kivy")))
    assert set(ours.python_depends) <= {one.split("==")[0] for one in listed(spec["requirements"])}


RUN = """
import sys
from pathlib import Path
masked, folder, out = sys.argv[1].split(","), Path(sys.argv[2]), Path(sys.argv[3])
for name in masked:
    if name:
        sys.modules[name] = None
sys.path.insert(0, str(folder))
from screens.driver import prepare
prepare(out / "kivy", width=412, height=915)
from screens.scenes import arrive, reset, scenes, start
driver = start(out / "data")
driver.resize(412, 915)
for scene in list(scenes())[::25]:
    reset(driver)
    arrive(driver, scene)
    driver.shot(out / f"{scene.name}.png")
assert folder in Path(sys.modules["screens"].__file__).parents
driver.stop()
"""


@NEEDS_GRAPHICS
def test_the_packaged_form_draws_the_same(spec, tmp_path):
    package = tmp_path / "package"
    for path in shipped(spec):
        place = package / path.relative_to(ROOT)
        place.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(path, place)
    assert compileall.compile_dir(package, quiet=1, legacy=True)
    for path in package.rglob("*.py"):
        path.unlink()
    pictures = {}
    for name, masked, folder in (("packaged", ",".join(MASKED), package), ("plain", "numpy", ROOT)):
        out = tmp_path / name
        out.mkdir()
        done = alone(
            out, "-c", RUN, masked, str(folder), str(out), folder=out, within=300.0, KIVY_IMAGE="sdl2"
        )
        assert done.returncode == 0, done.stderr[-2000:]
        pictures[name] = {path.name: path.read_bytes() for path in out.glob("*.png")}
    assert len(pictures["plain"]) > 5
    assert pictures["packaged"].keys() == pictures["plain"].keys()
    assert [name for name, data in pictures["plain"].items() if pictures["packaged"][name] != data] == []
