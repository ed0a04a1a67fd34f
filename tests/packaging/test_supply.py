"""What the project rests on: each package is held, told in DEVELOPERS.md, and its licence can be read in the app."""

import re
import struct
import tomllib
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError, distribution, files, metadata, requires, version
from importlib.resources import files as inside
from pathlib import Path

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from logic.licences import licences
from tests.pages.reader import Reader

ROOT = Path(__file__).parents[2]
TEXTS = ROOT / "assets" / "licences"
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
ASKED = [*PROJECT["project"]["dependencies"], *PROJECT["dependency-groups"]["dev"]]
LEFT_OUT = "pycairo"


def pins() -> dict[str, str]:
    """Return the version each package is held at; a line without one ends the test."""
    every = [*ASKED, *PROJECT["tool"]["uv"]["constraint-dependencies"]]
    return dict(re.fullmatch(r"([\w-]+)==([\w.]+)", one).groups() for one in every)


def wanted(names: list[str]) -> set[str]:
    """Return these packages and all that they ask for on this system."""
    found: set[str] = set()
    while names:
        name = canonicalize_name(names.pop())
        if name in found or name == LEFT_OUT:
            continue
        found.add(name)
        parts = [Requirement(one) for one in requires(name) or ()]
        # Kivy's "base" is asked for by KivyMD and by nobody else: what it brings is installed or it is not wanted.
        names += [one.name for one in parts if one.marker is None or one.marker.evaluate({"extra": ""})]
        names += [
            one.name for one in parts if name == "kivy" and "base" in str(one.marker) and installed(one.name)
        ]
    return found


def installed(name: str) -> bool:
    try:
        distribution(name)
    except PackageNotFoundError:
        return False
    return True


def table() -> dict[str, str]:
    """Return package and licence of the rows of DEVELOPERS.md."""
    part = (
        (ROOT / "DEVELOPERS.md").read_text("utf-8").partition("## What it rests on")[2].partition("\n## ")[0]
    )
    rows = [
        [cell.strip() for cell in line.split("|")[1:-1]] for line in part.splitlines() if line.startswith("|")
    ]
    assert all(all(row) and len(row) == 4 for row in rows)
    return {name: licence for name, licence, *_ in rows[2:]}


def stated(name: str) -> str:
    """Return the licence that the metadata of a package state."""
    said = metadata(name)
    for key in ("License-Expression", "License"):
        if said.get(key) and "\n" not in said[key]:
            return said[key]
    named = [one for one in said.get_all("Classifier") or () if one.startswith("License ::")]
    return "; ".join(one.rpartition(" :: ")[2] for one in named) or "none stated"


def licence_file(name: str) -> str:
    path = next(one for one in files(name) if one.name in ("LICENSE", "COPYING"))
    return path.locate().read_text("utf-8")


def test_every_package_is_held_at_the_version_that_is_tested():
    held = {canonicalize_name(name): pin for name, pin in pins().items()}
    for name in wanted([Requirement(one).name for one in ASKED]):
        assert held[name] == version(name), name


def test_the_table_names_every_package_with_the_licence_it_states():
    told = table()
    assert told.keys() == wanted([Requirement(one).name for one in ASKED])
    for name, licence in told.items():
        assert licence.startswith(stated(name)), name


def test_what_reaches_a_phone_has_its_own_text_in_the_app():
    spec = (ROOT / "assets" / "packaging" / "buildozer.spec").read_text("utf-8")
    names = re.search(r"^requirements = (.*)$", spec, re.MULTILINE).group(1).split(",")
    no_package = {"python3", "hostpython3", "sqlite3", "android", "pyjnius"}
    listed = {one.file for one in licences()}
    for name in {one.partition("==")[0].strip() for one in names} - no_package:
        assert (TEXTS / f"{name}.txt").read_text("utf-8") == licence_file(name), name
        assert f"{name}.txt" in listed
    assert (TEXTS / "apache-2.0.txt").read_text("utf-8") == licence_file("requests")
    assert {path.name for path in TEXTS.iterdir()} == listed


def records(font: Path) -> Iterator[tuple[int, str]]:
    """Yield number and text of what a font says of itself, in UTF-16. OpenType, table "name"."""
    data = font.read_bytes()
    for place in range(12, 12 + 16 * int.from_bytes(data[4:6], "big"), 16):
        tag, _, start, _ = struct.unpack(">4s3I", data[place : place + 16])
        if tag == b"name":
            _, count, texts = struct.unpack(">3H", data[start : start + 6])
            for one in range(start + 6, start + 6 + 12 * count, 12):
                system, _, _, number, length, offset = struct.unpack(">6H", data[one : one + 12])
                begin = start + texts + offset
                if system == 3:
                    yield number, data[begin : begin + length].decode("utf-16-be")


def test_fonts_are_under_the_licence_that_is_named():
    fonts = Path(str(inside("kivy"))) / "data" / "fonts"
    assert "Apache License, Version 2.0" in dict(records(fonts / "Roboto-Regular.ttf"))[13]
    assert dict(records(fonts / "DejaVuSans.ttf"))[13] == (TEXTS / "dejavu.txt").read_bytes().decode()


def test_every_text_opens_under_settings(tmp_path: Path) -> None:
    reader = Reader(tmp_path, demo=True)
    reader.open("settings")
    reader.tap("Licences")
    for one in licences():
        reader.tap(one.name)
        for part in one.paragraphs():
            assert reader.shows(part), one.name
        reader.tap(one.name)
    reader.close()
