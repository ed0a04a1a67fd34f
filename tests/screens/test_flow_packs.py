"""Packs by touch and key: DANGER that cannot be missed or tapped away, the counter card, readings, the learnt range."""

import re
from collections.abc import Callable

import pytest

from logic.board import Value
from screens.acts.keeping import Set
from screens.blocks import WRONG
from screens.phone import share
from screens.tongue import texts
from tests.screens.session import Session

BACK = 27
FACES = {"320 at 2.0": (320, 568, 2.0), "412 at 1.0": (412, 915, 1.0)}

HAZARDS = texts("packs")["hazards"]


def use(app: Session, name: str) -> None:
    app.state.choose_named(name)
    app.front.place("ride")
    app.settle()


def numbers(app: Session, row: str) -> None:
    app.front.place("numbers")
    app.settle()
    app.tap(row)


def enter(app: Session, label: str, text: str) -> None:
    app.tap(label)
    app.type(text)
    app.tap("Done")


def assert_danger(app: Session) -> None:
    """The page is stopped, and the word stands in the crown, which is always in sight."""
    assert app.front.page.crown.form == WRONG
    assert app.front.page.crown.word.startswith("DANGER")


@pytest.fixture(params=FACES.values(), ids=FACES)
def face(app: Session, request: pytest.FixtureRequest) -> Session:
    """Give the app at a small face with large text, and at a usual one."""
    width, height, text = request.param
    app.resize(width, height)
    app.state.set_person(text=text)
    app.settle()
    return app


# Wrong charger.


def test_a_wrong_charger_shows_while_it_is_typed(face: Session) -> None:
    numbers(face, "Charging")
    face.tap("Charger volts")
    face.type("50.4")
    face.settle()
    assert_danger(face)
    face.tap("Done")
    face.settle()
    assert_danger(face)
    # The page begins at its notice then.
    notice = next(one for one in face.find_all("DANGER") if one.part in face.page.parts.panes)
    assert notice.y + notice.height <= notice.part.top + 1
    face.key(BACK)
    face.settle()
    assert face.shows("Wrong charger for this pack.")


def test_a_wrong_charger_of_the_saved_board_is_told_on_numbers(app: Session) -> None:
    app.state.do(Set({"pack.charger_voltage": Value(50.4, "label")}))
    numbers(app, "Charging")
    assert_danger(app)


# Words.


@pytest.mark.parametrize("key", HAZARDS)
def test_a_hazard_is_told_in_25_words(key: str) -> None:
    words = re.sub(r"\{\w+\}", "12.5 V", HAZARDS[key]).split()
    assert len(words) <= 25
    assert "safe" not in HAZARDS[key].lower()


def failing(*_: str) -> None:
    raise RuntimeError


@pytest.mark.parametrize(
    ("sheet", "copy", "told"),
    [
        (lambda *_: None, failing, share.SHARED),
        (failing, lambda *_: None, share.COPIED),
        (failing, failing, share.NEITHER),
    ],
)
def test_sharing_never_raises(
    monkeypatch: pytest.MonkeyPatch, sheet: Callable[..., None], copy: Callable[..., None], told: str
) -> None:
    monkeypatch.setattr(share, "_sheet", sheet)
    monkeypatch.setattr(share, "_copy", copy)
    assert share.share("text", "title") == told
